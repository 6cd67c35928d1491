"""Questions with "only": who may, when, and how many tell whether it is so, so nothing is asked back."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
ASKED = [
    ("are only wardens allowed the white lanyard?", "Who may wear the white lanyard?", "6.7"),
    ("are slides just for wardens?", "Who may wear the warden's slides?", "5.8"),
    ("K7s only, white gloves?", "Who may wear the white gloves?", "3.12"),
    ("may I wear only one ring", "How many finger rings may be worn?", "6.5"),
    ("is the deck knife carried only in boat rig?", "When may anyone carry the deck knife?", "6.12"),
]


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(("text", "reading", "clause"), ASKED)
def test_it_is_told_for_whom_when_and_how_many(
    base: KnowledgeBase, text: str, reading: str, clause: str
) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.outcome == "answer"
    assert answer.reading.text == reading
    assert clause in {citation.number for citation in answer.citations}


@pytest.mark.parametrize("text", ["can the liner only be worn with the coat", "Can only one of us wear it?"])
def test_what_else_is_bounded_is_not_answered(base: KnowledgeBase, text: str) -> None:
    assert [answer.outcome for answer in base.ask(text, as_of=DAY)] != ["answer"]
