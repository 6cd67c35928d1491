"""Using, opening and answering a thing against having it with one."""

from __future__ import annotations

import datetime
from collections.abc import Callable

import pytest

from kb import Answer
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
Ask = Callable[[str, str], Answer]


@pytest.fixture(scope="module")
def ask() -> Ask:
    return lambda name, text: opened(name).ask(text, as_of=DAY)[-1]


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        (
            "forest",
            "Can I answer my mobile while I'm on the horse?",
            "No. The mobile phone must not be used.",
        ),
        ("forest", "Can I be on the phone while riding?", "No. The mobile phone must not be used."),
        ("forest", "Can I text while riding?", "No. The mobile phone must not be used."),
        ("forest", "Can I take a call on parade?", "No. The mobile phone must not be used."),
        ("forest", "Can I look at my phone on parade?", "No. The mobile phone must not be used."),
        (
            "airferry",
            "Can I make a phone call while crossing the apron?",
            "No. The mobile phone must not be used",
        ),
        (
            "airferry",
            "Can I text my wife while walking across the apron?",
            "No. The mobile phone must not be",
        ),
        ("forest", "Can I take my phone on patrol?", "Yes. The mobile phone may be carried."),
        # no rule is on its use, but it may not be had there
        ("forest", "It's raining on patrol, can I use an umbrella?", "No. The umbrella must not be carried."),
        ("airferry", "Can I open my umbrella on the apron?", "No. The umbrella must not be opened."),
    ],
)
def test_what_is_done_with_a_thing_is_told_from_having_it(
    ask: Ask, book: str, text: str, headline: str
) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("forest", "Can I throw my mobile while I'm on the horse?"),  # what is done to it is not left out
        ("demo", "May I answer my phone on parade?"),  # the books have rules on carrying it alone
        ("forest", "Can I sharpen my knife at the visitor gate?"),
        ("forest", "Can I use a fixed-blade knife?"),
    ],
)
def test_leave_to_have_a_thing_is_no_leave_for_what_is_done_with_it(ask: Ask, book: str, text: str) -> None:
    assert not ask(book, text).headline.startswith("Yes")
