"""The rule base for other RDF tools: Turtle (asserted triples only), N-Quads and JSON-LD (all graphs)."""

from __future__ import annotations

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, BinaryIO, Literal

import kb.vocabulary as v
from kb.errors import UsageError
from kb.files import data_folder, write_atomically
from kb.graph import terms
from kb.graph.names import Names
from kb.graph.writing import to_nquads, to_quads
from kb.model.records import RuleBase

Format = Literal["turtle", "nquads", "jsonld"]
# Plain enough to need no escape in Turtle and JSON-LD.
_LOCAL_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_BARE_IN_TURTLE = frozenset({v.XSD_INTEGER, v.XSD_BOOLEAN})

FORMATS: tuple[Format, ...] = ("turtle", "nquads", "jsonld")


def _short(iri: str) -> str:
    """The IRI with a prefix where it is a term of a known vocabulary, else unchanged."""
    for prefix, namespace in v.PREFIXES.items():
        if iri.startswith(namespace) and _LOCAL_NAME.fullmatch(iri, len(namespace)):
            return f"{prefix}:{iri[len(namespace) :]}"
    return iri


def _turtle_term(term: str | terms.Literal) -> str:
    if isinstance(term, terms.Literal):
        if term.datatype in _BARE_IN_TURTLE:
            return term.value
        quoted = terms.format_literal(terms.Literal(term.value))
        return quoted if term.datatype == v.XSD_STRING else f"{quoted}^^{_turtle_term(term.datatype)}"
    short = _short(term)
    return f"<{term}>" if short == term else short


def _turtle(base: RuleBase) -> bytes:
    """The asserted graphs in one, since Turtle has no named graphs; what is derived is left out."""
    derived = Names(base.service.namespace).derived_graph
    subjects: dict[str, dict[str, set[str]]] = defaultdict(lambda: defaultdict(set))
    for quad in to_quads(base):
        if quad.graph != derived:
            verb = "a" if quad.predicate == v.RDF_TYPE else _turtle_term(quad.predicate)
            subjects[quad.subject][verb].add(_turtle_term(quad.object))
    blocks = ["\n".join(f"@prefix {prefix}: <{iri}> ." for prefix, iri in sorted(v.PREFIXES.items()))]
    for subject, properties in sorted(subjects.items()):
        lines = [f"{verb} {', '.join(sorted(found))}" for verb, found in sorted(properties.items())]
        blocks.append(f"<{subject}> " + " ;\n    ".join(lines) + " .")
    return ("\n\n".join(blocks) + "\n").encode()


def _json_value(found: str | terms.Literal, coerced: str | None) -> Any:
    """A value as the context has it read: a bare string where the context gives its type."""
    if not isinstance(found, terms.Literal):
        return _short(found) if coerced == "@id" else {"@id": _short(found)}
    if found.datatype == v.XSD_STRING:
        return found.value if coerced is None else {"@value": found.value}
    datatype = _short(found.datatype)
    return found.value if coerced == datatype else {"@value": found.value, "@type": datatype}


def _json_nodes(quads: Iterable[terms.Quad], coercions: Mapping[str, str]) -> list[dict[str, Any]]:
    nodes: dict[str, dict[str, list[Any]]] = defaultdict(lambda: defaultdict(list))
    for quad in quads:
        if quad.predicate == v.RDF_TYPE and isinstance(quad.object, str):
            nodes[quad.subject]["@type"].append(_short(quad.object))
            continue
        name = _short(quad.predicate)
        nodes[quad.subject][name].append(_json_value(quad.object, coercions.get(name)))
    return [
        {"@id": subject}
        | {name: values[0] if len(values) == 1 else values for name, values in properties.items()}
        for subject, properties in nodes.items()
    ]


def _jsonld(base: RuleBase) -> bytes:
    """JSON-LD 1.1, one node object for each named graph, with the context inside: nothing is fetched."""
    context = json.loads((data_folder("ontology") / "context.jsonld").read_text(encoding="utf-8"))["@context"]
    coercions = {name: term["@type"] for name, term in context.items() if isinstance(term, dict)}
    by_graph: dict[str, list[terms.Quad]] = defaultdict(list)
    for quad in sorted(set(to_quads(base)), key=terms.format_quad):
        by_graph[quad.graph].append(quad)
    graphs = [{"@id": name, "@graph": _json_nodes(by_graph[name], coercions)} for name in sorted(by_graph)]
    document = {"@context": context, "@graph": graphs}
    return (json.dumps(document, ensure_ascii=False, indent=1) + "\n").encode()


def export_bytes(base: RuleBase, format: str) -> bytes:
    """The base in one of `FORMATS`; the same base gives the same bytes. Raises `UsageError` for others."""
    if format == "nquads":
        return to_nquads(base)
    if format == "turtle":
        return _turtle(base)
    if format == "jsonld":
        return _jsonld(base)
    raise UsageError(f"There is no format {format!r}; choose one of {', '.join(FORMATS)}.")


def export(base: RuleBase, format: str, target: Path | BinaryIO) -> None:
    """Write the base to a file (whole or not at all) or to a binary stream."""
    data = export_bytes(base, format)
    if isinstance(target, Path):
        write_atomically(target, data)
    else:
        target.write(data)
