"""A file of a rule base as a tree of texts, sequences and mappings, every node with its position."""

from __future__ import annotations

import msgspec

from kb.errors import Location, Problem


class Scalar(msgspec.Struct, frozen=True, tag="text"):
    """A value as written, never interpreted ("no" and "010" are texts)."""

    text: str
    at: Location


class Sequence(msgspec.Struct, frozen=True, tag="sequence"):
    nodes: tuple[Node, ...]
    at: Location


class Entry(msgspec.Struct, frozen=True):
    """One line of a mapping."""

    key: Scalar
    value: Node


class Mapping(msgspec.Struct, frozen=True, tag="mapping"):
    entries: tuple[Entry, ...]
    at: Location

    def get(self, key: str) -> Node | None:
        """The value of a key, None if the mapping lacks it."""
        return next((entry.value for entry in self.entries if entry.key.text == key), None)


Node = Scalar | Sequence | Mapping


class Tree(msgspec.Struct, frozen=True):
    """One parsed file. `digest` is the SHA-256 of its bytes; `root` is None if it is empty or unreadable."""

    file: str
    digest: str
    root: Mapping | None
    problems: tuple[Problem, ...] = ()
    readable: bool = True
