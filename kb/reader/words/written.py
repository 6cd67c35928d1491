"""A measure claimed as the text gives it in its second unit: "38 mm" where it is "1 1/2 in (38 mm)"."""

from __future__ import annotations

import msgspec

from kb.measures.twins import as_first
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.values import Ranges, ranges


def as_written(query: Query, unit: str, lookup: Lookup) -> Query:
    """The query with the exact measure in place of the rounded one that a rule's text gives beside it.

    `unit` is the one in which the measure was said.
    """
    if not isinstance(query.value, Ranges) or not query.items or len(query.value.intervals) != 1:
        return query
    (claimed,) = query.value.intervals
    related = {*lookup.broader(query.items[0]), *lookup.narrower(query.items[0])}
    aspects = lookup.aspects_within(query.aspect)
    for rule in lookup.base.rules:
        measure = rule.value.measure
        if measure is None or rule.aspect not in aspects or not related.intersection(rule.scope.items):
            continue
        first = as_first(claimed, unit, measure)
        if first != claimed:
            return msgspec.structs.replace(query, value=ranges([first]))
    return query
