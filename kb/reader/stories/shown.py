"""What a story shows: what was worn or done, as the question of whether it may be; when, and where."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.model.values import Choices
from kb.reader.meaning.whose import PEOPLE
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.days import Period, said_period
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.pointing import is_place
from kb.reader.stories.idle import is_one_of
from kb.reader.words.everyday import OCCASIONS, PLACES
from kb.reader.words.forms import word_set
from kb.text import Pattern

_LIGHT = tag_set("det, poss, filler, comma, and, but")
_MODALS = tag_set("may, must, can, have to, should")
_WEARING = tag_set("have, act, with, hold, be")
_WANTING = word_set("""
    fancy fancies fancied bought brought chose chosen picked like liked love loved want wanted prefer
    preferred sport sports sported sporting don donned found kept keep
""")
_LACKING = tag_set("no, without, leave off, not")
_PREPOSITIONS = tag_set("in, on, at, for, by, of, from, to, run, between, beyond")
_ALONG = word_set(
    "over under past down off behind near after before during through around along across until"
)
_EVERY = word_set("all every last this each")
_TIMES = word_set("morning afternoon evening night day week month year time weekend")
_BOTH = Pattern(
    r"(?i)\b(?:(?:them|these|those) )?both\b(?: of (?:them|those|these))?"
    r"(?: (?:at once|together|at the same time|on))*"
)
_CIRCUMSTANCES = tag_set(
    "fact, in, on, at, for, of, to, det, poss, filler, particle, day, on date, self, person, joined, act"
)
_CLAUSE = tag_set("comma, and, but, if")
_CAUSES = word_set("because since as although though so until till")
_WHEN = word_set("""
    last this every all yesterday today morning afternoon evening night day week weekend monday tuesday
    wednesday thursday friday saturday sunday call shout callout
""")
_NEUTRAL = word_set("""
    new old own best spare usual favourite favorite lovely trusty lucky nice good beloved precious silly fancy
