"""Sets of cases: each a decision over one fact after the other, equal parts being one and the same number.

What an answer is checked with has to look at all cases, and there may be too many to go through.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Mapping, Sequence

from kb.model.conditions import AnyOf, Condition, NotOf, Test, tests
from kb.model.values import ValueSet, is_subset
from kb.plain.values import has_whole_number, partition

NONE, ALL = 0, 1


class Sets:
    """Sets of the cases that keep within some limits. A set is a number; `possible` is the set of all."""

    def __init__(
        self,
        conditions: Sequence[Condition],
        limits: Sequence[Condition],
        known: Mapping[str, ValueSet],
        domain: Callable[[str], ValueSet],
        days: Container[str] = (),
    ) -> None:
        told: dict[str, list[ValueSet]] = {}
        for test in (test for one in (*conditions, *limits) for test in tests(one)):
            told.setdefault(test.fact, []).append(test.values)
        self._facts = {fact: place for place, fact in enumerate(told)}
        self._pieces = []
        for fact, sets in told.items():
            pieces = partition(known.get(fact, domain(fact)), dict.fromkeys(sets))
            self._pieces.append([one for one in pieces if fact not in days or has_whole_number(one)])
        self._nodes: list[tuple[int, tuple[int, ...]]] = [(len(told), ()), (len(told), ())]
        self._numbers: dict[tuple[int, tuple[int, ...]], int] = {}
        self._both: dict[tuple[int, int], int] = {}
        self._other: dict[int, int] = {NONE: ALL, ALL: NONE}
        self.possible = self.all(self.of(one) for one in limits) if all(self._pieces) else NONE

    def _node(self, place: int, children: tuple[int, ...]) -> int:
        if all(child == children[0] for child in children):
            return children[0]
        if (place, children) not in self._numbers:
            self._numbers[place, children] = len(self._nodes)
            self._nodes.append((place, children))
        return self._numbers[place, children]

    def of(self, condition: Condition) -> int:
        """The cases that meet a condition."""
        if isinstance(condition, Test):
            place = self._facts[condition.fact]
            inside = [is_subset(piece, condition.values) for piece in self._pieces[place]]
            return self._node(place, tuple(ALL if one else NONE for one in inside)) if inside else NONE
        if isinstance(condition, NotOf):
            return self.other(self.of(condition.part))
        parts = [self.of(part) for part in condition.parts]
        return self.any(parts) if isinstance(condition, AnyOf) else self.all(parts)

    def other(self, one: int) -> int:
        """All cases but these."""
        if one not in self._other:
            place, children = self._nodes[one]
            self._other[one] = self._node(place, tuple([self.other(child) for child in children]))
        return self._other[one]

    def both(self, one: int, two: int) -> int:
        one, two = sorted((one, two))
        if one in (NONE, two):
            return one
        if one == ALL:
            return two
        if (one, two) not in self._both:
            place = min(self._nodes[one][0], self._nodes[two][0])
            left, right = self._children(one, place), self._children(two, place)
            children = [self.both(a, b) for a, b in zip(left, right, strict=True)]
            self._both[one, two] = self._node(place, tuple(children))
        return self._both[one, two]

    def _children(self, one: int, place: int) -> Sequence[int]:
        at, children = self._nodes[one]
        return children if at == place else [one] * len(self._pieces[place])

    def but(self, one: int, two: int) -> int:
        """The cases of the one that are not in the other."""
        return self.both(one, self.other(two))

    def all(self, sets: Iterable[int]) -> int:
        """The cases that are in each set; what is decided last comes first, so that steps stay short."""
        found = ALL
        for one in sorted(sets, key=lambda number: -self._nodes[number][0]):
            found = self.both(found, one)
        return found

    def any(self, sets: Iterable[int]) -> int:
        return self.other(self.all(self.other(one) for one in sets))
