"""A question that only points at things asks which is meant; one that names something else does not."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("demo", "Can I wear it with that?"),
        ("demo", "Left or right?"),
        ("hotel", "and what about the other one, same thing?"),
        ("pool", "Is it okay if I do it like last time?"),
        ("zoo", "Is it still all right on Sundays?"),
        ("shipyard", "Is it OK to wear that there?"),
    ],
)
def test_it_is_asked_which_is_meant(ask: Ask, name: str, question: str) -> None:
    answer = ask(name, question)
    assert (answer.outcome, answer.ask and answer.ask.fact) == ("ask", "item")


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("zoo", "What time is it?"),
        ("zoo", "Is it going to rain?"),
        ("zoo", "Can I wear it with that spaceship?"),
        ("zoo", "Is the weather good today?"),
    ],
)
def test_what_names_something_else_is_refused(ask: Ask, name: str, question: str) -> None:
    assert ask(name, question).outcome == "abstain"
