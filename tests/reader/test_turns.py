"""Turns that change one thing of what was asked: the place, the person, what is done, the thing itself."""

from __future__ import annotations

import pytest

from kb.model.records import Case
from kb.model.values import choices
from tests.reader.conftest import HERE, base_of
from tests.reader.notation import TODAY, read_cases, write_reading

TURNS = read_cases(HERE / "turns.txt")


@pytest.mark.parametrize(("said", "expected"), TURNS, ids=[said for said, _ in TURNS])
def test_turns(said: str, expected: str) -> None:
    books, _, turns = said.partition(" | ")
    reading = None
    for turn in turns.split(" >> "):
        reading = base_of(books).read(turn, previous=reading)
    assert reading is not None
    assert write_reading(reading) == expected


OF_THEIRS = [
    ("demo", "K1", ("May a K5 wear the keeper's pin?", "How big is the keeper's pin?"), "K5"),
    ("demo", "K1", ("May a K5 wear the keeper's pin?", "And do I wear the keeper's pin?"), "K1"),
    ("demo", "K1", ("May a K5 wear the keeper's pin?", "How long is the name strip?"), "K1"),
    ("third", "A1", ("Must an A4 wear the grade bars?", "How many grade bars?"), "A4"),
    ("third", "A1", ("Must an A4 wear the grade bars?", "And how many do I wear?"), "A1"),
    ("fourth", "F1", ("May an O1 wear the peaked cap?", "What colour is the peaked cap?"), "O1"),
    ("fifth", "C1", ("Must an S2 wear the silver key?", "Where does the silver key go?"), "S2"),
    ("second", "R1", ("May a W2 wear the grade bars?", "Where are the grade bars worn?"), "W2"),
]


@pytest.mark.parametrize(("books", "mine", "turns", "expected"), OF_THEIRS)
def test_the_same_thing_is_asked_of_the_same_person(
    books: str, mine: str, turns: tuple[str, ...], expected: str
) -> None:
    case = Case(as_of=TODAY, facts=(("grade", choices(mine)),))
    reading = None
    for turn in turns:
        reading = base_of(books).read(turn, case, previous=reading)
    assert reading is not None
    assert reading.query is not None
    assert dict(reading.query.case.facts)["grade"] == choices(expected)
