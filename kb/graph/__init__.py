"""The rule base as an RDF dataset: written, read back, exported.

Names are loaded when first used: asking a question needs the names of things, not the writers.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.graph.exporting import FORMATS, export, export_bytes
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

__getattr__ = loader(
    __name__,
    {
        "kb.graph.exporting": ("FORMATS", "export", "export_bytes"),
        "kb.graph.names": ("Names",),
        "kb.graph.reading": ("quads_of", "read_base"),
        "kb.graph.terms": ("Literal", "Quad", "format_nquads", "parse_nquads"),
        "kb.graph.writing": ("to_nquads", "to_quads"),
    },
)
