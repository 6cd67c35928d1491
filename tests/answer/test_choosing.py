"""Where a word may mean several things of a rig, the list of them is told and none is asked back."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from tests.opening import opened

TODAY = datetime.date(2026, 11, 25)
BOOKS = Path(__file__).parents[1]


@pytest.mark.parametrize(
    ("books", "question", "items", "clause"),
    [
        ("second", "Footwear for hall rig?", {"hall-shoes", "hall-boots"}, "4.11"),
        (
            "fourth",
            "Cadet dress: which boots, which belt, which shirt?",
            {"cadet-boots", "cadet-belt", "grey-shirt"},
            "7.1",
        ),
        ("fourth", "which hat is worn in cadet dress?", {"side-cap"}, "7.1"),
    ],
)
def test_the_things_of_a_rig_are_listed(books: str, question: str, items: set[str], clause: str) -> None:
    base = opened(books)
    (answer,) = base.ask(question, as_of=TODAY)
    assert answer.outcome == "answer"
    assert items <= {entry.item for entry in answer.entries}
    assert clause in {citation.number for citation in answer.citations}


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("eighth", "driver in the cab without a tie"),
        ("eighth", "Guard in Crew Dress without a tie?"),
        ("second", "R2 in hall rig without a jacket?"),
    ],
)
def test_what_is_left_off_is_no_list_of_all_else(books: str, question: str) -> None:
    base = opened(books)
    assert not any(answer.entries for answer in base.ask(question, as_of=TODAY))
