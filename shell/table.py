"""The result of a SPARQL query as a screen, or as data for other programs."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Cell, Grid, Said
from shell.output import safe_json
from shell.plain import render_plain

if TYPE_CHECKING:
    from kb import Table


def _texts(table: Table) -> list[list[str]]:
    """The rows as bare texts: an IRI, a lexical form, a blank node's label; "" where unbound."""
    return [
        ["" if term is None else f"_:{term.value}" if term.kind == "blank" else term.value for term in row]
        for row in table.rows
    ]


def table_blocks(table: Table) -> tuple[Block, ...]:
    """The result as a screen, with the number of rows below."""
    if table.kind == "ask":
        return (Said("Result", "yes" if table.boolean else "no"),)
    rows = tuple(tuple(Cell(kb.visible(text)) for text in row) for row in _texts(table))
    columns = tuple(kb.visible(name) for name in table.columns)
    grid: tuple[Block, ...] = (Grid("", columns, rows),) if rows and columns else ()
    return (*grid, Said("Rows", f"the first {len(rows)}" if table.truncated else str(len(rows))))


def table_text(table: Table, form: str, width: int) -> str:
    """The result in the form "table", "json" or "csv"; CSV as it is, unless a terminal would act on it."""
    if form == "json":
        return safe_json(table.as_json())
    if form == "csv":
        text = table.as_csv()
        return "\r\n".join(map(kb.visible, text.split("\r\n"))) if sys.stdout.isatty() else text
    return render_plain(table_blocks(table), width)
