"""Sets of values read back from the JSON of a saved answer."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from kb.model.values import Choices, Interval, ValueSet, ranges

_LONGEST = 200


def values_from_json(data: Any) -> ValueSet:
    """Names, `{"not": [...]}`, or intervals with exact bounds as text; `ValueError` and its like if none."""
    if isinstance(data, dict):
        return Choices(_names(data["not"]), complement=True)
    if data and isinstance(data[0], dict):
        return ranges([_interval(**one) for one in data])
    return Choices(_names(data))


def facts_from_json(data: Any) -> dict[str, ValueSet]:
    return {fact: values_from_json(values) for fact, values in data.items()}


def _names(data: Any) -> frozenset[str]:
    if not isinstance(data, list) or not all(isinstance(name, str) for name in data):
        raise ValueError("a list of names is wanted")
    return frozenset(data)


def _number(text: str) -> Fraction:
    """An exact number as the JSON form has it: digits, and a fraction bar if need be."""
    if len(text) > _LONGEST or set(text) - set("-0123456789/"):
        raise ValueError("an exact number is wanted")
    return Fraction(text)


def _interval(**bounds: str) -> Interval:
    """`from` and `to` are part of the interval, `above` and `below` are not."""
    if set(bounds) - {"from", "above", "to", "below"} or len({"from", "above"} & set(bounds)) > 1:
        raise ValueError("an interval has from or above, and to or below")
    low = bounds.get("from", bounds.get("above"))
    high = bounds.get("to", bounds.get("below"))
    return Interval(
        None if low is None else _number(low),
        None if high is None else _number(high),
        "above" in bounds,
        "below" in bounds,
    )
