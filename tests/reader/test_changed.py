"""Questions what has changed: the days and the things that are read, and that the read-back says the same."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

BASES = ("demo", "second", "third", "fourth")
CASES = [(name, *case) for name in BASES for case in read_cases(HERE / f"changed-{name}.txt")]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[question for _, question, _ in CASES])
def test_changed(request: pytest.FixtureRequest, name: str, question: str, expected: str) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    assert write_reading(reading) == expected
    if reading.query is not None and reading.query.kind == "compare":
        again = base.read(reading.text)
        assert write_reading(again) == expected
        assert again.query is not None
        assert again.query.book == reading.query.book


@pytest.mark.parametrize(
    ("question", "book"),
    [
        ("What did the Notice change?", "interim-notice"),
        ("Which clauses does the Interim Notice replace?", "interim-notice"),
        ("What does the Notice say?", "interim-notice"),
        ("What has changed since the Notice?", None),
        ("What is new in the second edition?", None),
    ],
)
def test_a_book_that_is_named_is_asked_about(demo: Base, question: str, book: str | None) -> None:
    query = demo.read(question).query
    assert query is not None
    assert query.book == book


@pytest.mark.parametrize(
    ("first", "further", "expected"),
    [
        ("What has changed since 2023?", "and for hands?", "grade=H1,H2,H3,H4"),
        ("What changed this year?", "and last year?", "compare as-of:2024-12-31 other:as-of=2025-12-31"),
        ("What has changed about belts this year?", "and about the name strip?", "compare name-strip"),
        ("May I wear a beard?", "has that changed?", "compare beard as-of:2024-02-29"),
    ],
)
def test_further_words_keep_the_rest(demo: Base, first: str, further: str, expected: str) -> None:
    before = demo.read(first)
    reading = demo.read(further, previous=before)
    assert expected in write_reading(reading)
    assert reading.query is not None
    assert reading.query.other is not None
