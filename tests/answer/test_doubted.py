"""A verdict is asked back where another clause is spoken of far more than those that carry it."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fifth")}


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("demo", "The harness took a fall last week but looks fine. Use it again?", "8.10"),
        (
            "fifth",
            "My Lead Escort holds that the notice lets him wear his name plate in the vehicle. Does it?",
            "1.2",
        ),
    ],
)
def test_it_is_asked_back_with_the_clause_to_read(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (asked,) = bases[books].ask(question, as_of=DAY)
    assert asked.outcome == "ask"
    assert asked.verdict is None
    assert asked.ask is not None
    assert clause in asked.ask.prompt
    assert asked.speaking[0].number == clause
    (told,) = bases[books].ask("yes", as_of=DAY, previous=asked.reading)
    assert told.outcome == "answer"
    assert told.verdict is not None
    assert told.reading.text == asked.ask.choices[0][0]


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("demo", "May I wear the climbing harness when working aloft?", "7.13"),
        # The clause that is spoken of most was seen: it does not apply, or gives way.
        ("demo", "earrings in mess at gannet ness", "6.5"),
        ("demo", "Fair weather, we're hauling lines on the slipway. Can I skip the flotation vest?", "7.1"),
        # It is of another edition than the day's.
        ("demo", "In 2022 could an Under Keeper have a beard?", "6.18"),
    ],
)
def test_it_is_answered_where_nothing_speaks_against_it(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (told,) = bases[books].ask(question, as_of=DAY)
    assert told.outcome == "answer"
    assert clause in {citation.number for citation in told.citations}
