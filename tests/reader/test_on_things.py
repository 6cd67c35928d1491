"""One thing asked for on another: where rules put it, where they do not, and what must have none of it."""

from __future__ import annotations

import datetime

import pytest

from kb import Answer, KnowledgeBase

BOOKS = """
service: {id: lock, label: Lock Wardens, namespace: "https://lock.example/"}
authorities: [{id: board, label: Board}]
facts:
  - {id: month, label: season, values: [{id: wet, label: wet season}, {id: dry, label: dry season}]}
  - {id: lost, label: lost, kind: yes or no}
items:
  - {id: smock, label: smock, kind of: garment}
  - {id: cloak, label: cloak, kind of: garment}
  - {id: hood, label: hood, kind of: garment}
  - {id: belt, label: belt, kind of: garment}
  - {id: satchel, label: satchel, kind of: carried}
  - {id: left-sleeve, label: left sleeve, everyday words: [sleeve], kind of: feature}
  - {id: flash, label: flash, kind of: insignia}
  - {id: bell, label: bell, kind of: accessory}
  - {id: pin, label: pin, kind of: insignia}
  - {id: bar, label: bar, kind of: insignia}
  - {id: token, label: token, kind of: insignia}
book: {id: order, title: Lock Order, authority: board}
edition: {id: "1", title: Lock Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: The flash is on the left sleeve, and never on the cloak.
    rules:
      - {must: flash, position: {relation: "on", feature: left-sleeve, on: garment, side: left}}
      - {must not: flash, position: {relation: "on", on: cloak}}
      - {must: flash}
  - clause: "2"
    text: The hood has no pin on it. The satchel is without lettering other than the Board's name.
    rules:
      - {must: hood, construction: no pin}
      - {must: satchel, construction: without lettering other than the Board's name}
      - {may: pin}
  - clause: "3"
    text: No bell is worn in the wet season.
    rules: [{must not: bell, when: {month: wet}}]
  - clause: "5"
    text: Who has lost the flash wears the token.
    rules: [{must: token, when: {lost: yes, not worn: flash}}]
  - clause: "4"
    text: The bar is worn on the smock; it is not worn with the cloak unless the smock is worn.
    rules:
      - {may: bar, when: {worn: smock}}
      - {must: bar, position: {relation: "on", on: smock}}
      - {must not: bar, when: {worn: cloak, not worn: smock}}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("lock")
    (books / "lock.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _answer(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=datetime.date(2026, 11, 25))
    return answer


@pytest.mark.parametrize(
    ("question", "begun", "clause"),
    [
        ("May I wear the flash on the cloak?", "No", "1"),
        ("Must I wear the flash on the cloak?", "No", "1"),
        ("May I wear the flash on the left sleeve?", "Yes", "1"),
        ("Is a pin allowed on the hood?", "No", "2"),
        ("Am I not allowed a pin on the hood?", "No", "2"),
        ("May the satchel have lettering?", "No", "2"),
        ("May I carry a satchel with lettering?", "No", "2"),
        ("I've lost my flash. Must I wear the token?", "Yes", "5"),
        ("May I wear the bar on the cloak?", "No", "4"),
        ("May I wear a bell on the belt in the wet season?", "No", "3"),
    ],
)
def test_what_rules_say_of_one_thing_on_another(
    question: str, begun: str, clause: str, base: KnowledgeBase
) -> None:
    answer = _answer(base, question)
    assert answer.headline.startswith(begun), (answer.headline, answer.ask, answer.abstain)
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    "question",
    [
        "May I wear a pin on the hood without lettering?",
        "May I carry a satchel without lettering?",
        "May I wear the flash on the smock?",  # whether the smock has a left sleeve is not told
    ],
)
def test_nothing_is_guessed_of_other_words(question: str, base: KnowledgeBase) -> None:
    answer = _answer(base, question)
    assert answer.verdict is None or not answer.headline.startswith(("Yes", "No"))
