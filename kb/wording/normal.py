"""Conditions brought into a form that is easy to say."""

from __future__ import annotations

from kb.model.conditions import ALWAYS, NEVER, AllOf, AnyOf, Condition, NotOf, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.values import YES, Choices, ValueSet, complement, is_empty, is_subset
from kb.wording.situations import WORN


def without_idle(lookup: Lookup, condition: Condition) -> Condition:
    """The condition without tests that every value of their fact passes, or none does."""
    if isinstance(condition, Test):
        if is_subset(lookup.domain(condition.fact), condition.values):
            return ALWAYS
        inside = _remaining(lookup, condition.fact, complement(condition.values))
        return NEVER if is_empty(inside) else condition
    if isinstance(condition, NotOf):
        inner = without_idle(lookup, condition.part)
        return {ALWAYS: NEVER, NEVER: ALWAYS}.get(inner, NotOf(inner))
    parts = [without_idle(lookup, part) for part in condition.parts]
    deciding = NEVER if isinstance(condition, AllOf) else ALWAYS
    if deciding in parts:
        return deciding
    kept = [part for part in parts if part not in (ALWAYS, NEVER)]
    return all_of(kept) if isinstance(condition, AllOf) else any_of(kept)


def positive(lookup: Lookup, condition: Condition) -> Condition:
    """The condition with every `not` moved into the tests (De Morgan)."""
    if isinstance(condition, NotOf):
        return _denied(lookup, condition.part)
    if isinstance(condition, Test):
        return condition
    parts = [positive(lookup, part) for part in condition.parts]
    return all_of(parts) if isinstance(condition, AllOf) else any_of(parts)


def _denied(lookup: Lookup, condition: Condition) -> Condition:
    if isinstance(condition, NotOf):
        return positive(lookup, condition.part)
    if isinstance(condition, Test):
        return Test(condition.fact, _remaining(lookup, condition.fact, condition.values))
    parts = [_denied(lookup, part) for part in condition.parts]
    return any_of(parts) if isinstance(condition, AllOf) else all_of(parts)


def _remaining(lookup: Lookup, fact: str, values: ValueSet) -> ValueSet:
    domain = lookup.domain(fact)
    if isinstance(values, Choices) and isinstance(domain, Choices):
        return Choices(frozenset(v for v in domain.members if (v in values.members) == values.complement))
    return complement(values)


def is_worn(condition: Condition) -> bool:
    """Whether a condition speaks only of what else is worn; "without the coat" says its opposite best."""
    if isinstance(condition, Test):
        return condition.fact.startswith(WORN) and condition.values == YES
    return isinstance(condition, AnyOf) and bool(condition.parts) and all(map(is_worn, condition.parts))


def depth(condition: Condition) -> int:
    """How deep "and" and "or" are nested; a test has none."""
    if isinstance(condition, Test):
        return 0
    parts = (condition.part,) if isinstance(condition, NotOf) else condition.parts
    return 1 + max((depth(part) for part in parts), default=0)
