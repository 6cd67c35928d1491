"""Whole screens at fixed widths against stored ones; CLOTHBOUND_SNAPSHOTS=write stores them anew."""

from __future__ import annotations

import io
import os
from pathlib import Path

import pytest
from rich.console import Console

from shell.blocks import Block, Cell, Grid
from shell.chain import chain_blocks
from shell.clauses import clause_blocks
from shell.layout import arrange
from shell.plain import cells, render_plain
from shell.screen import draw
from tests.shell import fakes
from tests.shell.fakes import FakeBase

SNAPSHOTS = Path(__file__).parent / "snapshots"
ANSWERS = {
    "prohibited": fakes.prohibited,
    "conditional": fakes.conditional,
    "list": fakes.listing,
    "compare": fakes.comparison,
    "where": fakes.where,
    "conflict": fakes.conflict,
    "silent": fakes.silent,
    "abstain": fakes.abstained,
    "which": fakes.which,
    "hostile": fakes.hostile,
}


def drawn(blocks: tuple[Block, ...], width: int) -> str:
    console = Console(width=width, file=io.StringIO(), force_terminal=False, color_system=None)
    draw(console, blocks)
    text: str = console.file.getvalue()  # type: ignore[attr-defined]
    return "\n".join(line.rstrip() for line in text.splitlines()) + "\n"


def compare(name: str, text: str) -> None:
    path = SNAPSHOTS / f"{name}.txt"
    if os.environ.get("CLOTHBOUND_SNAPSHOTS") == "write":
        path.write_text(text, encoding="utf-8")
    assert text == path.read_text(encoding="utf-8")


def blocks_of(name: str, base: FakeBase) -> tuple[Block, ...]:
    if name == "chain":
        return chain_blocks(fakes.conditional("May I?"), base)
    if name == "clause":
        return clause_blocks("4.12", base)
    return arrange(ANSWERS[name]("May I wear the liner?"), base)


@pytest.mark.parametrize("width", [60, 80])
@pytest.mark.parametrize("name", [*ANSWERS, "chain", "clause"])
def test_screen(name: str, width: int, base: FakeBase) -> None:
    blocks = blocks_of(name, base)
    for kind, text in (("plain", render_plain(blocks, width)), ("drawn", drawn(blocks, width))):
        compare(f"{name}-{kind}-{width}", text)
        assert max(cells(line) for line in text.splitlines()) <= width


@pytest.mark.parametrize("name", [*ANSWERS, "chain", "clause"])
def test_plain_and_drawn_say_the_same_words(name: str, base: FakeBase) -> None:
    blocks = blocks_of(name, base)
    drawing = set("|│─━-•!*>?├└╭╰ \n'")

    def words(text: str) -> list[str]:
        return "".join(c if c not in drawing else " " for c in text).split()

    # At 400 cells nothing wraps, so both give the words in one order.
    assert words(render_plain(blocks, 400)) == words(drawn(blocks, 400))


def test_plain_text_uses_no_drawing_characters(base: FakeBase) -> None:
    blocks = arrange(fakes.conditional("May I?"), base, chain=True)
    assert render_plain(blocks, 80).isascii()


@pytest.mark.parametrize("width", [60, 80])
def test_hostile_text_is_shown_and_not_obeyed(width: int, base: FakeBase) -> None:
    blocks = arrange(fakes.hostile("May I?"), base, chain=True)
    console = Console(width=width, file=io.StringIO(), force_terminal=True, color_system=None)
    draw(console, blocks)
    for text in (render_plain(blocks, width), console.file.getvalue()):  # type: ignore[attr-defined]
        assert "\x1b[31m" not in text
        assert "\u202e" not in text
        assert "\x07" not in text
        assert "[/para]" in text
        assert ":smile:" in text
        assert "\\u{202e}" in text


@pytest.mark.parametrize("length", range(1, 60))
def test_rows_of_sentences_stand_apart_where_one_takes_several_lines(length: int) -> None:
    texts = ("first", " ".join(["word"] * (length // 5) + ["x" * (length % 5 + 1)]))
    for apart in (True, False):
        grid = Grid(
            "", ("When", "Then"), tuple((Cell(text), Cell("permitted")) for text in texts), apart=apart
        )
        for text in (render_plain((grid,), 40), drawn((grid,), 40)):
            rows = text.splitlines()[2:]
            wraps = len([row for row in rows if row.strip()]) > 2
            assert ("" in [row.strip() for row in rows]) == (wraps and apart)


def test_colour_goes_when_no_color_is_set(base: FakeBase, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    console = Console(width=80, file=io.StringIO(), force_terminal=True, color_system="standard")
    draw(console, arrange(fakes.prohibited("May I?"), base))
    text: str = console.file.getvalue()  # type: ignore[attr-defined]
    assert "\x1b[31m" not in text
    assert ";31m" not in text
    assert "PROHIBITED" in text
