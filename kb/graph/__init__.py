"""The rule base as an RDF dataset: written, read back, exported."""

from kb.graph.export import FORMATS, export, export_bytes
from kb.graph.names import Names
from kb.graph.reading import quads_of, read_base
from kb.graph.terms import Literal, Quad, format_nquads, parse_nquads
from kb.graph.writing import to_nquads, to_quads

__all__ = [
    "FORMATS",
    "Literal",
    "Names",
    "Quad",
    "export",
    "export_bytes",
    "format_nquads",
    "parse_nquads",
    "quads_of",
    "read_base",
    "to_nquads",
    "to_quads",
]
