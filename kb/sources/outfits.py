"""Rigs that rules name as what is worn: "must: gala-rig" at a wedding.

A rig is a fact, and a rule is of an item. One that a rule names as an item is an item besides, of the same
name, and whoever wears it is in that rig.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from kb.model.conditions import Condition, Test, all_of, negate
from kb.model.records import Fact, Item
from kb.model.values import YES, Choices
from kb.sources.builtin import TOP
from kb.sources.sections import Sections
from kb.sources.tree import Mapping, Node, Scalar

_HEAD = re.compile(r"(?:must|may|need not|only|not together|phase in|phase out)\b")


def outfits(sections: Sections, rig: Fact | None, items: dict[str, Item]) -> dict[str, Item]:
    """An item, of the id and the names of the rig, for each rig that a rule names and no item is called."""
    if rig is None:
        return {}
    named = {text for part in sections.parts for clause in part.clauses for text in _named(clause)}
    return {
        value.id: Item(
            id=value.id,
            label=value.label,
            other_labels=value.other_labels,
            at=value.at,
            broader=(TOP,),
            everyday=value.everyday,
        )
        for value in rig.values
        if value.id in named and value.id not in items
    }


def worn_in_rig(outfit: str, rig: Fact) -> Condition:
    """That an outfit is worn by somebody in another rig, which can never be."""
    return all_of([Test(f"worn:{outfit}", YES), negate(Test(rig.id, Choices(frozenset({outfit}))))])


def _named(clause: Mapping) -> Iterator[str]:
    """The texts that the rules of a clause have for items."""
    rules = clause.get("rules")
    for rule in () if rules is None or isinstance(rules, Scalar) else _mappings(rules):
        for entry in rule.entries:
            if _HEAD.match(entry.key.text) is not None:
                yield from _texts(entry.value)


def _mappings(node: Node) -> Iterator[Mapping]:
    nodes = (node,) if isinstance(node, Scalar | Mapping) else node.nodes
    return (one for one in nodes if isinstance(one, Mapping))


def _texts(node: Node) -> Iterator[str]:
    if isinstance(node, Scalar):
        yield node.text
    elif isinstance(node, Mapping):
        for entry in node.entries:
            yield from _texts(entry.value)
    else:
        for one in node.nodes:
            yield from _texts(one)
