"""The months of the calendar as values of a fact."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

from kb.model.lookup import Lookup
from kb.model.records import Fact, FactValue
from kb.model.values import NO, YES, Choices, ValueSet
from kb.text import Pattern

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


_FROM_TO = Pattern(r"(?<!\d)(\d{1,2})(?!\d)\D{1,20}(?<!\d)(\d{1,2})(?!\d)")


def _days_in(part: FactValue) -> range | None:
    """The days of the month that a label names; None where it names none."""
    found = _FROM_TO.search(part.label)
    return range(int(found.group(1)), int(found.group(2)) + 1) if found is not None else None


def facts_of_day(day: datetime.date, lookup: Lookup) -> tuple[tuple[str, Choices], ...]:
    """What a day settles: the month, and each circumstance that is called by days of the year, yes or no."""
    month = month_of(day, lookup)
    told = ((fact, YES if _within(day, *ends) else NO) for fact, *ends in _stretches(lookup))
    return (*((month,) if month is not None else ()), *told)


def with_settled(
    facts: Mapping[str, ValueSet], day: datetime.date | None, lookup: Lookup
) -> dict[str, ValueSet]:
    """Stated facts with what a stated day and a stated month settle besides."""
    found: dict[str, ValueSet] = dict(facts_of_day(day, lookup)) if day is not None else {}
    for fact, values in facts.items():
        found |= _facts_of_month(lookup.facts[fact], values, lookup)
    return {**found, **facts}


def beyond_month(facts: Sequence[tuple[str, ValueSet]], lookup: Lookup) -> list[tuple[str, ValueSet]]:
    """The facts without what a month among them settles: "in July" says that it is not early November."""
    months = [_facts_of_month(lookup.facts[fact], values, lookup) for fact, values in facts]
    settled = {one for month in months for one in month.items()}
    return [one for one in facts if one not in settled]


def _facts_of_month(fact: Fact, values: ValueSet, lookup: Lookup) -> dict[str, ValueSet]:
    """The circumstances called by days of the year that are so, or not so, on all days of a month."""
    months = months_of(fact)
    named = [months.index(one) + 1 for one in months if values == Choices(frozenset({one}))]
    if not named:
        return {}
    first, last = days_of_month(2000, named[0])
    days = [first.replace(day=day) for day in range(1, last.day + 1)]
    held = {name: {_within(day, *ends) for day in days} for name, *ends in _stretches(lookup)}
    return {name: YES if so == {True} else NO for name, so in held.items() if len(so) == 1}


def _within(day: datetime.date, first: tuple[int, int], last: tuple[int, int]) -> bool:
    place = (day.month, day.day)
    return first <= place <= last if first <= last else not last < place < first


_DAY = rf"(\d{{1,2}})(?:st|nd|rd|th)?\s+(?:of\s+)?({'|'.join(MONTHS)})"
_STRETCH = Pattern(rf"(?<!\w){_DAY}\s*(?:to|and|until|till|-|–)\s*{_DAY}(?!\s*\d|\w)", re.IGNORECASE)


@lru_cache(maxsize=8)
def _stretches(lookup: Lookup) -> tuple[tuple[str, tuple[int, int], tuple[int, int]], ...]:
    """The yes or no facts with a stretch of days in their label, each with month and day of its ends."""
    found = []
    for fact in lookup.base.facts:
        said = _STRETCH.search(fact.label) if fact.kind == "yes_no" else None
        if said is None or _DENIED.search(fact.label) is not None:
            continue
        day, month, until, last = said.groups()
        ends = ((month_number(month.lower()), int(day)), (month_number(last.lower()), int(until)))
        found.append((fact.id, *ends))
    return tuple(found)


_DENIED = Pattern(r"\b(not|outside|except|before|after)\b", re.IGNORECASE)
