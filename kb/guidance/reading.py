"""Opens a plan on top of the rule books that it is for."""

from __future__ import annotations

from pathlib import Path

import msgspec

from kb.errors import InvalidDataError, Location, Problem, UsageError
from kb.guidance.plan import Plan, local_tree, read_plan
from kb.model.lookup import Lookup
from kb.sources import Tree, load_rule_base, load_trees, parse_file
from kb.sources.events import LARGEST_FILE
from kb.sources.report import Report
from kb.sources.sections import gather_sections
from kb.sources.vocabulary import read_vocabulary

# What the refusal says in full, with the clause, the principle and the way out.
_REFUSED_LATER = frozenset(
    {"non-derogable", "no-delegation", "outside-delegation", "delegation-not-granted", "amends-higher"}
)


class Opened(msgspec.Struct, frozen=True):
    """A plan, the rule books with the plan's own clauses among them, and warnings about the plan's file."""

    plan: Plan
    lookup: Lookup
    warnings: tuple[Problem, ...]


def read_file(path: Path) -> bytes:
    """The bytes of a plan, at most one more than a file may have."""
    try:
        with path.open("rb") as stream:
            return stream.read(LARGEST_FILE + 1)
    except OSError as error:
        raise UsageError(f"{path} cannot be read: {error.strerror}.") from error


def open_plan(data: bytes, name: str, folder: Path) -> Opened:
    """The plan in `data`, `name` in messages, on top of the rule books in a folder.

    Raises `InvalidDataError` with every mistake in the plan (and in the books, if they have any).
    """
    tree = parse_file(data, name)
    books = _book_trees(folder)
    local = local_tree(tree) if tree.readable else None
    _stop_on_errors([*tree.problems])
    every = [*books, *([local] if local else [])]
    report = Report()
    vocabulary = read_vocabulary(gather_sections(every, Report()), Location(name), Report())
    plan = read_plan(tree, vocabulary, report)
    base, problems = load_trees(every)
    _stop_on_errors([*report.problems, *problems])
    assert plan is not None
    assert base is not None
    warnings = [p for p in problems if p.at.file == name and p.code not in _REFUSED_LATER]
    return Opened(plan, Lookup(base), tuple(sorted(warnings)))


def _book_trees(folder: Path) -> list[Tree]:
    trees: list[Tree] = []

    def keep(data: bytes, name: str) -> Tree:
        trees.append(parse_file(data, name))
        return trees[-1]

    _stop_on_errors(load_rule_base(folder, keep).problems)
    return trees


def _stop_on_errors(problems: tuple[Problem, ...] | list[Problem]) -> None:
    errors = tuple(sorted({p for p in problems if p.severity == "error"}))
    if errors:
        raise InvalidDataError(errors)
