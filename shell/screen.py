"""Blocks on a terminal, drawn with rich: the same words as in `shell.plain`, with colour beside them.

Data reaches rich as `Text`, never as markup.
"""

from __future__ import annotations

from rich import box
from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text
from rich.tree import Tree

from shell.blocks import Block, Chain, Grid, Headline, Next, Node, Points, Quote, Said, Tone
from shell.plain import cells, closes_up, wrap

_STYLES: dict[Tone, str] = {
    "yes": "green",
    "no": "red",
    "must": "cyan",
    "open": "yellow",
    "clash": "magenta",
    "quiet": "dim",
    "plain": "",
}
_TITLE = "bold"
_LABEL = "dim"
_INDENT = 2
_BETWEEN_COLUMNS = 3


def _style(tone: Tone, extra: str = "") -> str:
    return f"{extra} {_STYLES[tone]}".strip()


def _headline(block: Headline) -> RenderableType:
    text = Text(overflow="fold")
    if block.badge:
        text.append(f" {block.badge} ", _style(block.tone, "bold reverse").replace("dim", ""))
        text.append(" " if block.text else "")
    return text.append(block.text, "bold")


def _indented(first: str, text: str, style: str = "", first_style: str = "") -> RenderableType:
    """`text` behind a fixed first column, wrapped to stand below its own start."""
    row = Table.grid(padding=0)
    row.add_column(no_wrap=True)
    row.add_column(overflow="fold", ratio=1)
    row.add_row(Text(first, first_style or style), Text(text, style, overflow="fold"))
    return row


def _points(block: Points) -> RenderableType:
    title = Text(block.title, _style(block.tone, _TITLE))
    mark = "  ! " if block.title == "Caution" else "  • "
    return Group(title, *(_indented(mark, point, first_style=_style(block.tone)) for point in block.points))


def _wraps(block: Grid, width: int) -> bool:
    """Whether a row of the table takes more than one line."""
    texts = [block.columns, *(tuple(cell.text for cell in row) for row in block.rows)]
    natural = sum(max(cells(row[i]) for row in texts) for i in range(len(block.columns)))
    between = _BETWEEN_COLUMNS * (len(block.columns) - 1)
    return _INDENT + natural + between > width or any("\n" in text for row in texts for text in row)


def _grid(block: Grid, width: int) -> RenderableType:
    leading = 1 if block.apart and _wraps(block, width) else 0
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False, header_style=_LABEL, leading=leading)
    for column in block.columns:
        table.add_column(Text(column), overflow="fold")
    for row in block.rows:
        table.add_row(
            *(Text(cell.text, _style(cell.tone, "bold" if cell.tone != "plain" else "")) for cell in row)
        )
    body = Padding(table, (0, 0, 0, _INDENT))
    return Group(Text(block.title, _TITLE), body) if block.title else body


def _grow(tree: Tree, nodes: tuple[Node, ...]) -> None:
    for node in nodes:
        _grow(tree.add(Text(node.text, _style(node.tone), overflow="fold")), node.below)


def _chain(block: Chain) -> RenderableType:
    tree = Tree(Text(block.title, _TITLE), guide_style=_LABEL)
    _grow(tree, block.nodes)
    return tree


def _quote(block: Quote, width: int) -> RenderableType:
    """The clause behind a bar that runs down all its lines."""
    lines = [Text.assemble(("  │ ", _LABEL), (line, "italic")) for line in wrap(block.text, width - 4)]
    return Group(Text(block.source, _TITLE), *lines)


def _next(block: Next) -> RenderableType:
    prompt = _indented("? ", block.prompt, "bold", _style("open", "bold"))
    if not block.choices:
        return prompt
    return Group(prompt, _indented("  ", " / ".join(block.choices)))


def _render(block: Block, width: int) -> RenderableType:
    if isinstance(block, Headline):
        return _headline(block)
    if isinstance(block, Said):
        return _indented(f"{block.label}: ", block.text, first_style=_LABEL)
    if isinstance(block, Points):
        return _points(block)
    if isinstance(block, Grid):
        return _grid(block, width)
    if isinstance(block, Chain):
        return _chain(block)
    if isinstance(block, Quote):
        return _quote(block, width)
    return _next(block)


def draw(console: Console, blocks: tuple[Block, ...]) -> None:
    """Print the blocks, a blank line between those that do not belong together."""
    for before, block in zip((None, *blocks), blocks, strict=False):
        if before is not None and not closes_up(before, block):
            console.print()
        console.print(_render(block, console.width), markup=False, emoji=False, highlight=False)


def make_console(width: int) -> Console:
    """A console on standard output; rich itself honours NO_COLOR and TERM."""
    return Console(width=width, markup=False, emoji=False, highlight=False)
