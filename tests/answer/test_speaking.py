"""Of clauses that carry an answer alike, the one is cited that speaks of what was stated."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fourth")}


@pytest.mark.parametrize(
    ("books", "question", "clauses"),
    [
        ("demo", "May I wear deck shoes in watch rig in the engine room?", ["7.6"]),
        ("demo", "May I wear deck shoes in watch rig in town?", ["4.8", "9.2"]),
        ("fourth", "Must I wear the tie in station dress in January?", ["5.2", "1.11", "K1"]),
        ("fourth", "Must an F2 wear the fire helmet on the incident ground?", ["2.1"]),
        ("fourth", "Must an F2 wear the fire helmet in fire kit, off duty?", ["1.11"]),
    ],
)
def test_the_clause_cited_speaks_of_what_is_stated(
    bases: dict[str, KnowledgeBase], books: str, question: str, clauses: list[str]
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert [citation.number for citation in answer.citations] == clauses
