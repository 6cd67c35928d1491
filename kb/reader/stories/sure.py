"""What a sentence beside the question tells for sure: where one is, what one does, and who it is asked of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from kb.model.lookup import Lookup
from kb.reader.meaning.whose import SPEAKER, is_met, is_of_kin, is_of_none, is_of_speaker, is_shifted
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.stories.aside import FORMER, in_standing, is_of_another_time, is_stranger
from kb.reader.stories.denied import denied
from kb.reader.words.forms import word_set

CIRCUMSTANCE = frozenset({"situation", "rig", "term"})
LIGHT = tag_set("det, poss, filler, comma, and, but")
_MEANWHILE = word_set("while whilst when whenever")
_DENYING = tag_set("not, no longer, neither, unless, if, or, but, unread")
_FOLLOWING = tag_set("comma, fact, in, on, for, and, with, of")
_PARTING = tag_set("comma, and, but")
_TELLING = tag_set(
    "be, have, do, hold, can, may, must, should, have to, self, person, say, show, not, no longer"
)
"""Tags of what is in a sentence that tells more of somebody than who it is."""
_ASKERS = word_set(
    "ask asks asking asked wonder wonders wondered wondering know query question enquiry inquiry"
)
_NO_MORE = FORMER | word_set("retired past future prospective aspiring would-be honorary")


def clauses_of(found: Understood, sentence: range) -> Iterator[range]:
    """A sentence parted at commas, at "and", "but" and "so", and at "who" of whoever speaks."""
    first = sentence.start
    for place in sentence:
        lows = [token.low for token in found.tokens[found.pieces[place].first : found.pieces[place].last]]
        who = lows[0] in ("who", "which", "that") and found.pieces[first].tag == "self"
        if who or lows == ["so"] or (found.pieces[place].tag in _PARTING and not _is_hyphen(found, place)):
            if place > first:
                yield range(first, place)
            first = place + 1
    if first < sentence.stop:
        yield range(first, sentence.stop)


def _is_hyphen(found: Understood, place: int) -> bool:
    """Whether a piece joins what stands around it: "ex-cadet"."""
    first, last = found.pieces[place].first, found.pieces[place].last
    around = found.text[found.tokens[first].start - 1 :][:1], found.text[found.tokens[last - 1].end :][:1]
    return found.tokens[first].low == "-" and not any(letter.isspace() for letter in around)


def sure_of(
    found: Understood, clause: range, others: bool, lookup: Lookup, then: bool = False
) -> Iterator[Piece]:
    """The facts of a clause that hold of the question: now, not denied, and of whom it asks.

    With `then` the question is of the time and the person that the clause tells of.
    """
    pieces = [found.pieces[place] for place in clause]
    if any(p.tag in _DENYING and found.tokens[p.first].low not in _MEANWHILE for p in pieces):
        return
    lacking = denied(found, pieces)
    said = tuple(token.low for piece in pieces for token in found.tokens[piece.first : piece.last])
    states = [p for p in pieces if p.tag == "fact" and lookup.facts[p.fact].family in CIRCUMSTANCE]
    besides = [t.low for p in pieces if p not in states for t in found.tokens[p.first : p.last]]
    lows = set(said)
    if {"used", "to"} <= lows or is_of_none(said) or (not others and is_of_kin(said)):
        return  # "we used to wear it in boat rig", "nothing ceremonial", "my sister is pregnant"
    speaks = bool(lows & SPEAKER) and pieces[0].tag in ("self", "filler", "in", "on", "for", "at", "fact")
    opens = pieces[int(then and pieces[0].tag == "det" and len(pieces) > 1)].tag == "fact"
    for piece in pieces:
        if piece.tag == "on date":
            yield piece
        if piece.tag != "fact" or piece in lacking or is_of_another_time(found, pieces, piece, then):
            continue
        if [token.low for token in found.tokens[piece.first : piece.last]][:2] == ["not", "even"]:
            continue  # "never, not even in the mess" tells no more of now
        family = lookup.facts[piece.fact].family
        apart = (others and is_of_speaker(said)) or is_shifted(besides) or is_met(found, pieces, piece)
        own = others or speaks or opens or in_standing(found, pieces, piece)
        own = own and family in PERSONAL and not apart
        if family in CIRCUMSTANCE or own:
            yield piece


def addressed(found: Understood, sentence: range, lookup: Lookup, mark: str) -> tuple[Piece, ...] | None:
    """The standings of whom a sentence only names, or lets ask: "tall cadet:", "a cadet wants to know:".

    None where it names somebody who is so no more, several who cannot all be meant, or one whose standing
    the books do not know: the question is then of nobody who is known.
    """
    pieces = [found.pieces[place] for place in sentence]
    named = [p for p in pieces if p.tag == "fact" and lookup.facts[p.fact].family in PERSONAL]
    lows = [token.low for piece in pieces for token in found.tokens[piece.first : piece.last]]
    begun = [piece for piece in pieces if piece.tag not in LIGHT][:1]
    if not named and mark == ":" and is_stranger(found, pieces):
        return None
    asking = mark == ":" and not _ASKERS.isdisjoint(lows) and begun and begun[0].tag not in ("self", "person")
    told = _TELLING.isdisjoint(piece.tag for piece in pieces) and not any(
        one in named and after.tag not in _FOLLOWING for one, after in pairwise(pieces)
    )  # "my rescuers complain about ..." tells more
    of_another = bool(named) and any("'s" in t.low for t in found.tokens[pieces[0].first : named[0].first])
    if not named or of_another or not (asking or told):  # "my mate's a K4"
        return ()
    if not asking and (is_shifted(lows) or not _NO_MORE.isdisjoint(lows)):
        return None
    lacking = denied(found, pieces)
    if lacking.intersection(named) or len({piece.fact for piece in named}) < len(named):
        return None
    return tuple(named)


def beside_them(found: Understood, sentence: range, sure: Sequence[Piece]) -> list[str]:
    """What else than those pieces is said in a sentence, stretch by stretch."""
    said: list[str] = []
    run: list[Piece] = []
    for piece in (*(found.pieces[place] for place in sentence), None):
        if piece is not None and piece not in sure and piece.tag != "comma":
            run.append(piece)
            continue
        if any(other.tag not in LIGHT for other in run):
            said.append(found.text[found.tokens[run[0].first].start : found.tokens[run[-1].last - 1].end])
        run = []
    return said
