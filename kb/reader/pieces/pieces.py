"""The pieces that a question is made of: every word is in exactly one."""

from __future__ import annotations

import datetime
from typing import Literal

import msgspec

from kb.model.records import Measure
from kb.model.values import OTHER, ValueSet
from kb.reader.names.lexicon import Entry
from kb.reader.words.tokens import Token

How = Literal["label", "everyday", "index", "spelling", "pattern"]


class Piece(msgspec.Struct, frozen=True, kw_only=True):
    """Tokens `first` to `last` (not included) and what they are.

    `tag` is a structure tag of `english`, or: "name" (linked, see `entries`), "fact" (`fact` has one of
    `values`), "measure", "date", "clause" (`arg`), "act" (`arg` is the aspect), "unknown".
    """

    first: int
    last: int
    tag: str
    entries: tuple[Entry, ...] = ()
    how: How = "label"
    arg: str = ""
    fact: str = ""
    values: ValueSet | None = None
    date: datetime.date | None = None
    measure: Measure | None = None


SHARING = "sharing"
"""The `arg` of a name that has a word in common with the item after it: "the lights branch flash"."""


class Understood(msgspec.Struct, frozen=True, kw_only=True):
    """The words and pieces of one text, linked; `mended` maps word places to the written word."""

    text: str
    tokens: tuple[Token, ...]
    pieces: tuple[Piece, ...]
    mended: tuple[tuple[int, str], ...] = ()


def only(piece: Piece, kind: str) -> tuple[Entry, ...]:
    """The entries of one kind."""
    return tuple(entry for entry in piece.entries if entry.kind == kind)


def is_other(piece: Piece) -> bool:
    """Whether a piece is a value that no book names."""
    return piece.tag == "aspect value" and any(entry.id.startswith(OTHER) for entry in piece.entries)


def named_activity(piece: Piece) -> str:
    """What the books call an activity that is told by its verb: "painting", of "I'm off to paint"."""
    return piece.arg if piece.tag == "fact" and piece.arg.endswith("ing") else ""
