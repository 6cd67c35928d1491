"""Days as people write them, on the command line and after `as of`."""

from __future__ import annotations

import datetime

import pytest

import kb
from shell.commands import read_line
from shell.dates import as_date

MAY = datetime.date(2026, 5, 1)


@pytest.mark.parametrize(
    "text", ["2026-05-01", "1 May 2026", "1st of May 2026", "May 1, 2026", "may 1st 2026", "1 may, 2026"]
)
def test_a_day_in_several_forms(text: str) -> None:
    assert as_date(text) == MAY
    line = read_line(f"as of {text}")
    assert (line.name, line.argument) == ("as of", text)


def test_near_days() -> None:
    today = datetime.date.today()
    assert as_date("yesterday") == today - datetime.timedelta(days=1)
    assert as_date("Tomorrow") == today + datetime.timedelta(days=1)


@pytest.mark.parametrize("text", ["31 February 2026", "1 Mayhem 2026x", "2026", "May 2026", "1 Smarch 2026"])
def test_what_is_no_day_is_said(text: str) -> None:
    with pytest.raises(kb.UsageError, match="is not a date"):
        as_date(text)


def test_as_of_with_more_than_a_day_is_a_question() -> None:
    assert read_line("as of 1 May 2026 may I wear the cap?").kind == "question"
