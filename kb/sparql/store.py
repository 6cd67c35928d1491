"""The store of a rule base, opened for reading, and typed answers to the named queries.

Ids go in and ids come out; IRIs stay in here.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import Protocol

import msgspec
import pyoxigraph

from kb.errors import StoreUnavailableError
from kb.graph.names import Names
from kb.sparql.named import Constant, fill, named_query
from kb.sparql.table import Table, Term

StoreSource = Path | bytes
_Pyoxigraph = pyoxigraph.Store


class HasStore(Protocol):
    """What knows its store: the folder of an on-disk store, or N-Quads."""

    @property
    def store(self) -> Path | bytes: ...


def source_of(source: StoreSource | HasStore) -> Path | bytes:
    return source if isinstance(source, Path | bytes) else source.store


class Store(msgspec.Struct, frozen=True):
    """An opened store and the names of its service."""

    engine: _Pyoxigraph
    names: Names

    def __len__(self) -> int:
        return len(self.engine)


def open_store(source: StoreSource | HasStore) -> Store:
    """A store opened read-only from its folder, or loaded into memory from N-Quads.

    Raises `StoreUnavailableError` if it cannot be read or holds no rule base.
    """
    found = source_of(source)
    try:
        if isinstance(found, bytes):
            engine = pyoxigraph.Store()
            engine.bulk_load(found, pyoxigraph.RdfFormat.N_QUADS)
        else:
            engine = pyoxigraph.Store.read_only(str(found))
        namespaces = [str(row[0].value) for row in _solutions(engine, fill("namespace", {}))]
    except (OSError, SyntaxError, ValueError) as error:
        raise StoreUnavailableError(f"The store cannot be opened: {error}. Build it again.") from error
    if len(namespaces) != 1:
        raise StoreUnavailableError("The store holds no rule base. Build it again.")
    return Store(engine, Names(namespaces[0]))


def _solutions(engine: _Pyoxigraph, text: str) -> pyoxigraph.QuerySolutions:
    found = engine.query(text, use_default_graph_as_union=True)
    assert isinstance(found, pyoxigraph.QuerySolutions)  # every named query is a SELECT; a test checks it
    return found


def _term(term: object) -> Term | None:
    if isinstance(term, pyoxigraph.NamedNode):
        return Term("iri", term.value)
    if isinstance(term, pyoxigraph.Literal):
        return Term("literal", term.value, term.datatype.value, term.language)
    return None if term is None else Term("blank", str(term))


def run_named(store: Store, name: str, **values: Constant | tuple[Constant, ...]) -> Table:
    """The result of a named query; IRIs, dates and texts are checked against its declared parameters."""
    rows = tuple(tuple(_term(term) for term in row) for row in _solutions(store.engine, fill(name, values)))
    return Table(kind="select", columns=named_query(name).columns, rows=rows)


def _texts(store: Store, name: str, **values: Constant | tuple[Constant, ...]) -> tuple[tuple[str, ...], ...]:
    """The rows as plain strings, an unbound variable as ""."""
    found = _solutions(store.engine, fill(name, values))
    return tuple(tuple("" if term is None else term.value for term in row) for row in found)


def _first(rows: Sequence[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(row[0] for row in rows))


def _day(text: str) -> datetime.date | None:
    return datetime.date.fromisoformat(text) if text else None


def _iris(store: Store, kind: str, ids: Sequence[str]) -> tuple[str, ...]:
    return tuple(store.names.of(kind, identifier) for identifier in ids)


def candidate_rules(
    store: Store, items: Sequence[str], aspects: Sequence[str], as_of: datetime.date
) -> tuple[str, ...]:
    """Ids of the rules in force that cover an item (or, if they say so, something broader) in an aspect."""
    rows = _texts(
        store,
        "candidate-rules",
        item=_iris(store, "item", items),
        aspect=_iris(store, "aspect", aspects),
        day=as_of,
    )
    return _first(rows)


def rules_in_force(store: Store, aspects: Sequence[str], as_of: datetime.date) -> tuple[str, ...]:
    """Ids of the rules in force in an aspect, whatever they cover, in the order of the source."""
    rows = _texts(store, "rules-in-force", aspect=_iris(store, "aspect", aspects), day=as_of)
    return tuple(store.names.id_of("rule", row[0]) for row in rows)


def linked_rules(store: Store, rules: Sequence[str]) -> tuple[str, ...]:
    """Ids of the rules and of what disables them, what they repair, and their exceptions, step by step."""
    return _first(_texts(store, "linked-rules", rule=_iris(store, "rule", rules)))


def rules_of_clause(store: Store, clause: str) -> tuple[str, ...]:
    """Ids of the rules that cite a clause of an edition, in the order of the source."""
    return _first(_texts(store, "rules-of-clause", clause=store.names.of("clause", clause)))


class ClauseText(msgspec.Struct, frozen=True):
    """A clause found by number; `valid_until` is the first day on which it is no longer in force."""

    clause: str
    edition: str
    heading: str
    text: str
    valid_from: datetime.date
    valid_until: datetime.date | None


def clause_text(store: Store, number: str) -> tuple[ClauseText, ...]:
    """Every clause of that number, whatever the book and edition, the latest first."""
    rows = _texts(store, "clause-text", number=number)
    return tuple(
        ClauseText(clause, edition, heading, text, datetime.date.fromisoformat(start), _day(end))
        for clause, edition, heading, text, start, end in rows
    )


def items_of_class(store: Store, item: str) -> tuple[str, ...]:
    """Ids of the item and of everything narrower."""
    return _first(_texts(store, "items-of-class", item=store.names.of("item", item)))


class GradeRule(msgspec.Struct, frozen=True):
    """A rule and a grade it is for; no grade means that it is for any."""

    rule: str
    modality: str
    grade: str | None


def who_may(store: Store, item: str, aspect: str, as_of: datetime.date) -> tuple[GradeRule, ...]:
    """The rules for an item and an aspect, each with the grades it is for, the junior first."""
    rows = _texts(
        store,
        "who-may",
        item=store.names.of("item", item),
        aspect=store.names.of("aspect", aspect),
        day=as_of,
    )
    return tuple(GradeRule(rule, modality, grade or None) for rule, modality, grade, *_ in rows)


def rules_of_rig(store: Store, rig: str, as_of: datetime.date) -> tuple[str, ...]:
    """Ids of the rules in force whose condition names the rig, or all rigs but some others."""
    return _first(_texts(store, "rules-of-rig", rig=store.names.value("fact", "rig", rig), day=as_of))


class Amendment(msgspec.Struct, frozen=True):
    """A clause that replaces or repeals another from a day on; `how` is "replaces" or "repeals"."""

    day: datetime.date
    clause: str
    how: str
    other: str


def amendments(store: Store, start: datetime.date, end: datetime.date) -> tuple[Amendment, ...]:
    """The amendments that come into force from `start` on and before `end`."""
    rows = _texts(store, "amendments", start=start, end=end)
    return tuple(Amendment(datetime.date.fromisoformat(day), *rest) for day, *rest in rows)


class Opposition(msgspec.Struct, frozen=True):
    """Two rules of opposed modality on the same thing; `lower` has the lower authority."""

    lower: str
    higher: str
    aspect: str


def opposing_rules(store: Store, as_of: datetime.date) -> tuple[Opposition, ...]:
    """Rules of a lower authority that oppose a higher one; their conditions are not compared."""
    return tuple(Opposition(*row[:3]) for row in _texts(store, "opposing-rules", day=as_of))


class LabelOf(msgspec.Struct, frozen=True):
    """A name of something; `how` is "preferred", "other" or "everyday", `kind` the name of its class."""

    kind: str
    id: str
    label: str
    how: str


def labels(store: Store) -> tuple[LabelOf, ...]:
    """All the names of everything that has one."""
    return tuple(LabelOf(*row) for row in _texts(store, "labels"))


class DelegationOf(msgspec.Struct, frozen=True):
    """A delegation; `clauses` and `items` it is limited to, none meaning any."""

    id: str
    clause: str
    to: str
    allows: str
    clauses: tuple[str, ...]
    items: tuple[str, ...]


def delegations(store: Store) -> tuple[DelegationOf, ...]:
    """All delegations, in the order of their ids."""
    rows = _texts(store, "delegations")
    return tuple(
        DelegationOf(
            id=identifier,
            clause=clause,
            to=to,
            allows=allows,
            clauses=tuple(dict.fromkeys(row[4] for row in rows if row[0] == identifier and row[4])),
            items=tuple(dict.fromkeys(row[5] for row in rows if row[0] == identifier and row[5])),
        )
        for identifier, clause, to, allows in dict.fromkeys(row[:4] for row in rows)
    )


class PhaseOut(msgspec.Struct, frozen=True):
    """`day` is the first on which an item is out of use, or forbidden by a rule."""

    day: datetime.date
    item: str
    rule: str | None


def phase_outs(store: Store, start: datetime.date, end: datetime.date) -> tuple[PhaseOut, ...]:
    """The phase-outs whose day is from `start` on and before `end`."""
    rows = _texts(store, "phase-outs", start=start, end=end)
    return tuple(PhaseOut(datetime.date.fromisoformat(day), item, rule or None) for day, item, rule in rows)
