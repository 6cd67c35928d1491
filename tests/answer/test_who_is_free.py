"""Who need not, and who must not: those that were asked for stand first, and in words where these are few."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
THIRD = Path(__file__).parents[1] / "third" / "books"
# The demonstration books, 8.4, and clause 22 of the third.
FREE = "Wardens need not own the safety boots."
KEPT_OUT = "For attendants, prohibited, unless the activity is evacuation of a cabin."


@pytest.mark.parametrize("text", ["who's exempt from safety boots", "who need not own safety boots"])
def test_who_is_free_of_a_duty_stands_first(text: str) -> None:
    (answer,) = opened("demo").ask(text, as_of=DAY)
    assert answer.headline.startswith(FREE)
    assert "8.4" in {citation.number for citation in answer.citations}


def test_for_some_it_is_said_when_where_it_takes_too_many_words_for_others() -> None:
    (answer,) = opened("third").ask("who can't wear the shell jacket", as_of=DAY)
    assert answer.headline.startswith(KEPT_OUT)
    assert answer.headline.endswith("it depends on the situation.")
