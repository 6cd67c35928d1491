"""The result of a SPARQL query as a table, JSON or CSV, after the W3C result formats of SPARQL 1.1 (2013)."""

from __future__ import annotations

import csv
import io
import json
import sys
from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Block, Cell, Grid, Said
from shell.output import safe_json
from shell.plain import render_plain

if TYPE_CHECKING:
    from kb import Table

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
_KINDS = {"iri": "uri", "blank": "bnode", "literal": "literal"}
_XSD_STRING = "http://www.w3.org/2001/XMLSchema#string"


def _texts(table: Table) -> list[list[str]]:
    """The rows as bare texts: an IRI, a lexical form, a blank node's label; "" where unbound."""
    if table.kind == "ask":
        return [["true" if table.boolean else "false"]]
    return [
        ["" if term is None else f"_:{term.value}" if term.kind == "blank" else term.value for term in row]
        for row in table.rows
    ]


def _columns(table: Table) -> tuple[str, ...]:
    return ("boolean",) if table.kind == "ask" else table.columns


def _json_term(kind: str, value: str, datatype: str | None, language: str | None) -> dict[str, str]:
    term = {"type": _KINDS[kind], "value": value}
    if language:
        term["xml:lang"] = language
    elif datatype and datatype != _XSD_STRING:
        term["datatype"] = datatype
    return term


def as_json(table: Table) -> str:
    """One JSON object; unbound variables are left out of a binding. A cut result says so in its head."""
    document: dict[str, Any] = {"head": {}}
    if table.kind == "ask":
        document["boolean"] = table.boolean
    else:
        document["head"]["vars"] = list(table.columns)
        bindings = [
            {
                name: _json_term(term.kind, term.value, term.datatype, term.language)
                for name, term in zip(table.columns, row, strict=True)
                if term is not None
            }
            for row in table.rows
        ]
        document["results"] = {"bindings": bindings}
    if table.truncated:
        document["head"]["truncated"] = True
    return safe_json(json.dumps(document, ensure_ascii=False, indent=2))


def _safe_cell(text: str) -> str:
    """A cell that a spreadsheet would run as a formula starts with an apostrophe instead."""
    return f"'{text}" if text.startswith(_FORMULA_STARTS) else text


def as_csv(table: Table) -> str:
    """Lines end in CR LF, as the format asks."""
    target = io.StringIO()
    writer = csv.writer(target)
    writer.writerow([_safe_cell(name) for name in _columns(table)])
    writer.writerows([_safe_cell(text) for text in row] for row in _texts(table))
    return target.getvalue()


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
        return as_json(table)
    if form == "csv":
        text = as_csv(table)
        return "\r\n".join(map(kb.visible, text.split("\r\n"))) if sys.stdout.isatty() else text
    return render_plain(table_blocks(table), width)
