"""The simple blocks that every screen is made of; the plain and the terminal renderer show the same ones.

Every text in a block is already safe for a terminal: `shell.layout` passes it through `kb.visible`.
"""

from __future__ import annotations

from typing import Literal

import msgspec

Tone = Literal["yes", "no", "must", "open", "clash", "quiet", "plain"]


class Headline(msgspec.Struct, frozen=True):
    """The verdict: `badge` is one or two words in capitals, `text` a sentence (may be empty)."""

    badge: str
    text: str
    tone: Tone = "plain"


class Said(msgspec.Struct, frozen=True):
    """A label and a short text on one line: what was understood, what was kept."""

    label: str
    text: str


class Points(msgspec.Struct, frozen=True):
    """A titled list of sentences."""

    title: str
    points: tuple[str, ...]
    tone: Tone = "plain"


class Cell(msgspec.Struct, frozen=True):
    text: str
    tone: Tone = "plain"


class Grid(msgspec.Struct, frozen=True):
    """A titled table; every row has as many cells as there are columns.

    With `apart` a blank line stands between rows if one of them takes several lines: for rows of sentences.
    """

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    apart: bool = False


class Node(msgspec.Struct, frozen=True):
    """One line of a chain and what hangs below it."""

    text: str
    below: tuple[Node, ...] = ()
    tone: Tone = "plain"


class Chain(msgspec.Struct, frozen=True):
    """A titled tree."""

    title: str
    nodes: tuple[Node, ...]


class Quote(msgspec.Struct, frozen=True):
    """The words of a clause under their source."""

    source: str
    text: str


class Next(msgspec.Struct, frozen=True):
    """What to ask or answer next, with the possible replies."""

    prompt: str
    choices: tuple[str, ...] = ()


Block = Headline | Said | Points | Grid | Chain | Quote | Next
