"""A clause that what was told meets in all but one thing is cited beside the answer, and said not to hold."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("book", "text", "headline", "clauses", "said"),
    [
        # "The shell jacket need not be worn in clear weather, unless the wind is above 40 km/h."
        (
            "second",
            "It's clear but blowing 50 km/h in fell rig. Do I need the shell jacket?",
            "Yes. The shell jacket must be worn.",
            ["2.1", "2.2"],
            True,
        ),
        # "its holder may wear a turban instead of the hard hat in the yard only"
        (
            "quarry",
            "I've got the religious waiver. May I wear my turban in the quarry instead of a hard hat?",
            "No: the hard hat must be worn with the turban, unless the wearer is in a closed cab.",
            ["3.1", "6.4"],
            True,
        ),
        # "Guards on watch at the lido shall wear sunglasses in bright sun, unless ... a medical waiver."
        (
            "pool",
            "I hold a medical waiver. Do I still need sunglasses on watch at the lido when the sun's bright?",
            "No. The sunglasses may be worn, but need not be.",
            ["3.4", "3"],
            True,
        ),
        # nothing was told that the exception for clear weather turns on
        (
            "second",
            "Do I need the shell jacket in fell rig when it's blowing 50 km/h?",
            "Yes. The shell jacket must be worn.",
            ["2.1"],
            False,
        ),
        # the leave that a no names is cited: "may be worn ... when the temperature is below 10 °C"
        (
            "tramway",
            "It's 12 degrees out, winter service dress. Can I put my overcoat on?",
            None,
            ["1.4", "1.3"],
            False,
        ),
    ],
)
def test_nearly(ask: Ask, book: str, text: str, headline: str | None, clauses: list[str], said: bool) -> None:
    answer = ask(book, text)
    assert headline is None or answer.headline == headline
    assert [one.number for one in answer.citations] == clauses
    assert any(note.endswith("that is not so here.") for note in answer.notes) is said
