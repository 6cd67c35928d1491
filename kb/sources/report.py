"""Collecting the problems of a source, and suggesting what was meant."""

from __future__ import annotations

from collections.abc import Iterable

from rapidfuzz import fuzz, process

from kb.errors import Location, Problem
from kb.text import visible

_LONGEST = 80
_CLOSE = 65.0


class Report:
    """Problems in the order in which they were found."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []

    def error(self, at: Location, code: str, message: str, remedy: str) -> None:
        self.problems.append(Problem(at, code, message, remedy))

    def warn(self, at: Location, code: str, message: str, remedy: str) -> None:
        self.problems.append(Problem(at, code, message, remedy, "warning"))

    @property
    def failed(self) -> bool:
        return any(problem.severity == "error" for problem in self.problems)


def quoted(text: str) -> str:
    """A text from a file in quotation marks, shortened and safe for a terminal."""
    shown = visible(" ".join(text.split()))
    return f'"{shown[:_LONGEST]}…"' if len(shown) > _LONGEST else f'"{shown}"'


def listed(names: Iterable[str], limit: int = 12) -> str:
    """Names as "a, b or c"; a long list is cut and ends in "..."."""
    shown = list(names)
    if len(shown) > limit:
        return ", ".join(shown[:limit]) + ", ..."
    return " or ".join([", ".join(shown[:-1]), shown[-1]] if len(shown) > 1 else shown)


def nearest(name: str, known: Iterable[str], limit: int = 3) -> list[str]:
    """The known names that look most like `name`, best first; none if nothing is near."""
    found = process.extract(
        name[:_LONGEST].casefold(),
        list(dict.fromkeys(known)),
        scorer=fuzz.ratio,
        processor=str.casefold,
        limit=limit,
        score_cutoff=_CLOSE,
    )
    return [match[0] for match in found]


def suggestion(name: str, known: Iterable[str], otherwise: str) -> str:
    """A remedy for an unknown name: "Did you mean a or b?", else `otherwise`."""
    close = nearest(name, known)
    return f"Did you mean {listed(close)}?" if close else otherwise
