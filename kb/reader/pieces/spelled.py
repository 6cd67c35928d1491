"""Days of a month without a year, and days in figures, as they are written: "3rd of Nov", "November 3rd"."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator

import msgspec

from kb.model.months import MONTHS, month_number
from kb.reader.words.forms import word_row
from kb.text import Pattern

_ORDINALS = word_row("""
    first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth
    fifteenth sixteenth seventeenth eighteenth nineteenth twentieth twenty-first twenty-second twenty-third
    twenty-fourth twenty-fifth twenty-sixth twenty-seventh twenty-eighth twenty-ninth thirtieth thirty-first
""")
ORDINALS = frozenset(word for ordinal in _ORDINALS for word in ordinal.split("-"))
_WORDS = "|".join(reversed(_ORDINALS))
_NAMES = "|".join((*MONTHS, "sept", *(month[:3] for month in MONTHS)))
_FIRST = "|".join(month for month in (*MONTHS, "sept", *(m[:3] for m in MONTHS)) if month != "may")
_ENDS = r"(?=\s*(?:[,;:.?!)–—-]|$)|\s+(?:or|and|to|until|till|in|on|with|for|is|are|must|may|do|does|can)\b)"
_LED = "|".join(
    rf"(?<={lead} )" for lead in ("on", "since", "until", "till", "by", "before", "after", "from")
)
_DAY = Pattern(
    rf"(?<![\w-])(?:the\s+)?(?:(?P<number>\d{{1,2}})(?:st|nd|rd|th)?|(?P<word>{_WORDS}))\s+(?:of\s+)?"
    rf"(?P<month>{_NAMES})\b\.?(?:,?\s+(?P<year>\d{{4}}))?(?!\w|-|\s*\d)"
    rf"|(?<!\bin )(?<![\w-])(?:(?P<month2>{_FIRST})\b\.?|(?:{_LED})(?P<may>may))\s+(?:the\s+)?"
    rf"(?:(?P<number2>\d{{1,2}})(?:(?:st|nd|rd|th)(?!\w)|{_ENDS})|(?P<word2>{_WORDS}){_ENDS})"
    rf"(?!,?\s+\d)",
    re.IGNORECASE,
)
_FIGURES = Pattern(
    r"(?<![\w./-])(?P<one>\d{1,2})(?P<mark>[/.])(?P<two>\d{1,2})(?P=mark)(?P<year>(?:19|20)\d\d)(?![\w/-])"
)


class DayOfMonth(msgspec.Struct, frozen=True):
    """Characters `start` to `end` say a day of a month; `year` is 0 where none is said."""

    start: int
    end: int
    day: int
    month: int
    year: int

    def within(self, year: int) -> datetime.date | None:
        """The day in a year, None where that has no such day."""
        try:
            return datetime.date(year, self.month, self.day)
        except ValueError:
            return None


def days_of_months(text: str) -> Iterator[DayOfMonth]:
    """The days of months that a text says."""
    for match in _DAY.finditer(text):
        month = match["month"] or match["month2"] or match["may"]
        number, word = match["number"] or match["number2"], match["word"] or match["word2"]
        day = int(number) if number else _ORDINALS.index(word.lower()) + 1
        said = DayOfMonth(
            match.start(), match.end(), day, month_number(month.lower()), int(match["year"] or 0)
        )
        if said.within(said.year or 2000) is not None:
            yield said
    for match in _FIGURES.finditer(text):
        one, two = int(match["one"]), int(match["two"])
        if match["mark"] == "/" and one != two and max(one, two) < 13:
            continue  # "3/11/2026" is one day here and another there
        day, month = (two, one) if match["mark"] == "/" and two > 12 else (one, two)
        said = DayOfMonth(match.start(), match.end(), day, month, int(match["year"]))
        if month < 13 and said.within(said.year) is not None:
            yield said
