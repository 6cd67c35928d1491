"""What is up and may have to come down, which of several is worn, and what goes under what."""

from __future__ import annotations

import pytest

from tests.reader.conftest import base_of

SLEEVES = "the duty shirt sleeves"


@pytest.mark.parametrize(
    ("name", "question", "read"),
    [
        ("ambulance", "30 °C and sleeves rolled up. Do they have to come down?",
         f"Is it prohibited for anyone to roll {SLEEVES}, air temperature 30 °C?"),
        ("ambulance", "Must the sleeves be rolled down with a patient who is bleeding?",
         f"Is it prohibited for anyone to roll {SLEEVES}, with a patient who is bleeding?"),
        ("ambulance", "May the sleeves be rolled up?", f"May anyone roll {SLEEVES}?"),
        ("creamery", "Sleeves turned back, S3 in the making room. Do they have to come down?",
         "Is it prohibited for an S3 to turn the sleeve, in the making room?"),
        ("ambulance", "Does the camera have to be off when the patient is undressed?",
         "Must anyone stop the body-worn camera, with an undressed patient?"),
        ("ambulance", "Does my fob watch have to be off on parade?",
         "Must anyone go without the fob watch, on parade?"),
        ("ambulance", "Which high-visibility thing do I put on at a road accident?",
         "Which of the high-visibility jacket and the high-visibility waistcoat may people wear, at a road"
         " accident?"),
    ],
)  # fmt: skip
def test_so_it_is_read(name: str, question: str, read: str) -> None:
    reading = base_of(name).read(question)
    assert reading.text == read, (reading.ask, reading.abstain)


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("shipyard", "Boiler suit sleeves rolled up on the dock floor. Do they have to come down?"),
        ("shipyard", "Which hat do I wear under the hard hat when it's freezing?"),
        ("ambulance", "Is the high-visibility thing needed?"),
    ],
)
def test_so_it_is_not(name: str, question: str) -> None:
    assert base_of(name).read(question).query is None
