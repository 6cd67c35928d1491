"""IRIs made from ids, and ids read back from IRIs."""

from __future__ import annotations

from urllib.parse import quote, unquote

from kb.errors import InvalidDataError, Location, Problem
from kb.text import Pattern

_NOT_IN_IRI = Pattern(r'[\x00-\x20<>"{}|^`\\]')
# Facts whose values have a short IRI of their own: `grade/K5`, not `fact/grade/K5`.
_SHORT_FACTS = ("grade", "branch", "rig")
# Kinds whose ids have parts: "<book>/<edition>/<number or name>".
_COMPOUND = frozenset({"edition", "clause", "rule", "delegation", "definition", "tolerance", "graph/edition"})


def _encode_part(part: str) -> str:
    """Percent-encoding of all but unreserved characters (RFC 3986, section 2.3); reversible."""
    encoded = quote(part, safe="")
    return encoded.replace(".", "%2E") if encoded in (".", "..") else encoded


def _encode_id(kind: str, identifier: str) -> str:
    """An id as path segments: at most three, since a clause number may hold a `/` of its own."""
    parts = identifier.split("/", 2) if kind in _COMPOUND else [identifier]
    return "/".join(_encode_part(part) for part in parts)


class Names:
    """The IRIs of one service's namespace."""

    def __init__(self, namespace: str) -> None:
        self.namespace = namespace
        self.items_scheme = namespace + "items"
        self.vocabulary_graph = namespace + "graph/vocabulary"
        self.catalogue_graph = namespace + "graph/catalogue"
        self.derived_graph = namespace + "graph/derived"

    def of(self, kind: str, identifier: str) -> str:
        """The IRI of a record: `of("item", "cap")`."""
        return f"{self.namespace}{kind}/{_encode_id(kind, identifier)}"

    def path(self, kind: str, *parts: str) -> str:
        """The IRI of something that is told apart by several texts, each of which may hold anything."""
        return "/".join([f"{self.namespace}{kind}", *map(_encode_part, parts)])

    def id_of(self, kind: str, iri: str) -> str:
        """The id of a record from its IRI; `ValueError` if it is none of that kind."""
        start = f"{self.namespace}{kind}/"
        if not iri.startswith(start):
            raise ValueError(f"{iri} is no {kind}")
        return unquote(iri[len(start) :])

    def _value_folder(self, kind: str, owner: str) -> str:
        if kind == "fact" and owner in _SHORT_FACTS:
            return owner
        return f"{kind}/{_encode_part(owner)}"

    def value(self, kind: str, owner: str, value: str) -> str:
        """The IRI of a value of a fact or an aspect: `value("fact", "weather", "foul")`."""
        return f"{self.namespace}{self._value_folder(kind, owner)}/{_encode_part(value)}"

    def value_id(self, kind: str, owner: str, iri: str) -> str:
        start = f"{self.namespace}{self._value_folder(kind, owner)}/"
        if not iri.startswith(start):
            raise ValueError(f"{iri} is no value of the {kind} {owner}")
        return unquote(iri[len(start) :])

    def clause_work(self, book: str, number: str) -> str:
        """The IRI that a clause keeps through all editions of its book."""
        return f"{self.namespace}clause/{_encode_part(book)}/{_encode_part(number)}"

    def edition_graph(self, edition: str) -> str:
        return self.of("graph/edition", edition)


def check_namespace(namespace: str, at: Location) -> None:
    """Raise `InvalidDataError` where IRIs cannot be made from the namespace."""
    scheme, colon, rest = namespace.partition(":")
    if colon and rest and scheme.isalnum() and not _NOT_IN_IRI.search(namespace) and namespace[-1] in "/#":
        return
    problem = Problem(
        at=at,
        code="bad-namespace",
        message=f"The namespace {namespace!r} is not an IRI that ends in / or #.",
        remedy='Write one like "https://sls.example/", without spaces, quotes or angle brackets.',
    )
    raise InvalidDataError((problem,))
