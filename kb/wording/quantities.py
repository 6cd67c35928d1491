"""Numbers, measures, datums and dates in words."""

from __future__ import annotations

import datetime
from fractions import Fraction

from kb.measures import UNITS, format_interval, format_quantity
from kb.model.records import Datum, Measure
from kb.model.values import Interval, Ranges
from kb.wording.english import definite, listing, phrase

_TWIN = {"[in_i]": "mm", "[ft_i]": "mm", "[yd_i]": "mm"}


def say_quantity(number: Fraction | int, unit: str) -> str:
    """A number of the base unit in a UCUM unit, "31.75 mm"; a unit that is not known is written after it."""
    return format_quantity(number, unit) if unit in UNITS else phrase(str(Fraction(number)), unit)


def _say_told(number: Fraction, unit: str) -> str:
    """A quantity that was told, in the unit in which it is round: "40 mph (64.4 km/h)"."""
    text = say_quantity(number, unit)
    if unit not in UNITS or _is_round(text, _FEW_PLACES):
        return text
    own = UNITS[unit]
    alike = (code for code, one in UNITS.items() if one.dimension == own.dimension and code != unit)
    said = next((twin for code in alike if _is_round(twin := say_quantity(number, code), 1)), None)
    rounded = Fraction(round((number - own.offset) / own.factor * 10), 10) * own.factor + own.offset
    return text if said is None else f"{said} ({say_quantity(rounded, unit)})"


def _is_round(text: str, places: int) -> bool:
    number = text.rsplit(" ", 1)[0]
    return "/" not in number and len(number.partition(".")[2]) <= places


_FEW_PLACES = 3


def say_bounds(interval: Interval, unit: str) -> str:
    """Bounds of a fact's quantity: "above 30 °C", "at least 2", "from 10 to 20 °C"."""
    low, high = interval.low, interval.high
    if low is not None and low == high:
        return _say_told(low, unit)
    if low is not None and high is not None:
        if not (interval.low_open or interval.high_open):
            return f"from {say_quantity(low, unit)} to {say_quantity(high, unit)}"
        first = f"{'above' if interval.low_open else 'at least'} {say_quantity(low, unit)}"
        return f"{first} and {'below' if interval.high_open else 'at most'} {say_quantity(high, unit)}"
    if low is not None:
        return f"{'above' if interval.low_open else 'at least'} {say_quantity(low, unit)}"
    if high is not None:
        return f"{'below' if interval.high_open else 'at most'} {say_quantity(high, unit)}"
    return "any"


def _day(number: int) -> str:
    date = datetime.date.fromordinal(number)
    return f"{date.day} {date:%B} {date.year}"


def say_date(date: datetime.date) -> str:
    """ "1 April 2019"."""
    return _day(date.toordinal())


def say_days(interval: Interval) -> str:
    """A stretch of days, where day D is the interval [D, D + 1): "before 1 April 2019", "on 1 April 2019"."""
    first = None if interval.low is None else -int(-interval.low // 1)
    if first is not None and interval.low == first and interval.low_open:
        first += 1
    end = None if interval.high is None else -int(-interval.high // 1)
    if end is not None and end == interval.high and not interval.high_open:
        end += 1
    if first is None:
        return "on any date" if end is None else f"before {_day(end)}"
    if end is None:
        return f"on or after {_day(first)}"
    if end <= first:
        return "on no date"
    return f"on {_day(first)}" if end == first + 1 else f"from {_day(first)} to {_day(end - 1)}"


def count_bounds(interval: Interval) -> tuple[int | None, int | None]:
    """The least and the greatest whole number within an interval; None where it has no bound."""
    low = None if interval.low is None else -int(-interval.low // 1)
    if low is not None and low == interval.low and interval.low_open:
        low += 1
    high = None if interval.high is None else int(interval.high // 1)
    if high is not None and high == interval.high and interval.high_open:
        high -= 1
    return low, high


def say_count(interval: Interval) -> str:
    """Whole numbers within an interval: "at most 2", "exactly 3", "2 to 4", "none"."""
    low, high = count_bounds(interval)
    if low is None or low <= 0:
        if high is None:
            return "any number"
        return "none" if high <= 0 else f"at most {high}"
    if high is None:
        return f"at least {low}"
    if high < low:
        return "no whole number"
    return f"exactly {low}" if low == high else f"{low} to {high}"


def say_interval(interval: Interval, unit: str) -> str:
    """An interval of a measured aspect in a UCUM unit, as `kb.measures` reads it: "1/4 to 1/2 in"."""
    if unit == "1":
        return say_count(interval)
    return format_interval(interval, unit) if unit in UNITS else say_bounds(interval, unit)


def say_intervals(values: Ranges, unit: str) -> str:
    """All intervals of a set, joined by "or"."""
    return listing([say_interval(interval, unit) for interval in values.intervals], "or") or "none"


def _say_one(measure: Measure) -> str:
    return ("about " if measure.about else "") + say_interval(measure.interval, measure.unit)


def say_size(measure: Measure) -> str:
    """A measure with its second unit in brackets; inches get exact millimetres where none is given."""
    if measure.also is not None:
        return f"{_say_one(measure)} ({_say_one(measure.also)})"
    return ("about " if measure.about else "") + say_length(measure.interval, measure.unit)


def say_length(interval: Interval, unit: str) -> str:
    """An interval in its unit, inches with exact millimetres: "1/4 to 1/2 in (6.35 to 12.7 mm)"."""
    text = say_interval(interval, unit)
    twin = _TWIN.get(unit)
    if twin is None or text == "any":
        return text
    other = say_interval(interval, twin)
    for opening in ("at most ", "at least ", "less than ", "more than "):
        other = other.removeprefix(opening)
    return text if "(" in other else f"{text} ({other})"


def say_datum(datum: Datum) -> str:
    """ "from the lower edge of the device to the upper edge of the visor, arms hanging"."""
    start = f"from {definite(datum.measured_from)}" if datum.measured_from else ""
    end = f"to {definite(datum.measured_to)}" if datum.measured_to else ""
    span = phrase(start, end)
    return ", ".join(part for part in (span, datum.posture or "") if part)


def say_measure(measure: Measure) -> str:
    """ "about 1 1/4 in (31.75 mm) from the lower edge of the device to the upper edge of the visor"."""
    datum = say_datum(measure.datum) if measure.datum else ""
    mark = "" if not datum or datum.startswith(("from ", "to ")) else ","
    return phrase(f"{say_size(measure)}{mark}", datum)


def say_tolerance(measure: Measure) -> str:
    """How far "about" may be off, in the unit of the measure; empty if none is given."""
    if measure.tolerance is None:
        return ""
    zero = UNITS[measure.unit].offset if measure.unit in UNITS else Fraction(0)
    return f"give or take {say_quantity(measure.tolerance + zero, measure.unit)}"
