"""What people tell around a question is read as the tables say, or stops it where they say so."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

CASES = [
    (name, question, expected)
    for name in ("demo", "third", "fourth")
    for question, expected in read_cases(HERE / f"told-{name}.txt")
]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[f"{n}: {q}" for n, q, _ in CASES])
def test_what_is_told_is_read(
    name: str, question: str, expected: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    if expected == "stop":
        assert reading.query is None, reading.text
    else:
        assert write_reading(reading) == expected, (reading.text, reading.ask, reading.abstain)


def test_enough_of_them_must_stop_or_be_read_otherwise() -> None:
    assert sum(expected == "stop" for _, _, expected in CASES) > 25
    assert len(CASES) > 110
