"""Decision trees over the facts that matter: exact, small, the most decisive fact first.

`grow` splits facts into classes until an outcome is settled. Branches with equal outcome trees are merged, so
a fact that cannot change the outcome never stays in a tree.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from itertools import permutations
from typing import Generic, TypeVar

import msgspec

from kb.model.conditions import Condition, tests
from kb.model.lookup import Lookup
from kb.model.values import ValueSet, unite
from kb.reasoner.space import classes_of, simplify, truth_of

Outcome = TypeVar("Outcome", bound=Hashable)


class Leaf(msgspec.Struct, Generic[Outcome], frozen=True):
    outcome: Outcome


class Branch(msgspec.Struct, Generic[Outcome], frozen=True):
    """A split on one fact; the sets are disjoint and cover what is possible."""

    fact: str
    children: tuple[tuple[ValueSet, Tree[Outcome]], ...]


Tree = Leaf[Outcome] | Branch[Outcome]

Facts = tuple[tuple[str, ValueSet], ...]


class _Grower(Generic[Outcome]):
    """One growth: the conditions watched, the constraints between facts, and the outcome of a full vector."""

    def __init__(
        self,
        lookup: Lookup,
        outcome: Callable[[tuple[bool, ...]], Outcome],
        weights: Callable[[str], int],
        watched: int,
    ) -> None:
        self.lookup = lookup
        self.outcome = outcome
        self.weights = weights
        self.watched = watched
        self.memo: dict[tuple[Condition, ...], Tree[Outcome] | None] = {}
        self.outcomes: dict[tuple[bool, ...], Outcome] = {}

    def grow(
        self, conditions: tuple[Condition, ...], possible: Mapping[str, ValueSet]
    ) -> Tree[Outcome] | None:
        """The tree below this point, or None where no possible case lies. Constraints follow the watched."""
        residual = tuple(simplify(condition, possible) for condition in conditions)
        truths = [truth_of(condition) for condition in residual]
        if False in truths[self.watched :]:
            return None
        if residual not in self.memo:
            self.memo[residual] = self._split(residual, truths, possible)
        return self.memo[residual]

    def _split(
        self,
        residual: tuple[Condition, ...],
        truths: Sequence[bool | None],
        possible: Mapping[str, ValueSet],
    ) -> Tree[Outcome] | None:
        undecided = [c for c, truth in zip(residual, truths, strict=True) if truth is None]
        if not undecided:
            vector = tuple(bool(truth) for truth in truths[: self.watched])
            if vector not in self.outcomes:
                self.outcomes[vector] = self.outcome(vector)
            return Leaf(self.outcomes[vector])
        fact = min(
            dict.fromkeys(test.fact for condition in undecided for test in tests(condition)),
            key=self.weights,
        )
        pieces = classes_of(fact, possible.get(fact, self.lookup.domain(fact)), undecided)
        grown = ((piece, self.grow(residual, {**possible, fact: piece})) for piece in pieces)
        return _merge(fact, [(piece, child) for piece, child in grown if child is not None])


def _merge(fact: str, children: Sequence[tuple[ValueSet, Tree[Outcome]]]) -> Tree[Outcome] | None:
    """Children with equal trees become one; a single child takes the place of the branch."""
    merged: dict[Tree[Outcome], ValueSet] = {}
    for piece, child in children:
        merged[child] = unite(merged[child], piece) if child in merged else piece
    if not merged:
        return None
    if len(merged) == 1:
        return next(iter(merged))
    return Branch(fact, tuple((piece, child) for child, piece in merged.items()))


def grow(
    conditions: Sequence[Condition],
    limits: Sequence[Condition],
    possible: Mapping[str, ValueSet],
    lookup: Lookup,
    outcome: Callable[[tuple[bool, ...]], Outcome],
    order: Sequence[str] = (),
) -> Tree[Outcome] | None:
    """The reduced tree of an outcome that depends on which conditions hold, given limits between the facts.

    `order` puts facts first; None is returned when no case is possible at all.
    """
    ranks = {fact: i for i, fact in enumerate(order)}
    counts: dict[str, int] = {}
    for condition in conditions:
        for test in tests(condition):
            counts[test.fact] = counts.get(test.fact, 0) + 1
    grower = _Grower(
        lookup,
        outcome,
        lambda fact: ranks.get(fact, len(ranks) + 1000 - counts.get(fact, 0)),
        len(conditions),
    )
    return grower.grow((*conditions, *limits), possible)


def facts_of(tree: Tree[Outcome]) -> tuple[str, ...]:
    """The facts a tree asks for, the first asked first."""
    if isinstance(tree, Leaf):
        return ()
    below = (fact for _, child in tree.children for fact in facts_of(child))
    return tuple(dict.fromkeys([tree.fact, *below]))


def rows(tree: Tree[Outcome]) -> tuple[tuple[Facts, Outcome], ...]:
    """The tree as a table: one row for each path."""
    if isinstance(tree, Leaf):
        return (((), tree.outcome),)
    return tuple(
        (((tree.fact, values), *facts), outcome)
        for values, child in tree.children
        for facts, outcome in rows(child)
    )


def outcomes(tree: Tree[Outcome]) -> frozenset[Outcome]:
    return frozenset(outcome for _, outcome in rows(tree))


def size(tree: Tree[Outcome]) -> tuple[int, int]:
    """Number of rows and of tests in them: what "smallest" means."""
    table = rows(tree)
    return len(table), sum(len(facts) for facts, _ in table)


def smallest(
    conditions: Sequence[Condition],
    limits: Sequence[Condition],
    possible: Mapping[str, ValueSet],
    lookup: Lookup,
    outcome: Callable[[tuple[bool, ...]], Outcome],
    first: Sequence[str] = (),
) -> Tree[Outcome] | None:
    """The smallest tree found by trying each fact in each place of the order, one place after the other.

    With up to three facts every order is tried, so it is the smallest there is. `first` keeps facts in front.
    """
    best = grow(conditions, limits, possible, lookup, outcome, first)
    if best is None:
        return None
    known: dict[tuple[bool, ...], Outcome] = {}

    def remembered(vector: tuple[bool, ...]) -> Outcome:
        if vector not in known:
            known[vector] = outcome(vector)
        return known[vector]

    facts = [fact for fact in facts_of(best) if fact not in first]
    chosen = list(first)
    orders: Iterable[tuple[str, ...]]
    while facts:
        exhaustive = len(facts) <= 3
        orders = permutations(facts) if exhaustive else ((fact,) for fact in facts)
        tried = []
        for order in orders:
            tree = grow(conditions, limits, possible, lookup, remembered, [*chosen, *order])
            if tree is not None:
                tried.append((size(tree), order, tree))
        _, order, tree = min(tried, key=lambda entry: entry[0])
        if size(tree) < size(best):
            best = tree
        if exhaustive:
            break
        chosen.append(order[0])
        facts.remove(order[0])
    return best
