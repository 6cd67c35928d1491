"""The graph of a rule base checked against the SHACL shapes, each finding at its line in the rule books."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import pyshacl
from rdflib import RDF, SH, Graph, URIRef
from rdflib import Literal as RdfLiteral
from rdflib.term import Node

import kb.vocabulary as v
from kb.errors import Location, Problem
from kb.files import data_folder
from kb.graph import Literal, Quad, parse_nquads

_WHOLE_GRAPH = Location("")


class _Record(NamedTuple):
    """The nearest record that has a place in a source file."""

    at: Location
    name: str


def load_shapes() -> Graph:
    """The shapes that come with the program; nothing is imported or fetched."""
    return Graph().parse(data_folder("ontology") / "shapes.ttl", format="turtle")


def _to_rdflib(quads: Iterable[Quad]) -> Graph:
    """All asserted graphs in one, since rules and items stand in different ones."""
    graph = Graph(bind_namespaces="none")
    # Making a term costs rdflib more than looking one up, and most are repeated.
    known: dict[str | Literal, Node] = {}
    for quad in quads:
        if quad.graph.endswith("graph/derived"):
            continue
        terms = (quad.subject, quad.predicate, quad.object)
        for term in terms:
            if term not in known:
                known[term] = _to_node(term)
        graph.add((known[quad.subject], known[quad.predicate], known[quad.object]))
    return graph


def _to_node(term: str | Literal) -> Node:
    if not isinstance(term, Literal):
        return URIRef(term)
    # rdflib takes "x" and "x"^^xsd:string for two things.
    datatype = None if term.datatype == v.XSD_STRING else URIRef(term.datatype)
    return RdfLiteral(term.value, datatype=datatype, normalize=False)


def _text(graph: Graph, subject: Node, predicate: str) -> str | None:
    found = graph.value(subject, URIRef(predicate), any=True)
    return None if found is None else str(found)


def _parents(iri: str) -> Iterator[str]:
    """The IRI and the IRIs that it lies below, nearest first."""
    while iri.count("/") > 2:
        yield iri
        iri = iri.rpartition("/")[0]


def _record_of(data: Graph, focus: Node) -> _Record:
    """The record that the node is, or is a part of; the whole graph if it is none."""
    for iri in _parents(str(focus)):
        node = URIRef(iri)
        file = _text(data, node, v.CB_FILE)
        line, column = _text(data, node, v.CB_LINE), _text(data, node, v.CB_COLUMN)
        if file is not None and line is not None and line.isdigit():
            at = Location(file, int(line), int(column) if column and column.isdigit() else 1)
            return _Record(at, _name(data, node))
    return _Record(_WHOLE_GRAPH, _name(data, focus))


def _name(data: Graph, node: Node) -> str:
    """The id of a record; a definition or tolerance goes by its clause."""
    clause = data.value(node, URIRef(v.CB_CITES_CLAUSE), any=True)
    stated_in = None if clause is None else _text(data, clause, v.DCTERMS_IDENTIFIER)
    return _text(data, node, v.DCTERMS_IDENTIFIER) or stated_in or str(node)


def _finding(data: Graph, shapes: Graph, report: Graph, result: Node) -> Problem:
    focus = report.value(result, SH.focusNode)
    shape = report.value(result, SH.sourceShape)
    value = report.value(result, SH.value)
    if focus is None or shape is None:
        raise ValueError("a SHACL result without focus node or source shape")
    record = _record_of(data, focus)
    message = _text(report, result, str(SH.resultMessage)) or "It does not fit the shape."
    found = "" if value is None or value == focus else f" Found: {_name(data, value)}."
    warning = report.value(result, SH.resultSeverity) == SH.Warning
    return Problem(
        at=record.at,
        code=str(shape).rpartition("#")[2],
        message=f"{record.name}: {message}{found}",
        remedy=_text(shapes, shape, str(SH.description)) or "",
        severity="warning" if warning else "error",
    )


def validate(nquads: bytes, shapes: Graph | None = None) -> tuple[Problem, ...]:
    """What in the graph does not fit the shapes (SHACL Core 1.0), sorted by place, each once.

    `nquads` is what `kb.graph.to_nquads` gives. The derived graph is left out.
    """
    shapes = shapes if shapes is not None else load_shapes()
    data = _to_rdflib(parse_nquads(nquads))
    conforms, report, _ = pyshacl.validate(
        data,
        shacl_graph=shapes,
        inference="none",
        do_owl_imports=False,
        meta_shacl=False,
        advanced=False,
        js=False,
    )
    if conforms:
        return ()
    if not isinstance(report, Graph):
        raise ValueError(f"pySHACL gave no report: {report}")
    results = report.subjects(RDF.type, SH.ValidationResult)
    return tuple(sorted({_finding(data, shapes, report, result) for result in results}))
