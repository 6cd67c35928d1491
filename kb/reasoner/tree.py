"""Decision trees over the facts that matter, and their reading as tables.

In a reduced tree branches with equal outcomes are one, so a fact that cannot change the outcome is not in it.
"""

from __future__ import annotations

from collections.abc import Hashable
from typing import Generic, TypeVar

import msgspec

from kb.model.values import ValueSet

Outcome = TypeVar("Outcome", bound=Hashable)


class Leaf(msgspec.Struct, Generic[Outcome], frozen=True):
    outcome: Outcome


class Branch(msgspec.Struct, Generic[Outcome], frozen=True):
    """A split on one fact; the sets are disjoint and cover what is possible."""

    fact: str
    children: tuple[tuple[ValueSet, Tree[Outcome]], ...]


Tree = Leaf[Outcome] | Branch[Outcome]

Facts = tuple[tuple[str, ValueSet], ...]


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
