"""What a story shows: what was worn or done, as the question of whether it may be; when, and where."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.days import Period, said_period
from kb.reader.english import tag_set
from kb.reader.forms import word_set
from kb.reader.pieces import Piece, Understood
from kb.reader.pointing import is_place

_LIGHT = tag_set("det, poss, filler, comma, and, but")
_MODALS = tag_set("may, must, can, have to, should")
_WEARING = tag_set("have, act, with, hold, be")
_WANTING = word_set("""
    fancy fancies fancied bought brought chose chosen picked like liked love loved want wanted prefer
    preferred sport sports sported sporting don donned found kept keep
""")
_LACKING = tag_set("no, without, leave off, not")
_NOBODY = word_set("nobody none never")
_SUBJECT = tag_set("self, person, det, poss, fact, filler, have, be, comma, unknown, and")
_CARED = word_set("""
    wring wrung wringing iron ironed ironing bleach bleached starch starched wash washed press pressed brush
    brushed scrub scrubbed polish polished soak soaked rinse rinsed lacquer lacquered boil boiled
""")


def shown_worn(found: Understood, pieces: Sequence[Piece]) -> str:
    """ "In town with no vest on. Did I break a rule?": whether the one thing named may, or must, be worn."""
    things = [p for p in pieces if p.tag in ("item", "items")]
    if len(things) != 1 or any(p.tag in _MODALS for p in pieces):
        return ""
    at = pieces.index(things[0])
    place = at - 1
    while place >= 0 and pieces[place].tag in _LIGHT:
        place -= 1
    led = pieces[place].tag if place >= 0 else ""
    thing = said_of(found, things[0], things[0])
    after = pieces[at + 1 :]
    off = any(p.tag == "leave off" for p in pieces) or any(
        found.tokens[p.first].low == "off" for p in after[:1]
    )
    if led in _LACKING or off:
        return f"must the {thing} be worn?"
    if led == "act" and pieces[place].arg not in ("wear", "use"):
        return ""
    if led == "unknown" and found.tokens[pieces[place].first].low in _WANTING:
        return f"may the {thing} be worn?"
    if led in _WEARING or any(p.tag == "act" and p.arg in ("wear", "use") for p in pieces):
        return f"{'must' if _is_of_nobody(found, pieces[:at]) else 'may'} the {thing} be worn?"
    return ""


def _is_of_nobody(found: Understood, before: Sequence[Piece]) -> bool:
    """ "Nobody in my boat wears the vest", "I never wore it": whether the wearing is denied."""
    return any(p.tag == "not" or found.tokens[p.first].low in _NOBODY for p in before)


def shown_done(found: Understood, pieces: Sequence[Piece]) -> str:
    """ "I ironed my coat this morning. Was that proper?": whether one may do that to the thing named."""
    done = [n for n, p in enumerate(pieces) if is_cared(found, p)]
    if len(done) != 1 or {p.tag for p in pieces[: done[0]]} - _SUBJECT:
        return ""
    if any(p.tag in _MODALS or p.tag == "not" for p in pieces[done[0] :]):
        return ""
    return f"may I {said_of(found, pieces[done[0]], pieces[-1])}?"


def is_cared(found: Understood, piece: Piece) -> bool:
    """Whether a piece says what is done in caring for a thing, in a word of the books or a common one."""
    if piece.tag == "aspect":
        return piece.arg.startswith("care:")
    return piece.tag == "unknown" and found.tokens[piece.first].low in _CARED


def said_of(found: Understood, first: Piece, last: Piece) -> str:
    """The words from one piece to another."""
    return found.text[found.tokens[first.first].start : found.tokens[last.last - 1].end]


def day_said(found: Understood, places: range) -> Period | None:
    """Where a stretch of pieces says when it was: "last year", "in 2021"."""
    return said_period(found, tuple(places), datetime.date(2000, 1, 1))  # whichever day it is


def is_given(found: Understood, place: int) -> bool:
    """ "My aunt gave me a scarf": what is given is a thing, and no leave."""
    rest = [p.tag for p in found.pieces[place + 1 :] if p.tag not in ("self", "person", "det", "poss")]
    gave = found.tokens[found.pieces[place].first].low in ("gave", "gives", "given")
    return gave and rest[:1] in (["item"], ["items"])


def with_place(found: Understood, told: Iterable[range], question: str, lookup: Lookup) -> str:
    """The question with the one place that was told of for a "there" at its end."""
    rest = question.rstrip(" ?.!")
    if not rest.endswith(" there"):
        return question
    facts = [found.pieces[p] for places in told for p in places]
    named = {said_of(found, p, p) for p in facts if _is_one_place(p, lookup)}
    return f"{rest.removesuffix(' there')} {named.pop()}?" if len(named) == 1 else question


def _is_one_place(piece: Piece, lookup: Lookup) -> bool:
    one = isinstance(piece.values, Choices) and len(piece.values.members) == 1
    return one and piece.values is not None and is_place(piece.fact, piece.values, lookup)
