"""Which clauses an answer cites: the one on the thing itself, and the first that said what still holds."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.answer.conftest import Ask
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
VOCABULARY = """
service: {id: weir, label: Weir Wardens, namespace: "https://weir.example/"}
authorities: [{id: board, label: Board}]
facts: [{id: weather, label: weather, ask: "What is the weather?", values: [
  {id: fair, label: fair weather}, {id: frost, label: frost}]}]
rigs: [{id: sluice-rig, label: sluice rig}, {id: mess-rig, label: mess rig}]
aspects: [{id: colour, values: [{id: teal, label: teal}, {id: ochre, label: ochre}]}]
items:
  - {id: gear, label: gear, kind of: garment}
  - {id: smock, label: smock, kind of: gear}
  - {id: hood, label: hood, kind of: gear}
  - {id: mitts, label: mitts, kind of: gear}
  - {id: clogs, label: clogs, kind of: gear}
  - {id: tag, label: name tag, kind of: insignia}
"""
RULES = """
book: {id: order, title: Weir Order, authority: board}
edition: {id: "1", title: Weir Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: Sluice rig is the smock and nothing else.
    rules:
      - {must: smock, rig: sluice-rig}
      - {id: whole, only: [smock], of: gear, rig: sluice-rig}
  - clause: "2"
    text: In frost mitts may be worn with the sluice rig. The hood is not worn with it.
    rules:
      - {may: mitts, rig: sluice-rig, when: {weather: frost}, exception to: whole}
      - {must not: hood, rig: sluice-rig}
  - clause: "3"
    text: The name tag is teal and 60 mm long.
    rules:
      - {must: tag, colour: teal, length: 60 mm}
"""
CHANGE = """
book: {id: change, title: Change, authority: board}
edition: {id: "1", title: Change, in force from: 2025-01-01}
clauses:
  - clause: "A"
    replaces: order/1 clause 3
    text: In clause 3 for "60 mm" read "50 mm".
    rules:
      - {must: tag, colour: teal, length: 50 mm}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("weir")
    for name, text in (("vocabulary", VOCABULARY), ("rules", RULES), ("change", CHANGE)):
        (books / f"{name}.yaml").write_text(text, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _asked(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=DAY)
    assert base.verify(json.loads(answer_to_json(answer))) is None
    return answer


def _cited(answer: Answer) -> list[str]:
    return [f"{citation.edition} {citation.number}" for citation in answer.citations]


def test_of_two_clauses_the_one_on_the_thing_itself_is_cited(base: KnowledgeBase) -> None:
    answer = _asked(base, "May I wear the hood in sluice rig?")
    assert (answer.verdict, _cited(answer)) == ("prohibited", ["order/1 2"])


def test_beside_a_complete_list_stands_the_clause_that_adds_to_it(base: KnowledgeBase) -> None:
    answer = _asked(base, "May I wear mitts in sluice rig in fair weather?")
    assert (answer.verdict, _cited(answer)) == ("prohibited", ["order/1 1", "order/1 2"])
    assert any("may be worn if" in note and "frost" in note for note in answer.notes)


def test_a_complete_list_is_cited_for_what_no_clause_adds(base: KnowledgeBase) -> None:
    assert _cited(_asked(base, "May I wear clogs in sluice rig?")) == ["order/1 1"]


def test_what_an_amendment_left_as_it_was_is_cited_from_the_clause_that_said_it(base: KnowledgeBase) -> None:
    answer = _asked(base, "What colour is the name tag?")
    assert (answer.verdict, _cited(answer)) == ("required", ["change/1 A", "order/1 3"])
    assert any("which said the same" in note for note in answer.notes)


def test_what_an_amendment_changed_is_cited_from_it_alone(base: KnowledgeBase) -> None:
    answer = _asked(base, "How long is the name tag?")
    assert _cited(answer) == ["change/1 A"]
    assert "50 mm" in answer.headline


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("How big may the station patch be?", "required"),
        ("May the station patch be 3 1/2 in across?", "prohibited"),
    ],
)
def test_a_narrower_measure_of_a_lower_authority_is_cited_with_the_limit_above_it(
    question: str, verdict: str
) -> None:
    """Clause 5.25 of the Dress Order: at most 3 in; clause 15 of the Station Order: 50 mm."""
    demo = opened("demo")
    (answer,) = demo.ask(question, as_of=DAY)
    assert answer.verdict == verdict
    assert [(c.book, c.number) for c in answer.citations] == [
        ("station-order", "15"), ("dress-order", "5.25"),
    ]  # fmt: skip


def test_what_a_lower_authority_forbids_is_cited_alone() -> None:
    """A measure has its limit above; an act that is forbidden has none to tell."""
    demo = opened("demo")
    (answer,) = demo.ask("May a telephone be carried in the lamp room on watch?", as_of=DAY)
    assert [citation.number for citation in answer.citations] == ["7"]


@pytest.mark.parametrize(
    ("text", "clauses"),
    [
        # "Rings ... are taken off within reach of running machinery", and "rings ... in the lamp room"
        ("Must I take my ring off in the lamp room, with machinery running?", {"6.6", "7.18"}),
        ("Must I take my ring off in the lamp room?", {"7.18"}),
        ("Must I take my ring off with machinery running?", {"6.6"}),
    ],
)
def test_clauses_that_say_the_same_of_what_is_told_are_all_cited(
    ask: Ask, text: str, clauses: set[str]
) -> None:
    answer = ask("demo", text)
    assert answer.verdict == "prohibited"
    assert {citation.number for citation in answer.citations} == clauses


def test_a_clause_that_is_nothing_but_a_purpose_is_cited_for_why(ask: Ask) -> None:
    """Pool 1.1: "A bather in trouble looks for a yellow shirt"; the guards themselves tell no purpose."""
    answer = ask("pool", "Why are the guards in yellow shirts?")
    assert "1.1" in [citation.number for citation in answer.citations]
    other = ask("pool", "Why must guards wear red shorts?")
    assert "1.1" not in [citation.number for citation in other.citations]


@pytest.mark.parametrize(
    ("book", "text", "number"),
    [
        ("cadets", "do boots need polishing", None),  # which is no nail polish
        ("cadets", "do parade shoes need polishing every time", "6.2"),
        ("cadets", "are my parade shoes to be polished?", "6.2"),
        ("tramway", "I'm a driver. Phone in my pocket while I'm driving, if it's switched off?", None),
        ("playhouse", "My neck is sore. Who can let me off the bow tie for two weeks?", "1.3"),
        ("ambulance", "Doctor wants me out of safety boots. Can my superintendent sign that off?", None),
    ],
)
def test_no_clause_on_another_matter_is_cited(ask: Ask, book: str, text: str, number: str | None) -> None:
    assert [citation.number for citation in ask(book, text).citations] == ([number] if number else [])


def test_a_telephone_that_is_off_is_asked_about_as_one_that_is_carried(ask: Ask) -> None:
    answer = ask("playhouse", "may an usher carry a phone as long as it's switched off?")
    assert answer.headline.startswith("Yes. The mobile phone may be carried")
    assert any("switched off" in note for note in answer.notes)


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("waterproof watch, pool hall, on watch?", "waterproof wristwatch, in the pool hall, on watch?"),
        ("Can I wear my watch?", "wear the waterproof wristwatch?"),
        ("Do I need my whistle on watch?", "wear the whistle, on watch?"),
    ],
)
def test_a_watch_that_is_worn_is_not_being_on_watch(ask: Ask, text: str, read: str) -> None:
    assert ask("pool", text).reading.text.endswith(read)
