"""Whether a thing is enough: no, where the case wants something else, and nothing where no rule says no."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("book", "text", "headline", "clause"),
    [
        # "At a blast, shotfirers ... wear ear defenders; ear plugs alone will not do."
        (
            "quarry",
            "Shotfirer. Are ear plugs on their own enough at a blast?",
            "No: the ear defenders must",
            "3.4",
        ),
        (
            "quarry",
            "Are ear plugs enough in the saw shed with machinery running?",
            "No: the ear defenders must be worn with the ear plugs, unless",
            "2",
        ),
        ("quarry", "Are safety glasses enough for dry cutting?", "No: the goggles must be worn", "3.5"),
        (
            "patrol",
            "minus 7 outside and I've only my glove liners on. Is that enough?",
            "No. The glove",
            "4.8",
        ),
        ("patrol", "On snow, wind 50 km/h. Are sunglasses enough?", "No. The sunglasses must not", "4.2"),
        (
            "school",
            "Back in the Forge: hearth's lit. Are goggles enough?",
            "No: the face shield must be",
            "2",
        ),
        ("demo", "Are deck gloves enough for hot work?", "No: the heat gauntlets must be worn", "7.12"),
        ("shipyard", "Is a dust mask enough for spraying?", "No. The dust mask must not be worn.", "3.6"),
    ],
)
def test_it_is_not_enough_where_something_else_must_be_worn(
    ask: Ask, book: str, text: str, headline: str, clause: str
) -> None:
    answer = ask(book, text)
    assert answer.headline.startswith(headline)
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("book", "text"),
    [
        # what is required there is right, but no clause says that nothing else is wanted
        ("quarry", "Are ear defenders enough at a blast?"),
        ("demo", "Is a flotation vest enough on deck?"),
        # "Ear defenders or ear plugs" at such noise: with the plugs in, none must be worn besides
        ("shipyard", "are ear plugs enough at 82 decibels?"),
        ("undertakers", "My pin is centred 26 mm below the notch. Is that near enough?"),
    ],
)
def test_that_it_is_enough_is_never_guessed(ask: Ask, book: str, text: str) -> None:
    answer = ask(book, text)
    assert answer.outcome == "abstain"
