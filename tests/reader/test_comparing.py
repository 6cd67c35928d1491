"""Comparisons: the two sides that are read, and that each is read back as it was understood."""

from __future__ import annotations

import random

import pytest

from kb.wording import say_query
from tests.reader.conftest import HERE, Base
from tests.reader.made_queries import make_comparison
from tests.reader.notation import read_cases, write_reading


@pytest.mark.parametrize(("question", "expected"), read_cases(HERE / "compare-demo.txt"))
def test_sides(demo: Base, question: str, expected: str) -> None:
    reading = demo.read(question)
    assert write_reading(reading) == expected
    if reading.query is not None:
        assert write_reading(demo.read(reading.text)) == expected


def test_nearly_every_read_back_is_read_as_its_comparison(choir: Base, demo: Base, second: Base) -> None:
    """All but sentences that join two names of one thing: "for the sleeve, ..., sleeves up"."""
    made = [
        (base, make_comparison(random.Random(seed), base.lookup))
        for base in (choir, demo, second)
        for seed in range(60)
    ]
    again = [base.read(say_query(base.lookup, query)).query == query for base, query in made]
    assert sum(again) > 0.97 * len(again)


@pytest.mark.parametrize(
    ("question", "without"),
    [
        ("what differs for the storm coat in boat rig and watch rig for a K5", "a K5"),
        ("what differs for the storm coat in boat rig and watch rig for a K5", "storm coat"),
        ("what has changed for the knit cap since 1 March 2025 in boat rig", "boat rig"),
        ("compare a K5 in boat rig with an H2 in watch rig", "K5"),
    ],
)
def test_nothing_said_is_passed_over(demo: Base, question: str, without: str) -> None:
    assert write_reading(demo.read(question)) != write_reading(demo.read(question.replace(without, "")))
