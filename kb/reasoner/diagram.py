"""Conditions over finite classes of facts, restricted fact by fact, with equal residuals shared.

The facts of the watched conditions are cut into the classes that no test divides; from then on a condition
is a number, and what is left of it once a fact is known is another number, worked out once. This is the
unique table of a decision diagram (Bryant 1986, with many-valued facts): exact, without sampling.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from typing import TypeVar

from kb.model.conditions import AllOf, Condition, NotOf, Test, tests
from kb.model.lookup import Lookup
from kb.model.values import ValueSet, is_subset
from kb.reasoner.function import IMPOSSIBLE, Function
from kb.reasoner.space import classes_of

Outcome = TypeVar("Outcome", bound=Hashable)
Vector = tuple[int, ...]
Example = tuple[dict[str, ValueSet], tuple[bool, ...]]
Node = tuple[str, int, int] | tuple[str, tuple[int, ...]]

FALSE, TRUE = 0, 1


class Diagram:
    """The watched conditions and the limits between facts, over the values still possible."""

    def __init__(
        self,
        watched: Sequence[Condition],
        limits: Sequence[Condition],
        possible: Mapping[str, ValueSet],
        lookup: Lookup,
    ) -> None:
        everything = (*watched, *limits)
        self.facts = tuple(dict.fromkeys(test.fact for condition in everything for test in tests(condition)))
        self.classes = tuple(
            classes_of(fact, possible.get(fact, lookup.domain(fact)), everything, lookup)
            for fact in self.facts
        )
        self._place = {fact: i for i, fact in enumerate(self.facts)}
        self._nodes: list[Node] = [("false", ()), ("true", ())]
        self._numbers: dict[Node, int] = {}
        self._supports: list[frozenset[int]] = [frozenset(), frozenset()]
        self._restricted: dict[tuple[int, int, int], int] = {}
        self._masks: dict[tuple[int, ValueSet], int] = {}
        self._watched = len(watched)
        self._start = tuple(self._compile(condition, True) for condition in everything)
        if () in self.classes:  # a fact that is known to be two things at once
            self._start = (*self._start, FALSE)
        self._uses = [0] * len(self.facts)
        for condition in watched:
            for test in tests(condition):
                self._uses[self._place[test.fact]] += 1

    # -- the unique table -------------------------------------------------------------------------------

    def _number(self, node: Node, support: frozenset[int]) -> int:
        known = self._numbers.get(node)
        if known is None:
            known = self._numbers[node] = len(self._nodes)
            self._nodes.append(node)
            self._supports.append(support)
        return known

    def _mask(self, place: int, values: ValueSet) -> int:
        key = (place, values)
        if key not in self._masks:
            self._masks[key] = sum(
                1 << i for i, piece in enumerate(self.classes[place]) if is_subset(piece, values)
            )
        return self._masks[key]

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
        return self._number(("test", place, mask), frozenset({place}))

    def _join(self, conjunction: bool, parts: Sequence[int]) -> int:
        absorbing, neutral = (FALSE, TRUE) if conjunction else (TRUE, FALSE)
        if absorbing in parts:
            return absorbing
        kept = sorted({part for part in parts if part != neutral})
        if len(kept) < 2:
            return kept[0] if kept else neutral
        support = frozenset().union(*(self._supports[part] for part in kept))
        return self._number(("all" if conjunction else "any", tuple(kept)), support)

    def _restrict(self, number: int, place: int, piece: int) -> int:
        """What is left of a condition once a fact is known to lie in a class."""
        if place not in self._supports[number]:
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

    def _step(self, vector: Vector, place: int, piece: int) -> Vector | None:
        """The vector once a fact is known, or None outside the limits."""
        found = tuple(self._restrict(number, place, piece) for number in vector)
        return None if FALSE in found[self._watched :] else found

    def _open_places(self, vector: Vector) -> set[int]:
        return set().union(*(self._supports[number] for number in vector))

    def _truth(self, vector: Vector) -> tuple[bool, ...]:
        return tuple(number == TRUE for number in vector[: self._watched])

    # -- outcomes ---------------------------------------------------------------------------------------

    def function(self, outcome: Callable[[tuple[bool, ...]], Outcome]) -> Function[Outcome]:
        """The outcome of the watched conditions as one function of the facts."""
        made = Function[Outcome](self.facts, self.classes, self._uses)
        known: dict[Vector, int] = {}

        def below(vector: Vector) -> int:
            if vector not in known:
                places = self._open_places(vector)
                if places:
                    place = max(places, key=lambda place: (self._uses[place], -place))
                    steps = (self._step(vector, place, piece) for piece in range(len(self.classes[place])))
                    children = [IMPOSSIBLE if step is None else below(step) for step in steps]
                    known[vector] = made.branch(place, tuple(children))
                else:
                    known[vector] = made.leaf(outcome(self._truth(vector)))
            return known[vector]

        made.root = IMPOSSIBLE if FALSE in self._start[self._watched :] else below(self._start)
        return made

    # -- cases ------------------------------------------------------------------------------------------

    def vectors(self, within: Mapping[str, ValueSet] | None = None) -> Iterator[tuple[bool, ...]]:
        """Each truth of the watched conditions that some possible case within the given facts has."""
        allowed = self._allowed(within or {})
        seen: set[Vector] = set()
        waiting = [] if FALSE in self._start[self._watched :] else [self._start]
        while waiting:
            vector = waiting.pop()
            if vector in seen:
                continue
            seen.add(vector)
            places = self._open_places(vector)
            if not places:
                yield self._truth(vector)
                continue
            place = min(places)
            for piece in range(len(self.classes[place])):
                if allowed.get(place, -1) >> piece & 1:
                    following = self._step(vector, place, piece)
                    if following is not None:
                        waiting.append(following)

    def example(self, within: Mapping[str, ValueSet] | None = None) -> Example | None:
        """One case within the given facts that decides every condition: its classes and the truths."""
        allowed = self._allowed(within or {})

        def descend(vector: Vector, chosen: dict[str, ValueSet]) -> Example | None:
            places = self._open_places(vector)
            if not places:
                return chosen, self._truth(vector)
            place = min(places)
            for piece, values in enumerate(self.classes[place]):
                following = self._step(vector, place, piece) if allowed.get(place, -1) >> piece & 1 else None
                found = following and descend(following, {**chosen, self.facts[place]: values})
                if found:
                    return found
            return None

        return None if FALSE in self._start[self._watched :] else descend(self._start, {})

    def _allowed(self, within: Mapping[str, ValueSet]) -> dict[int, int]:
        return {
            self._place[fact]: self._mask(self._place[fact], values)
            for fact, values in within.items()
            if fact in self._place
        }
