"""How far away something is: "12 metres from the rail saw", where the books know "distance from the saw".

A length that is told with what it is taken from is of that circumstance, and no size of a thing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import msgspec

from kb.measures import same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Reading
from kb.model.records import Fact, Measure, is_in_force
from kb.model.values import Interval, intersect, is_empty, ranges
from kb.reader.names.lexicon import label_tokens, labels_of
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import Pieces, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_LED = "distance from "
_FROM = word_set("from of off to")
_AWAY = word_set("away off clear back or less only just")
_WITHIN = word_set("within inside")
_LIGHT = word_set("the a an my his her any")


def distances(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup, facts: Sequence[Fact]) -> Pieces:
    """The pieces with each such length, and what it is taken from, as the fact that they state."""
    known = {fact.id: tuple(_objects(fact)) for fact in facts if _is_distance(fact)}
    found = list(pieces)
    for index in range(len(found) - 1, -1, -1) if known else ():
        measure = found[index].measure
        if measure is None or found[index].tag != "measure" or not same_dimension(measure.unit, "mm"):
            continue
        ends = {fact: end for fact, of in known.items() if (end := _end(of, found, index, tokens))}
        if len(ends) == 1:
            ((fact, end),) = ends.items()
            within = index > 0 and tokens[found[index - 1].first].low in _WITHIN
            start = index - within
            told = ranges([_up_to(measure) if within else measure.interval])
            first, last = found[start].first, found[end - 1].last
            found[start:end] = [fact_piece(found[index], fact, told, first, last)]
            return distances(tuple(found), tokens, lookup, facts)
    return tuple(found)


def within_the_rules(reading: Reading, lookup: Lookup) -> Reading:
    """The reading; one that is refused where it asks at a distance at which no rule in force speaks of it."""
    query = reading.query
    far = [one for one in query.case.facts if _is_distance(lookup.facts[one[0]])] if query is not None else []
    if query is None or not far:
        return reading
    kin = {kind for item in query.items for kind in lookup.broader(item)}
    rules = [rule for rule in lookup.base.rules if kin.intersection(rule.scope.items)]
    standing = [test for r in rules if is_in_force(r, query.case.as_of) for test in tests(r.condition)]
    for fact, told in far:
        bounds = [test.values for test in standing if test.fact == fact]
        if bounds and all(is_empty(intersect(told, bound)) for bound in bounds):
            stop = Abstain(reason="No rule in force speaks of it at that distance.")
            return msgspec.structs.replace(reading, query=None, text="", abstain=stop)
    return reading


def _is_distance(fact: Fact) -> bool:
    return same_dimension(fact.unit or "1", "mm") and fact.label.casefold().startswith(_LED)


def _objects(fact: Fact) -> Iterator[tuple[str, ...]]:
    """The words of what it may be taken from, and the last of them alone where only one is called so."""
    labels = [label.casefold().removeprefix(_LED) for label in labels_of(fact)]
    parts = [part.removeprefix("the ") for label in labels for part in re.split(r",? or |, ", label)]
    whole = [tuple(key for _, key in label_tokens(part)) for part in parts]
    yield from whole
    yield from (words[-1:] for words in whole if sum(other[-1] == words[-1] for other in whole) == 1)


def _up_to(measure: Measure) -> Interval:
    return msgspec.structs.replace(measure.interval, low=None, low_open=False)


def _end(
    objects: Sequence[tuple[str, ...]], found: Sequence[Piece], index: int, tokens: tuple[Token, ...]
) -> int:
    """Where the words end that say from what it is measured; 0 where they say something else."""
    place = found[index].last
    while place < len(tokens) and tokens[place].low in _AWAY:
        place += 1
    place -= place > found[index].last and tokens[place - 1].low in _FROM  # "12 metres off the saw"
    if place >= len(tokens) or tokens[place].low not in _FROM:
        return 0
    place += 1
    while place < len(tokens) and tokens[place].low in _LIGHT:
        place += 1
    keys = tuple(token.key for token in tokens[place:])
    last = max((place + len(words) for words in objects if keys[: len(words)] == words), default=0)
    return next((i + 1 for i, piece in enumerate(found) if last and piece.last == last), 0)
