"""Conditions over finite classes of facts: as regions of cases, and as what is left of them fact by fact.

The facts of the watched conditions are cut into the classes that no test divides; from then on a condition
is a number, and what is left of it once a fact is known is another number, worked out once. Exact, without
sampling.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from fractions import Fraction
from typing import TypeVar

from kb.model.conditions import AllOf, Condition, NotOf, Test, tests
from kb.model.lookup import Lookup
from kb.model.values import Ranges, ValueSet, intersect, is_empty, is_subset
from kb.reasoner.decide import sample_of
from kb.reasoner.function import IMPOSSIBLE, SEARCHED, Function
from kb.reasoner.order import good_order
from kb.reasoner.regions import FALSE, TRUE, Regions, Within
from kb.reasoner.space import pieces_of

Outcome = TypeVar("Outcome", bound=Hashable)
Vector = tuple[int, ...]
Example = tuple[dict[str, ValueSet], tuple[bool, ...]]
Node = tuple[str, int, int] | tuple[str, tuple[int, ...]]

MOST_NODES = 4000  # of a function: what lies below is left to further facts
_DEEPEST = 150


class Diagram:
    """The watched conditions and the limits between facts, over the values still possible.

    `regions` and `watched` have the conditions as sets of cases, `possible` the cases within the limits.
    """

    def __init__(
        self,
        watched: Sequence[Condition],
        limits: Sequence[Condition],
        possible: Mapping[str, ValueSet],
        lookup: Lookup,
    ) -> None:
        everything = (*watched, *limits)
        tested: dict[str, dict[ValueSet, None]] = {}
        for test in (test for condition in everything for test in tests(condition)):
            tested.setdefault(test.fact, {})[test.values] = None
        self.facts = tuple(tested)
        self.classes = tuple(
            pieces_of(fact, possible.get(fact, lookup.domain(fact)), tuple(sets), lookup)
            for fact, sets in tested.items()
        )
        self._place = {fact: i for i, fact in enumerate(self.facts)}
        self._nodes: list[Node] = [("false", ()), ("true", ())]
        self._numbers: dict[Node, int] = {}
        self._supports: list[int] = [0, 0]
        self._restricted: dict[tuple[int, int, int], int] = {}
        self._masks: dict[tuple[int, ValueSet], int] = {}
        self._touching: dict[tuple[int, ValueSet], int] = {}
        self._samples: dict[int, list[Fraction]] = {}
        self._start = tuple(self._compile(condition, True) for condition in everything)
        self._watched = len(watched)
        self.uses = [0] * len(self.facts)
        for condition in watched:
            for test in tests(condition):
                self.uses[self._place[test.fact]] += 1
        self.regions = Regions([len(pieces) for pieces in self.classes], self._order(everything))
        made: dict[int, int] = {FALSE: FALSE, TRUE: TRUE}
        start = [self._region(number, made) for number in self._start]
        self.watched, limited = tuple(start[: len(watched)]), start[len(watched) :]
        if () in self.classes:  # a fact that is known to be two things at once
            limited.append(FALSE)
        self.possible = self.regions.all(limited)

    def _order(self, conditions: Sequence[Condition]) -> Sequence[int]:
        places = range(len(self.facts))
        if len(places) <= SEARCHED:
            return sorted(places, key=lambda place: (-self.uses[place], place))
        together = [{self._place[test.fact] for test in tests(condition)} for condition in conditions]
        return good_order(len(places), together)

    # -- the unique table -------------------------------------------------------------------------------

    def _number(self, node: Node, support: int) -> int:
        known = self._numbers.get(node)
        if known is None:
            known = self._numbers[node] = len(self._nodes)
            self._nodes.append(node)
            self._supports.append(support)
        return known

    def _mask(self, place: int, values: ValueSet) -> int:
        key = (place, values)
        if key not in self._masks:
            if isinstance(values, Ranges):
                self._masks[key] = self._span(place, values)
            else:
                pieces = enumerate(self.classes[place])
                self._masks[key] = sum(1 << i for i, piece in pieces if is_subset(piece, values))
        return self._masks[key]

    def _touched(self, place: int, values: ValueSet) -> int:
        key = (place, values)
        if key not in self._touching:
            pieces = enumerate(self.classes[place])
            self._touching[key] = sum(1 << i for i, p in pieces if not is_empty(intersect(p, values)))
        return self._touching[key]

    def _span(self, place: int, values: Ranges) -> int:
        """The mask of a set of numbers; classes are in order, and each lies in the set or apart from it."""
        if place not in self._samples:
            self._samples[place] = [sample_of(piece) for piece in self.classes[place]]
        samples, mask = self._samples[place], 0
        for interval in values.intervals:
            first, last = 0, len(samples)
            if interval.low is not None:
                first = (bisect_right if interval.low_open else bisect_left)(samples, interval.low)
            if interval.high is not None:
                last = (bisect_left if interval.high_open else bisect_right)(samples, interval.high)
            mask |= (1 << last) - (1 << first) if first < last else 0
        return mask

    def _compile(self, condition: Condition, positive: bool) -> int:
        if isinstance(condition, Test):
            place = self._place[condition.fact]
            everything = (1 << len(self.classes[place])) - 1
            mask = self._mask(place, condition.values)
            return self._test(place, mask if positive else everything & ~mask)
        if isinstance(condition, NotOf):
            return self._compile(condition.part, not positive)
        parts = [self._compile(part, positive) for part in condition.parts]
        return self._join(isinstance(condition, AllOf) is positive, parts)

    def _test(self, place: int, mask: int) -> int:
        if mask == 0:
            return FALSE
        if mask == (1 << len(self.classes[place])) - 1:
            return TRUE
        return self._number(("test", place, mask), 1 << place)

    def _join(self, conjunction: bool, parts: Sequence[int]) -> int:
        absorbing, neutral = (FALSE, TRUE) if conjunction else (TRUE, FALSE)
        if absorbing in parts:
            return absorbing
        kept = sorted({part for part in parts if part != neutral})
        if len(kept) < 2:
            return kept[0] if kept else neutral
        support = 0
        for part in kept:
            support |= self._supports[part]
        return self._number(("all" if conjunction else "any", tuple(kept)), support)

    def _restrict(self, number: int, place: int, piece: int) -> int:
        """What is left of a condition once a fact is known to lie in a class."""
        if not self._supports[number] >> place & 1:
            return number
        key = (number, place, piece)
        found = self._restricted.get(key)
        if found is None:
            node = self._nodes[number]
            if len(node) == 3:
                found = TRUE if node[2] >> piece & 1 else FALSE
            else:
                found = self._join(node[0] == "all", [self._restrict(n, place, piece) for n in node[1]])
            self._restricted[key] = found
        return found

    def _region(self, number: int, made: dict[int, int]) -> int:
        """A condition as the region of the cases that meet it."""
        if number not in made:
            node = self._nodes[number]
            if len(node) == 3:
                made[number] = self.regions.test(node[1], node[2])
            else:
                parts = [self._region(part, made) for part in node[1]]
                made[number] = self.regions.join(node[0] == "all", parts)
        return made[number]

    # -- outcomes ---------------------------------------------------------------------------------------

    def within(self, facts: Mapping[str, ValueSet]) -> Within:
        """The cases in which further facts are so."""
        return Within(self.regions, self._allowed(facts))

    def function(
        self, roots: Sequence[int], outcome: Callable[[tuple[bool, ...]], Outcome], rest: Outcome
    ) -> Function[Outcome]:
        """What `outcome` makes of the truths of some regions, as one function of the facts.

        Past a number of nodes it is not followed where it has more than one outcome; `rest` stands for those.
        """
        made = Function[Outcome](self.facts, self.classes, self.uses)
        start = (*roots, self.possible)
        children, cut = self._followed(start)
        numbers: dict[Vector, int] = {}
        levels = self.regions.levels
        for vector in sorted(children, key=lambda vector: min(levels[r] for r in vector), reverse=True):
            level, parts = children[vector]
            masks: dict[int, int] = {}
            for child, mask in parts.items():
                if child not in numbers:
                    numbers[child] = self._leaf(child, made, outcome, rest, cut)
                masks[numbers[child]] = masks.get(numbers[child], 0) | mask
            numbers[vector] = made.branch(self.regions.order[level], masks)
        made.root = numbers[start] if start in numbers else self._leaf(start, made, outcome, rest, cut)
        return made

    def _leaf(
        self,
        vector: Vector,
        made: Function[Outcome],
        outcome: Callable[[tuple[bool, ...]], Outcome],
        rest: Outcome,
        cut: set[Vector],
    ) -> int:
        if vector in cut:
            return made.cut(rest)
        return made.leaf(outcome(tuple(r == TRUE for r in vector[:-1]))) if vector[-1] else IMPOSSIBLE

    def _followed(self, start: Vector) -> tuple[dict[Vector, tuple[int, dict[Vector, int]]], set[Vector]]:
        """Every vector that has open regions, with what it becomes; and those that were not followed."""
        levels = self.regions.levels
        children: dict[Vector, tuple[int, dict[Vector, int]]] = {}
        cut: set[Vector] = set()
        waiting = [start]
        for vector in waiting:
            if vector in children or vector in cut or vector[-1] == FALSE:
                continue
            level = min(levels[region] for region in vector)
            if level >= len(self.facts):
                continue
            if (len(children) >= MOST_NODES or level >= _DEEPEST) and not self._is_plain(vector):
                cut.add(vector)
                continue
            children[vector] = (level, self.regions.split(level, vector))
            waiting += children[vector][1]
        return children, cut

    def _is_plain(self, vector: Vector) -> bool:
        """Whether each region holds in all possible cases or in none."""
        possible = vector[-1]
        return all(self.regions.both(r, possible) in (FALSE, possible) for r in vector[:-1])

    # -- cases ------------------------------------------------------------------------------------------

    def truths(self, roots: Sequence[int], within: Mapping[str, ValueSet]) -> Iterator[tuple[bool, ...]]:
        """Each joint truth of some regions that some possible case within the given facts has."""
        allowed = self._allowed(within)
        waiting = [(*roots, self.possible)]
        seen: set[Vector] = set()
        while waiting:
            vector = waiting.pop()
            if vector in seen or vector[-1] == FALSE:
                continue
            seen.add(vector)
            level = min(self.regions.levels[region] for region in vector)
            if level >= len(self.facts):
                yield tuple(region == TRUE for region in vector[:-1])
                continue
            mask = allowed.get(self.regions.order[level], -1)
            waiting += [child for child, part in self.regions.split(level, vector).items() if part & mask]

    def example(self, within: Mapping[str, ValueSet] | None = None) -> Example | None:
        """One case within the given facts that decides every condition: its classes and the truths."""
        allowed = self._allowed(within or {})
        near = Within(self.regions, allowed)
        if not near.meets(self.possible):
            return None
        numbers = dict.fromkeys(self._start, 0)
        for number in numbers:
            numbers[number] = number
        chosen: dict[str, ValueSet] = {}
        while True:
            support = 0
            for left in numbers.values():
                support |= self._supports[left]
            if not support:
                break
            place = (support & -support).bit_length() - 1
            mask = allowed.get(place, -1)
            for piece in range(len(self.classes[place])):
                near.narrow(place, 1 << piece)
                if mask >> piece & 1 and near.meets(self.possible):
                    break
            chosen[self.facts[place]] = self.classes[place][piece]
            for number, left in numbers.items():
                if self._supports[left] >> place & 1:
                    numbers[number] = self._restrict(left, place, piece)
        return chosen, tuple(numbers[number] == TRUE for number in self._start[: self._watched])

    def _allowed(self, within: Mapping[str, ValueSet]) -> dict[int, int]:
        """For each fact the classes that have one of the values, which need not be made of whole classes."""
        return {
            self._place[fact]: self._touched(self._place[fact], values)
            for fact, values in within.items()
            if fact in self._place
        }
