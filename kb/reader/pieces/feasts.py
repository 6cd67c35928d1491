"""Named days of the year, by their rules: "Boxing Day", "Easter Monday", "second Sunday in May".

The movable days and the saints' days are those of the tables and rules of the Book of Common Prayer of 1662;
secular ones (Boxing Day, Bonfire Night, Trafalgar and Armistice Day, the second Sunday of November for
Remembrance Sunday) are as commonly kept in the United Kingdom, from memory. What is kept on other days in
other countries, such as Mother's Day, is not known.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from kb.model.months import MONTHS, month_number
from kb.reader.words.forms import word_row, word_set

STEPS = {"last": -1, "previous": -1, "past": -1, "next": 1, "coming": 1, "this": 0}
WEEKDAYS = word_row("monday tuesday wednesday thursday friday saturday sunday")
_ONE = datetime.timedelta(days=1)
_FIXED = {
    "new year day": (1, 1), "epiphany": (1, 6), "candlemas": (2, 2), "valentine day": (2, 14),
    "st valentine day": (2, 14), "st david day": (3, 1), "st patrick day": (3, 17), "lady day": (3, 25),
    "st george day": (4, 23), "may day": (5, 1), "midsummer day": (6, 24), "lammas": (8, 1),
    "michaelmas": (9, 29), "trafalgar day": (10, 21), "halloween": (10, 31), "all saint day": (11, 1),
    "all soul day": (11, 2), "bonfire night": (11, 5), "guy fawkes night": (11, 5), "armistice day": (11, 11),
    "remembrance day": (11, 11), "martinmas": (11, 11), "st andrew day": (11, 30), "christmas eve": (12, 24),
    "christmas": (12, 25), "christmas day": (12, 25), "boxing day": (12, 26), "st stephen day": (12, 26),
    "new year eve": (12, 31), "hogmanay": (12, 31),
}  # fmt: skip
_FROM_EASTER = {
    "shrove tuesday": -47, "pancake day": -47, "ash wednesday": -46, "palm sunday": -7, "maundy thursday": -3,
    "good friday": -2, "easter": 0, "easter day": 0, "easter sunday": 0, "easter monday": 1,
    "ascension day": 39, "whitsun": 49, "whit sunday": 49, "pentecost": 49, "whit monday": 50,
    "trinity sunday": 56,
}  # fmt: skip
_OWNERS = word_set(
    "years saints souls davids patricks georges andrews stephens valentines midsummers fawkess"
)
NAMING = {
    word for name in (*_FIXED, *_FROM_EASTER, "remembrance", "advent") for word in name.split()
} - word_set("all new st good")
"""Words of which every named day has one, without the sign of whose day it is."""
_COUNTED = {"first": 0, "second": 1, "third": 2, "fourth": 3, "1st": 0, "2nd": 1, "3rd": 2, "4th": 3}


def feast(lows: Sequence[str], today: datetime.date, past: bool = False) -> datetime.date | None:
    """The named day, with its year or "last", "next" or "this (year)"; without, the next one.

    `past`: what is spoken of is over, so that it is the last one.
    """
    said, step = [plain(low) for low in lows], None
    if len(said) > 2 and said[-1] == "year" and said[-2] in STEPS:
        return _within(said[:-2], today.year + STEPS[said[-2]])
    if said[-1].isdecimal() and len(said[-1]) == 4:
        name = said[: -2 if said[-2:-1] in (["of"], ["in"], [","]) else -1]
        return _within(name, int(said[-1]))
    if len(said) > 1 and lows[0] in STEPS and said[-2] not in ("of", "in"):
        step, said = STEPS[lows[0]], said[1:]
    back = step == -1 or (past and not step)
    years = [today.year, today.year - 1] if back else [today.year, today.year + 1]
    days = [day for year in years if (day := _within(said, year)) is not None]
    return next((day for day in days if (day < today if back else day >= today)), None)


def plain(low: str) -> str:
    """A word without the sign of whose day it is: "st andrew's day", "new years eve"."""
    word = low.removesuffix("'s").removesuffix("'")
    return word[:-1] if word in _OWNERS else word


def _within(words: Sequence[str], year: int) -> datetime.date | None:
    """The day of that name in a year."""
    name = " ".join(words)
    if name in _FIXED:
        return datetime.date(year, *_FIXED[name])
    if name in _FROM_EASTER:
        return easter(year) + _FROM_EASTER[name] * _ONE
    if name == "remembrance sunday":
        return _weekday_of(year, 11, 6, 1)
    if name == "advent sunday":
        nearest = datetime.date(year, 11, 27)  # the Sunday nearest to St Andrew's Day
        return nearest + (6 - nearest.weekday()) % 7 * _ONE
    if len(words) in (3, 4) and words[-2] in ("of", "in") and (month := month_number(words[-1])):
        if words[0] in _COUNTED and len(words) == 4 and words[1] in WEEKDAYS:
            return _weekday_of(year, month, WEEKDAYS.index(words[1]), _COUNTED[words[0]])
        if words[0] == "last" and len(words) == 4 and words[1] in WEEKDAYS:
            after = datetime.date(year + month // len(MONTHS), month % len(MONTHS) + 1, 1)
            return after - (1 + (after.weekday() - 1 - WEEKDAYS.index(words[1])) % 7) * _ONE
    return None


def _weekday_of(year: int, month: int, weekday: int, place: int) -> datetime.date:
    first = datetime.date(year, month, 1)
    return first + ((weekday - first.weekday()) % 7 + 7 * place) * _ONE


def easter(year: int) -> datetime.date:
    """Easter Sunday, by the rule of the Gregorian calendar (the anonymous algorithm of 1876)."""
    century, of_century = divmod(year, 100)
    golden = year % 19
    moon = (19 * golden + century - century // 4 - (century - (century + 8) // 25 + 1) // 3 + 15) % 30
    week = (32 + 2 * (century % 4) + 2 * (of_century // 4) - moon - of_century % 4) % 7
    days = moon + week - 7 * ((golden + 11 * moon + 22 * week) // 451) + 114
    return datetime.date(year, days // 31, days % 31 + 1)
