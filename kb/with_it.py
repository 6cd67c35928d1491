"""A thing asked about together with one that may not be: "May I wear a black top with a logo?"

Yes and no are then said of both. Where the thing may be worn and what is on it or with it may not, that is
answered. What is only told to be worn ("I've the cap on: may I ...?") is not asked about, and no "no" stands
before something that protects: that a satchel may not be taken aloft says nothing against the harness.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

import msgspec

from kb.let_off import as_it_is
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.model.values import YES
from kb.wording import say_query

_WORN = "worn:"
_WITH = re.compile(r"(?i)[^,.;:?!]*\bwith (?:(?:a|an|any|the|my|his|her|our|their|some) )?(?:\w+ )?")
_ON = re.compile(r"(?i) (?:is |are )?(?:already )?on\b(?! (?:it|them|the|a|my)\b)")


def asked_together(
    reading: Reading, told: Answer, answer: Callable[[Reading], Answer], lookup: Lookup
) -> tuple[Reading, Answer]:
    """The answer (`told` so far), and how its question was read: of what is with it, if that may not be."""
    read, told = as_it_is(reading, told, answer, lookup)
    query = read.query
    if query is None or query.kind != "may" or query.polarity == "not" or query.value is not None:
        return read, told
    if query.modalities or not query.items or lookup.items[query.items[0]].protects:
        return read, told
    if told.outcome != "answer" or told.verdict in ("prohibited", "conflict"):
        return read, told
    for other in _with_it(read, query, lookup):
        asked = _of(other, query, lookup)
        again = msgspec.structs.replace(read, query=asked, text=say_query(lookup, asked))
        if (worse := answer(again)).verdict == "prohibited":
            return again, worse
    return read, told


def _with_it(reading: Reading, query: Query, lookup: Lookup) -> Iterator[str]:
    """What stands after "with" behind the thing that is asked about."""
    worn = [fact.removeprefix(_WORN) for fact, values in query.case.facts if values == YES]
    others = {*query.items[1:], *worn} & lookup.items.keys()
    spans = [span for span in reading.spans if span.role == "item"]
    things = [span for span in spans if span.target == query.items[0]]
    for span in spans:
        if not things or span.target not in others or len(lookup.narrower(span.target)) > 1:
            continue
        between = reading.question[things[0].end : span.start]
        if _WITH.fullmatch(between) and not _ON.match(reading.question[span.end :]):
            yield span.target


def _of(other: str, query: Query, lookup: Lookup) -> Query:
    facts = dict(query.case.facts) | {_WORN + query.items[0]: YES}
    facts.pop(_WORN + other, None)
    known = {fact: values for fact, values in facts.items() if fact in lookup.facts}
    case = msgspec.structs.replace(query.case, facts=tuple(known.items()))
    return msgspec.structs.replace(query, items=(other,), aspect=lookup.use_of(other), case=case)
