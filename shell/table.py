"""The result of a SPARQL query as a table, JSON (SPARQL 1.1 Query Results JSON Format) or CSV."""

from __future__ import annotations

import csv
import io
import json
from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Cell, Grid
from shell.plain import render_plain

if TYPE_CHECKING:
    from kb import Table

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
_XSD_STRING = "http://www.w3.org/2001/XMLSchema#string"


def term_text(term: Any) -> str:
    """The bare text of a term: an IRI, a literal's lexical form, a blank node's label; "" where unbound."""
    if term is None:
        return ""
    return str(getattr(term, "value", term))


def _json_term(term: Any) -> dict[str, str]:
    kinds = {"NamedNode": "uri", "BlankNode": "bnode"}
    kind = kinds.get(type(term).__name__, "literal")
    result = {"type": kind, "value": term_text(term)}
    language = getattr(term, "language", None)
    datatype = term_text(getattr(term, "datatype", None))
    if language:
        result["xml:lang"] = language
    elif datatype and datatype != _XSD_STRING:
        result["datatype"] = datatype
    return result


def as_json(table: Table) -> str:
    """One JSON object; unbound variables are left out of a binding, as the format asks."""
    bindings = [
        {name: _json_term(term) for name, term in zip(table.columns, row, strict=True) if term is not None}
        for row in table.rows
    ]
    return json.dumps(
        {"head": {"vars": list(table.columns)}, "results": {"bindings": bindings}}, ensure_ascii=False
    )


def _safe_cell(text: str) -> str:
    """A cell that a spreadsheet would run as a formula starts with an apostrophe instead."""
    return f"'{text}" if text.startswith(_FORMULA_STARTS) else text


def as_csv(table: Table) -> str:
    target = io.StringIO()
    writer = csv.writer(target, lineterminator="\n")
    writer.writerow([_safe_cell(name) for name in table.columns])
    writer.writerows([_safe_cell(term_text(term)) for term in row] for row in table.rows)
    return target.getvalue()


def as_text(table: Table, width: int) -> str:
    rows = tuple(tuple(Cell(kb.visible(term_text(term))) for term in row) for row in table.rows)
    columns = tuple(kb.visible(name) for name in table.columns)
    count = f"{len(rows)} row{'s' * (len(rows) != 1)}"
    return render_plain((Grid("", columns, rows),), width) + f"  ({count})\n"


def table_text(table: Table, form: str, width: int) -> str:
    """The result in the form "table", "json" or "csv"."""
    if form == "json":
        return as_json(table)
    return as_csv(table) if form == "csv" else as_text(table, width)
