"""Defined terms, written out in conditions.

A term with one definition in force stands for its condition. Two clauses that define it differently make it
unknown: it stays a fact of its own, and the reasoner can say why.
"""

from __future__ import annotations

import datetime
from collections.abc import Collection

from kb.model.conditions import AllOf, Condition, NotOf, Test, all_of, any_of, negate
from kb.model.lookup import Lookup
from kb.model.records import Definition, is_in_force
from kb.model.values import YES
from kb.reasoner.space import implies

Definitions = dict[str, tuple[Definition, ...]]


def definitions_in_force(lookup: Lookup, as_of: datetime.date) -> Definitions:
    """For each term the definitions in force, one for each different meaning."""
    found: dict[str, list[Definition]] = {}
    for definition in lookup.base.definitions:
        clause = lookup.clauses[definition.clause]
        if not is_in_force(clause, as_of):
            continue
        known = found.setdefault(definition.term, [])
        if not any(_same(definition.condition, other.condition, lookup) for other in known):
            known.append(definition)
    return {term: tuple(known) for term, known in found.items()}


def _same(left: Condition, right: Condition, lookup: Lookup) -> bool:
    return left == right or (implies(left, right, lookup) and implies(right, left, lookup))


def disputed_terms(definitions: Definitions) -> dict[str, tuple[Definition, ...]]:
    """Terms that two clauses define differently, with those clauses' definitions."""
    return {term: known for term, known in definitions.items() if len(known) > 1}


def write_out(condition: Condition, definitions: Definitions, stated: Collection[str]) -> Condition:
    """The condition with each singly defined term replaced by its meaning, unless the case states it."""
    if isinstance(condition, Test):
        known = definitions.get(condition.fact, ())
        if len(known) != 1 or condition.fact in stated:
            return condition
        meaning = write_out(known[0].condition, definitions, {*stated, condition.fact})
        return meaning if condition.values == YES else negate(meaning)
    if isinstance(condition, NotOf):
        return negate(write_out(condition.part, definitions, stated))
    parts = [write_out(part, definitions, stated) for part in condition.parts]
    return all_of(parts) if isinstance(condition, AllOf) else any_of(parts)
