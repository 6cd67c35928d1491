"""What a line comes to, and the commands that only look up what the books have."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.blocks import Block, Cell, Grid, Said
from shell.queries import query_text
from shell.session import Session
from shell.table import table_blocks

if TYPE_CHECKING:
    from kb import KnowledgeBase

_QUERY_SECONDS, _QUERY_ROWS = 10.0, 200
_LIST_LENGTH = 60


class Reply(msgspec.Struct, frozen=True):
    """What to show for a line: blocks, text that is safe as it is, or a complaint; `data` goes to `file`."""

    blocks: tuple[Block, ...] = ()
    text: str = ""
    complaint: str = ""
    leave: bool = False
    file: Path | None = None
    data: bytes = b""


Result = tuple[Session, Reply]


def _listing(title: str, rows: list[tuple[str, str]], columns: tuple[str, str]) -> Reply:
    if not rows:
        raise kb.UsageError("Nothing has that word in its name.")
    shown = rows[:_LIST_LENGTH]
    more = len(rows) - len(shown)
    cells = tuple((Cell(kb.visible(a)), Cell(kb.visible(b))) for a, b in shown)
    grid = Grid(f"{title} ({len(rows)})", columns, cells)
    note = (Said("More", f"{more} further ones; a word after the command narrows the list."),) if more else ()
    return Reply(blocks=(grid, *note))


def items(session: Session, argument: str, base: KnowledgeBase) -> Result:
    word = argument.lower()
    rows = [
        (item.label, ", ".join(item.other_labels))
        for item in base.lookup.base.items
        if word in " ".join((item.id, item.label, *item.other_labels, *item.everyday)).lower()
    ]
    return session, _listing("Items", sorted(rows), ("Item", "Also called"))


def facts(session: Session, argument: str, base: KnowledgeBase) -> Result:
    word = argument.lower()
    rows = []
    for fact in base.lookup.base.facts:
        values = ", ".join(value.label for value in fact.values) or fact.kind.replace("_", " or ")
        if fact.family != "worn" and word in f"{fact.id} {fact.label} {values}".lower():
            rows.append((fact.label, values))
    return session, _listing("Facts", rows, ("Fact", "Values"))


def query(session: Session, argument: str, base: KnowledgeBase) -> Result:
    table = base.run_query(query_text(argument), deadline=_QUERY_SECONDS, row_limit=_QUERY_ROWS)
    return session, Reply(blocks=table_blocks(table))


def help_(session: Session, argument: str, base: KnowledgeBase) -> Result:
    from shell.helping import help_blocks  # noqa: PLC0415  seldom asked for

    return session, Reply(blocks=help_blocks(argument, base))


def quit_(session: Session, _argument: str, _base: KnowledgeBase) -> Result:
    return session, Reply(leave=True)
