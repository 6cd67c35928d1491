"""Measures, manners of wearing and care, and what misleads or limits nothing are read as the tables say."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

CASES = [
    (*question.split(": ", 1), expected)
    for name in ("measures", "manners", "misleading", "on_and_off", "small_words", "beside", "sides")
    for question, expected in read_cases(HERE / f"{name}.txt")
]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[f"{n}: {q}" for n, q, _ in CASES])
def test_is_read(name: str, question: str, expected: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    if expected == "stop":
        assert reading.query is None, reading.text
    else:
        assert write_reading(reading) == expected, (reading.text, reading.ask, reading.abstain)
