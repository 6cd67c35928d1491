"""The values of each fact that a condition allows at most: shows quickly that two exclude each other."""

from __future__ import annotations

from collections.abc import Mapping

from kb.model.conditions import AllOf, AnyOf, Condition, NotOf, Test
from kb.model.lookup import Lookup
from kb.model.values import ValueSet, complement, intersect, is_empty, unite

Hull = Mapping[str, ValueSet]


def hull_of(condition: Condition, lookup: Lookup, positive: bool = True) -> dict[str, ValueSet]:
    """Every case that meets the condition (or fails it, if not `positive`) has its facts within the hull."""
    if isinstance(condition, Test):
        values = condition.values if positive else complement(condition.values)
        return {condition.fact: intersect(lookup.domain(condition.fact), values)}
    if isinstance(condition, NotOf):
        return hull_of(condition.part, lookup, not positive)
    parts = [hull_of(part, lookup, positive) for part in condition.parts]
    if isinstance(condition, AllOf if positive else AnyOf):
        every: dict[str, ValueSet] = {}
        for part in parts:
            for fact, values in part.items():
                every[fact] = intersect(every[fact], values) if fact in every else values
        return every
    if not parts:
        return {}
    shared = dict(parts[0])
    for part in parts[1:]:
        shared = {fact: unite(values, part[fact]) for fact, values in shared.items() if fact in part}
    return shared


def exclude_each_other(one: Hull, other: Hull) -> bool:
    """Whether no case lies in both hulls; False says nothing."""
    small, large = (one, other) if len(one) <= len(other) else (other, one)
    return any(fact in large and is_empty(intersect(values, large[fact])) for fact, values in small.items())
