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
    found: dict[str, None] = {}
    seen: set[int] = set()
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Branch) and id(node) not in seen:
            seen.add(id(node))
            found[node.fact] = None
            waiting += [child for _, child in reversed(node.children)]
    return tuple(found)


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
    if isinstance(tree, Leaf):
        return frozenset((tree.outcome,))
    return frozenset().union(*(outcomes(child) for _, child in tree.children))
