"""Which condition implies which, for many pairs: what can be told from their tests alone is told from them.

Most conditions are conjunctions over facts that nothing binds to each other. Of two such conditions the one
implies the other when each test of the other holds wherever the one does; only what is left is searched
through, as `space.implies` does for any pair.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

import msgspec

from kb.model.conditions import AllOf, Condition, Test, negate, tests
from kb.model.lookup import Lookup
from kb.model.values import Choices, ValueSet, complement, intersect, is_empty, subtract
from kb.reasoner.space import WORN, constraints, implies, pieces_of, satisfiable


class _Shape(msgspec.Struct):
    """What can be told of a condition from its tests.

    `needs` has the tests that it is a conjunction of, as far as it is one; it is `plain` if it is nothing
    else, over facts that are all `free`. `met` says whether some case meets it, once that was asked.
    """

    condition: Condition
    needs: dict[str, ValueSet]
    facts: frozenset[str]
    free: bool
    plain: bool
    met: bool | None = None


class Implications:
    """Implication between the conditions of one base on one day; `exclusions` as for `space.constraints`."""

    def __init__(self, lookup: Lookup, exclusions: Sequence[Condition] | None) -> None:
        self._lookup, self._exclusions = lookup, exclusions
        self._shapes: dict[int, _Shape] = {}
        known = lookup.base.exclusions if exclusions is None else exclusions
        self._never = tuple(map(negate, known))
        self._excluded = {test.fact for one in known for test in tests(one)}
        self._free: dict[str, bool] = {}
        self._searched: dict[tuple[int, int], bool] = {}

    @cached_property
    def _leaves_a_case(self) -> bool:
        """Whether what is never to hold together leaves any case; if not, anything implies anything."""
        limits = constraints(self._never, self._lookup, self._exclusions)
        return satisfiable((*self._never, *limits), {}, self._lookup) is not None

    def implies(self, one: Condition, other: Condition) -> bool:
        """Whether every possible case that meets `one` meets `other`."""
        left, right = self._shape(one), self._shape(other)
        if (left.free and right.free) or self._leaves_a_case:
            if not self._is_met(left):
                return True
            for fact, values in right.needs.items():
                if self._is_free(fact) and not self._forces(left, fact, values):
                    return False
            if left.plain and right.plain:
                return True
        key = (id(one), id(other))  # the shapes keep both alive
        if key not in self._searched:
            self._searched[key] = implies(one, other, self._lookup, self._exclusions)
        return self._searched[key]

    def _forces(self, left: _Shape, fact: str, values: ValueSet) -> bool:
        """Whether a free fact may have to have one of the values wherever a condition holds."""
        if not left.plain:
            return fact in left.facts
        allowed = left.needs.get(fact)
        if allowed is None:
            return False
        inside = _lies_in(allowed, values)
        if inside is None or (not inside and self._lookup.facts[fact].kind == "date"):
            return not self._values(fact, subtract(allowed, values))
        return inside

    def _shape(self, condition: Condition) -> _Shape:
        found = self._shapes.get(id(condition))
        if found is None:
            parts = condition.parts if isinstance(condition, AllOf) else (condition,)
            needs: dict[str, ValueSet] = {}
            for part in parts:
                if isinstance(part, Test):
                    before = needs.get(part.fact, self._lookup.domain(part.fact))
                    needs[part.fact] = intersect(before, part.values)
            facts = frozenset(test.fact for test in tests(condition))
            free = all(map(self._is_free, facts))
            plain = free and all(isinstance(part, Test) for part in parts)
            outside = {fact: complement(values) for fact, values in needs.items()}
            real = {fact: needs[fact] for fact, values in outside.items() if self._values(fact, values)}
            found = self._shapes[id(condition)] = _Shape(condition, real, facts, free, plain)
        return found

    def _is_met(self, shape: _Shape) -> bool:
        if shape.met is None:
            if shape.plain:
                shape.met = all(self._values(fact, values) for fact, values in shape.needs.items())
            else:
                limits = constraints((shape.condition,), self._lookup, self._exclusions)
                shape.met = satisfiable((shape.condition, *limits), {}, self._lookup) is not None
        return shape.met

    def _is_free(self, fact: str) -> bool:
        """Whether nothing binds a fact to others: no exclusion, and no kind of what is worn."""
        if fact not in self._free:
            item = fact.removeprefix(WORN)
            kin = item != fact and len(self._lookup.broader(item)) + len(self._lookup.narrower(item)) > 2
            self._free[fact] = fact not in self._excluded and not kin
        return self._free[fact]

    def _values(self, fact: str, values: ValueSet) -> bool:
        """Whether a fact can have one of the values; days are whole."""
        within = intersect(values, self._lookup.domain(fact))
        if is_empty(within) or self._lookup.facts[fact].kind != "date":
            return not is_empty(within)
        return bool(pieces_of(fact, within, (), self._lookup))


def _lies_in(one: ValueSet, other: ValueSet) -> bool | None:
    """Whether the one interval lies in the other; None where either is more than one, or names."""
    if isinstance(one, Choices) or isinstance(other, Choices):
        return None
    if len(one.intervals) != 1 or len(other.intervals) != 1:
        return None
    inner, outer = one.intervals[0], other.intervals[0]
    if outer.low is not None:
        if inner.low is None or inner.low < outer.low:
            return False
        if inner.low == outer.low and outer.low_open and not inner.low_open:
            return False
    if outer.high is not None:
        if inner.high is None or inner.high > outer.high:
            return False
        if inner.high == outer.high and outer.high_open and not inner.high_open:
            return False
    return True
