"""Of several kinds of a thing the one worn in what was told, for questions of place, colour and number."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kb.model.questions import Answer


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        (
            "cadets",
            "I've joined the band. Which shoulder is the lanyard on?",
            "The band lanyard must be worn on the shoulder, on the right side.",
        ),
        ("shipyard", "What colour is a ship visitor's hat?", "The colour of the hard hat must be white."),
    ],
)
def test_what_was_told_settles_which_of_them_is_meant(
    ask: Callable[[str, str], Answer], book: str, text: str, headline: str
) -> None:
    assert ask(book, text).headline == headline


@pytest.mark.parametrize(
    ("book", "text"),
    [("cadets", "Which shoulder is the lanyard on?"), ("cadets", "What colour is the cap?")],
)
def test_where_nothing_settles_it_which_is_asked_back(
    ask: Callable[[str, str], Answer], book: str, text: str
) -> None:
    answer = ask(book, text)
    assert answer.outcome == "ask"
    assert answer.ask is not None
    assert answer.ask.fact == "item"
