"""Names made of the books' own: a clause of a label with "that", a compound in one word, none of a denial."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase

BOOKS = """
service: {id: rail, label: Rail Wardens, namespace: "https://rail.example/"}
authorities: [{id: board, label: Board}]
facts:
  - {id: late, label: on a train that leaves after dark, kind: yes or no, ask: "Does it leave after dark?"}
  - id: part
    label: share in the work
    values: [{id: driver, label: at the wheel}, {id: not-hauling, label: not hauling}]
items:
  - {id: rain-cloak, label: rain cloak, kind of: garment}
book: {id: order, title: Rail Order, authority: board}
edition: {id: "1", title: Rail Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: The rain cloak may be worn on a train that leaves after dark, and not by who is not hauling.
    rules:
      - {may: rain-cloak, when: {late: yes}}
      - {must not: rain-cloak, when: {part: not-hauling}}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("rail")
    (books / "rail.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


@pytest.mark.parametrize(
    ("question", "facts"),
    [
        ("May I wear the rain cloak when the train leaves after dark?", ["late"]),
        ("May I wear the raincloak on a train that leaves after dark?", ["late"]),
        ("May I wear the rainclaok?", []),
        ("May I wear the rain cloak when not hauling?", ["part"]),
    ],
)
def test_such_a_name_is_known(question: str, facts: list[str], base: KnowledgeBase) -> None:
    query = base.read(question, as_of=datetime.date(2026, 11, 25)).query
    assert query is not None
    assert query.items == ("rain-cloak",)
    assert [fact for fact, _ in query.case.facts] == facts


def test_who_hauls_is_not_who_does_not(base: KnowledgeBase) -> None:
    query = base.read("May I wear the rain cloak while hauling?", as_of=datetime.date(2026, 11, 25)).query
    assert query is None or all(fact != "part" for fact, _ in query.case.facts)
