"""A screen as an SVG picture, drawn by rich; nothing in it points outside the file."""

from __future__ import annotations

import io
from pathlib import Path

from rich.console import Console
from rich.terminal_theme import MONOKAI

import kb
from shell.blocks import Block
from shell.screen import draw

_WIDTH = 84
_HEIGHT = 25
_FORMAT = """\
<svg class="rich-terminal" viewBox="0 0 {width} {height}" xmlns="http://www.w3.org/2000/svg">
<style>
.{unique_id}-matrix {{
    font-family: "DejaVu Sans Mono", Menlo, Consolas, monospace;
    font-size: {char_height}px;
    line-height: {line_height}px;
    font-variant-east-asian: full-width;
}}
.{unique_id}-title {{
    font-family: "DejaVu Sans Mono", Menlo, Consolas, monospace;
    font-size: 16px;
}}
{styles}
</style>
<defs>
<clipPath id="{unique_id}-clip-terminal">
<rect x="0" y="0" width="{terminal_width}" height="{terminal_height}" />
</clipPath>
{lines}
</defs>
{chrome}
<g transform="translate({terminal_x}, {terminal_y})" clip-path="url(#{unique_id}-clip-terminal)">
{backgrounds}
<g class="{unique_id}-matrix">
{matrix}
</g>
</g>
</svg>
"""


def picture(blocks: tuple[Block, ...], title: str) -> str:
    """The blocks as the text of an SVG file."""
    console = Console(
        record=True,
        width=_WIDTH,
        height=_HEIGHT,  # with both given rich asks no terminal, so that a picture is the same everywhere
        file=io.StringIO(),
        force_terminal=True,
        color_system="truecolor",
        highlight=False,
    )
    draw(console, blocks)
    return console.export_svg(
        title=kb.visible(title), theme=MONOKAI, code_format=_FORMAT, unique_id="clothbound"
    )


def write_picture(path: Path, blocks: tuple[Block, ...], title: str) -> None:
    """Write the picture whole or not at all; raises `StoreUnavailableError`."""
    kb.write_atomically(path, picture(blocks, title).encode())
