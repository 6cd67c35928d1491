"""A measure claimed as the text gives it in its second unit: "38 mm" where it is "1 1/2 in (38 mm)"."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.values import Ranges, ranges


def as_written(query: Query, lookup: Lookup) -> Query:
    """The query with the exact measure in place of the rounded one that a rule's text gives beside it."""
    if not isinstance(query.value, Ranges) or not query.items:
        return query
    related = {*lookup.broader(query.items[0]), *lookup.narrower(query.items[0])}
    aspects = lookup.aspects_within(query.aspect)
    for rule in lookup.base.rules:
        measure = rule.value.measure
        if measure is None or measure.also is None or rule.aspect not in aspects:
            continue
        if related.intersection(rule.scope.items) and query.value == ranges([measure.also.interval]):
            return msgspec.structs.replace(query, value=ranges([measure.interval]))
    return query
