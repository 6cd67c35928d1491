"""Measures as text, in the unit they were written in: fractions for inches, decimals otherwise."""

from __future__ import annotations

from fractions import Fraction

from kb.measures.numbers import format_decimal, format_number
from kb.measures.units import UNITS, from_base
from kb.model.records import Measure
from kb.model.values import Interval

_FRACTIONAL = {"[in_i]", "[ft_i]", "[yd_i]", "1"}


def _number(value: Fraction, unit: str) -> str:
    number = from_base(value, unit)
    return format_number(number) if unit in _FRACTIONAL else format_decimal(number)


def format_quantity(value: Fraction | int, unit: str) -> str:
    """A number of the base unit written in a UCUM unit: 31.75 mm in [in_i] -> "1 1/4 in"."""
    symbol = UNITS[unit].symbol
    number = _number(Fraction(value), unit)
    if symbol in ("%", "°"):
        return f"{number}{symbol}"
    return f"{number} {symbol}" if symbol else number


def format_interval(interval: Interval, unit: str) -> str:
    """An interval as `parse_measure` reads it: "1/4 to 1/2 in", "at most 2 cm"; "any" without bounds."""
    low, high = interval.low, interval.high
    if low is None and high is None:
        return "any"
    if low is None and high is not None:
        return f"{'less than' if interval.high_open else 'at most'} {format_quantity(high, unit)}"
    assert low is not None
    if high is None:
        return f"{'more than' if interval.low_open else 'at least'} {format_quantity(low, unit)}"
    if low == high:
        return format_quantity(low, unit)
    if interval.low_open or interval.high_open:
        first = f"{'more than' if interval.low_open else 'at least'} {format_quantity(low, unit)}"
        return f"{first} and {'less than' if interval.high_open else 'at most'} {format_quantity(high, unit)}"
    return f"{_number(low, unit)} to {format_quantity(high, unit)}"


def format_measure(measure: Measure) -> str:
    """A measure in its own unit, its twin unit in brackets: "about 30 mm (1 3/16 in)"."""
    text = ("about " if measure.about else "") + format_interval(measure.interval, measure.unit)
    return f"{text} ({format_measure(measure.also)})" if measure.also else text
