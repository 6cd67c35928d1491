"""The text of a query that a user gives: itself, or the file that it names."""

from __future__ import annotations

from pathlib import Path

import kb

LARGEST_QUERY = 1_000_000  # characters


def query_text(source: str) -> str:
    """SPARQL as it is; of a name that ends in .rq what the file holds. Raises `UsageError`."""
    if not source.endswith(".rq") or "{" in source:
        return source
    try:
        with Path(source).open(encoding="utf-8") as stream:
            return stream.read(LARGEST_QUERY)
    except (OSError, UnicodeDecodeError) as error:
        reason = getattr(error, "strerror", None) or "it is not UTF-8 text"
        raise kb.UsageError(f"{source} cannot be read: {reason}.") from error
