"""From a rule base to quads: a named graph for each edition, one for the vocabulary, one for the books."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from types import MappingProxyType
from typing import Any, TypeVar

import kb.vocabulary as v
from kb.graph import fields as f
from kb.graph import parts
from kb.graph.derived import derived_triples
from kb.graph.names import Names, check_namespace
from kb.graph.parts import Triple
from kb.graph.terms import Literal, Quad, format_nquads
from kb.model.conditions import ALWAYS
from kb.model.records import (
    Aspect,
    Clause,
    Definition,
    Delegation,
    Edition,
    Fact,
    Group,
    Item,
    Rule,
    RuleBase,
    SuggestedWord,
    Tolerance,
)

_Stated = TypeVar("_Stated", Definition, Tolerance)

_MODALITY_CLASS = MappingProxyType(
    {
        "must": v.ODRL_DUTY,
        "must_not": v.ODRL_PROHIBITION,
        "may": v.ODRL_PERMISSION,
        "need_not": v.CB_EXEMPTION,
    }
)


def _record(
    names: Names, subject: str, record: Any, table: Iterable[f.Field], classes: tuple[str, ...], order: int
) -> Iterator[Triple]:
    """What every record has: classes, id, plain fields, order and location."""
    yield from parts.typed(subject, *classes)
    identifier = getattr(record, "id", None)
    if identifier is not None:
        yield subject, v.DCTERMS_IDENTIFIER, Literal(identifier)
    yield from parts.plain(names, subject, table, record)
    yield parts.ordered(subject, order)
    yield from parts.located(subject, record.at)


class _Writer:
    """Triples of each record of one base."""

    def __init__(self, base: RuleBase) -> None:
        self.base = base
        self.names = Names(base.service.namespace)
        self.units = {fact.id: fact.unit for fact in base.facts}
        self.edition_of = {clause.id: clause.edition for clause in base.clauses}
        self.acts = {aspect.id for aspect in base.aspects if aspect.kind == "act"}
        self.book_of = {edition.id: edition.book for edition in base.editions}

    def vocabulary(self) -> Iterator[Triple]:
        base, names = self.base, self.names
        service = names.of("service", base.service.id)
        yield from _record(names, service, base.service, f.SERVICE, (v.CB_SERVICE, v.PROV_ORGANIZATION), 1)
        for order, authority in enumerate(base.authorities, start=1):
            node = names.of("authority", authority.id)
            yield from _record(names, node, authority, f.AUTHORITY, (v.CB_AUTHORITY, v.PROV_AGENT), order)
        for order, fact in enumerate(base.facts, start=1):
            yield from self.fact(fact, order)
        for order, group in enumerate(base.groups, start=1):
            yield from self.group(group, order)
        for order, aspect in enumerate(base.aspects, start=1):
            yield from self.aspect(aspect, order)
        yield from parts.typed(names.items_scheme, v.SKOS_CONCEPT_SCHEME)
        for order, item in enumerate(base.items, start=1):
            yield from self.item(item, order)
        for order, word in enumerate(base.accepted_words, start=1):
            yield from self.word(word, order)
        for order, condition in enumerate(base.exclusions, start=1):
            node = f"{names.namespace}exclusion/{order}"
            yield from parts.typed(node, v.CB_EXCLUSION)
            yield parts.ordered(node, order)
            yield node, v.CB_WHEN, f"{node}/when"
            yield from parts.condition(names, f"{node}/when", condition, self.units)

    def fact(self, fact: Fact, order: int) -> Iterator[Triple]:
        node = self.names.of("fact", fact.id)
        yield from _record(self.names, node, fact, f.FACT, (v.CB_FACT, v.SKOS_CONCEPT_SCHEME), order)
        yield from self.values("fact", fact, node)

    def values(self, kind: str, owner: Fact | Aspect, scheme: str) -> Iterator[Triple]:
        for order, value in enumerate(owner.values, start=1):
            node = self.names.value(kind, owner.id, value.id)
            yield from _record(self.names, node, value, f.VALUE, (v.CB_VALUE, v.SKOS_CONCEPT), order)
            yield node, v.SKOS_IN_SCHEME, scheme
            if value.within is not None:
                yield node, v.SKOS_BROADER, self.names.value(kind, owner.id, value.within)

    def group(self, group: Group, order: int) -> Iterator[Triple]:
        node = self.names.of("group", group.id)
        yield from _record(self.names, node, group, f.GROUP, (v.CB_GROUP, v.SKOS_COLLECTION), order)
        members = [self.names.value("fact", group.fact, member) for member in group.members]
        yield from parts.several(node, v.SKOS_MEMBER, members)

    def aspect(self, aspect: Aspect, order: int) -> Iterator[Triple]:
        node = self.names.of("aspect", aspect.id)
        act = (v.ODRL_ACTION_CLASS,) if aspect.id in self.acts else ()
        classes = (v.CB_ASPECT, v.SKOS_CONCEPT_SCHEME, *act)
        yield from _record(self.names, node, aspect, f.ASPECT, classes, order)
        yield from self.values("aspect", aspect, node)

    def item(self, item: Item, order: int) -> Iterator[Triple]:
        node = self.names.of("item", item.id)
        yield from _record(self.names, node, item, f.ITEM, (v.CB_ITEM, v.SKOS_CONCEPT), order)
        yield node, v.SKOS_IN_SCHEME, self.names.items_scheme

    def word(self, word: SuggestedWord, order: int) -> Iterator[Triple]:
        """An accepted word, and the sense of the thesaurus that it was taken from."""
        names, origin = self.names, word.origin
        node = names.path("word", word.item, word.word)
        yield from _record(names, node, word, f.ACCEPTED_WORD, (v.CB_ACCEPTED_WORD, v.PROV_ENTITY), order)
        if origin is None:
            return
        thesaurus = names.path("thesaurus", origin.thesaurus, origin.version)
        sense = names.path("sense", origin.thesaurus, origin.version, origin.sense)
        yield node, v.PROV_WAS_DERIVED_FROM, sense
        yield from parts.typed(sense, v.CB_SENSE, v.PROV_ENTITY)
        yield sense, v.DCTERMS_IDENTIFIER, Literal(origin.sense)
        yield sense, v.DCTERMS_IS_PART_OF, thesaurus
        yield from parts.typed(thesaurus, v.PROV_ENTITY)
        yield thesaurus, v.DCTERMS_TITLE, Literal(origin.thesaurus)
        yield thesaurus, v.CB_VERSION, Literal(origin.version)

    def catalogue(self) -> Iterator[Triple]:
        names = self.names
        for order, book in enumerate(self.base.books, start=1):
            node = names.of("book", book.id)
            yield from _record(names, node, book, f.BOOK, (v.CB_BOOK, v.ELI_LEGAL_RESOURCE), order)
        for order, edition in enumerate(self.base.editions, start=1):
            yield from self.edition(edition, order)
        for edition_id, number in sorted({(c.edition, c.number) for c in self.base.clauses}):
            book_id = self.book_of.get(edition_id)
            if book_id is not None:
                work = names.clause_work(book_id, number)
                yield from parts.typed(work, v.CB_CLAUSE_WORK, v.ELI_SUBDIVISION)
                yield work, v.ELI_IS_PART_OF, names.of("book", book_id)
                yield work, v.CB_NUMBER, Literal(number)

    def edition(self, edition: Edition, order: int) -> Iterator[Triple]:
        node = self.names.of("edition", edition.id)
        classes = (v.CB_EDITION, v.ELI_LEGAL_EXPRESSION)
        yield from _record(self.names, node, edition, f.EDITION, classes, order)

    def clause(self, clause: Clause, order: int) -> Iterator[Triple]:
        node = self.names.of("clause", clause.id)
        classes = (v.CB_CLAUSE, v.ELI_LEGAL_EXPRESSION, v.PROV_ENTITY)
        yield from _record(self.names, node, clause, f.CLAUSE, classes, order)
        book = self.book_of.get(clause.edition)
        if book is not None:
            yield node, v.ELI_REALIZES, self.names.clause_work(book, clause.number)

    def delegation(self, delegation: Delegation, order: int) -> Iterator[Triple]:
        node = self.names.of("delegation", delegation.id)
        return _record(self.names, node, delegation, f.DELEGATION, (v.CB_DELEGATION,), order)

    def definition(self, node: str, definition: Definition, order: int) -> Iterator[Triple]:
        yield from _record(self.names, node, definition, f.DEFINITION, (v.CB_DEFINITION,), order)
        yield node, v.CB_WHEN, f"{node}/when"
        yield from parts.condition(self.names, f"{node}/when", definition.condition, self.units)

    def tolerance(self, node: str, tolerance: Tolerance, order: int) -> Iterator[Triple]:
        yield from _record(self.names, node, tolerance, f.TOLERANCE, (v.CB_TOLERANCE,), order)
        yield node, v.CB_APPLIES_TO, f"{node}/applies-to"
        yield from parts.interval(self.names, f"{node}/applies-to", tolerance.applies, tolerance.unit)
        yield from parts.quantity(node, v.CB_ALLOW, f"{node}/allow", tolerance.allow, tolerance.unit)

    def rule(self, rule: Rule, order: int) -> Iterator[Triple]:
        names = self.names
        node = names.of("rule", rule.id)
        classes = (v.CB_RULE, _MODALITY_CLASS[rule.modality])
        yield from _record(names, node, rule, f.RULE, classes, order)
        yield from parts.plain(names, node, f.SCOPE, rule.scope)
        if rule.scope.alternatives is None:
            for item in rule.scope.items:
                yield node, v.ODRL_TARGET, names.of("item", item)
        if rule.aspect in self.acts:
            yield node, v.ODRL_ACTION, names.of("aspect", rule.aspect)
        yield node, v.CB_SPEAKS_OF, f"{node}/value"
        yield from parts.rule_value(names, f"{node}/value", rule.value, rule.aspect)
        if rule.condition != ALWAYS:
            yield node, v.CB_WHEN, f"{node}/when"
            yield from parts.condition(names, f"{node}/when", rule.condition, self.units)

    def books(self) -> Iterator[tuple[str, Iterator[Triple]]]:
        """The triples of each clause, and of each thing that cites one, with the clause's id."""
        base = self.base
        for order, clause in enumerate(base.clauses, start=1):
            yield clause.id, self.clause(clause, order)
        for order, delegation in enumerate(base.delegations, start=1):
            yield delegation.clause, self.delegation(delegation, order)
        for order, (node, definition) in enumerate(self.numbered("definition", base.definitions), start=1):
            yield definition.clause, self.definition(node, definition, order)
        for order, (node, tolerance) in enumerate(self.numbered("tolerance", base.tolerances), start=1):
            yield tolerance.clause, self.tolerance(node, tolerance, order)
        for order, rule in enumerate(base.rules, start=1):
            yield rule.clause, self.rule(rule, order)

    def numbered(self, kind: str, records: Iterable[_Stated]) -> Iterator[tuple[str, _Stated]]:
        """Records without an id, each with an IRI numbered within its clause."""
        counts: Counter[str] = Counter()
        for record in records:
            counts[record.clause] += 1
            yield f"{self.names.of(kind, record.clause)}/{counts[record.clause]}", record

    def graph_of(self, clause: str) -> str:
        edition = self.edition_of.get(clause)
        return self.names.catalogue_graph if edition is None else self.names.edition_graph(edition)


def to_quads(base: RuleBase) -> Iterator[Quad]:
    """Every record of the base as quads, and what is derived from them in a graph of its own.

    Raises `InvalidDataError` if the namespace of the service cannot begin an IRI.
    """
    check_namespace(base.service.namespace, base.service.at)
    writer = _Writer(base)
    names = writer.names
    for graph, triples in (
        (names.vocabulary_graph, writer.vocabulary()),
        (names.catalogue_graph, writer.catalogue()),
        *((writer.graph_of(clause), triples) for clause, triples in writer.books()),
        (names.derived_graph, derived_triples(base, names)),
    ):
        for triple in triples:
            yield Quad(*triple, graph)


def to_nquads(base: RuleBase) -> bytes:
    """The base as canonical N-Quads, sorted; the same base gives the same bytes."""
    return format_nquads(to_quads(base))
