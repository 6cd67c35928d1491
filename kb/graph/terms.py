"""Quads and their canonical N-Quads form (RDF 1.1 N-Quads, section 4), without an RDF library.

An IRI is a plain `str`, a literal a `Literal`; there are no blank nodes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from kb.text import Pattern
from kb.vocabulary import XSD_STRING


class Literal(NamedTuple):
    """A typed literal; no language tags, since engines change them on load."""

    value: str
    datatype: str = XSD_STRING


class Quad(NamedTuple):
    """Subject, predicate, object and graph; all but a literal object are IRIs."""

    subject: str
    predicate: str
    object: str | Literal
    graph: str


_ECHAR = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\r": "\\r"}
_MUST_ESCAPE = Pattern(r'[\\"\n\r]')


def format_literal(literal: Literal) -> str:
    quoted = '"' + _MUST_ESCAPE.sub(lambda match: _ECHAR[match.group()], literal.value) + '"'
    return quoted if literal.datatype == XSD_STRING else f"{quoted}^^<{literal.datatype}>"


def format_quad(quad: Quad) -> str:
    """One line of canonical N-Quads, without its line end."""
    target = format_literal(quad.object) if isinstance(quad.object, Literal) else f"<{quad.object}>"
    return f"<{quad.subject}> <{quad.predicate}> {target} <{quad.graph}> ."


def format_nquads(quads: Iterable[Quad]) -> bytes:
    """Canonical N-Quads: each quad once, lines sorted by code point, UTF-8."""
    lines = sorted({format_quad(quad) for quad in quads})
    return "".join(f"{line}\n" for line in lines).encode()


_LINE = Pattern(
    r"<([^<>]*)> <([^<>]*)> "
    r'(?:<([^<>]*)>|"([^"\\]*(?:\\.[^"\\]*)*)"(?:\^\^<([^<>]*)>)?) '
    r"<([^<>]*)> \."
)
_UNESCAPE = {"\\\\": "\\", '\\"': '"', "\\n": "\n", "\\r": "\r"}
_ESCAPE = Pattern(r"\\.")


def parse_nquads(data: bytes) -> Iterator[Quad]:
    """The quads of canonical N-Quads as `format_nquads` writes them.

    Only for what this program wrote itself; `ValueError` names the line that is not canonical.
    """
    for number, line in enumerate(data.decode().split("\n"), start=1):
        if not line:
            continue
        match = _LINE.fullmatch(line)
        if match is None:
            raise ValueError(f"line {number} is not a canonical N-Quads line")
        subject, predicate, iri, text, datatype, graph = match.groups()
        if iri is not None:
            yield Quad(subject, predicate, iri, graph)
        else:
            value = _ESCAPE.sub(lambda found: _UNESCAPE[found.group()], text) if "\\" in text else text
            yield Quad(subject, predicate, Literal(value, datatype or XSD_STRING), graph)
