"""The named queries of `kb/queries`: read, checked against their header, filled with typed constants."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import msgspec
import pyoxigraph

from kb.errors import StoreUnavailableError, UsageError
from kb.text import Pattern
from kb.vocabulary import XSD_DATE

QUERIES = Path(__file__).parent.parent / "queries"

Constant = str | datetime.date

_PARAMETER = Pattern(r"^# \$(\w+): (iri|date|text)( list)? - \S.*$", re.MULTILINE)
_COLUMN = Pattern(r"^# \?(\w+): \S.*$", re.MULTILINE)
_PLACEHOLDER = Pattern(r"\$(\w+)")
_COMMENT = Pattern(r"^#.*\n?", re.MULTILINE)


class Parameter(msgspec.Struct, frozen=True):
    """A placeholder `$name` of a query: `kind` is iri, date or text; a list may have any number of values."""

    name: str
    kind: str
    many: bool


class NamedQuery(msgspec.Struct, frozen=True):
    """A query of `kb/queries`: its header says what for, then names its parameters and columns."""

    name: str
    purpose: str
    parameters: tuple[Parameter, ...]
    columns: tuple[str, ...]
    text: str


def query_names() -> tuple[str, ...]:
    """The names of all named queries, in alphabetical order."""
    return tuple(sorted(path.stem for path in QUERIES.glob("*.rq")))


@cache
def named_query(name: str) -> NamedQuery:
    """The query in `<name>.rq`; `StoreUnavailableError` if the installation lacks it."""
    try:
        source = (QUERIES / f"{name}.rq").read_text(encoding="utf-8")
    except OSError as error:
        raise StoreUnavailableError(f"The query {name} is missing from this installation.") from error
    header = "".join(_COMMENT.findall(source))
    return NamedQuery(
        name=name,
        purpose=header.split("\n#\n", 1)[0].removeprefix("# ").replace("\n# ", " "),
        parameters=tuple(Parameter(m[1], m[2], bool(m[3])) for m in _PARAMETER.finditer(header)),
        columns=tuple(m[1] for m in _COLUMN.finditer(header)),
        text=_COMMENT.sub("", source),
    )


def _constant(name: str, parameter: Parameter, value: Constant) -> str:
    """One typed term in SPARQL syntax, escaped by the engine's own writer."""
    try:
        if parameter.kind == "iri" and isinstance(value, str):
            return str(pyoxigraph.NamedNode(value))
        if parameter.kind == "text" and isinstance(value, str):
            return str(pyoxigraph.Literal(value))
        if parameter.kind == "date" and isinstance(value, datetime.date):
            day = f"{value.year:04}-{value.month:02}-{value.day:02}"
            return str(pyoxigraph.Literal(day, datatype=pyoxigraph.NamedNode(XSD_DATE)))
    except ValueError as error:
        raise UsageError(
            f"{value!r} is not fit for ${parameter.name} of the query {name}: {error}."
        ) from error
    raise UsageError(f"${parameter.name} of the query {name} is a {parameter.kind}, not {value!r}.")


def fill(name: str, values: Mapping[str, Constant | tuple[Constant, ...]]) -> str:
    """The SPARQL text of a named query with its parameters in place; `UsageError` if one does not fit."""
    query = named_query(name)
    if {parameter.name for parameter in query.parameters} != set(values):
        raise UsageError(f"The query {name} takes {[parameter.name for parameter in query.parameters]}.")
    terms: dict[str, str] = {}
    for parameter in query.parameters:
        given = values[parameter.name]
        several = given if isinstance(given, tuple) else (given,)
        if not parameter.many and len(several) != 1:
            raise UsageError(f"${parameter.name} of the query {name} takes one value.")
        terms[parameter.name] = " ".join(_constant(name, parameter, value) for value in several)
    return _PLACEHOLDER.sub(lambda match: terms[match[1]], query.text)
