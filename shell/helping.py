"""What the command `help` shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Cell, Grid, Headline, Points, Said
from shell.commands import BY_NAME, COMMANDS
from shell.examples import example_of, questions

if TYPE_CHECKING:
    from kb import KnowledgeBase


def help_blocks(argument: str, base: KnowledgeBase) -> tuple[Block, ...]:
    """What `help` shows, of all commands or of one; raises `UsageError` where there is no such."""
    name = {"exit": "quit"}.get(argument.lower(), argument.lower())
    if name and name not in BY_NAME:
        raise kb.UsageError(f"There is no command {argument}. help lists the commands.")
    if name:
        command = BY_NAME[name]
        blocks: tuple[Block, ...] = (
            Headline("", command.usage),
            Said("Does", command.does),
            Said("Example", example_of(name, base)),
        )
        return blocks
    rows = tuple((Cell(command.usage), Cell(command.does)) for command in COMMANDS)
    asking = Points("Everything else is a question", questions(base))
    keys = Points(
        "Keys (not with --plain)",
        (
            "Tab completes with what fits; the right arrow takes the rest of an earlier line",
            "arrow up goes to earlier lines that begin like this one; Ctrl-R searches all of them",
            "Ctrl-C leaves a line, or stops an answer; Ctrl-D leaves the shell",
        ),
    )
    more = Said("More", "help COMMAND shows an example.")
    return (Grid("Commands", ("Write", "To"), rows), asking, keys, more)
