"""Blocks as plain text: no colour, no cursor movement, ASCII drawing only; for pipes and `--plain`."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable

from shell.blocks import Block, Chain, Grid, Headline, Next, Node, Points, Quote, Said

_WIDE = {"W", "F"}
_MIN_COLUMN = 8


def cells(text: str) -> int:
    """How many terminal cells a text takes."""
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in _WIDE else 1 for c in text
    )


def _pieces(word: str, width: int) -> Iterable[str]:
    """A word cut where it is longer than a line."""
    piece = ""
    for character in word:
        if piece and cells(piece + character) > width:
            yield piece
            piece = ""
        piece += character
    yield piece


def wrap(text: str, width: int) -> list[str]:
    """Lines of at most `width` cells; line breaks in the text are kept, other white space is not."""
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split():
            for piece in _pieces(word, width) if cells(word) > width else (word,):
                if line and cells(line) + 1 + cells(piece) > width:
                    lines.append(line)
                    line = piece
                else:
                    line = f"{line} {piece}" if line else piece
        lines.append(line)
    return lines


def hang(first: str, text: str, width: int) -> list[str]:
    """`text` wrapped behind `first`, the further lines indented to stand below its start."""
    inner = wrap(text, max(width - cells(first), 10))
    return [first + inner[0], *(" " * cells(first) + line for line in inner[1:])]


def _column_widths(grid: Grid, width: int) -> list[int] | None:
    """A width for each column, the widest giving way first; None where the table cannot fit."""
    table = [grid.columns, *(tuple(cell.text for cell in row) for row in grid.rows)]
    widths = [max(cells(row[i]) for row in table) for i in range(len(grid.columns))]
    room = width - 2 - 2 * (len(widths) - 1)
    if room < _MIN_COLUMN * len(widths):
        return None
    while sum(widths) > room:
        widths[widths.index(max(widths))] -= 1
    return widths


def _row(texts: tuple[str, ...], widths: list[int]) -> list[str]:
    columns = [wrap(text, width) for text, width in zip(texts, widths, strict=True)]
    height = max(len(column) for column in columns)
    rows = []
    for line in range(height):
        parts = [column[line] if line < len(column) else "" for column in columns]
        padded = [part + " " * (width - cells(part)) for part, width in zip(parts, widths, strict=True)]
        rows.append("  " + "  ".join(padded).rstrip())
    return rows


def _stacked(grid: Grid, width: int) -> list[str]:
    """A table that is too wide: one line for each cell, under its column's name."""
    lines: list[str] = []
    for row in grid.rows:
        for name, cell in zip(grid.columns, row, strict=True):
            lines += hang(f"  {name}: ", cell.text, width)
        lines.append("")
    return lines[:-1]


def _grid(grid: Grid, width: int) -> list[str]:
    widths = _column_widths(grid, width)
    title = [grid.title] if grid.title else []
    if widths is None:
        return title + _stacked(grid, width)
    lines = [*title, *_row(grid.columns, widths), "  " + "  ".join("-" * width for width in widths)]
    rows = [_row(tuple(cell.text for cell in row), widths) for row in grid.rows]
    gap = [""] if grid.apart and any(len(row) > 1 for row in rows) else []
    for number, row in enumerate(rows):
        lines += [*(gap if number else []), *row]
    return lines


def _node(node: Node, depth: int, width: int) -> list[str]:
    lines = hang("  " * depth + ("- " if depth == 1 else "* " if depth == 2 else "> "), node.text, width)
    for below in node.below:
        lines += _node(below, depth + 1, width)
    return lines


def _headline(block: Headline, width: int) -> list[str]:
    text = f"{block.badge} - {block.text}" if block.badge and block.text else block.badge or block.text
    return wrap(text, width)


def _next(block: Next, width: int) -> list[str]:
    lines = hang("? ", block.prompt, width)
    if block.choices:
        lines += hang("  ", " / ".join(block.choices), width)
    return lines


def _lines(block: Block, width: int) -> list[str]:
    if isinstance(block, Headline):
        return _headline(block, width)
    if isinstance(block, Said):
        return hang(f"{block.label}: ", block.text, width)
    if isinstance(block, Points):
        points = [line for point in block.points for line in hang("  - ", point, width)]
        return [block.title, *points]
    if isinstance(block, Grid):
        return _grid(block, width)
    if isinstance(block, Chain):
        return [block.title, *(line for node in block.nodes for line in _node(node, 1, width))]
    if isinstance(block, Quote):
        quoted = [f"  | {line}".rstrip() for line in wrap(block.text, max(width - 4, 10))]
        return [*wrap(block.source, width), *quoted]
    return _next(block, width)


def closes_up(before: Block, block: Block) -> bool:
    """Whether two blocks stand together without a blank line: a headline and what was understood."""
    return isinstance(block, Said) and isinstance(before, Said | Headline)


def render_plain(blocks: tuple[Block, ...], width: int) -> str:
    """The blocks as text ending in a line break; a blank line between blocks, none between said lines."""
    lines: list[str] = []
    for before, block in zip((None, *blocks), blocks, strict=False):
        if before is not None and not closes_up(before, block):
            lines.append("")
        lines += _lines(block, width)
    return "\n".join(lines) + "\n" if lines else ""
