"""An outcome as a function of facts, and the smallest tree that shows it.

A reduced ordered diagram with many-valued facts (Bryant 1986) whose leaves are outcomes; what no case reaches
is a leaf of its own, so that a tree may ignore it.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from itertools import permutations
from typing import Generic, TypeVar

from kb.model.values import Choices, ValueSet, ranges
from kb.reasoner.tree import Branch, Leaf, Tree, facts_of, size

Outcome = TypeVar("Outcome", bound=Hashable)

IMPOSSIBLE = 0
_EXHAUSTIVE = 3


class Function(Generic[Outcome]):
    """Nodes are numbers: a leaf with an outcome, or a fact with one child for each class of its values."""

    def __init__(
        self, facts: Sequence[str], classes: Sequence[Sequence[ValueSet]], uses: Sequence[int]
    ) -> None:
        self.root = IMPOSSIBLE
        self._facts = facts
        self._classes = classes
        self._uses = uses
        self._place = {fact: i for i, fact in enumerate(facts)}
        self._outcomes: dict[int, Outcome] = {}
        self._leaves: dict[Outcome, int] = {}
        self._branches: dict[tuple[int, tuple[int, ...]], int] = {}
        self._nodes: list[tuple[int, tuple[int, ...]] | None] = [None]
        self._supports: list[frozenset[int]] = [frozenset()]
        self._restricted: dict[tuple[int, int, int], int] = {}

    def leaf(self, outcome: Outcome) -> int:
        if outcome not in self._leaves:
            self._leaves[outcome] = len(self._nodes)
            self._outcomes[len(self._nodes)] = outcome
            self._nodes.append(None)
            self._supports.append(frozenset())
        return self._leaves[outcome]

    def branch(self, place: int, children: tuple[int, ...]) -> int:
        """The node that splits on a fact; the child itself where all are one."""
        if all(child == children[0] for child in children):
            return children[0]
        key = (place, children)
        if key not in self._branches:
            self._branches[key] = len(self._nodes)
            self._nodes.append(key)
            self._supports.append(frozenset({place}).union(*(self._supports[child] for child in children)))
        return self._branches[key]

    def _restrict(self, number: int, place: int, piece: int) -> int:
        if place not in self._supports[number]:
            return number
        key = (number, place, piece)
        found = self._restricted.get(key)
        if found is None:
            node = self._nodes[number]
            assert node is not None, "a leaf has no support"
            if node[0] == place:
                found = node[1][piece]
            else:
                found = self.branch(node[0], tuple(self._restrict(child, place, piece) for child in node[1]))
            self._restricted[key] = found
        return found

    def tree(self, order: Sequence[str] = ()) -> Tree[Outcome] | None:
        """The reduced tree with the facts of `order` first, then by how often they are tested.

        None where no case is possible.
        """
        first = {self._place[fact]: i - len(order) for i, fact in enumerate(order) if fact in self._place}
        ranks = [first.get(place, 1000 - uses) for place, uses in enumerate(self._uses)]
        known: dict[int, Tree[Outcome] | None] = {IMPOSSIBLE: None}
        branches: dict[tuple[int, tuple[tuple[int, int], ...]], Branch[Outcome]] = {}

        def below(number: int) -> Tree[Outcome] | None:
            if number not in known:
                support = self._supports[number]
                if support:
                    known[number] = split(number, min(support, key=lambda place: (ranks[place], place)))
                else:
                    known[number] = Leaf(self._outcomes[number])
            return known[number]

        def split(number: int, place: int) -> Tree[Outcome] | None:
            """Children that are one tree (equal trees are one object here) share a branch."""
            children: dict[int, tuple[Tree[Outcome], int]] = {}
            for piece in range(len(self._classes[place])):
                child = below(self._restrict(number, place, piece))
                if child is not None:
                    mask = children[id(child)][1] if id(child) in children else 0
                    children[id(child)] = (child, mask | 1 << piece)
            if len(children) <= 1:
                return next((child for child, _ in children.values()), None)
            key = (place, tuple((mask, number) for number, (_, mask) in children.items()))
            if key not in branches:
                parts = tuple((self._union(place, mask), child) for child, mask in children.values())
                branches[key] = Branch(self._facts[place], parts)
            return branches[key]

        return below(self.root)

    def _union(self, place: int, mask: int) -> ValueSet:
        sets = [values for piece, values in enumerate(self._classes[place]) if mask >> piece & 1]
        if isinstance(sets[0], Choices):
            return Choices(frozenset().union(*(s.members for s in sets if isinstance(s, Choices))))
        return ranges(interval for s in sets if not isinstance(s, Choices) for interval in s.intervals)

    def smallest(self, first: Sequence[str] = ()) -> Tree[Outcome] | None:
        """The smallest tree found by trying each fact in each place of the order, one place after the other.

        With up to three facts every order is tried, so it is the smallest there is. `first` stays in front.
        """
        best = self.tree(first)
        if best is None:
            return None
        facts = [fact for fact in facts_of(best) if fact not in first]
        chosen = list(first)
        while len(facts) > 1:
            exhaustive = len(facts) <= _EXHAUSTIVE
            orders = list(permutations(facts)) if exhaustive else [(fact,) for fact in facts]
            tried = [(size(tree), order, tree) for order in orders if (tree := self.tree([*chosen, *order]))]
            smallest, order, tree = min(tried, key=lambda entry: entry[0])
            if smallest < size(best):
                best = tree
            if exhaustive:
                break
            chosen.append(order[0])
            facts.remove(order[0])
        return best
