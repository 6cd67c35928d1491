"""A question about several things ("do I need a harness and a helmet") as a question about each of them."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.meaning.fits import depends, wearing
from kb.reader.phrases.english import PHRASES
from kb.wording import say_query

_TOGETHER = frozenset({"list", "compare"})
_AMOUNTS = frozenset({"count", "measure"})


def each_thing(reading: Reading, lookup: Lookup) -> tuple[Reading, ...]:
    """The readings to answer: one for each thing asked about, with those that bear on it.

    What a talk goes on from is the whole question. A list, a comparison and an order are of all at once.
    """
    query = reading.query
    if query is None or len(query.items) < 2 or query.kind in _TOGETHER or query.aspect == "precedence":
        return (reading,)
    words = (tuple(span.text.casefold().split()) for span in reading.spans)
    together = any(PHRASES.get(said) == "together" for said in words)
    found = [
        msgspec.structs.replace(reading, text=say_query(lookup, one), query=one, frame=reading.frame or query)
        for one in _each(query, together, lookup)
    ]
    return tuple(found)


def _each(query: Query, together: bool, lookup: Lookup) -> Iterator[Query]:
    first = query.items[0]
    worn = query.aspect == wearing((first,), lookup)
    for item in dict.fromkeys(query.items):
        aspect = wearing((item,), lookup) if worn else query.aspect
        one = msgspec.structs.replace(query, items=(item,), aspect=aspect)
        amount = query.value is not None and lookup.aspects[query.aspect].kind in _AMOUNTS
        if amount and item != first:  # "two rings and a bracelet", "a knife with a 7 cm blade"
            one = msgspec.structs.replace(one, aspect=wearing((item,), lookup), value=None)
        if one.kind == "may" and one.polarity == "do" and one.value is None and aspect == "wear":
            others = (other for other in query.items if other != item)
            others = (other for other in others if together or _bears_on(other, item, lookup))
            one = msgspec.structs.replace(one, items=(item, *others))
        yield one


def _bears_on(other: str, item: str, lookup: Lookup) -> bool:
    """Whether a rule on a thing asks if the other is worn, or one is of either or of how many of both."""
    worn = {f"worn:{name}" for name in (*lookup.broader(other), *lookup.narrower(other))}
    if depends((item,), "wear", worn, lookup):
        return True
    wider = set(lookup.broader(item)), set(lookup.broader(other))
    return any(
        (rule.aspect == "count" and wider[0] & wider[1] & named)
        or (rule.scope.alternatives and wider[0] & named and wider[1] & named)
        for rule in lookup.base.rules
        for named in (set(rule.scope.items),)
    )
