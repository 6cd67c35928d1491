"""Questions of a day's work: outfits as things, particles, judgements in a word, leave that is asked for."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

BASES = ("demo", "second", "third", "fourth", "fifth")
CASES = [(name, *case) for name in BASES for case in read_cases(HERE / f"daily-{name}.txt")]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[question for _, question, _ in CASES])
def test_is_read_as_meant(request: pytest.FixtureRequest, name: str, question: str, expected: str) -> None:
    base: Base = request.getfixturevalue(name)
    assert write_reading(base.read(question)) == expected
