"""Days said by their distance or in part: "last year", "in 2020", "next March", "the first of May"."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from functools import partial

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import MONTHS, days_of_month, month_number, month_of
from kb.model.questions import Ask, Query
from kb.reader.pieces.feasts import NAMING, STEPS, WEEKDAYS, feast, plain
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.spelled import DayOfMonth, days_of_months
from kb.reader.words.forms import NUMBER_WORDS, word_set

_LEADING = word_set("in on during of the for from back as at since a about come by over throughout around")
_ONWARD = word_set("on onward onwards forward forwards")
_PAST = word_set("was were did had been")
_PRESENT = word_set("may can must shall should will do does am is are 's 're 'm 'll need needs has have")
_AGO = {"year": 365, "month": 30, "week": 7, "day": 1}


_Days = tuple[datetime.date, datetime.date]


class Period(msgspec.Struct, frozen=True):
    """Characters `start` to `end` say these days; `first` and `last` are the same where it is one day.

    With `either` the two days are alternatives and nothing between them is meant. With `settled` the first
    day stands for all, whatever changes after it.
    """

    start: int
    end: int
    first: datetime.date
    last: datetime.date
    either: bool = False
    settled: bool = False


def said_period(found: Understood, left: tuple[int, ...], today: datetime.date) -> Period | None:
    """The days that some of the words left over, with those around them, say."""
    pieces = [found.pieces[index] for index in left if found.pieces[index].tag != "on date"]
    words = {place for piece in pieces for place in range(piece.first, piece.last)}
    for index in left:
        piece = found.pieces[index]
        if piece.tag == "day":
            return _without_year(found, index, today)
        lead = found.tokens[piece.first - 1].low if piece.first else ""
        if piece.tag == "on date" and piece.date is not None and lead in ("before", "after"):
            return _led(found, piece.first, piece.last, (piece.date, piece.date), today)
    lows = {token.low for token in found.tokens}
    over, now = not _PAST.isdisjoint(lows), not _PRESENT.isdisjoint(lows)
    naming = {place for place, token in enumerate(found.tokens) if names_days(token.low)}
    for size in range(_LONGEST, 0, -1) if naming else ():
        for start in range(len(found.tokens) - size + 1):
            end = start + size
            window = range(start, end)
            days = None
            if not words.isdisjoint(window) and not naming.isdisjoint(window):
                said = [token.low for token in found.tokens[start:end]]
                days = days_of(said, today, over and not now)
            if days is not None and not (over and now and _either_way(said, days, today)):
                return _led(found, start, end, days, today)
    return None


def _either_way(said: list[str], days: _Days, today: datetime.date) -> bool:
    """ "They said this spring": whether it may be the one gone by or the one to come."""
    return said[0] == "this" and said[-1] in _SEASONS and days != days_of(["last", *said[1:]], today)


def _led(found: Understood, start: int, end: int, days: _Days, today: datetime.date) -> Period:
    """The period with the words before it: "in 2021", "before March 2024", "after 2026"."""
    tokens = found.tokens
    lead = tokens[start - 1].low if start else ""
    first, last = days
    if lead in ("until", "till", "til", "through") and last >= today:
        start, first = start - 1, min(first, today)  # from now on
    elif lead in ("before", "after"):
        start -= 1
        one = datetime.timedelta(days=1)
        if lead == "after":
            first = last = last + one
        else:
            first, last = (today, first - one) if first > today else (first - one, first - one)
    else:
        if lead == "from" and end < len(tokens) and tokens[end].low in _ONWARD:
            end, last = end + 1, datetime.date.max  # "from June 2026 on"
        named = {n for p in found.pieces if p.tag == "fact" for n in range(p.first + 1, p.last)}
        while start and tokens[start - 1].low in _LEADING and start - 1 not in named:  # "the get-in tomorrow"
            start -= 1
    return Period(tokens[start].start, tokens[end - 1].end, first, last)


def _without_year(found: Understood, index: int, today: datetime.date) -> Period | None:
    piece = found.pieces[index]
    start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
    said = next((day for day in days_of_months(found.text) if day.start == start), None)
    if said is None:
        return None
    tail = [token.low for token in found.tokens[piece.last : piece.last + 2]]
    told = STEPS.get(tail[0]) if tail[1:] == ["year"] else None
    if told is not None:  # "on 10 February this year"
        day = said.within(today.year + told)
        led = piece.first and found.tokens[piece.first - 1].low in _LEADING
        start = found.tokens[piece.first - 1].start if led else start
        return Period(start, found.tokens[piece.last + 1].end, day, day) if day is not None else None
    days = [day for more in (0, 1) if (day := said.within(today.year + more))]
    before = [token.low for token in found.tokens[: piece.first]]
    if before and before[-1] in _LEADING:
        start = found.tokens[piece.first - 1].start
    if (one := _plainly_meant(found, said, before, today)) is not None:
        return Period(start, end, one, one)
    if len(days) < 2:
        return None
    near, far = sorted(days, key=lambda day: abs(day - today))  # the near one where it makes no difference
    return Period(start, end, near, far, either=True)


def _plainly_meant(
    found: Understood, said: DayOfMonth, before: list[str], today: datetime.date
) -> datetime.date | None:
    """The one day that is meant: the last one of "was it", this year's of "it is 5 May" or of one to come."""
    this, last = said.within(today.year), said.within(today.year - 1)
    if not _PAST.isdisjoint(token.low for token in found.tokens):
        return this if this is not None and this <= today else last
    now = before[-1:] in (["is"], ["'s"]) and before[-2:-1] in (["it"], ["today"], ["date"])
    now = now or before[-1:] == ["today"] or before[-2:] == ["today", ","]
    return this if this is not None and (now or this >= today) else None


