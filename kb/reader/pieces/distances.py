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
_LIGHT = word_set("the a an my his her any some")
_AMONG = _LIGHT | word_set("""
    that which where there is are 's is it someone somebody they he she we another mate colleague
    man bloke chap lad guy fellow woman girl
""")
"""Words among those that name what it is taken from: "where a lad is running a chainsaw"."""
_RUNNING = word_set("running turning spinning going on cutting")
"""How it is said that a machine runs."""
_HEDGES = word_set("about around some maybe perhaps only just roughly nearly barely is at")
_HERE = word_set("me us you here him her them")
_FURTHEST = 10


def distances(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup, facts: Sequence[Fact]) -> Pieces:
    """The pieces with each such length, and what it is taken from, as the fact that they state."""
    known = {fact.id: tuple(_objects(fact)) for fact in facts if _is_distance(fact)}
    found = list(pieces)
    for index in range(len(found) - 1, -1, -1) if known else ():
        measure = found[index].measure
        if measure is None or found[index].tag != "measure" or not same_dimension(measure.unit, "mm"):
            continue
        spans = {fact: span for fact, of in known.items() if (span := _span(of, found, index, tokens))}
        if len(spans) == 1:
            ((fact, (start, end)),) = spans.items()
            within = start > 0 and tokens[found[start - 1].first].low in _WITHIN
            start -= within
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
    rules = lookup.rules_on(kin)
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
    parts = [part for label in labels for part in re.split(r",? or |, ", label)]
    whole = [tuple(key for low, key in label_tokens(part) if low not in _LIGHT) for part in parts]
    yield from whole
    plain = [words for words in whole if _RUNNING.isdisjoint(words)]  # "a running saw" is no saw that stands
    yield from (words[-1:] for words in plain if sum(other[-1] == words[-1] for other in whole) == 1)


def _up_to(measure: Measure) -> Interval:
    return msgspec.structs.replace(measure.interval, low=None, low_open=False)


def _span(
    objects: Sequence[tuple[str, ...]], found: Sequence[Piece], index: int, tokens: tuple[Token, ...]
) -> tuple[int, int] | None:
    """From where to where the words stand that say from what it is measured; None where they do not."""
    away = found[index].last
    while away < len(tokens) and tokens[away].low in _AWAY:
        away += 1
    place = away - (away > found[index].last and tokens[away - 1].low in _FROM)  # "12 metres off the saw"
    here = place + 1 < len(tokens) and tokens[place + 1].low in _HERE
    if place < len(tokens) and tokens[place].low in _FROM and not here:
        last = max((_named_after(words, tokens, place + 1) for words in objects), default=0)
        if end := next((i + 1 for i, piece in enumerate(found) if last and piece.last == last), 0):
            return index, end
    if here:
        away = place + 2
    if away == found[index].last:
        return None  # "a chainsaw 400 mm long"
    first = max((_named_before(words, tokens, found[index].first) for words in objects), default=-1)
    start = next((i for i, piece in enumerate(found) if piece.first == first), -1)
    end = next((i + 1 for i, piece in enumerate(found) if piece.last == away), 0)
    return (start, end) if 0 <= start < index < end else None


def _named_after(words: tuple[str, ...], tokens: tuple[Token, ...], place: int) -> int:
    """Where the name of an object ends that stands here, its words in any order: "where it is running"."""
    left = list(words)
    for at in range(place, min(place + _FURTHEST, len(tokens))):
        if not _take(left, tokens[at]):
            return 0
        if not left:
            return at + 1
    return 0


def _named_before(words: tuple[str, ...], tokens: tuple[Token, ...], place: int) -> int:
    """Where the name of an object begins that ends before here: "a chainsaw running about 8 m away"."""
    left = list(words)
    while place and tokens[place - 1].low in _HEDGES and tokens[place - 1].low not in _RUNNING:
        place -= 1
    for at in range(place - 1, max(place - 1 - _FURTHEST, -1), -1):
        if not _take(left, tokens[at]):
            return -1
        if not left:
            return at
    return -1


def _take(left: list[str], token: Token) -> bool:
    """Whether a word is one of those that are left, which it is taken from, or only stands among them."""
    same = [key for key in left if key == token.key or (key in _RUNNING and token.low in _RUNNING)]
    if same:
        left.remove(same[0])
    return bool(same) or token.low in _AMONG
