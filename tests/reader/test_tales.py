"""What people tell of themselves and of how things stand before they ask is taken, or stops the question."""

from __future__ import annotations

import pytest

from tests.opening import opened
from tests.reader.conftest import assert_read, lines_of
from tests.reading.sheets import TODAY

LINES = list(lines_of("tales.txt"))


@pytest.mark.parametrize(("name", "question", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_is_read_as_told(name: str, question: str, said: str, meant: bool) -> None:
    reading = opened(name).read(question, as_of=TODAY)
    assert_read(reading, said, meant)


HEADS = [
    ("airferry", "I'm refuelling and I'm a ramp agent. Is a nylon fleece ok?", "No. The nylon clothing"),
    ("airferry", "Can I wear a nylon jacket when refuelling?", "No. The nylon clothing"),
    ("forest", "Can I wear a fleece pullover on fire watch?", "No. The fleece must not"),
    ("airferry", "Is a nylon fleece ok? I'm a ramp agent", ""),
    (
        "airferry",
        "I'm a pilot in flight dress. Can I take off the jacket on the flight deck?",
        "Yes. The navy",
    ),
    ("airferry", "I'm a ramp agent. Can I take off the jacket?", ""),
    ("playhouse", "I'm a harpist. Can I leave the dinner jacket off?", "Yes"),
    ("school", "Can I lend my house tie to my brother?", "No. The house tie must not be lent; when"),
    (
        "school",
        "Walking down the drive with headphones in. Allowed?",
        "No. The headphones must",
    ),
    (
        "school",
        "Can I wear my pullover to lessons instead of the jacket?",
        "No, in day dress. The",
    ),
    ("racecourse", "May I carry an umbrella?", "Only when"),
]


@pytest.mark.parametrize(("name", "question", "begins"), HEADS)
def test_begins_with(name: str, question: str, begins: str) -> None:
    """A thing of two names fares as the stricter; of a kind that is taken off, the wearer's own is meant."""
    (answer,) = opened(name).ask(question, as_of=TODAY)
    assert answer.headline.startswith(begins) if begins else not answer.headline


def test_what_is_had_is_what_is_kept() -> None:
    base = opened("infirmary")
    (first,) = base.ask("Must I wear a fitted respirator in the sluice?", as_of=TODAY)
    (second,) = base.ask("I've got a beard though, can I keep it?", as_of=TODAY, previous=first.reading)
    assert second.reading.query is not None
    assert second.reading.query.items == ("beard",)
