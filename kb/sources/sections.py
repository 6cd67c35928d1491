"""Sorting the sections of all files: vocabulary by its key, clauses with the book they belong to."""

from __future__ import annotations

from collections.abc import Sequence as Many

import msgspec

from kb.errors import Location
from kb.sources.fields import Fields, as_mappings
from kb.sources.report import Report
from kb.sources.tree import Mapping, Node, Tree

VOCABULARY = (
    "service",
    "authorities",
    "ladders",
    "grade groups",
    "branches",
    "qualifications",
    "appointments",
    "waivers",
    "authorisations",
    "facts",
    "fact groups",
    "never together",
    "items",
    "rigs",
    "aspects",
    "suggested words",
)
BOOK = ("book", "edition", "part", "clauses")


class Part(msgspec.Struct, frozen=True):
    """What one file says of a book: the nodes of its book and edition, and its clauses."""

    at: Location
    book: Node | None
    edition: Node | None
    title: str | None
    clauses: tuple[Mapping, ...]


class Sections(msgspec.Struct, frozen=True):
    """All files together: the entries of each vocabulary section, and the parts of books."""

    entries: dict[str, tuple[Mapping, ...]]
    parts: tuple[Part, ...]


def gather_sections(trees: Many[Tree], report: Report) -> Sections:
    """Sections of all files in the order of the files."""
    entries: dict[str, list[Mapping]] = {key: [] for key in VOCABULARY}
    parts: list[Part] = []
    for tree in trees:
        if tree.root is None:
            continue
        fields = Fields(tree.root, (*VOCABULARY, *BOOK), "a rule book file", report)
        for key in VOCABULARY:
            node = fields.node_of(key)
            if node is not None:
                entries[key].extend(as_mappings(node, f'"{key}"', report))
        if any(fields.has(key) for key in BOOK):
            parts.append(_part(fields, report))
    return Sections({key: tuple(found) for key, found in entries.items()}, tuple(parts))


def _part(fields: Fields, report: Report) -> Part:
    clauses = fields.node_of("clauses")
    return Part(
        at=fields.lines[next(key for key in BOOK if fields.has(key))].key.at,
        book=fields.node_of("book"),
        edition=fields.node_of("edition"),
        title=fields.text("part"),
        clauses=() if clauses is None else as_mappings(clauses, '"clauses"', report),
    )