def names_days(low: str) -> bool:
    """Whether a word is one without which no words say a day: a month, "week", "winter", "2024", "Easter"."""
    return (
        low in _NAMING
        or plain(low) in NAMING
        or (low.isdecimal() and len(low) == 4)
        or bool(month_number(low))
    )


def days_of(lows: list[str], today: datetime.date, past: bool = False) -> _Days | None:
    """The first and the last day of "yesterday", "last year", "March 2025", "two weeks ago".

    `past`: what is asked of is over, so that "on Friday" and "this spring" are the last ones.
    """
    lows = [MONTHS[month - 1] if (month := month_number(low)) else low for low in lows]
    if lows in (["yesterday"], ["tomorrow"]):
        day = today + datetime.timedelta(days=1 if lows[0] == "tomorrow" else -1)
        return day, day
    if len(lows) == 2 and lows[0] in ("in", "during") and lows[1] in MONTHS:  # the one to come
        month = MONTHS.index(lows[1]) + 1
        return days_of_month(today.year + (month < today.month), month)
    if (named := _feast(lows, today, past)) is not None:
        return named, named
    lows = lows[lows[0] == "the" and len(lows) > 1 :]
    for part, size in ((" ".join(lows[:2]), 2), (lows[0], 1)):
        after = lows[size + (lows[size : size + 1] in (["of"], ["-"])) :]
        if part in _PARTS and after:
            after = ["this", *after[1:]] if after[0] == "the" and after[1:] in _WHOLES else after
            rest = days_of(after, today, past)
            return _PARTS[part](*rest) if rest is not None and rest[0] < rest[1] else None
    return _relative(lows, today, past) or _of_calendar(lows)


def _feast(lows: list[str], today: datetime.date, past: bool) -> datetime.date | None:
    """A named day, or "two days before" one."""
    lows = lows[lows[0] == "the" and len(lows) > 1 :]
    away = next((n for n in (1, 2) if lows[n : n + 1] in (["before"], ["after"])), 0)
    if away and lows[away - 1].removesuffix("s") in ("day", "week"):
        count = NUMBER_WORDS.get(lows[0], 1 if lows[0] in ("a", "day", "week") else 0)
        day = feast(lows[away + 1 :], today, past) if count and lows[away + 1 :] else None
        days = count * _AGO[lows[away - 1].removesuffix("s")] * (1 if lows[away] == "after" else -1)
        return day + datetime.timedelta(days=days) if day is not None else None
    return feast(lows, today, past)


