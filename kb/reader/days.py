"""Days said by their distance or in part: "last year", "in 2020", "next March", "the first of May"."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.values import Choices
from kb.reader.forms import word_row, word_set
from kb.reader.pieces import Understood
from kb.text import Pattern

_MONTHS = word_row("january february march april may june july august september october november december")
_ORDINALS = word_row("""
    first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth
    fifteenth sixteenth seventeenth eighteenth nineteenth twentieth twenty-first twenty-second twenty-third
    twenty-fourth twenty-fifth twenty-sixth twenty-seventh twenty-eighth twenty-ninth thirtieth thirty-first
""")
ORDINALS = frozenset(word for ordinal in _ORDINALS for word in ordinal.split("-"))
_DAY = rf"(?:(?P<number>\d{{1,2}})(?:st|nd|rd|th)?|(?P<word>{'|'.join(reversed(_ORDINALS))}))"
_MONTH = rf"(?P<month>{'|'.join(_MONTHS)})"
DAY_OF_MONTH = Pattern(
    rf"(?<![\w-])(?:the\s+)?{_DAY}\s+(?:of\s+)?{_MONTH}(?:,?\s+(?P<year>\d{{4}}))?(?!\w|-|\s*\d)",
    re.IGNORECASE,
)
_LEADING = word_set("in on during of the for from back as at since a about")
_AGO = {"year": 365, "month": 30, "week": 7}


class Period(msgspec.Struct, frozen=True):
    """Characters `start` to `end` say these days; `first` and `last` are the same where it is one day.

    With `either` the two days are alternatives and nothing between them is meant.
    """

    start: int
    end: int
    first: datetime.date
    last: datetime.date
    either: bool = False


def ordinal_days(text: str) -> Iterator[tuple[int, int, datetime.date | None]]:
    """ "The first of March 2026" as a date; None for one without a year."""
    for match in DAY_OF_MONTH.finditer(text):
        day = _day_in(match, int(match["year"] or 2000))
        if day is not None:
            yield match.start(), match.end(), day if match["year"] else None


def _day_in(match: re.Match[str], year: int) -> datetime.date | None:
    day = int(match["number"]) if match["number"] else _ORDINALS.index(match["word"].lower()) + 1
    try:
        return datetime.date(year, _MONTHS.index(match["month"].lower()) + 1, day)
    except ValueError:
        return None


def said_period(found: Understood, left: tuple[int, ...], today: datetime.date) -> Period | None:
    """The days that all the words left over, with those around them, say."""
    while len(left) > 1 and found.tokens[found.pieces[left[0]].first].low in _LEADING:
        left = left[1:]
    first = found.pieces[left[0]].first
    last = found.pieces[left[-1]].last
    if found.pieces[left[0]].tag == "day" and len(left) == 1:
        return _without_year(found, left[0], today)
    for start in range(max(first - 1, 0), first + 1):
        for end in range(last, min(last + 2, len(found.tokens)) + 1):
            lows = [token.low for token in found.tokens[start:end]]
            days = _period(lows, today) if end - start <= 3 else None
            if days is not None:
                while start and found.tokens[start - 1].low in _LEADING:
                    start -= 1
                return Period(found.tokens[start].start, found.tokens[end - 1].end, *days)
    return None


def _without_year(found: Understood, index: int, today: datetime.date) -> Period | None:
    piece = found.pieces[index]
    start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
    match = DAY_OF_MONTH.match(found.text[start:end])
    days = [day for more in (0, 1) if match and (day := _day_in(match, today.year + more))]
    before = piece.first - 1
    if before >= 0 and found.tokens[before].low in _LEADING:
        start = found.tokens[before].start
    return Period(start, end, days[0], days[1], either=True) if len(days) == 2 else None


def _period(lows: list[str], today: datetime.date) -> tuple[datetime.date, datetime.date] | None:
    """The first and the last day of "yesterday", "last year", "March 2025", "a week ago"."""
    if lows in (["yesterday"], ["tomorrow"]):
        day = today + datetime.timedelta(days=1 if lows[0] == "tomorrow" else -1)
        return day, day
    if len(lows) == 2 and lows[0] in _STEPS:
        if lows[1] in _AGO:
            return _unit(lows[1], _STEPS[lows[0]], today)
        return _near_month(lows[1], _STEPS[lows[0]], today)
    if len(lows) == 3 and lows[0] in ("a", "one") and lows[1] in _AGO and lows[2] == "ago":
        day = today - datetime.timedelta(days=_AGO[lows[1]])
        return day, day
    if lows[-1].isdecimal() and len(lows[-1]) == 4 and lows[-1][:2] in ("19", "20"):
        year = int(lows[-1])
        if len(lows) == 1:
            return datetime.date(year, 1, 1), datetime.date(year, 12, 31)
        if len(lows) == 2 and lows[0] in _MONTHS:
            return _month(year, _MONTHS.index(lows[0]) + 1)
    return None


_STEPS = {"last": -1, "previous": -1, "next": 1, "coming": 1, "this": 0}


def _unit(unit: str, step: int, today: datetime.date) -> tuple[datetime.date, datetime.date]:
    if unit == "year":
        return datetime.date(today.year + step, 1, 1), datetime.date(today.year + step, 12, 31)
    if unit == "month":
        months = today.year * 12 + today.month - 1 + step
        return _month(months // 12, months % 12 + 1)
    monday = today + datetime.timedelta(days=7 * step - today.weekday())
    return monday, monday + datetime.timedelta(days=6)


def _month(year: int, month: int) -> tuple[datetime.date, datetime.date]:
    following = datetime.date(year + month // 12, month % 12 + 1, 1)
    return datetime.date(year, month, 1), following - datetime.timedelta(days=1)


def _near_month(name: str, step: int, today: datetime.date) -> tuple[datetime.date, datetime.date] | None:
    if name not in _MONTHS:
        return None
    month = _MONTHS.index(name) + 1
    year = today.year
    if step < 0 and month >= today.month:
        year -= 1
    if step > 0 and month <= today.month:
        year += 1
    return _month(year, month)


def in_days(found: Understood, period: Period, lookup: Lookup) -> str | Ask:
    """The text with one day in place of the period; asks which where the books change within it."""
    days = (period.first, period.last)
    texts = tuple(_with_day(found.text, period, day) for day in days)
    if _same_throughout(period.first, period.last, lookup):
        return texts[0]
    said = tuple(f"{day.day} {_MONTHS[day.month - 1].capitalize()} {day.year}" for day in days)
    year = period.first.year
    whole = f" of {year}" if (period.first.month, period.last.month) == (1, 12) and not period.either else ""
    return Ask(fact="reading", prompt=f"On which day{whole}?", choices=tuple(zip(texts, said, strict=True)))


def _with_day(text: str, period: Period, day: datetime.date) -> str:
    said = f"on {day.day} {_MONTHS[day.month - 1].capitalize()} {day.year}"
    return f"{text[: period.start]}{said}{text[period.end :]}"


def _same_throughout(first: datetime.date, last: datetime.date, lookup: Lookup) -> bool:
    """Whether nothing in the books begins or ends to hold after the first day, up to the last."""
    base = lookup.base
    ends = {day for rule in base.rules for day in (rule.valid_from, rule.valid_until)}
    ends |= {day for clause in base.clauses for day in (clause.valid_from, clause.valid_until)}
    ends |= {day for item in base.items for day in (item.valid_from, item.valid_until)}
    return not any(day is not None and first < day <= last for day in ends)


def month_of(day: datetime.date, lookup: Lookup) -> tuple[str, Choices] | None:
    """The fact that is the month, where the books have one with all twelve, and the month of a day."""
    for fact in lookup.base.facts:
        if len(fact.values) < len(_MONTHS) or fact.kind == "yes_no":
            continue
        named = {value.label.casefold(): value.id for value in fact.values}
        if all(month in named for month in _MONTHS):
            return fact.id, Choices(frozenset({named[_MONTHS[day.month - 1]]}))
    return None


def without_month(query: Query, found: Understood, period: Period, lookup: Lookup) -> Query:
    """The query of a longer period's first day, without its month: the period has others too."""
    month = month_of(period.first, lookup)
    short = (period.first.year, period.first.month) == (period.last.year, period.last.month)
    if month is None or short or any(piece.fact == month[0] for piece in found.pieces):
        return query
    facts = tuple(fact for fact in query.case.facts if fact != month)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
