"""Conditions: boolean combinations of tests over the facts of a case.

A fact is known only as the set of values it may still have, so a condition is true,
false or undecided (`None`), as in Kleene's strong three-valued logic.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Union

import msgspec

from kb.model.values import ValueSet, intersect, is_empty, is_subset


class Test(msgspec.Struct, frozen=True, omit_defaults=True, tag="test"):
    """The fact has one of the values."""

    __test__ = False  # a test of a fact, not of this program: keeps pytest from collecting it

    fact: str
    values: ValueSet


class AllOf(msgspec.Struct, frozen=True, omit_defaults=True, tag="all_of"):
    parts: tuple[Condition, ...]


class AnyOf(msgspec.Struct, frozen=True, omit_defaults=True, tag="any_of"):
    parts: tuple[Condition, ...]


class NotOf(msgspec.Struct, frozen=True, omit_defaults=True, tag="not_of"):
    part: Condition


Condition = Union[Test, AllOf, AnyOf, NotOf]  # noqa: UP007  a string forward reference needs Union

ALWAYS: Condition = AllOf(())
NEVER: Condition = AnyOf(())


def all_of(parts: Iterable[Condition]) -> Condition:
    """Conjunction, flattened; the order of writing is kept."""
    flat: list[Condition] = []
    for part in parts:
        flat.extend(part.parts if isinstance(part, AllOf) else (part,))
    unique = tuple(dict.fromkeys(flat))
    return unique[0] if len(unique) == 1 else AllOf(unique)


def any_of(parts: Iterable[Condition]) -> Condition:
    """Disjunction, flattened; the order of writing is kept."""
    flat: list[Condition] = []
    for part in parts:
        flat.extend(part.parts if isinstance(part, AnyOf) else (part,))
    unique = tuple(dict.fromkeys(flat))
    return unique[0] if len(unique) == 1 else AnyOf(unique)


def negate(part: Condition) -> Condition:
    return part.part if isinstance(part, NotOf) else NotOf(part)


def evaluate(condition: Condition, possible: Callable[[str], ValueSet | None]) -> bool | None:
    """Truth of a condition where `possible(fact)` gives the values still possible (None: any)."""
    if isinstance(condition, Test):
        state = possible(condition.fact)
        if state is None:
            return None
        if is_subset(state, condition.values):
            return True
        return False if is_empty(intersect(state, condition.values)) else None
    if isinstance(condition, NotOf):
        inner = evaluate(condition.part, possible)
        return None if inner is None else not inner
    decisive = isinstance(condition, AnyOf)
    undecided = False
    for part in condition.parts:
        truth = evaluate(part, possible)
        if truth is decisive:
            return decisive
        undecided = undecided or truth is None
    return None if undecided else not decisive


def tests(condition: Condition) -> tuple[Test, ...]:
    """Every test in a condition, in the order of writing."""
    if isinstance(condition, Test):
        return (condition,)
    parts = (condition.part,) if isinstance(condition, NotOf) else condition.parts
    return tuple(test for part in parts for test in tests(part))
