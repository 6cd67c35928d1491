"""What somebody who writes a query over rule books may want to name: prefixes, terms, and records."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

import kb.vocabulary as v
from kb.graph.names import Names
from kb.model.records import RuleBase


class QueryTerm(msgspec.Struct, frozen=True):
    """A text to write in a query, and what it is: `kind` is "prefix", "class", "property" or "record"."""

    text: str
    about: str
    kind: str


def query_terms(base: RuleBase) -> tuple[QueryTerm, ...]:
    """The prefixes that need no declaration, the terms of the graph, and the records by their label."""
    prefixes = [QueryTerm(f"{prefix}:", iri, "prefix") for prefix, iri in v.PREFIXES.items()]
    return (
        *prefixes,
        *sorted(_terms(), key=lambda term: (not term.text.startswith("skos:"), term.text)),
        *_records(base),
    )


def _terms() -> Iterator[QueryTerm]:
    """By the custom of all these vocabularies a class is written with a capital, a property without."""
    bare = {*v.PREFIXES.values()}
    for name, iri in vars(v).items():
        if not (name.isupper() and isinstance(iri, str)) or iri in bare:
            continue
        for prefix, namespace in v.PREFIXES.items():
            if iri.startswith(namespace) and prefix not in ("xsd", "unit"):
                local = iri.removeprefix(namespace)
                kind = "class" if local[:1].isupper() else "property"
                yield QueryTerm(f"{prefix}:{local}", kind, kind)


def _records(base: RuleBase) -> Iterator[QueryTerm]:
    names = Names(base.service.namespace)
    told = [fact for fact in base.facts if fact.family != "worn"]  # one for each item, by its label
    for kind, records in (("item", base.items), ("fact", told), ("aspect", base.aspects)):
        for record in records:
            yield QueryTerm(f"<{names.of(kind, record.id)}>", record.label, "record")
    for fact in told:
        for value in fact.values:
            yield QueryTerm(f"<{names.value('fact', fact.id, value.id)}>", value.label, "record")
    for clause in base.clauses:
        yield QueryTerm(f"<{names.of('clause', clause.id)}>", f"clause {clause.number}", "record")
