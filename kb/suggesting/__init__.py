"""Everyday words for a writer's items out of a public thesaurus, each to be accepted or refused.

Only the command `suggest-words` uses it; the thesaurus is an optional package, and no question needs it.
"""

from __future__ import annotations

from kb.suggesting.desk import WordDesk

__all__ = ["WordDesk"]
