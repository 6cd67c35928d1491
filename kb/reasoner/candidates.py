"""Which rules can bear on an item: asked of the store, one item at a time or a whole aspect at once."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence

from kb.model.lookup import Lookup
from kb.reasoner.norms import covers

ForItem = Callable[[str, str, datetime.date], Sequence[str]]
ForAspect = Callable[[str, datetime.date], Sequence[str]]

_ONE_BY_ONE = 3
"""A query for an aspect costs as much as ten for an item; a question about one item needs a few."""


class StoredCandidates:
    """The candidates of the items of a base, as an `Engine` asks for them.

    `for_item` finds the rules in force for an item and aspect, `for_aspect` all those for an aspect; both in
    the order of the sources. After a few items of an aspect the second is asked, and then serves every item.
    """

    def __init__(self, lookup: Lookup, for_item: ForItem, for_aspect: ForAspect) -> None:
        self._lookup, self._for_item, self._for_aspect = lookup, for_item, for_aspect
        self._asked: dict[tuple[str, datetime.date], int] = {}
        self._named: dict[tuple[str, datetime.date], dict[str, list[tuple[int, str]]]] = {}

    def __call__(self, item: str, aspect: str, day: datetime.date) -> Sequence[str]:
        place = (aspect, day)
        self._asked[place] = self._asked.get(place, 0) + 1
        if place in self._named or self._asked[place] > _ONE_BY_ONE:
            found = self._near(place, item)
        else:
            found = self._for_item(item, aspect, day)
        rules = self._lookup.rules
        return [rule for rule in found if covers(self._lookup, rules[rule].scope, item)]

    def _near(self, place: tuple[str, datetime.date], item: str) -> Sequence[str]:
        """The rules that name an item or something broader, in the order of the sources."""
        if place not in self._named:
            named: dict[str, list[tuple[int, str]]] = {}
            for order, rule in enumerate(self._for_aspect(*place)):
                for covered in self._lookup.rules[rule].scope.items:
                    named.setdefault(covered, []).append((order, rule))
            self._named[place] = named
        near = {entry for broad in self._lookup.broader(item) for entry in self._named[place].get(broad, ())}
        return [rule for _, rule in sorted(near)]
