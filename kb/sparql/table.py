"""Results of a query as frozen data, and the standard forms they can be written in."""

from __future__ import annotations

from typing import Any, Literal

import msgspec

from kb.text import formula_safe
from kb.vocabulary import XSD_STRING

TermKind = Literal["iri", "literal", "blank"]
ResultKind = Literal["select", "ask", "graph"]


class Term(msgspec.Struct, frozen=True, array_like=True):
    """An RDF 1.1 term. `datatype` is set for every literal, `language` for a language-tagged one."""

    kind: TermKind
    value: str
    datatype: str | None = None
    language: str | None = None


class Table(msgspec.Struct, frozen=True, kw_only=True):
    """What a query gave. A row has one term for each column, None where the variable is unbound.

    `ask` has no columns and its truth in `boolean`; `graph` (CONSTRUCT, DESCRIBE) has the columns
    subject, predicate and object. `truncated` says that there was more than the limits let through.
    """

    kind: ResultKind
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[Term | None, ...], ...] = ()
    boolean: bool | None = None
    truncated: bool = False

    def as_json(self) -> str:
        return to_json(self)

    def as_csv(self) -> str:
        return to_csv(self)


def _json_term(term: Term) -> dict[str, str]:
    if term.kind == "iri":
        return {"type": "uri", "value": term.value}
    if term.kind == "blank":
        return {"type": "bnode", "value": term.value}
    found = {"type": "literal", "value": term.value}
    if term.language is not None:
        found["xml:lang"] = term.language
    elif term.datatype not in (None, XSD_STRING):
        found["datatype"] = str(term.datatype)
    return found


def to_json(table: Table) -> str:
    """SPARQL 1.1 Query Results JSON Format (W3C Recommendation of 21 March 2013).

    A graph is given as a table of its triples. A cut result has `"truncated": true` in its head,
    a key of our own that other readers pass over.
    """
    head: dict[str, Any] = {}
    document: dict[str, Any] = {"head": head}
    if table.kind == "ask":
        document["boolean"] = table.boolean
    else:
        head["vars"] = list(table.columns)
        bindings = [
            {
                name: _json_term(term)
                for name, term in zip(table.columns, row, strict=True)
                if term is not None
            }
            for row in table.rows
        ]
        document["results"] = {"bindings": bindings}
    if table.truncated:
        head["truncated"] = True
    return msgspec.json.format(msgspec.json.encode(document), indent=2).decode()


def _csv_cell(text: str) -> str:
    """A cell that no spreadsheet takes for a formula, quoted where RFC 4180 asks for it."""
    text = formula_safe(text)
    if any(character in text for character in '",\r\n'):
        return '"' + text.replace('"', '""') + '"'
    return text


def _csv_term(term: Term | None) -> str:
    if term is None:
        return ""
    return _csv_cell(f"_:{term.value}" if term.kind == "blank" else term.value)


def to_csv(table: Table) -> str:
    """SPARQL 1.1 Query Results CSV Format (W3C Recommendation of 21 March 2013), lines ended by CR LF.

    Departs from it in one point: a cell that begins with `=`, `+`, `-`, `@`, a tab or a carriage return
    gets an apostrophe before it, since spreadsheets would run it. An ASK is one column, `boolean`.
    """
    if table.kind == "ask":
        return f"boolean\r\n{'true' if table.boolean else 'false'}\r\n"
    lines = [",".join(_csv_cell(column) for column in table.columns)]
    lines += [",".join(_csv_term(term) for term in row) for row in table.rows]
    return "".join(f"{line}\r\n" for line in lines)
