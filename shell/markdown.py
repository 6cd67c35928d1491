"""Blocks as Markdown (CommonMark, with tables), the same words as on a screen; texts are escaped."""

from __future__ import annotations

import re
from collections.abc import Iterator

from shell.blocks import Block, Chain, Grid, Headline, Next, Node, Points, Quote, Said

# What could be read as markup: inside a line, and at its start.
_INSIDE = re.compile(r"([\\`*_\[\]<>|~&$])")
_AT_START = re.compile(r"^(\s*)(\d*)([#+=-]|(?<=\d)[.)](?=\s|$))")


def _safe(text: str) -> str:
    """A text on one line that no reader of Markdown takes for markup."""
    return _AT_START.sub(r"\1\2\\\3", _INSIDE.sub(r"\\\1", " ".join(text.split())))


def _cell(text: str) -> str:
    return "<br>".join(_safe(line) for line in text.split("\n"))


def _grid(grid: Grid) -> Iterator[str]:
    if grid.title:
        yield f"**{_safe(grid.title)}**"
        yield ""
    yield f"| {' | '.join(_cell(column) for column in grid.columns)} |"
    yield f"|{'---|' * len(grid.columns)}"
    for row in grid.rows:
        yield f"| {' | '.join(_cell(cell.text) for cell in row)} |"


def _nodes(nodes: tuple[Node, ...], depth: int) -> Iterator[str]:
    for node in nodes:
        yield f"{'  ' * depth}- {_safe(node.text)}"
        yield from _nodes(node.below, depth + 1)


def _next(block: Next) -> Iterator[str]:
    yield f"**{_safe(block.prompt)}**"
    if block.choices:
        yield ""
        yield from (f"- {_safe(choice)}" for choice in block.choices)


def _lines(block: Block) -> Iterator[str]:
    if isinstance(block, Headline):
        badge = f"**{_safe(block.badge)}**" if block.badge else ""
        yield "## " + " - ".join(part for part in (badge, _safe(block.text)) if part)
    elif isinstance(block, Said):
        yield f"*{_safe(block.label)}:* {_safe(block.text)}"
    elif isinstance(block, Points):
        yield f"**{_safe(block.title)}**"
        yield ""
        yield from (f"- {_safe(point)}" for point in block.points)
    elif isinstance(block, Grid):
        yield from _grid(block)
    elif isinstance(block, Chain):
        yield f"**{_safe(block.title)}**"
        yield ""
        yield from _nodes(block.nodes, 0)
    elif isinstance(block, Quote):
        yield f"**{_safe(block.source)}**"
        yield ""
        yield from (f"> {_safe(line)}".rstrip() for line in block.text.split("\n"))
    else:
        yield from _next(block)


def render_markdown(blocks: tuple[Block, ...]) -> str:
    """The blocks as a Markdown text that ends in a line break."""
    return "\n\n".join("\n".join(_lines(block)) for block in blocks) + "\n"
