"""Problems with a position and a remedy, and the one root of all exceptions.

A mistake of an author is a value (`Problem`), collected so that one run reports
all of them. An exception is raised only where work cannot go on.
"""

from __future__ import annotations

import msgspec


class Location(msgspec.Struct, frozen=True, omit_defaults=True, order=True):
    """A place in a source file: 1-based line and column; file relative to the books folder."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


class Problem(msgspec.Struct, frozen=True, omit_defaults=True, order=True):
    """One mistake in a source: where, what is wrong, what to write instead.

    `code` is a stable short name ("duplicate-id"); `severity` is "error" or "warning".
    """

    at: Location
    code: str
    message: str
    remedy: str
    severity: str = "error"

    def __str__(self) -> str:
        return f"{self.at}: {self.severity}: {self.message} {self.remedy}".rstrip()


class ClothboundError(Exception):
    """Root of every error that the program raises on purpose; carries its exit code."""

    exit_code = 70


class UsageError(ClothboundError):
    """The command line or a request makes no sense; exit code 2."""

    exit_code = 2


class InvalidDataError(ClothboundError):
    """Rule books (or a file given by the user) have errors; exit code 3."""

    exit_code = 3

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))


class StoreUnavailableError(ClothboundError):
    """The store or index cannot be opened or written, or a deadline passed; exit code 5."""

    exit_code = 5
