"""Days as people write them."""

from __future__ import annotations

import datetime

import kb


def as_date(text: str) -> datetime.date:
    """An ISO date or "today"; raises `UsageError`."""
    if text.strip().lower() == "today":
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text.strip())
    except ValueError:
        raise kb.UsageError(f'"{text}" is not a date. Write it as 2026-06-01.') from None
