"""The question files: reading a line, and writing a reading in the same notation."""

from __future__ import annotations

import datetime
from fractions import Fraction
from pathlib import Path

from kb.model.questions import Reading
from kb.model.values import Choices, Interval, Ranges, ValueSet

TODAY = datetime.date(2026, 11, 25)


def read_cases(path: Path) -> list[tuple[str, str]]:
    """(question, expected) of every line that is not a comment."""
    lines = (line.strip() for line in path.read_text("utf-8").splitlines())
    pairs = (line.rpartition(" | ") for line in lines if line and not line.startswith("#"))
    return [(question.strip(), _normal(expected)) for question, _, expected in pairs]


def _normal(expected: str) -> str:
    words = expected.split()
    if words[0] in ("ask", "abstain"):
        return " ".join(words)
    items = [word for word in words[1:2] if not _is_setting(word)]
    rest = sorted(_sorted_values(word) for word in words[1 + len(items) :])
    return " ".join([words[0], *items, *rest])


def _is_setting(word: str) -> bool:
    return (
        "=" in word
        or word in ("not", "alone")
        or word.split(":")[0] in ("aspect", "value", "verdicts", "clause", "as-of")
    )


def _sorted_values(word: str) -> str:
    name, equals, values = word.partition("=")
    return f"{name}={','.join(sorted(values.split(',')))}" if equals else word


def write_reading(reading: Reading) -> str:
    """A reading in the notation of the question files."""
    if reading.abstain is not None:
        return f"abstain {', '.join(reading.abstain.words) or '-'}"
    if reading.ask is not None:
        return f"ask {reading.ask.fact} {' ; '.join(value for value, _ in reading.ask.choices)}".strip()
    query = reading.query
    assert query is not None
    words = [query.kind]
    if query.items:
        words.append(",".join(query.items))
    if query.aspect != "wear":
        words.append(f"aspect:{query.aspect}")
    if query.polarity == "not":
        words.append("not")
    if query.case.alone:
        words.append("alone")
    words += [f"{fact}={_values(values)}" for fact, values in query.case.facts]
    if query.value is not None:
        words.append(f"value:{_values(query.value)}")
    if query.modalities:
        words.append(f"verdicts:{','.join(query.modalities)}")
    if query.clause:
        words.append(f"clause:{query.clause}")
    if query.case.as_of != TODAY:
        words.append(f"as-of:{query.case.as_of}")
    if query.other is not None:
        known = dict(query.case.facts)
        words += [f"other:{fact}={_values(v)}" for fact, v in query.other.facts if known.get(fact) != v]
        words += ["other:alone"] if query.other.alone != query.case.alone else []
        words += [f"other:as-of={query.other.as_of}"] if query.other.as_of != query.case.as_of else []
    return _normal(" ".join(words))


def _values(values: ValueSet) -> str:
    if isinstance(values, Choices):
        return ("not " if values.complement else "") + ",".join(sorted(values.members))
    assert isinstance(values, Ranges)
    return ",".join(_interval(interval) for interval in values.intervals)


def _interval(interval: Interval) -> str:
    low = "" if interval.low is None else f"{_number(interval.low)}{'<' if interval.low_open else ''}"
    high = "" if interval.high is None else f"{'<' if interval.high_open else ''}{_number(interval.high)}"
    return f"{low}..{high}"


def _number(number: Fraction) -> str:
    return str(number.numerator) if number.denominator == 1 else str(float(number))


def write_facts(facts: tuple[tuple[str, ValueSet], ...]) -> str:
    """Facts in the notation of the question files, in the order of their names."""
    return " ".join(sorted(f"{fact}={_values(values)}" for fact, values in facts))
