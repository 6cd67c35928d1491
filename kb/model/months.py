"""The months of the calendar as values of a fact."""

from __future__ import annotations

import datetime
import re

from kb.model.lookup import Lookup
from kb.model.records import Fact, FactValue
from kb.model.values import Choices

MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
    "november", "december",
)  # fmt: skip

_SHORT = {name[:3]: number for number, name in enumerate(MONTHS, 1)} | {"sept": 9}


def month_number(word: str) -> int:
    """1 to 12 for a month in small letters, whole or by its first letters; 0 for any other word."""
    return MONTHS.index(word) + 1 if word in MONTHS else _SHORT.get(word, 0)


def days_of_month(year: int, month: int) -> tuple[datetime.date, datetime.date]:
    """The first and the last day of a month."""
    following = datetime.date(year + month // 12, month % 12 + 1, 1)
    return datetime.date(year, month, 1), following - datetime.timedelta(days=1)


def months_of(fact: Fact) -> tuple[str, ...]:
    """The values that are the twelve months, January first; none where the fact is not the month."""
    if len(fact.values) < len(MONTHS) or fact.kind == "yes_no":
        return ()
    named = {value.label.casefold(): value.id for value in fact.values}
    return tuple(named[month] for month in MONTHS) if all(month in named for month in MONTHS) else ()


def month_of(day: datetime.date, lookup: Lookup) -> tuple[str, Choices] | None:
    """The fact that is the month, where the books have one with all twelve, and the month of a day.

    Of parts of a month ("from 1 to 11 November") it is the one that has the day, or that may have it.
    """
    for fact in lookup.base.facts:
        months = months_of(fact)
        if months:
            month = months[day.month - 1]
            parts = {value.id: _days_in(value) for value in fact.values if value.within == month}
            within = {part for part, days in parts.items() if days is not None and day.day in days}
            unsaid = {part for part, days in parts.items() if days is None}
            return fact.id, Choices(frozenset(within or {month, *unsaid}))
    return None


_FROM_TO = re.compile(r"(?<!\d)(\d{1,2})(?!\d)\D{1,20}(?<!\d)(\d{1,2})(?!\d)")


def _days_in(part: FactValue) -> range | None:
    """The days of the month that a label names; None where it names none."""
    found = _FROM_TO.search(part.label)
    return range(int(found.group(1)), int(found.group(2)) + 1) if found is not None else None
