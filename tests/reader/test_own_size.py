"""How long a thing is, told before another is asked of: the circumstance that the books measure."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase, Reading

BOOKS = """
service: {id: forge, label: Forge Wardens, namespace: "https://forge.example/"}
authorities: [{id: board, label: Board}]
facts:
  - {id: beard-length, label: beard length, kind: measure, unit: mm, ask: "How long is the beard?"}
items:
  - {id: beard, label: beard, kind of: grooming}
  - {id: chin-net, label: chin net, kind of: garment}
  - {id: hood, label: hood, kind of: garment}
book: {id: order, title: Forge Order, authority: board}
edition: {id: "1", title: Forge Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: A beard is at most 40 mm long. With one longer than 5 mm the chin net is worn. The hood may be worn.
    rules:
      - {must: beard, length: at most 40 mm}
      - {must: chin-net, when: {beard-length: above 5 mm}}
      - {may: hood}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("forge")
    (books / "forge.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _read(base: KnowledgeBase, question: str) -> Reading:
    return base.read(question, as_of=datetime.date(2026, 11, 25))


@pytest.mark.parametrize(
    "question",
    [
        "My beard is 8 mm. Have I got to wear the chin net?",
        "My beard is 8 mm long. Do I need a chin net?",
        "8 mm beard, must I wear the chin net?",
        "I have a beard of 8 mm. Must I wear the chin net?",
        "With a beard of 8 mm must I wear the chin net?",
        "Must I wear the chin net with a beard of 8 mm?",
    ],
)
def test_it_is_the_circumstance_of_what_is_asked(question: str, base: KnowledgeBase) -> None:
    query = _read(base, question).query
    assert query is not None
    assert (query.kind, query.items, query.value) == ("must", ("chin-net",), None)
    assert [fact for fact, _ in query.case.facts] == ["beard-length"]


@pytest.mark.parametrize(
    "question",
    [
        "May my beard be 8 mm?",
        "My beard is 8 mm, is that ok?",
        "3 mm beard, ok?",
        "My beard is 8 mm. Is it ok with the hood?",  # "it" is the beard
    ],
)
def test_what_is_asked_of_the_thing_itself_stays_a_question_of_it(question: str, base: KnowledgeBase) -> None:
    query = _read(base, question).query
    assert query is not None
    assert query.items[0] == "beard"
    assert query.value is not None
