"""Standings that are told of somebody else, or of another time, than the question asks about.

"My mate is a K5. May I wear the pin?" says nothing of my grade, nor does "I used to be a K5" or "I'll be
promoted to K5 next week".
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.turned import KIN

SPEAKER = word_set("i we me us my our")
PEOPLE = word_set("he she him her his hers they them their")
_FUTURE = word_set("""
    will 'll become becoming becomes tomorrow next soon until till before hope hopes hoping hopefully want
    wants wish wishes almost nearly later training
""")
_FORMER = word_set("used was were former formerly once ex never")
_ATTAINED = word_set("made promoted became passed appointed qualified awarded got given just since")
_THEN = word_set("was were did had could would used will 'll when then once")
_ASKING = tag_set(
    "can, may, must, should, have to, do, what, which, who, where, how, how many, when, why, if"
)
_OPENING = tag_set("det, poss")
_JOINING = word_set("and but so as")
_BEING = word_set("am 'm are 're was were")
_SOMEBODY = tag_set("person, unknown, authority, item, items")
_BECOMING = word_set("""
    become becomes becoming became made promoted appointed named called join joins joined joining lent work
    works worked working serve serves served serving belong belongs moved transferred posted acting act
    started start
""")
_WHOSE = word_set("my our a an one another")
_SELF = word_set("i we me us")
_MET = tag_set("unknown, act, grant")
_DEALT_WITH = tag_set("det, poss, with, to, for, by, in, on, particle, range, filler, of")


def elsewhere(found: Understood, lookup: Lookup) -> tuple[int, ...]:
    """The places of the standings that are not those of the one asked about, now."""
    clauses = list(_clauses(found))
    asking = [clause for clause in clauses if _asks(found, clause)]
    if not asking or len(clauses) == len(asking):
        return ()
    lows = {low for clause in asking for low in _lows(found, clause)}
    own = bool(lows & SPEAKER) and not lows & PEOPLE
    other = bool(lows & PEOPLE) and not lows & SPEAKER
    then = bool(lows & _THEN)
    return tuple(
        place
        for clause in clauses
        if clause not in asking
        for place in clause
        if _is_standing(found.pieces[place], lookup)
        and (
            (own and _is_of_somebody(found, clause))
            or (other and is_of_speaker(_lows(found, clause)))
            or (not then and is_shifted(_lows(found, clause)))
        )
    ) + tuple(
        place
        for clause in clauses
        if own and clause not in asking and is_of_kin(_lows(found, clause))
        for place in clause
        if is_state(found.pieces[place], lookup)
    )


def is_shifted(lows: Sequence[str]) -> bool:
    """Whether a clause tells of what was, or is to be; "I made K4 last week" is so still."""
    return not _FUTURE.isdisjoint(lows) or (not _FORMER.isdisjoint(lows) and _ATTAINED.isdisjoint(lows))


def is_of_kin(lows: Sequence[str]) -> bool:
    """Whether a clause tells how somebody near to the one who speaks is: "my sister is pregnant"."""
    begun = [low for low in lows if low not in _JOINING][:4]
    led = bool(begun) and begun[0] in _WHOSE and not KIN.isdisjoint(begun[1:3])
    return led and _SELF.isdisjoint(lows)


def is_of_none(lows: Sequence[str]) -> bool:
    """Whether a clause tells what there is none of: "nothing ceremonial"."""
    return lows[0] in ("nothing", "hardly", "barely")


def is_state(piece: Piece, lookup: Lookup) -> bool:
    """Whether a circumstance is so of the one who asks: "are you pregnant", not "is it raining"."""
    fact = lookup.facts.get(piece.fact) if piece.tag == "fact" else None
    return fact is not None and fact.kind == "yes_no" and " you" in (fact.ask or "").casefold()


def is_of_speaker(lows: Sequence[str]) -> bool:
    """Whether a clause tells who the one who speaks is: "I'm a K1"."""
    begun = [low for low in lows[:3] if low not in _JOINING]
    return begun[:1] in (["i"], ["we"]) and begun[1:2] != [] and begun[1] in _BEING


def is_met(found: Understood, pieces: Sequence[Piece], standing: Piece) -> bool:
    """Whether a standing is that of somebody dealt with: "I told the head keeper", "I asked a K4"."""
    place = pieces.index(standing) - 1
    while place >= 0 and pieces[place].tag in _DEALT_WITH:
        place -= 1
    if place < 0 or pieces[place].tag not in _MET:
        return False
    lows = _words(found, pieces[place : pieces.index(standing)])
    return _BECOMING.isdisjoint(lows) and "as" not in lows


def _is_standing(piece: Piece, lookup: Lookup) -> bool:
    return piece.tag == "fact" and lookup.facts[piece.fact].family in PERSONAL


def _is_of_somebody(found: Understood, clause: range) -> bool:
    """Whether a clause is about another person: "my mate is a K5", "the new lad's a cadet"."""
    pieces = [
        found.pieces[place] for place in clause if found.pieces[place].tag not in ("filler", "and", "but")
    ]
    tags = [piece.tag for piece in pieces]
    if len(pieces) < 3 or (not SPEAKER.isdisjoint(_words(found, pieces[:1])) and tags[0] == "self"):
        return False
    named = tags[0] in _OPENING and tags[1] in _SOMEBODY
    alone = tags[0] == "person"
    be = next((place for place, tag in enumerate(tags) if tag in ("be", "hold", "have")), 0)
    return (named or alone) and 0 < be < len(tags) - 1


def _clauses(found: Understood) -> Iterator[range]:
    """The parts between full stops, question marks, commas, and "and" before another who is something."""
    starts = set(sentence_starts(found.text, found.tokens))
    first = 0
    for place, piece in enumerate(found.pieces):
        parted = piece.tag == "comma" or (piece.tag in ("and", "but") and _begins(found, place + 1))
        if parted or piece.first in starts:
            if place > first:
                yield range(first, place)
            first = place + parted
    if first < len(found.pieces):
        yield range(first, len(found.pieces))


def _begins(found: Understood, place: int) -> bool:
    """ "I'm a K1 and she's a W2": whether somebody and "is" stand there."""
    tags = [piece.tag for piece in found.pieces[place : place + 4]]
    return tags[:2] == ["self", "be"] or (tags[:1] in (["det"], ["poss"]) and tags[2:3] == ["be"])


def _asks(found: Understood, clause: range) -> bool:
    last = found.pieces[clause[-1]].last
    end = found.tokens[last].start if last < len(found.tokens) else len(found.text)
    marked = "?" in found.text[found.tokens[last - 1].end : end]
    return marked or any(found.pieces[place].tag in _ASKING for place in list(clause)[:2])


def _words(found: Understood, pieces: Sequence[Piece]) -> tuple[str, ...]:
    return tuple(token.low for piece in pieces for token in found.tokens[piece.first : piece.last])


def _lows(found: Understood, clause: range) -> tuple[str, ...]:
    return _words(found, [found.pieces[place] for place in clause])
