"""Rule books as a whole: build, audit and export them."""

from __future__ import annotations

import datetime
import time
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from kb.cache import ensure
from kb.errors import InvalidDataError, Problem
from kb.files import write_atomically
from kb.model.lookup import Lookup
from kb.opening import books_folder

if TYPE_CHECKING:
    from kb.audit import AuditReport


class BuildReport(msgspec.Struct, frozen=True, kw_only=True):
    """What a build found: problems, and how many of each kind of record the base has."""

    problems: tuple[Problem, ...]
    counts: tuple[tuple[str, int], ...]
    seconds: float
    rebuilt: bool


def build(books: Path | None = None, cache: Path | None = None) -> BuildReport:
    """Load, check and store rule books; every problem is in the report, with its place in the source."""
    from kb.graph import to_nquads  # noqa: PLC0415
    from kb.model.counting import count_records  # noqa: PLC0415  only to build
    from kb.sources import load_rule_base  # noqa: PLC0415  loads the YAML reader
    from kb.validation import validate  # noqa: PLC0415  loads rdflib and pySHACL

    started = time.perf_counter()
    folder = books_folder(books)
    loaded = load_rule_base(folder)
    problems = list(loaded.problems)
    counts: tuple[tuple[str, int], ...] = ()
    rebuilt = False
    if loaded.base is not None and not any(problem.severity == "error" for problem in problems):
        problems += validate(to_nquads(loaded.base))
        counts = count_records(Lookup(loaded.base))
        rebuilt = ensure(folder, cache).was_rebuilt
    return BuildReport(
        problems=tuple(sorted(problems)),
        counts=counts,
        seconds=time.perf_counter() - started,
        rebuilt=rebuilt,
    )


def audit_books(books: Path | None = None, *, as_of: datetime.date | None = None) -> AuditReport:
    """What is wrong in rule books from a day on (today by default); their load errors, if they have any."""
    from kb.audit import audit_base, audit_problems  # noqa: PLC0415  only for this command
    from kb.sources import load_rule_base  # noqa: PLC0415  loads the YAML reader

    day = as_of or datetime.date.today()
    loaded = load_rule_base(books_folder(books))
    if loaded.base is None:
        return audit_problems(loaded.problems, day)
    return audit_base(loaded.base, day, loaded.problems, dated=as_of is not None)


def export_base(books: Path | None, form: str, target: Path | None = None) -> bytes:
    """The base as Turtle, N-Quads or JSON-LD; written whole to `target` if one is given."""
    from kb.graph import export_bytes  # noqa: PLC0415
    from kb.sources import load_rule_base  # noqa: PLC0415  loads the YAML reader

    loaded = load_rule_base(books_folder(books))
    errors = tuple(problem for problem in loaded.problems if problem.severity == "error")
    if loaded.base is None or errors:
        raise InvalidDataError(errors)
    data = export_bytes(loaded.base, form)
    if target is not None:
        write_atomically(target, data)
    return data