def _relative(lows: list[str], today: datetime.date, past: bool) -> _Days | None:
    """ "Last year", "next March", "this winter", "on Friday", "two weeks ago", "in three days"."""
    if len(lows) == 1 and lows[0] in WEEKDAYS:
        return _weekday(lows[0], -1 if past else 0, today)
    if len(lows) == 2 and lows[0] in STEPS:
        step = STEPS[lows[0]]
        step = -1 if past and not step and lows[1] in _SEASONS else step
        if lows[1] in _AGO and lows[1] != "day":
            return _unit(lows[1], step, today)
        if lows[1] in WEEKDAYS:
            return _weekday(lows[1], step, today)
        return _season(lows[1], step, today) or _near_month(lows[1], step, today)
    if len(lows) != 3:
        return None
    if lows[0] in MONTHS and lows[1] in STEPS and lows[2] == "year":
        return days_of_month(today.year + STEPS[lows[1]], MONTHS.index(lows[0]) + 1)
    count = NUMBER_WORDS.get(lows[0], 1 if lows[0] == "a" else int(lows[0]) if lows[0].isdecimal() else 0)
    unit = _AGO.get(lows[1].removesuffix("s"))
    if unit is not None and 0 < count < 100 and lows[2] in ("ago", "back", "time", "hence"):
        day = today + datetime.timedelta(days=unit * count * (-1 if lows[2] in ("ago", "back") else 1))
        return day, day
    return None


def _of_calendar(lows: list[str]) -> tuple[datetime.date, datetime.date] | None:
    """ "2021", "March 2025", "March of 2025", "summer 2024"."""
    if not (lows[-1].isdecimal() and len(lows[-1]) == 4 and lows[-1][:2] in ("19", "20")):
        return None
    year = int(lows[-1])
    before = [low for low in lows[:-1] if low not in ("of", "in", "the", ",")]
    if len(lows) == 1:
        return datetime.date(year, 1, 1), datetime.date(year, 12, 31)
    if len(before) == 1 and before[0] in MONTHS:
        return days_of_month(year, MONTHS.index(before[0]) + 1)
    if len(before) == 1 and before[0] in _SEASONS and before[0] != "winter":
        day = datetime.date(year, _SEASONS[before[0]], 15)
        return day, day
    return None


_LONGEST = 6
_WHOLES = (["year"], ["month"], ["week"])
_SEASONS = {"winter": 1, "spring": 4, "summer": 7, "autumn": 10, "fall": 10}
_NAMING = {
    *("yesterday", "tomorrow", *MONTHS, *WEEKDAYS, *_SEASONS, *_AGO),
    *(f"{unit}s" for unit in _AGO),
}


def _week_of(week: int, first: datetime.date, _: datetime.date) -> _Days:
    """The first to the fourth week of a month, from its first day on."""
    return first + datetime.timedelta(days=7 * week), first + datetime.timedelta(days=7 * week + 6)


