"""Headlines that say one of two, silence as silence, and the ends of a range that is open."""

from __future__ import annotations

import datetime

import pytest

from tests.opening import opened


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        (
            "which belt in boat rig?",
            "In boat rig, the canvas belt or the webbing belt must be worn, one of the two.",
        ),
        (
            "May an officer of the day wear the service cap indoors in watch rig?",
            "Yes: the service cap must be worn, unless the wearer wears other headgear.",
        ),
        (
            "Do I need the knit cap in watch rig?",
            "No: the knit cap need not be worn; when the wearer is not in town, and either the month is "
            "April to October or the wearer is indoors, the books are silent.",
        ),
        (
            "How long is the name strip for a name of ten letters or more?",
            "The length of the name strip must be more than 5 in and at most 7 in.",
        ),
    ],
)
def test_headline(question: str, headline: str) -> None:
    (answer,) = opened("demo").ask(question, as_of=datetime.date(2026, 12, 1))
    assert answer.headline == headline
