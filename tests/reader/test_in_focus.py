"""What is asked further of the clause that a talk is on: "who countersigns it?", "till when exactly?"."""

from __future__ import annotations

import datetime

import pytest

from shell.session import Session
from shell.turns import take_line
from tests.opening import opened
from tests.reader.conftest import HERE
from tests.reader.notation import read_cases

CASES = read_cases(HERE / "focus.txt")


@pytest.mark.parametrize(("said", "expected"), CASES, ids=[said for said, _ in CASES])
def test_in_focus(said: str, expected: str) -> None:
    books, _, turns = said.partition(" | ")
    base, session = opened(books), Session(as_of=datetime.date(2026, 12, 1))
    before = session.answers
    for turn in turns.split(" >> "):
        before = session.answers
        session, _ = take_line(session, turn, base)
    told = session.answers[-1].reading.query if session.answers is not before else None
    shown = base.lookup.clauses[told.clause] if told is not None and told.clause is not None else None
    assert (f"{shown.edition} {shown.number}" if shown is not None else "-") == expected


def test_the_talk_goes_on_from_what_was_asked_before() -> None:
    """A clause that was shown in between does not take the place of the thing that was asked of."""
    base, session = opened("sixth"), Session(as_of=datetime.date(2026, 12, 1))
    for line in ("May I wear the heron badge with Floor?", "who is it worn by?", "and with Banquet?"):
        session, _ = take_line(session, line, base)
    assert session.answers[-1].reading.text == "May anyone wear the heron badge, in Banquet?"
