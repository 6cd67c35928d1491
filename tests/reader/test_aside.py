"""Clauses of a story beside a question are set aside and named, unless they may bear on the answer."""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base
from tests.reader.notation import write_reading

SET_ASIDE = [
    ("My aunt is coming to dinner tonight. May an S2 wear the sash?", "may sash grade=S2",
     ("My aunt is coming to dinner tonight",)),
    ("The tailor is ill. May I wear the sash in the nave?", "may sash venue=nave", ("The tailor is ill",)),
    ("I've just had my breakfast. Must I wear the choir scarf?", "must choir-scarf",
     ("I've just had my breakfast",)),
    ("We are in the nave, my feet hurt, and I'm S2. May I wear the sash?", "may sash grade=S2 venue=nave",
     ("my feet hurt",)),
    ("May I wear the sash? My aunt is coming.", "may sash", ("My aunt is coming",)),
    ("Climbing the stairs in the nave: sash?", "may sash venue=nave", ("Climbing the stairs",)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected", "unused"), SET_ASIDE)
def test_a_story_is_set_aside_and_named(
    choir: Base, text: str, expected: str, unused: tuple[str, ...]
) -> None:
    reading = choir.read(text)
    assert (write_reading(reading), reading.unused) == (expected, unused)


KEPT = [
    "I found a cape. May I wear it with the sash?",  # "it" is the cape
    "My aunt owns one. May I wear that?",
    "I have a dispensation and a waiver. May I wear the sash?",  # what it lets one do is not known
    "I walked 7 miles. May I wear the sash?",
    "May I wear the sash on Mars?",  # no clause by itself
    "May I wear a cape? My aunt is coming.",
]


@pytest.mark.parametrize("text", KEPT)
def test_what_may_bear_on_the_answer_is_not_set_aside(choir: Base, text: str) -> None:
    reading = choir.read(text)
    assert reading.query is None
    assert not reading.unused


STATES = [
    ("May I wear the sash when it's hot?", "may sash", ("when it's hot",)),
    ("May an S2 wear the sash in the nave if I'm really cold and tired?", "may sash grade=S2 venue=nave",
     ("if I'm really cold and tired",)),
    ("On a warm dry evening, must I wear the choir scarf?", "must choir-scarf", ("On a warm dry evening",)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected", "unused"), STATES)
def test_how_it_is_is_set_aside_and_named(
    choir: Base, text: str, expected: str, unused: tuple[str, ...]
) -> None:
    reading = choir.read(text)
    assert (write_reading(reading), reading.unused) == (expected, unused)


def test_how_it_is_not_stays(choir: Base) -> None:
    assert choir.read("May I wear the sash when it's not hot?").query is None


def test_a_state_of_another_time_is_not_taken_for_this_one(demo: Base) -> None:
    reading = demo.read("I'm back from leave. Deck shoes in a skiff?")
    assert write_reading(reading) == "may deck-shoes place=skiff"
    assert reading.unused == ("I'm back from leave",)
    reading = demo.read("I'm in the boat rig off the slipway and wet. Deck knife?")
    assert "place" not in dict(reading.query.case.facts if reading.query else ())
