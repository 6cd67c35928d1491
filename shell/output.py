"""Where output goes: data to standard output, talk to standard error, as plain text or as a drawn screen."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.blocks import Block, Headline, Next
from shell.plain import render_plain

if TYPE_CHECKING:
    from kb import Problem

_WIDEST = 100
_NARROWEST = 30
_MOST_NAMED = 6  # of the others
_MOST_ALIKE = 3  # places of one message that are all shown
_MOST_PROBLEMS = 1000


def columns() -> int:
    """Columns of the terminal, as COLUMNS or the terminal itself tells; 80 where neither does."""
    told = os.environ.get("COLUMNS", "")
    if told.isdecimal() and int(told[:9]):
        return int(told[:9])
    try:
        return os.get_terminal_size(1).columns or 80
    except OSError:
        return 80


def rows() -> int:
    """Rows of the terminal; 24 where it does not tell."""
    try:
        return os.get_terminal_size(1).lines or 24
    except OSError:
        return 24


class Output(msgspec.Struct, frozen=True):
    """How this run prints: `drawn` on a terminal, else plain text; `width` in terminal cells."""

    drawn: bool
    width: int

    def show(self, blocks: tuple[Block, ...], paged: bool = False) -> None:
        """Print the blocks of one answer to standard output; if `paged`, what is longer than a drawn screen
        goes through the user's pager. What then ends in a question that somebody will want to answer, and not
        to leave a pager first, has its verdict once more before that."""
        if not self.drawn:
            sys.stdout.write(render_plain(blocks, self.width))
            return
        from shell.pager import is_long, page, pager_command  # noqa: PLC0415  only where a screen is drawn
        from shell.screen import draw, make_console  # noqa: PLC0415  rich only where a screen is drawn

        console = make_console(self.width)
        with console.capture() as captured:
            draw(console, blocks)
        text = captured.get()
        long = paged and is_long(text, rows())
        if long and isinstance(blocks[-1], Next):
            verdict = [block for block in blocks if isinstance(block, Headline)][-1:]
            draw(console, (*blocks[:-1], *verdict, blocks[-1]))
            return
        command = pager_command() if long else []
        sys.stdout.flush()
        if not command or not page(text, command):
            sys.stdout.write(text)

    def write(self, text: str) -> None:
        """Print text of our own, or text already made safe, as it is."""
        sys.stdout.write(text if text.endswith("\n") else text + "\n")


def _width() -> int:
    return min(max(columns(), _NARROWEST), _WIDEST)


def make_output(plain: bool) -> Output:
    """Drawn if standard output is a terminal that can, and nobody asked for plain text."""
    drawn = not plain and sys.stdout.isatty() and os.environ.get("TERM", "") not in ("", "dumb")
    return Output(drawn, _width())


def resized(output: Output) -> Output:
    """The same output at the width that the window has now."""
    return Output(output.drawn, _width())


def safe_json(text: str) -> str:
    """The same JSON with control and format characters as escapes, which mean the same to every reader."""
    if text.isascii() and "\x7f" not in text:
        return text
    import json  # noqa: PLC0415  seldom needed

    return "".join(c if kb.visible(c) == c else json.dumps(c)[1:-1] for c in text)


def write_bytes(data: bytes) -> None:
    """Data to standard output, byte for byte."""
    sys.stdout.flush()
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()


def complain(text: str) -> None:
    """Talk: one message to standard error, made safe. Where that cannot be written nobody listens."""
    try:
        print(kb.visible(text), file=sys.stderr, flush=True)
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stderr.fileno())


def _also(places: Sequence[str]) -> str:
    rest = f" and {len(places) - _MOST_NAMED} more places" if len(places) > _MOST_NAMED else ""
    return f"(The same at {', '.join(places[:_MOST_NAMED])}{rest}.)"


def complain_problems(problems: tuple[Problem, ...]) -> None:
    """One line for each problem of the sources, up to a thousand, and how many there are.

    What is said in the same words of more places than a few has one cause: it is shown at the first of them.
    """
    same: dict[tuple[str, str, str], list[str]] = {}
    for problem in problems:
        same.setdefault((problem.severity, problem.message, problem.remedy), []).append(str(problem.at))
    told = set[tuple[str, str, str]]()
    for problem in problems[:_MOST_PROBLEMS]:
        said = (problem.severity, problem.message, problem.remedy)
        if said in told:
            continue
        others = same[said][1:]
        many = len(others) >= _MOST_ALIKE
        complain(f"{problem} {_also(others)}" if many else str(problem))
        if many:
            told.add(said)
    if len(problems) > _MOST_PROBLEMS:
        complain(f"Only the first {_MOST_PROBLEMS} are shown.")
    errors = sum(problem.severity == "error" for problem in problems)
    warnings = len(problems) - errors
    if problems:
        complain(f"{errors} error{'s' * (errors != 1)}, {warnings} warning{'s' * (warnings != 1)}.")
