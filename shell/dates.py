"""Days as people write them."""

from __future__ import annotations

import datetime
import re

import kb

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NEAR = {"yesterday": -1, "today": 0, "tomorrow": 1}
_WRITTEN = (
    r"(?P<d1>\d{1,2})(?:st|nd|rd|th)?\s+(?:of\s+)?(?P<m1>[a-z]{3,9})\.?,?\s+(?P<y1>\d{4})|"
    r"(?P<m2>[a-z]{3,9})\.?\s+(?P<d2>\d{1,2})(?:st|nd|rd|th)?,?\s+(?P<y2>\d{4})"
)
DAY = rf"today|yesterday|tomorrow|\d{{4}}-\d{{1,2}}-\d{{1,2}}|\d+|{_WRITTEN}"
"""The form of a day: an ISO date, a near day, or day, month and year in words."""


def as_date(text: str) -> datetime.date:
    """An ISO date, "1 May 2026", "May 1, 2026", or "today" and its neighbours; raises `UsageError`."""
    plain = text.strip().lower()
    try:
        if plain in _NEAR:
            return datetime.date.today() + datetime.timedelta(days=_NEAR[plain])
        written = re.fullmatch(_WRITTEN, plain)
        if written is None:
            return datetime.date.fromisoformat(plain)
        day, month, year = (written[f"{part}1"] or written[f"{part}2"] for part in "dmy")
        return datetime.date(int(year), _MONTHS.index(month[:3]) + 1, int(day))
    except ValueError:
        raise kb.UsageError(f'"{text}" is not a date. Write it as 2026-06-01.') from None
