"""What a turn goes on from, over books of several trades: where one is, what is held, what a clause said."""

from __future__ import annotations

import datetime

import pytest

from shell.session import Session
from shell.turns import take_line
from tests.opening import opened
from tests.reader.conftest import HERE

LINES = (HERE / "goes_on.txt").read_text().splitlines()
CASES = [line.rsplit(" | ", 1) for line in LINES if line and not line.startswith("#")]


@pytest.mark.parametrize(("said", "expected"), CASES, ids=[said for said, _ in CASES])
def test_goes_on(said: str, expected: str) -> None:
    books, _, turns = said.partition(" | ")
    base, session = opened(books), Session(as_of=datetime.date(2026, 12, 1))
    before = session.answers
    for turn in turns.split(" >> "):
        before = session.answers
        session, _ = take_line(session, turn, base)
    told = session.answers[-1].reading.text if session.answers is not before else ""
    assert (told or "-") == expected
