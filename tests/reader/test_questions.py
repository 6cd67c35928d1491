"""Every question of the question files is read as the file says, and its read-back is read the same way."""

from __future__ import annotations

import random

import msgspec
import pytest

from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.model.values import YES
from kb.wording import say_query
from tests.reader.conftest import HERE, Base
from tests.reader.made_queries import make_query
from tests.reader.notation import read_cases, write_reading

CHOIR = read_cases(HERE / "choir.txt")
DEMO_FILES = ("demo", "asked-demo", "meanings-demo", "words-demo", "phrasings-demo")
DEMO = [case for name in DEMO_FILES for case in read_cases(HERE / f"{name}.txt")]
SECOND = [
    case
    for name in ("asked-second", "meanings-second", "words-second", "phrasings-second")
    for case in read_cases(HERE / f"{name}.txt")
]


THIRD = [case for name in ("words", "asked") for case in read_cases(HERE / f"{name}-third.txt")]
FOURTH = read_cases(HERE / "asked-fourth.txt")


@pytest.mark.parametrize(("question", "expected"), CHOIR, ids=[question for question, _ in CHOIR])
def test_choir(choir: Base, question: str, expected: str) -> None:
    check(choir, question, expected)


@pytest.mark.parametrize(("question", "expected"), DEMO, ids=[question for question, _ in DEMO])
def test_demo(demo: Base, question: str, expected: str) -> None:
    check(demo, question, expected)


@pytest.mark.parametrize(("question", "expected"), SECOND, ids=[question for question, _ in SECOND])
def test_second(second: Base, question: str, expected: str) -> None:
    check(second, question, expected)


@pytest.mark.parametrize(("question", "expected"), THIRD, ids=[question for question, _ in THIRD])
def test_third(third: Base, question: str, expected: str) -> None:
    check(third, question, expected)


@pytest.mark.parametrize(("question", "expected"), FOURTH, ids=[question for question, _ in FOURTH])
def test_fourth(fourth: Base, question: str, expected: str) -> None:
    check(fourth, question, expected)


def test_there_are_enough_questions() -> None:
    assert len({question for question, _ in (*CHOIR, *DEMO, *SECOND)}) > 400


def check(base: Base, question: str, expected: str) -> None:
    reading = base.read(question)
    assert write_reading(reading) == expected, (reading.text, reading.ask, reading.abstain)
    if reading.query is not None:
        again = base.read(reading.text, Case(as_of=reading.query.case.as_of))
        assert again.query is not None, (reading.text, again.ask, again.abstain)
        assert spoken(again.query, base) == spoken(reading.query, base), reading.text


def spoken(query: Query, base: Base) -> Query:
    """The query as its read-back can tell it: what is asked about together is said as worn with the first."""
    rest = {f"worn:{item}": YES for item in query.items[1:]}
    if not rest or query.kind not in ("may", "must"):
        return query
    facts = {**dict(query.case.facts), **rest}
    ordered = tuple((fact, facts[fact]) for fact in base.lookup.facts if fact in facts)
    return msgspec.structs.replace(
        query, items=query.items[:1], case=msgspec.structs.replace(query.case, facts=ordered)
    )


def test_exactly_one_outcome(choir: Base, demo: Base) -> None:
    readings = [choir.read(q) for q, _ in CHOIR] + [demo.read(q) for q, _ in DEMO]
    assert all(outcomes(reading) == 1 for reading in readings)


def outcomes(reading: Reading) -> int:
    return sum(part is not None for part in (reading.query, reading.ask, reading.abstain))


@pytest.mark.parametrize("question", [question for question, _ in CHOIR])
def test_spans_cover_every_word_in_order(choir: Base, question: str) -> None:
    reading = choir.read(question)
    places = [(span.start, span.end) for span in reading.spans]
    assert places == sorted(places)
    assert all(question[span.start : span.end] == span.text for span in reading.spans)
    if reading.spans:
        covered = {place for start, end in places for place in range(start, end)}
        assert all(place in covered for place, c in enumerate(question) if c.isalnum())


@pytest.mark.parametrize("seed", range(150))
def test_every_read_back_is_read_as_its_query(choir: Base, demo: Base, second: Base, seed: int) -> None:
    for base in (choir, demo, second):
        query = make_query(random.Random(seed), base.lookup)
        text = say_query(base.lookup, query)
        reading = base.read(text)
        assert reading.query is not None, (text, reading.ask, reading.abstain)
        assert reading.query == query, text
        assert reading.text == text
