"""From quads back to a rule base: `read_base(to_quads(base)) == base`."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Any, Protocol, TypeVar, cast

import msgspec

import kb.model.records as r
import kb.vocabulary as v
from kb.errors import Location, StoreUnavailableError
from kb.graph import fields as f
from kb.graph.names import Names
from kb.graph.terms import Literal, Quad
from kb.model.conditions import ALWAYS, AllOf, AnyOf, Condition, NotOf, Test
from kb.model.values import Choices, Interval, Ranges, ValueSet

_Record = TypeVar("_Record", bound=msgspec.Struct)
_Object = str | Literal


class _Term(Protocol):
    """An RDF term as engines give it: `value`, and `datatype` if it is a literal."""

    @property
    def value(self) -> str: ...


class _StoreQuad(Protocol):
    @property
    def subject(self) -> Any: ...
    @property
    def predicate(self) -> Any: ...
    @property
    def object(self) -> Any: ...
    @property
    def graph_name(self) -> Any: ...


def _plain_object(term: Any) -> _Object:
    datatype = getattr(term, "datatype", None)
    value = cast("_Term", term).value
    return value if datatype is None else Literal(value, datatype.value)


def quads_of(store: Iterable[_StoreQuad]) -> Iterator[Quad]:
    """The quads of a pyoxigraph store, or of any other source of quads with terms as objects."""
    for quad in store:
        subject, predicate, graph = (term.value for term in (quad.subject, quad.predicate, quad.graph_name))
        yield Quad(subject, predicate, _plain_object(quad.object), graph)


class _Reader:
    """An index of quads by subject and property, and one method for each kind of record."""

    def __init__(self, quads: Iterable[Quad]) -> None:
        self.index: dict[str, dict[str, list[_Object]]] = defaultdict(dict)
        self.members: dict[str, list[str]] = defaultdict(list)
        for subject, predicate, found, graph in quads:
            if graph.endswith("graph/derived"):
                continue
            objects = self.index[subject].setdefault(predicate, [])
            if found not in objects:
                objects.append(found)
                if predicate == v.RDF_TYPE:
                    self.members[cast("str", found)].append(subject)
        services = self.members[v.CB_SERVICE]
        if len(services) != 1:
            raise ValueError(f"it holds {len(services)} services instead of one")
        self.names = Names(self.text(services[0], v.CB_NAMESPACE))
        self.values_in = self._by_scheme()

    def _by_scheme(self) -> dict[str, list[str]]:
        found: dict[str, list[str]] = defaultdict(list)
        for node in self.members[v.CB_VALUE]:
            found[self.node(node, v.SKOS_IN_SCHEME)].append(node)
        return found

    # One property

    def all(self, subject: str, predicate: str) -> list[_Object]:
        return self.index[subject].get(predicate, []) if subject in self.index else []

    def optional(self, subject: str, predicate: str) -> _Object | None:
        found = self.all(subject, predicate)
        if len(found) > 1:
            raise ValueError(f"{subject} has {len(found)} values of {predicate} instead of one")
        return found[0] if found else None

    def text(self, subject: str, predicate: str) -> str:
        found = self.optional(subject, predicate)
        if not isinstance(found, Literal):
            raise ValueError(f"{subject} has no {predicate}")
        return found.value

    def node(self, subject: str, predicate: str) -> str:
        found = self.optional(subject, predicate)
        if found is None or isinstance(found, Literal):
            raise ValueError(f"{subject} has no {predicate}")
        return found

    def optional_node(self, subject: str, predicate: str) -> str | None:
        return self.node(subject, predicate) if self.all(subject, predicate) else None

    def flag(self, subject: str, predicate: str) -> bool:
        return self.text(subject, predicate) == "true"

    def by_order(self, nodes: Iterable[_Object]) -> list[str]:
        return sorted((cast("str", n) for n in nodes), key=lambda node: int(self.text(node, v.CB_ORDER)))

    def several(self, subject: str, predicate: str) -> list[_Object]:
        """All values of a property, in the order its entries give."""
        entries = [
            node
            for node in cast("list[str]", self.all(subject, v.CB_HAS_ENTRY))
            if self.node(node, v.CB_ON_PROPERTY) == predicate
        ]
        if not entries:
            return self.all(subject, predicate)
        return [self.all(node, v.RDF_VALUE)[0] for node in self.by_order(entries)]

    # Parts

    def plain(self, subject: str, table: Iterable[f.Field]) -> dict[str, Any]:
        """The plain fields that are there, as keyword arguments."""
        found: dict[str, Any] = {}
        for field in table:
            if field.many:
                objects = self.several(subject, field.predicate)
                found[field.attribute] = tuple(f.decode(self.names, field.kind, one) for one in objects)
            else:
                one = self.optional(subject, field.predicate)
                if one is not None:
                    found[field.attribute] = f.decode(self.names, field.kind, one)
        return found

    def at(self, subject: str) -> Location:
        line, column = (int(self.text(subject, name)) for name in (v.CB_LINE, v.CB_COLUMN))
        return Location(self.text(subject, v.CB_FILE), line, column)

    def quantity(self, subject: str, predicate: str) -> Fraction | None:
        node = self.optional_node(subject, predicate)
        return None if node is None else Fraction(self.text(node, v.CB_EXACT))

    def interval(self, node: str) -> Interval:
        low, high = self.quantity(node, v.CB_LOW), self.quantity(node, v.CB_HIGH)
        return Interval(low, high, **self.plain(node, f.INTERVAL))

    def value_set(self, node: str, owner: tuple[str, str]) -> ValueSet:
        if v.CB_RANGES in self.all(node, v.RDF_TYPE):
            parts = self.by_order(self.all(node, v.CB_HAS_INTERVAL))
            return Ranges(tuple(self.interval(part) for part in parts))
        members = (self.names.value_id(*owner, str(one)) for one in self.all(node, v.CB_HAS_VALUE))
        return Choices(frozenset(members), self.flag(node, v.CB_COMPLEMENT))

    def condition(self, owner: str) -> Condition:
        node = self.optional_node(owner, v.CB_WHEN)
        return ALWAYS if node is None else self.condition_at(node)

    def condition_at(self, node: str) -> Condition:
        classes = self.all(node, v.RDF_TYPE)
        if v.CB_TEST in classes:
            fact = self.names.id_of("fact", self.node(node, v.CB_TESTS_FACT))
            return Test(fact, self.value_set(node, ("fact", fact)))
        operands = [self.condition_at(one) for one in self.by_order(self.all(node, v.CB_OPERAND))]
        if v.CB_NOT_OF in classes and len(operands) == 1:
            return NotOf(operands[0])
        if v.CB_ALL_OF in classes or v.CB_ANY_OF in classes:
            return (AllOf if v.CB_ALL_OF in classes else AnyOf)(tuple(operands))
        raise ValueError(f"{node} is no condition")

    def measure(self, subject: str, predicate: str) -> r.Measure | None:
        node = self.optional_node(subject, predicate)
        if node is None:
            return None
        datum = self.optional_node(node, v.CB_HAS_DATUM)
        return r.Measure(
            interval=self.interval(self.node(node, v.CB_HAS_INTERVAL)),
            tolerance=self.quantity(node, v.CB_HAS_TOLERANCE),
            datum=None if datum is None else r.Datum(**self.plain(datum, f.DATUM)),
            also=self.measure(node, v.CB_ALSO),
            **self.plain(node, f.MEASURE),
        )

    def position(self, node: str, aspect: str) -> r.Position:
        place = self.names.value_id("aspect", aspect, self.node(node, v.CB_PLACE))
        return r.Position(id=place, offset=self.measure(node, v.CB_OFFSET), **self.plain(node, f.POSITION))

    def rule_value(self, node: str, aspect: str) -> r.RuleValue:
        places = self.by_order(self.all(node, v.CB_HAS_POSITION))
        return r.RuleValue(
            values=self.value_set(node, ("aspect", aspect)),
            measure=self.measure(node, v.CB_HAS_MEASURE),
            positions=tuple(self.position(place, aspect) for place in places),
            **self.plain(node, f.RULE_VALUE),
        )

    # Records

    def records(
        self, kind: str, cls: str, record: type[_Record], table: Iterable[f.Field]
    ) -> Iterator[_Record]:
        """Records that have an id and plain fields only."""
        for node in self.by_order(self.members[cls]):
            yield record(id=self.names.id_of(kind, node), at=self.at(node), **self.plain(node, table))

    def values(self, kind: str, owner: str) -> tuple[r.FactValue, ...]:
        found = []
        for node in self.by_order(self.values_in[self.names.of(kind, owner)]):
            within = self.optional_node(node, v.SKOS_BROADER)
            record = r.FactValue(
                id=self.names.value_id(kind, owner, node),
                within=None if within is None else self.names.value_id(kind, owner, within),
                at=self.at(node),
                **self.plain(node, f.VALUE),
            )
            found.append(record)
        return tuple(found)

    def with_values(
        self, kind: str, cls: str, record: type[_Record], table: Iterable[f.Field]
    ) -> Iterator[_Record]:
        for node in self.by_order(self.members[cls]):
            owner = self.names.id_of(kind, node)
            yield record(
                id=owner, at=self.at(node), values=self.values(kind, owner), **self.plain(node, table)
            )

    def groups(self) -> Iterator[r.Group]:
        for node in self.by_order(self.members[v.CB_GROUP]):
            plain = self.plain(node, f.GROUP)
            members = self.several(node, v.SKOS_MEMBER)
            yield r.Group(
                id=self.names.id_of("group", node),
                members=tuple(self.names.value_id("fact", plain["fact"], str(one)) for one in members),
                at=self.at(node),
                **plain,
            )

    def definitions(self) -> Iterator[r.Definition]:
        for node in self.by_order(self.members[v.CB_DEFINITION]):
            condition = self.condition(node)
            yield r.Definition(condition=condition, at=self.at(node), **self.plain(node, f.DEFINITION))

    def tolerances(self) -> Iterator[r.Tolerance]:
        for node in self.by_order(self.members[v.CB_TOLERANCE]):
            allow = self.quantity(node, v.CB_ALLOW)
            if allow is None:
                raise ValueError(f"{node} has no {v.CB_ALLOW}")
            applies = self.interval(self.node(node, v.CB_APPLIES_TO))
            yield r.Tolerance(applies=applies, allow=allow, at=self.at(node), **self.plain(node, f.TOLERANCE))

    def rules(self) -> Iterator[r.Rule]:
        for node in self.by_order(self.members[v.CB_RULE]):
            plain = self.plain(node, f.RULE)
            yield r.Rule(
                id=self.names.id_of("rule", node),
                scope=r.Scope(**self.plain(node, f.SCOPE)),
                value=self.rule_value(self.node(node, v.CB_SPEAKS_OF), plain["aspect"]),
                condition=self.condition(node),
                at=self.at(node),
                **plain,
            )

    def accepted_words(self) -> Iterator[r.SuggestedWord]:
        for node in self.by_order(self.members[v.CB_ACCEPTED_WORD]):
            sense = self.optional_node(node, v.PROV_WAS_DERIVED_FROM)
            origin = None if sense is None else self.word_origin(sense)
            yield r.SuggestedWord(origin=origin, at=self.at(node), **self.plain(node, f.ACCEPTED_WORD))

    def word_origin(self, sense: str) -> r.WordOrigin:
        thesaurus = self.node(sense, v.DCTERMS_IS_PART_OF)
        return r.WordOrigin(
            thesaurus=self.text(thesaurus, v.DCTERMS_TITLE),
            version=self.text(thesaurus, v.CB_VERSION),
            sense=self.text(sense, v.DCTERMS_IDENTIFIER),
        )

    def service(self) -> r.Service:
        return next(self.records("service", v.CB_SERVICE, r.Service, f.SERVICE))

    def base(self) -> r.RuleBase:
        exclusions = self.by_order(self.members[v.CB_EXCLUSION])
        return r.RuleBase(
            service=self.service(),
            authorities=tuple(self.records("authority", v.CB_AUTHORITY, r.Authority, f.AUTHORITY)),
            facts=tuple(self.with_values("fact", v.CB_FACT, r.Fact, f.FACT)),
            groups=tuple(self.groups()),
            aspects=tuple(self.with_values("aspect", v.CB_ASPECT, r.Aspect, f.ASPECT)),
            items=tuple(self.records("item", v.CB_ITEM, r.Item, f.ITEM)),
            books=tuple(self.records("book", v.CB_BOOK, r.Book, f.BOOK)),
            editions=tuple(self.records("edition", v.CB_EDITION, r.Edition, f.EDITION)),
            clauses=tuple(self.records("clause", v.CB_CLAUSE, r.Clause, f.CLAUSE)),
            delegations=tuple(self.records("delegation", v.CB_DELEGATION, r.Delegation, f.DELEGATION)),
            definitions=tuple(self.definitions()),
            tolerances=tuple(self.tolerances()),
            exclusions=tuple(self.condition(node) for node in exclusions),
            rules=tuple(self.rules()),
            accepted_words=tuple(self.accepted_words()),
        )


def read_base(quads: Iterable[Quad]) -> r.RuleBase:
    """The rule base that the quads were made from; the derived graph is not looked at.

    Raises `StoreUnavailableError` if something that every base has is missing or is given twice.
    """
    try:
        return _Reader(quads).base()
    except (ValueError, KeyError, TypeError, IndexError) as error:
        raise StoreUnavailableError(f"The graph is no whole rule base: {error}. Build it again.") from error
