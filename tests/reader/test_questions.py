"""Every question of the question files is read as the file says, and its read-back is read the same way."""

from __future__ import annotations

import pytest

from kb.model.records import Case
from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

CHOIR = read_cases(HERE / "choir.txt")


@pytest.mark.parametrize(("question", "expected"), CHOIR, ids=[question for question, _ in CHOIR])
def test_choir(choir: Base, question: str, expected: str) -> None:
    assert write_reading(choir.read(question)) == expected


@pytest.mark.parametrize("question", [question for question, _ in CHOIR])
def test_read_back_is_read_the_same_way(choir: Base, question: str) -> None:
    reading = choir.read(question)
    if reading.query is None:
        return
    assert_said_back(choir, reading)
