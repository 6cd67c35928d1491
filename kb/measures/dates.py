"""Dates as exact ranges of days. Day D of the proleptic Gregorian calendar is the interval [D, D + 1).

Half-open days keep sets of days closed under complement: "before 1 April" and "on or after
1 April" leave no hole between them.
"""

from __future__ import annotations

import datetime
import re
from fractions import Fraction

import msgspec

from kb.measures.parsing import MeasureError
from kb.model.values import Interval, Ranges, ranges
from kb.text import Pattern

_MONTHS = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
]
_MONTH = {month: number for number, month in enumerate(_MONTHS, 1)}
_MONTH |= {month[:3]: number for month, number in list(_MONTH.items())} | {"sept": 9}
_NAME = "|".join(sorted(_MONTH, key=len, reverse=True))
_DATE = Pattern(
    r"(?<![\w-])(?:(?P<y>\d{4})-(?P<m>\d{2})-(?P<d>\d{2})"
    rf"|(?P<d2>\d{{1,2}})(?:st|nd|rd|th)?\s+(?:of\s+)?(?P<n2>{_NAME})\.?,?\s+(?P<y2>\d{{4}})"
    rf"|(?P<n3>{_NAME})\.?\s+(?P<d3>\d{{1,2}})(?:st|nd|rd|th)?,?\s+(?P<y3>\d{{4}}))(?![\w-])",
    re.IGNORECASE,
)
_RELATION = Pattern(
    r"(?P<not_before>on or after|not before|since)|(?P<not_after>on or before|not after|up to and including)"
    r"|(?P<before>before|earlier than)|(?P<after>after|later than)|(?P<on>on)",
    re.IGNORECASE,
)
_SPAN = Pattern(r"(?:(?:from|between)\s+)", re.IGNORECASE)
_LINK = Pattern(r"\s*(?:to|and|until|through|[-–/])\s*", re.IGNORECASE)
_REMEDY = (
    "Write for example 2019-04-01, before 2019-04-01, on or after 2019-04-01, from 2019-01-01 to 2019-06-30."
)


class DateFound(msgspec.Struct, frozen=True):
    """A date in a longer text: characters `start` to `end`."""

    start: int
    end: int
    date: datetime.date


def day_number(date: datetime.date) -> Fraction:
    """Ordinal day of the proleptic Gregorian calendar (1 is 0001-01-01), as `date.toordinal`."""
    return Fraction(date.toordinal())


def day_values(first: datetime.date | None, last: datetime.date | None) -> Ranges:
    """All days from `first` to `last`, both included; None is without end."""
    low = None if first is None else day_number(first)
    high = None if last is None else day_number(last) + 1
    return ranges([Interval(low, high, False, high is not None)])


def _date(match: re.Match[str]) -> datetime.date | None:
    if match["y"]:
        year, month, day = int(match["y"]), int(match["m"]), int(match["d"])
    elif match["y2"]:
        year, month, day = int(match["y2"]), _MONTH[match["n2"].lower()], int(match["d2"])
    else:
        year, month, day = int(match["y3"]), _MONTH[match["n3"].lower()], int(match["d3"])
    try:
        return datetime.date(year, month, day)
    except ValueError:
        return None


def parse_date(text: str) -> datetime.date:
    """A calendar date written YYYY-MM-DD (ISO 8601-1, 5.2.2). Raises `MeasureError`."""
    match = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", text.strip(), re.ASCII)
    if match:
        try:
            return datetime.date(*(int(part) for part in match.groups()))
        except ValueError:
            raise MeasureError(f'There is no day "{text}" in the calendar.', "Correct the date.") from None
    raise MeasureError(f'"{text}" is no date.', "Write year-month-day, for example 2026-03-01.")


def find_date(text: str, start: int = 0) -> DateFound | None:
    """The first date in a longer text: 2026-03-01, 1 March 2026, March 1, 2026."""
    for match in _DATE.finditer(text, start):
        if date := _date(match):
            return DateFound(match.start(), match.end(), date)
    return None


def _expect_date(text: str, start: int, whole: str) -> DateFound:
    match = _DATE.match(text, start)
    if match is None:
        raise MeasureError(f'"{whole}" is no date or range of dates.', _REMEDY)
    date = _date(match)
    if date is None:
        raise MeasureError(f'There is no day "{match[0]}" in the calendar.', "Correct the date.")
    return DateFound(start, match.end(), date)


def _related(relation: str, date: datetime.date) -> Ranges:
    day = datetime.timedelta(days=1)
    if relation == "before":
        return ranges([Interval(None, day_number(date), False, True)])
    if relation == "not_after":
        return day_values(None, date)
    if relation == "after":
        return ranges([Interval(day_number(date) + day.days, None)])
    if relation == "not_before":
        return day_values(date, None)
    return day_values(date, date)


def parse_dates(text: str) -> Ranges:
    """Days written as a date, "before D", "on or after D", "from D to D". Raises `MeasureError`."""
    written = " ".join(text.split())
    relation = _RELATION.match(written)
    if relation:
        start = relation.end() + (1 if written[relation.end() : relation.end() + 1] == " " else 0)
        found = _expect_date(written, start, written)
        result, end = _related(relation.lastgroup or "on", found.date), found.end
    else:
        span = _SPAN.match(written)
        first = _expect_date(written, span.end() if span else 0, written)
        link = _LINK.match(written, first.end)
        last = _expect_date(written, link.end(), written) if link else first
        if last.date < first.date:
            raise MeasureError("The range of dates runs backwards.", "Write the earlier date first.")
        result, end = day_values(first.date, last.date), last.end
    if end < len(written):
        raise MeasureError(f'"{written[end:].strip()}" in "{written}" is not understood.', _REMEDY)
    return result


def format_days(values: Ranges) -> str:
    """Days in the form that `parse_dates` reads, joined by "or"; "any date" without bounds."""
    return " or ".join(_format_interval(interval) for interval in values.intervals) or "no date"


def _format_interval(interval: Interval) -> str:
    first = None if interval.low is None else int(interval.low) + (1 if interval.low_open else 0)
    last = None if interval.high is None else int(interval.high) - (1 if interval.high_open else 0)
    if first is None and last is None:
        return "any date"
    if first is None and last is not None:
        if interval.high_open:
            return f"before {datetime.date.fromordinal(last + 1)}"
        return f"on or before {datetime.date.fromordinal(last)}"
    assert first is not None
    if last is None:
        return f"on or after {datetime.date.fromordinal(first)}"
    if first == last:
        return f"on {datetime.date.fromordinal(first)}"
    return f"from {datetime.date.fromordinal(first)} to {datetime.date.fromordinal(last)}"
