"""What is told to be worn is held against the thing asked about, whichever of them the rule is of."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        # "A full beard must not be worn with a dust mask."
        ("I have a full beard. Can I wear a dust mask?", "No. The full beard must not be worn with the dust"),
        (
            "I am wearing a dust mask. Can I have a full beard?",
            "No. The full beard must not be worn with the",
        ),
        (
            "Can I wear a dust mask with a full beard?",
            "No. The full beard must not be worn with the dust mask",
        ),
        ("I have a moustache. Can I wear a dust mask?", "The books are silent"),
        ("I have no beard. Can I wear a dust mask?", "The books are silent"),
        # "nor by ushers in the auditorium beyond what cannot be noticed at arm's length"
        (
            "Is perfume allowed in the auditorium for ushers?",
            "No clause says whether the scent may be worn, o",
        ),
        ("Is perfume allowed for bar staff in the foyer?", "The books are silent"),
        ("Must an usher wear perfume in the auditorium?", "The books are silent"),
        # "An umbrella must not be opened under the canopy."
        ("Can I put my umbrella up under the canopy?", "No. The house umbrella must not be opened."),
        (
            "Can I carry my umbrella under the canopy?",
            "Only when the wearer is an Usher, the duty is queue and there is rain: ",
        ),
        # "Above 2 metres on a ladder or on the grid a harness shall be worn": a height is no size of it
        (
            "Do I need a harness at 1.5 metres?",
            "Only when the wearer is on the grid: the harness must be worn;",
        ),
        ("Do I need a harness 3 m up on a ladder?", "Yes. The harness must be worn."),
        ("Is a 3 m harness allowed?", "The books are silent"),
        # "The Playhouse issues to each usher one waistcoat": no usher issues one
        ("Must an usher be issued a waistcoat?", "Yes. The claret waistcoat must be issued."),
        ("Must an usher issue a waistcoat?", "The Company Dress Book, 2025 edition, clause 7.1"),
        ("Who must issue the hard hat?", "The Company Dress Book, 2025 edition, clause 7.2"),
        # what is claimed to be forbidden is so, and of carrying what is carried
        (
            "Is it true that lit watches are forbidden in the wings?",
            "Yes. The wristwatch with a lit face must n",
        ),
        ("Is it true that bags are forbidden in the pit?", "Yes. The bag must not be carried."),
        (
            "Is it true that phones are forbidden in the pit?",
            "It depends on the wearer's grade: the mobile ph",
        ),
        # "be black" is no outfit: the Show Blacks are called by the plural
        ("Must my headscarf be black backstage?", "Yes. The colour of the item worn for religion or belief"),
        ("Must my headscarf be white backstage?", "No. The colour of the item worn for religion or belief"),
        (
            "As a stagehand in a performance, do my socks have to be black?",
            "Yes: the black socks must be worn.",
        ),
        (
            "Is my bow tie black at a gala as a head usher?",
            "No. The colour of the bow tie must not be black.",
        ),
        (
            "As a stagehand, must I wear the soft-soled shoes in blacks?",
            "Yes. The soft-soled black shoes must",
        ),
    ],
)
def test_of_a_playhouse(ask: Ask, text: str, headline: str) -> None:
    assert ask("playhouse", text).headline.startswith(headline)


def test_the_read_back_of_an_issue_says_to_whom(ask: Ask) -> None:
    assert ask("playhouse", "Is a waistcoat issued to an usher?").reading.text == (
        "Must the claret waistcoat be issued to an Usher?"
    )


def test_outside_is_the_place_that_is_called_so(ask: Ask) -> None:
    asked = ask("infirmary", "Can a porter wear the porters' jacket outside in July?")
    assert asked.reading.text == "May a porter wear the porters' jacket, outdoors, month July?"
    coat = "Can I wear the outdoor coat outside the operating theatre?"
    assert ", outdoors" not in ask("infirmary", coat).reading.text
