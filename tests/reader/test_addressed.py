"""Who is named before a question: the standing is of whom it is asked, and is never left out unsaid."""

from __future__ import annotations

import pytest

from tests.opening import opened
from tests.reading.sheets import TODAY

OF_WHOM = [
    ("tall deck hand: beard OK?", "May deck hands wear the beard?", ("tall",)),
    (
        "Sikh deck hand, off to parade. Beard?",
        "May deck hands wear the beard, on parade?",
        ("Sikh", "off to"),
    ),
    (
        "A keen deck hand wants to know: beard OK?",
        "May deck hands wear the beard?",
        ("A keen", "wants to know"),
    ),
    ("I told a deck hand: beard ok?", "May anyone wear the beard?", ("I told a deck hand",)),
]


@pytest.mark.parametrize(("question", "read", "gone"), OF_WHOM)
def test_is_asked_of_whom_it_names(question: str, read: str, gone: tuple[str, ...]) -> None:
    reading = opened("demo").read(question, as_of=TODAY)
    assert (reading.text, reading.unused) == (read, gone)


@pytest.mark.parametrize(
    "question", ["former deck hand: beard OK?", "ex-deck hand: beard ok?", "tall recruit: beard OK?"]
)
def test_one_of_no_known_standing_stops_it(question: str) -> None:
    assert opened("demo").read(question, as_of=TODAY).query is None
