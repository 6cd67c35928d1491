"""What names of a rule book make understandable though nobody listed it: everyday words, people, days."""

from __future__ import annotations

import pytest

from kb.model.questions import Reading
from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

CASES = [
    (name, question, expected)
    for name in ("demo", "second", "third", "fourth")
    for question, expected in read_cases(HERE / f"names-{name}.txt")
]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[f"{n}: {q}" for n, q, _ in CASES])
def test_such_words_are_read(name: str, question: str, expected: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    assert write_reading(reading) == expected, (reading.text, reading.ask, reading.abstain)


LINKED = [
    ("demo", "May I wear the service cap in the office?", "in the office", "indoors"),
    ("fourth", "A knitted cap in frost in fire kit?", "in frost", "temperature"),
    ("fourth", "Is a drummer required to wear a lanyard in band dress?", "a drummer", "instrument"),
]


@pytest.mark.parametrize(("name", "question", "words", "fact"), LINKED)
def test_the_words_are_linked_to_what_they_were_taken_for(
    name: str, question: str, words: str, fact: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    reading: Reading = base.read(question)
    assert (words, fact) in [(span.text, span.target) for span in reading.spans]