""")
"""Words before a thing that say nothing a rule may speak of."""
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
    first = found.pieces.index(pieces[0])
    rival = has_rival(found, range(first, first + len(pieces)), things[0])
    if rival or not _is_plain(found, pieces, at):
        return ""
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
        return f"{'must' if is_of_nobody(found, pieces[:at]) else 'may'} the {thing} be worn?"
    return ""


def _is_plain(found: Understood, pieces: Sequence[Piece], at: int) -> bool:
    """Whether nothing is told of how a thing is, or is worn, that the books do not know: "flapping open"."""
    before, led = pieces[at - 1 : at], pieces[at - 2 : at - 1] if at > 1 else []
    shaped = bool(before) and before[0].tag == "unknown" and bool(led) and led[0].tag in ("det", "poss")
    if shaped and found.tokens[before[0].first].low not in _NEUTRAL:
        return False
    for piece in pieces[at + 1 :]:
        if piece.tag in _CLAUSE or found.tokens[piece.first].low in _CAUSES:
            break
        low = found.tokens[piece.first].low
        known = piece.tag in _CIRCUMSTANCES or is_cared(found, piece) or _leads_fact(pieces, piece)
        if not known and not (low in _WHEN or is_one_of(low, PLACES, OCCASIONS)):
            return False
    return True


def _leads_fact(pieces: Sequence[Piece], piece: Piece) -> bool:
    """ "With the watch rig"."""
    after = [p.tag for p in pieces[pieces.index(piece) + 1 :] if p.tag not in ("det", "poss")]
    return piece.tag == "with" and after[:1] == ["fact"]


def is_of_nobody(found: Understood, before: Sequence[Piece]) -> bool:
    """ "Nobody in my boat wears the vest", "I never wore it": whether the wearing is denied."""
    return any(p.tag == "not" or found.tokens[p.first].low in _NOBODY for p in before)


def opens_told(before: Sequence[Piece], standing: Piece) -> bool:
    """ "H1 here, I was told that ...": whether a standing before a claim is not of the one who makes it."""
    ends = any(piece.tag == "comma" and piece.first >= standing.last for piece in before)
    return ends and before[0].tag not in ("det", "poss")


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


def both_asked(found: Understood, told: Iterable[range], asking: range) -> str | None:
    """ "May she wear both?" of the two things that were told of; None where there are not two of them.

    What a thing is on is none of them: "the hood on her coat".
    """
    asked = said_of(found, found.pieces[asking[0]], found.pieces[asking[-1]])
    pointing = _BOTH.search(asked)
    things: dict[str, str] = {}
    for place in (place for places in told for place in places):
        piece = found.pieces[place]
        led = [p.tag for p in found.pieces[max(place - 3, 0) : place]]
        borne = led in (["item", "on", "poss"], ["item", "on", "det"], ["item", "of", "poss"])
        if piece.tag == "items":
            return None
        if piece.tag == "item" and not borne:
            things.setdefault(piece.arg, said_of(found, piece, piece))
    if pointing is None or len(things) != 2:
        return None
    first, second = things.values()
    return f"{asked[: pointing.start()]}the {first} with the {second}{asked[pointing.end() :]}?"


def is_given(found: Understood, place: int) -> bool:
    """ "My aunt gave me a scarf": what is given is a thing, and no leave."""
    gave = found.tokens[found.pieces[place].first].low in ("gave", "gives", "given")
    rest = [p for p in found.pieces[place + 1 :] if p.tag not in ("self", "person", "det", "poss")]
    rest = [p for p in rest if found.tokens[p.first].low not in _NEUTRAL]
    return gave and [p.tag for p in rest[:1]] in (["item"], ["items"])


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


def has_rival(found: Understood, told: range, thing: Piece) -> bool:
    """Whether another thing, that the books do not know, was named beside it: "it" may be that one.

    Who a sentence is about is none ("my aunt knitted me a scarf"), nor is what belongs to a preposition.
    """
    for place in told[2:]:
        piece, led, before = found.pieces[place], found.pieces[place - 1].tag, found.pieces[place - 2]
        if piece.tag != "unknown" or led not in ("det", "poss") or before.tag in _PREPOSITIONS:
            continue
        lows = [found.tokens[p.last - 1].low for p in (piece, found.pieces[place - 1], before)]
        if lows[0] in _TIMES or lows[1] in _EVERY or lows[2] in _ALONG:
            continue
        after = found.pieces[place + 1] if place + 1 < len(found.pieces) else None
        if after is None or after.first != thing.first:  # "a lovely scarf"
            return True
    return False


def of_whom(found: Understood, claim: Sequence[Piece], start: int) -> str:
    """ "He told the novices that they may wear it": who "they" are, as a word before the claim."""
    told = [p for p in claim if p.last <= start and p.tag == "fact"]
    heard = told and any(token.low in PEOPLE for token in found.tokens[start : start + 2])
    return f"for {said_of(found, told[-1], told[-1])}, " if heard else ""


def of_none(found: Understood, claim: Sequence[Piece], first: int) -> str:
    """ "No gloves in town" claims that none are worn there, not that one may do without."""
    pieces = [p for p in claim if p.first >= first]
    tags = [p.tag for p in pieces]
    if tags[:1] != ["no"] or tags[1:2] not in (["item"], ["items"]) or {"act", "be", "leave off"} & {*tags}:
        return ""
    rest = f" {said_of(found, pieces[2], pieces[-1])}" if pieces[2:] else ""
    return f"are no {said_of(found, pieces[1], pieces[1])} worn{rest}?"


def loses_topic(found: Understood, told: Sequence[range], reading: Reading) -> bool:
    """Whether a thing was put first with a colon, and the reading is not of it: "Neck cloth: which ...?"."""
    asked = set(reading.query.items) if reading.query is not None else set()
    for places in told:
        named = [found.pieces[p] for p in places if found.pieces[p].tag not in ("det", "poss")]
        led = named[0] if named and named[0].tag in ("item", "items") else None
        if led is not None and asked.isdisjoint(entry.id for entry in led.entries):
            return True
    return False
