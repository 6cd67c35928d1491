"""From which day a rule holds that decided, which need not be that of the clause that it stands in."""

from __future__ import annotations

import datetime

from shell.session import Session
from shell.turns import take_line
from tests.opening import opened


def _told(*lines: str) -> str:
    base, session = opened("demo"), Session(as_of=datetime.date(2026, 12, 1))
    for line in lines:
        session, _ = take_line(session, line, base)
    return session.answers[-1].headline


def test_the_day_of_the_rule_is_told() -> None:
    told = _told("is the tarred smock allowed?", "since when?")
    assert told.endswith("clause 2.7; what it says of the tarred smock is in force from 1 October 2026")


def test_a_clause_whose_rules_began_with_it_tells_its_own_day() -> None:
    told = _told("may I wear the canvas belt in boat rig?", "since when?")
    assert told == "Interim Notice of 2026, clause 3, in force from 1 June 2026"


def test_of_several_clauses_none_is_picked() -> None:
    assert "in force" not in _told("Can I wear a beard?", "since when?")
