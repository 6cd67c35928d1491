"""Days as people write them."""

from __future__ import annotations

import datetime
import re

import kb

_NEAR = {"yesterday": -1, "today": 0, "tomorrow": 1}
_FORMS = ("%Y-%m-%d", "%d %B %Y", "%B %d %Y", "%d %b %Y", "%b %d %Y")
_LIGHT = r"(?<=\d)(?:st|nd|rd|th)\b|\bof\b|[,.]"


def as_date(text: str) -> datetime.date:
    """An ISO date, "1 May 2026", "May 1, 2026", or "today" and its neighbours; raises `UsageError`."""
    plain = text.strip().lower()
    if plain in _NEAR:
        return datetime.date.today() + datetime.timedelta(days=_NEAR[plain])
    bare = " ".join(re.sub(_LIGHT, " ", plain).split())
    for form in _FORMS:
        try:
            return datetime.datetime.strptime(bare, form).date()
        except ValueError:
            continue
    raise kb.UsageError(f'"{text}" is not a date. Write it as 2026-06-01.')