_PARTS: dict[str, Callable[[datetime.date, datetime.date], _Days]] = {
    **dict.fromkeys(("early", "start", "beginning"), lambda first, _: (first, first)),
    **dict.fromkeys(("late", "end"), lambda _, last: (last, last)),
    **dict.fromkeys(("mid", "middle"), lambda first, last: (first + (last - first) // 2,) * 2),
    **dict.fromkeys(("whole", "all", "entire"), lambda first, last: (first, last)),
    "first half": lambda first, last: (first, first + (last - first) // 2),
    "second half": lambda first, last: (first + (last - first) // 2 + datetime.timedelta(days=1), last),
    "last week": lambda _, last: (last - datetime.timedelta(days=6), last),
    **{
        f"{name} week": partial(_week_of, week)
        for week, name in enumerate(("first", "second", "third", "fourth"))
    },
}


def _season(name: str, step: int, today: datetime.date) -> _Days | None:
    """The middle of a season; what is a winter is for the books to say.

    "This autumn" is this year's, also once it is over; of winters, which lie in two years, the nearer one.
    """
    if name not in _SEASONS:
        return None
    days = [datetime.date(today.year + more, _SEASONS[name], 15) for more in (-1, 0, 1, 2)]
    if step < 0:
        day = [day for day in days if day < today][-1]
    elif step == 0:
        day = days[1] if name != "winter" else min(days, key=lambda day: abs(day - today))
    else:
        day = next(day for day in days if day > today)
    return day, day


def _weekday(name: str, step: int, today: datetime.date) -> _Days:
    ahead = (WEEKDAYS.index(name) - today.weekday()) % 7
    day = today + datetime.timedelta(days=ahead - 7 if step < 0 else ahead or 7)
    return day, day


def _unit(unit: str, step: int, today: datetime.date) -> tuple[datetime.date, datetime.date]:
    if unit == "year":
        return datetime.date(today.year + step, 1, 1), datetime.date(today.year + step, 12, 31)
    if unit == "month":
        months = today.year * 12 + today.month - 1 + step
        return days_of_month(months // 12, months % 12 + 1)
    monday = today + datetime.timedelta(days=7 * step - today.weekday())
    return monday, monday + datetime.timedelta(days=6)


def _near_month(name: str, step: int, today: datetime.date) -> tuple[datetime.date, datetime.date] | None:
    if name not in MONTHS:
        return None
    month = MONTHS.index(name) + 1
    year = today.year
    if step < 0 and month >= today.month:
        year -= 1
    if step > 0 and month <= today.month:
        year += 1
    return days_of_month(year, month)


def on_day(found: Understood, period: Period, day: datetime.date) -> str:
    """The text with one day in place of the period."""
    before, after = found.text[: period.start].rstrip(), found.text[period.end :]
    return f"{before} on {say_day(day)}{after}".lstrip()


def say_day(day: datetime.date) -> str:
    return f"{day.day} {MONTHS[day.month - 1].capitalize()} {day.year}"


def days_that_differ(period: Period, query: Query, lookup: Lookup) -> tuple[datetime.date, ...]:
    """The first days of the stretches of a period that may be answered differently; one if there is none."""
    if period.settled:
        return (period.first,)
    first, last = sorted((period.first, period.last))
    changes = [day for day in changes_for(query, lookup) if first < day <= last]
    if period.either:
        return (first, last) if changes else (period.first,)
    return (period.first, *changes)


def ask_day(found: Understood, period: Period, days: Sequence[datetime.date]) -> Ask:
    """The question on which of the days it is meant."""
    year = period.first.year
    whole = f" of {year}" if (period.first.month, period.last.month) == (1, 12) and not period.either else ""
    changes = "" if period.either else f" The rules change on {' and on '.join(map(say_day, days[1:]))}."
    choices = tuple((on_day(found, period, day), say_day(day)) for day in days)
    return Ask(fact="reading", prompt=f"On which day{whole}?{changes}", choices=choices)


def changes_for(query: Query, lookup: Lookup) -> tuple[datetime.date, ...]:
    """The days on which rules that may bear on a question, or terms in them, begin or end to hold."""
    base = lookup.base
    related = {near for item in query.items for near in (*lookup.broader(item), *lookup.narrower(item))}
    aspects = set(lookup.aspects_within(query.aspect)) if query.kind not in _BROAD else set(lookup.aspects)
    rules = [
        rule
        for rule in base.rules
        if not query.items or (related.intersection(rule.scope.items) and rule.aspect in aspects)
    ]
    found = {day for rule in rules for day in (rule.valid_from, rule.valid_until)}
    found |= {day for item in query.items for day in _in_use(item, lookup)}
    if len(found - {None}) > 1:
        clauses = [lookup.clauses[definition.clause] for definition in base.definitions]
        found |= {day for clause in clauses for day in (clause.valid_from, clause.valid_until)}
    return tuple(sorted(day for day in found if day is not None))


_BROAD = frozenset({"how", "where", "how_many", "list", "source", "compare"})


def _in_use(item: str, lookup: Lookup) -> tuple[datetime.date | None, datetime.date | None]:
    return lookup.items[item].valid_from, lookup.items[item].valid_until


def without_month(query: Query, found: Understood, period: Period, lookup: Lookup) -> Query:
    """The query of a longer period's first day, without its month: the period has others too."""
    month = month_of(period.first, lookup)
    short = period.either or (period.first.year, period.first.month) == (period.last.year, period.last.month)
    if (
        month is None
        or (short and not period.settled)
        or any(piece.fact == month[0] and not _is_in(piece, period, found) for piece in found.pieces)
    ):
        return query
    facts = tuple(fact for fact in query.case.facts if fact != month)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))


def _is_in(piece: Piece, period: Period, found: Understood) -> bool:
    return period.start <= found.tokens[piece.first].start < period.end
