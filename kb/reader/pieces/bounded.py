"""Circumstances with a bound in their names, told by a measure: "for more than 5 minutes" by "three minutes".

The fact is yes or no, its name has a bound in a unit of that dimension, and of the other words of weight in
the name two, and half of them, are said as well ("the cold room", "two buildings"): what it is a measure of.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.measures import same_dimension
from kb.measures.parsing import find_measure
from kb.model.lookup import Lookup
from kb.model.records import Fact, Measure
from kb.model.values import NO, YES, Interval, ValueSet, intersect, is_empty, is_subset, ranges
from kb.reader.names.lexicon import name_words
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import Token

_WITHIN, _BEYOND = word_set("within inside"), word_set("beyond past")
_LIGHT = (
    _WITHIN
    | _BEYOND
    | word_set("of the a an in on at to for from by is are be being that who which stays stay")
)
_JOINING = word_set("of the a an in on at for from to away off only just about")
_LEADING = word_set("in on at near by the")


class Settled(msgspec.Struct, frozen=True):
    """A fact that a measure settles, yes or no, and the other words of its name."""

    fact: str
    value: ValueSet
    words: frozenset[str]


def bounded_fact(measure: Measure, tokens: Sequence[Token], lookup: Lookup) -> Settled | None:
    """The one fact that a measure settles; None where that is not clear."""
    said = {form for token in tokens for form in (token.low, token.key)}
    told = ranges([measure.interval])
    found = dict[str, Settled]()
    for fact in lookup.base.facts:
        if fact.kind != "yes_no":
            continue
        for bound, words in _bounds(fact, measure.unit, said):
            inside = ranges([bound])
            if is_subset(told, inside):
                found[fact.id] = Settled(fact.id, YES, words)
            elif is_empty(intersect(told, inside)):
                found[fact.id] = Settled(fact.id, NO, words)
    return next(iter(found.values())) if len(found) == 1 else None


def stretch(settled: Settled, found: Sequence[Piece], index: int, tokens: Sequence[Token]) -> tuple[int, int]:
    """The pieces from and up to which, about a measure at `index`, the rest of the fact's name is said."""

    def words_of(piece: Piece) -> set[str]:
        return {token.key for token in tokens[piece.first : piece.last]}

    def is_of_name(piece: Piece) -> bool:
        lows = {token.low for token in tokens[piece.first : piece.last]}
        return words_of(piece) <= settled.words or lows <= _JOINING

    first, last, end = index, index + 1, index + 1
    while end < len(found) and is_of_name(found[end]):
        end += 1
        last = end if words_of(found[end - 1]) <= settled.words else last
    start = index
    while start and is_of_name(found[start - 1]):
        start -= 1
        first = start if words_of(found[start]) <= settled.words else first
    if first < index and tokens[found[first - 1].first].low in _LEADING:
        first -= 1
    return first, last


def _bounds(fact: Fact, unit: str, said: set[str]) -> Iterator[tuple[Interval, frozenset[str]]]:
    """The bounds in the names of a fact whose other words are said, and these words."""
    for name in (fact.label, *fact.other_labels):
        if not any(char.isdigit() for char in name) and NUMBER_WORDS.keys().isdisjoint(name.split()):
            continue
        stated = find_measure(name)
        if stated is None or not same_dimension(stated.measure.unit, unit):
            continue
        before, after = name[: stated.start].split(), name[stated.end :]
        words = frozenset(name_words(" ".join((*before, after)))) - _LIGHT
        heard = words & said
        if not words or len(heard) < min(len(words), 2) or len(heard) * 2 < len(words):
            continue
        bound = stated.measure.interval
        lead = before[-1].casefold() if before else ""
        if bound.low is not None and bound.low == bound.high:
            if lead in _WITHIN:
                bound = Interval(None, bound.high)
            elif lead in _BEYOND:
                bound = Interval(bound.low, None, low_open=True)
            else:
                continue
        yield bound, words
