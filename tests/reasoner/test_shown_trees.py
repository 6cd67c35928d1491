"""A table that is shown has no two branches of one fact that say the same."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

import pytest

from kb.model.lookup import Lookup
from kb.model.questions import Verdict
from kb.model.records import Case
from kb.reasoner import Engine, possible_facts
from kb.reasoner.tree import Branch, Tree
from kb.sources import load_rule_base
from tests.reading.sheets import BOOKS

DAY = datetime.date(2026, 12, 1)


def branches(tree: Tree[Verdict]) -> Iterator[Branch[Verdict]]:
    if isinstance(tree, Branch):
        yield tree
        for _, child in tree.children:
            yield from branches(child)


@pytest.mark.parametrize("books", ["demo", "fourth", "sixth"])
def test_no_two_children_are_alike(books: str) -> None:
    loaded = load_rule_base(BOOKS[books])
    assert loaded.base is not None
    lookup = Lookup(loaded.base)
    engine = Engine(lookup, DAY)
    seen = 0
    for item in lookup.items:
        possible = possible_facts(Case(as_of=DAY), (item,), False, lookup)
        tree = engine.problem(engine.group(item, "wear"), possible).verdicts()
        for branch in branches(tree):
            children = [child for _, child in branch.children]
            assert all(one != other for i, one in enumerate(children) for other in children[:i]), item
            seen += 1
    assert seen > 100
