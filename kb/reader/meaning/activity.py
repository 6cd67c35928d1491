"""An activity told by its verb, "when I paint", "I'm off to weld", where the books name it "painting"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.reader.names.lexicon import Entry, Lexicon
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import entry_values, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_LEADS = tag_set("self, person, can, may, must, if, when, allowed")
_TOLD = tag_set("self, if, when")
_ASKS = tag_set(
    "do, be, can, may, must, should, how, what, which, where, have, allowed, have to, act, to, not"
)
_FOLLOWS = tag_set("comma, in, with, on, without, if, when, filler, by")
_AHEAD = word_set("""
    going about off have has got need needs want wants wanting like ready due set told asked ordered sent
    detailed supposed here come came start starting begin beginning meaning planning plan intend intending
    hoping hope preparing getting
""")
"""What stands before "to" where somebody is yet to do something: "about to weld", "I've been told to"."""
_HAVING = word_set("have has 've got 's")
_NOT_AHEAD = word_set("not n't never no nobody nothing used without hardly rather")
_WHOLE_NAME, _ANY_NAME = 2, 3  # below which an entry's rank stays
_BEFORE = 5  # words before "to" in which that may be denied


def activity(
    found: list[Piece], index: int, tokens: Sequence[Token], lexicon: Lexicon, lookup: Lookup
) -> None:
    """ "When I paint", "may I haul in gloves": the one state of things whose name is the verb's -ing form.

    So is what somebody is about to do, "I'm going to paint the rails", or what a thing is for, "gauntlets
    to weld": where clothing protects, this is told before the work begins.
    """
    before = found[index - 1] if index else None
    ahead = (
        before is not None and tokens[found[index].first - 1].low == "to" and _is_ahead(found, index, tokens)
    )
    if before is None or not (ahead or before.tag in _LEADS):
        return
    told = ahead or (before.tag in _TOLD and (index == 1 or found[index - 2].tag not in _ASKS))
    ends = _ends_there(found, index)
    if not (ends or (told and _has_object(found, index, tokens))):
        return
    ranks = _ANY_NAME if ends else _WHOLE_NAME  # "shaking" is no name of "shaking hands" beside an object
    states = tuple(_states(tokens[found[index].first].low, lexicon, ranks))
    named = {(e.owner, entry_values(e, lookup)) for _, e in states}
    if len(named) == 1:
        ((fact, values),) = named
        if lookup.facts[fact].family == "situation":
            place = msgspec.structs.replace(found[index], arg=states[0][0])
            found[index] = fact_piece(place, fact, values, place.first, place.last)


def _ends_there(found: Sequence[Piece], index: int) -> bool:
    return index + 1 == len(found) or found[index + 1].tag in _FOLLOWS


def _is_ahead(found: Sequence[Piece], index: int, tokens: Sequence[Token]) -> bool:
    """Whether "to" and a verb tell what is to be done: after "going", "have", or the thing needed for it."""
    to = found[index].first - 1
    lows = [token.low for token in tokens[max(0, to - _BEFORE) : to]]
    if not lows or not _NOT_AHEAD.isdisjoint(lows):
        return False
    before = next((piece for piece in reversed(found[:index]) if piece.first < to), None)
    if before is None or before.last != to:
        return lows[-1] in _AHEAD
    waiting = before.tag == "unknown" and not _HAVING.isdisjoint(lows)  # "I've got railings to paint"
    return waiting or before.tag in ("item", "items", "act") or lows[-1] in _AHEAD


def _has_object(found: Sequence[Piece], index: int, tokens: Sequence[Token]) -> bool:
    """ "Paint the rails", "weld.", "weld, do I ...": no thing that is worn is what it is done to."""
    after = next((piece for piece in found[index + 1 :] if piece.tag not in ("det", "poss")), None)
    if after is not None and any(
        tokens[place].start - tokens[place - 1].end > 1 for place in range(found[index].last, after.first + 1)
    ):
        return True  # the next sentence begins
    return after is None or after.tag not in ("item", "items", "act", "body")


def _states(word: str, lexicon: Lexicon, ranks: int) -> Iterator[tuple[str, Entry]]:
    stems = (word, word.removesuffix("s"), word.removesuffix("e"), word + word[-1])
    for stem in dict.fromkeys(stems):
        for entry in lexicon.names.get(stem + "ing", ()):
            if entry.kind == "value" and entry.rank < ranks:
                yield stem + "ing", entry
