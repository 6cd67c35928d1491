"""What is answered of a few things: each with when it is worn, two that protect together, a place apart."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import Answer, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


def asked(book: str, question: str) -> Answer:
    (answer,) = opened(book).ask(question, as_of=DAY)
    assert opened(book).verify(json.loads(answer_to_json(answer))) is None
    return answer


@pytest.mark.parametrize(
    ("book", "question", "told"),
    [
        ("undertakers", "Which gloves does a driver wear in full mourning out of doors?",
         "the black gloves must be worn, unless the kind of funeral is child's; the white gloves must be"),
        ("undertakers", "Which shoes go with call dress?",
         "ordinarily the black safety shoes must be worn; "),
        ("museum", "Which bar does a Duty Supervisor wear?",
         "the gilt bar must be worn when the wearer wears the slate blazer"),
        ("museum", "Which gloves for object work on photographs?",
         "the nitrile gloves must be worn, unless "),
    ],
)  # fmt: skip
def test_a_few_things_are_told_with_when_they_are_worn(book: str, question: str, told: str) -> None:
    assert told in asked(book, question).headline


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("Can I wear just the ear plugs at 97 dB?",
         "No: the ear defenders must be worn with the ear plugs."),
        ("Can I wear just the ear defenders when plate chipping?",
         "No: the ear plugs must be worn with the ear defenders."),
        ("Can I wear just the ear plugs at 87 dB?", "Yes: the ear plugs must be worn."),
        ("Can I wear just the hard hat on the slips?", "Yes: the hard hat must be worn."),
    ],
)  # fmt: skip
def test_one_of_two_that_protect_together_is_too_little(question: str, headline: str) -> None:
    assert asked("shipyard", question).headline == headline


def test_a_place_is_no_more_ordinary_for_being_named_first() -> None:
    answer = asked("undertakers", "Conductor at a funeral. Can I carry my phone?")
    assert answer.headline == (
        "Yes. The mobile phone may be carried, unless the wearer is in the mortuary or the chapel of rest at"
        " Saltgate."
    )


def test_who_may_is_told_first_and_the_others_last() -> None:
    said = asked("undertakers", "Who wears the top hat?").headline
    assert said.startswith(
        "For a Head Bearer with the acting conductor appointment and without the religious"
    )
    assert "required when the wearer is in full mourning, not indoors and not at the committal. " in said
    assert said.endswith("must not wear the top hat. For the others it depends on the situation.")


def test_a_duty_of_who_is_told_by_its_ordinary_case() -> None:
    said = asked("patrol", "Who wears the blazer at prize-givings?").headline
    assert said.startswith("For leads, required, unless the wearer is not on shift or in a bar.")


def test_the_rigs_in_which_alone_a_thing_is_spoken_of_lead() -> None:
    answer = asked("school", "13 degrees in May, and I am a Second Year. The house pullover under my jacket?")
    assert answer.headline == (
        "Yes, in day or chapel dress. The house pullover may be worn with the school jacket; in any other rig"
        " the books are silent."
    )
