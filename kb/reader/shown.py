"""What a story shows: what was worn or done, as the question of whether it may be; when, and where."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence, Set
from functools import cache
from types import MappingProxyType

from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.days import Period, said_period
from kb.reader.english import tag_set
from kb.reader.everyday import OCCASIONS, PLACES
from kb.reader.forms import word_pairs, word_set
from kb.reader.hearsay import asks_whether_so, claims_something
from kb.reader.idle import is_one_of
from kb.reader.pieces import Piece, Understood
from kb.reader.pointing import is_place
from kb.reader.sentences import sentence_starts
from kb.reader.told import sentences_of

_LIGHT = tag_set("det, poss, filler, comma, and, but")
_MODALS = tag_set("may, must, can, have to, should")
_WEARING = tag_set("have, act, with, hold, be")
_WANTING = word_set("""
    fancy fancies fancied bought brought chose chosen picked like liked love loved want wanted prefer
    preferred sport sports sported sporting don donned found kept keep
""")
_VERBS = """
    wear carry have put keep use don sport take leave bring grow tie roll tuck turn button unbutton
    fasten unfasten undo close open zip unzip hook lace pin sew stitch stick fix attach clip hang fold
    cover show display lend borrow alter shorten lengthen cut trim shave polish grease dye tar iron wash
    wring bleach starch press pierce paint swap change own pull push shove slip slide strap loosen
    remove drop raise lower wrap knot mark brush scrub rinse dry
"""
_IRREGULAR: Mapping[str, str] = word_pairs("""
    wore=wear worn=wear had=have has=have kept=keep took=take taken=take left=leave brought=bring
    grew=grow grown=grow stuck=stick hung=hang sewn=sew lent=lend shown=show undid=undo undone=undo
    wrung=wring slid=slide
""")
_NAMED = tag_set("item, items, fact, aspect value, measure, number, date, on date")
_WEIGHTY = tag_set(
    "item, items, measure, number, date, clause number, without, no, leave off, unless, if, or, not"
)
_BARE = tag_set("self, person, det, do, filler, be, have, to, comma")
_SHORTEST = 6
_LACKING = tag_set("no, without, leave off, not")
_PREPOSITIONS = tag_set("in, on, at, for, by, of, from, to, run, between, beyond")
_ALONG = word_set(
    "over under past down off behind near after before during through around along across until"
)
_EVERY = word_set("all every last this each")
_TIMES = word_set("morning afternoon evening night day week month year time weekend")
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


@cache
def _deeds() -> Mapping[str, str]:
    """The forms of verbs of what is done with clothes, each with that which a question has of it."""
    forms = dict(_IRREGULAR)
    for verb in _VERBS.split():
        stem = verb.removesuffix("e")
        ied = f"{verb[:-1]}ied" if verb.endswith("y") else f"{stem}ed"
        doubled = verb + verb[-1]
        for form in (verb, f"{verb}s", ied, f"{stem}ing", f"{doubled}ed", f"{doubled}ing"):
            forms.setdefault(form, "wear" if verb in ("don", "sport") else verb)
    return MappingProxyType(forms)


def shown_deed(found: Understood, pieces: Sequence[Piece]) -> tuple[str, int]:
    """ "The new ones asked to wear it open": what was done, in all the words that say what and how.

    With it the place of the piece with which the deed begins; ("", 0) where none is told.
    """
    deeds = _deeds()
    thing = next((n for n, p in enumerate(pieces) if p.tag in ("item", "items")), 0)
    done = [n for n, p in enumerate(pieces[:thing]) if found.tokens[p.first].low in deeds]
    if not done or any(p.tag in _MODALS or p.tag == "not" or _is_of_nobody(found, [p]) for p in pieces):
        return "", 0
    deed = pieces[done[-1]]
    if deed.tag in _NAMED or any(p.tag in _LACKING for p in pieces[: thing + 1]):
        return "", 0
    first, last = found.tokens[deed.first], found.tokens[pieces[-1].last - 1]
    return f"{deeds[first.low]}{found.text[first.end : last.end]}", done[-1]


def deed_asked(found: Understood) -> str | None:
    """ "They asked to wear it open. May they?": whether one may do that; None where no deed is asked of."""
    sentences = list(sentences_of(found, sentence_starts(found.text, found.tokens)))
    if len(sentences) < 2 or any(mark == "?" for _, mark in sentences[:-1]):
        return None
    told, asking = sentences[-2][0], sentences[-1][0]
    lows = said_of(found, found.pieces[asking[0]], found.pieces[asking[-1]]).casefold().split()
    tags = {found.pieces[place].tag for place in asking}
    if tags & _NAMED or not (asks_whether_so(_lows(found, asking)) or _is_elliptic(tags, lows)):
        return None
    pieces = found.pieces[told[0] : told[-1] + 1]
    deed, begun = shown_deed(found, pieces)
    thing = next((p.first for p in pieces if p.tag in ("item", "items")), 0)
    if not deed or claims_something(_lows(found, told)[: thing - pieces[0].first]):
        return None
    if any(p.tag in _WEIGHTY for p in pieces[:begun]):
        return None
    before = found.text[: found.tokens[pieces[0].first].start]
    led = range(told[0], told[0] + begun)
    day = day_said(found, led) if led else None
    facts = [said_of(found, p, p) for p in pieces[:begun] if p.tag == "fact"]
    facts += [found.text[day.start : day.end]] if day is not None else []
    modal = "must" if tags & {"must", "have to", "should"} else "may"
    return f"{before}{modal} I {', '.join([deed, *facts])}?"


def _is_elliptic(tags: Set[str], lows: Sequence[str]) -> bool:
    """ "May they?", "must I?", "can she do that?"."""
    return bool(tags & _MODALS) and tags <= _MODALS | _BARE and len(lows) <= _SHORTEST


def _lows(found: Understood, places: range) -> tuple[str, ...]:
    first, last = found.pieces[places[0]].first, found.pieces[places[-1]].last
    return tuple(token.low for token in found.tokens[first:last])


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
    if not _is_plain(found, pieces, at):
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
        return f"{'must' if _is_of_nobody(found, pieces[:at]) else 'may'} the {thing} be worn?"
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
        if piece.tag == "unknown" and not (low in _WHEN or is_one_of(low, PLACES, OCCASIONS)):
            return False
    return True


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
