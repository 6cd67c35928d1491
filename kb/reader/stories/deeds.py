"""What was done, as the question whether one may: "The new ones asked to wear it open. May they?".

All words that say what was done and how stand in the question, so that nothing of a manner is lost; of what
stands before them only facts are kept, and the rest is told as left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from functools import cache
from types import MappingProxyType

import msgspec

from kb.model.lookup import Lookup
from kb.reader.meaning.told import sentences_of
from kb.reader.meaning.whose import PEOPLE
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.stories.hearsay import asks_whether_so, claims_something
from kb.reader.stories.shown import day_said, is_of_nobody, said_of
from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import stems, tokenize

_VERBS = """
    wear carry have put keep use don sport take leave bring grow tie roll tuck turn button unbutton
    fasten unfasten undo close open zip unzip hook lace pin sew stitch stick fix attach clip hang fold
    cover show display lend borrow alter shorten lengthen cut trim shave polish grease dye tar iron wash
    wring bleach starch press pierce paint swap change own pull push shove slip slide strap loosen
    remove drop raise lower wrap knot mark brush scrub rinse dry
"""
_IRREGULAR: Mapping[str, str] = word_pairs("""
    wore=wear worn=wear had=have has=have kept=keep took=take taken=take left=leave brought=bring
    grew=grow grown=grow stuck=stick hung=hang sewn=sew lent=lend shown=show bought=wear buys=wear
    fancied=wear fancies=wear undid=undo undone=undo wrung=wring slid=slide
""")
_NOUNS = word_set(_VERBS) - word_set("wear carry have put keep use don take leave bring grow own")
"""Verbs that as they stand may be nouns."""
_LEADING = tag_set("to, self, person, and, comma")
_MODALS = tag_set("may, must, can, have to, should")
_DUTIES = tag_set("must, have to, should")
_LACKING = tag_set("no, without, leave off")
_NAMED = tag_set("item, items, fact, aspect value, measure, number, date, on date")
_WEIGHTY = tag_set(
    "item, items, measure, number, date, clause number, without, no, leave off, unless, if, or, not"
)
_OBJECTS = tag_set("det, poss, item, items, number, aspect value, filler, self, degree")
_BARE = tag_set("self, person, det, do, filler, be, have, to, comma, not")
_BEARING = tag_set("act, have, leave off")
_SELF = word_set("i we")
_JOINING = word_set("and but so")
_POINTING = word_set("it them one")
_SHORTEST = 6


class Deed(msgspec.Struct, frozen=True):
    """What was done (`said`: "wear it open"), from the piece `begun` of its sentence on."""

    said: str = ""
    begun: int = 0


@cache
def _verbs() -> Mapping[str, str]:
    """The forms of verbs of what is done with clothes, each with that which a question has of it."""
    forms = dict(_IRREGULAR)
    for verb in _VERBS.split():
        stem = verb.removesuffix("e")
        ied = f"{verb[:-1]}ied" if verb.endswith("y") else f"{stem}ed"
        doubled = verb + verb[-1]
        for form in (verb, f"{verb}s", ied, f"{stem}ing", f"{doubled}ed", f"{doubled}ing"):
            forms.setdefault(form, "wear" if verb in ("don", "sport") else verb)
    return MappingProxyType(forms)


def shown_deed(found: Understood, pieces: Sequence[Piece]) -> Deed:
    """What was done with the first thing named, in all the words that follow; empty where none is told."""
    thing = next((n for n in range(len(pieces)) if _is_thing(found, pieces, n)), 0)
    if any(p.tag in _MODALS or p.tag == "not" or is_of_nobody(found, [p]) for p in pieces):
        return Deed()
    if any(p.tag in _LACKING for p in pieces[: thing + 1]):
        return Deed()
    lows = [found.tokens[p.first].low for p in pieces[:thing]]
    done = [n for n, low in enumerate(lows) if low in _verbs() and _is_verb(found, pieces, n)]
    end = found.tokens[pieces[-1].last - 1].end
    if done:
        first = found.tokens[pieces[done[-1]].first]
        return Deed(f"{_verbs()[first.low]}{found.text[first.end : end]}", done[-1])
    return _borne(found, pieces, thing, end)


def _is_verb(found: Understood, pieces: Sequence[Piece], place: int) -> bool:
    """Whether a word that may be a verb is one: no name, no "has" in "has bought it".

    A fact is one only in "rolled up the sleeves of it", a thing in "my brother carried an umbrella".
    """
    piece, after = pieces[place], pieces[place + 1 : place + 2]
    acts = bool(after) and after[0].tag in _OBJECTS
    if piece.tag in ("item", "items"):
        return acts and piece.last - piece.first == 1 and found.tokens[piece.first].low in _verbs()
    if _verbs()[found.tokens[piece.first].low] == "have":
        return acts and piece.tag not in _NAMED
    low, before = found.tokens[piece.first].low, pieces[place - 1].tag if place else "to"
    if low in _NOUNS and before not in _LEADING:
        return False  # "we ran out of paint"
    part = piece.tag == "fact" and piece.last - piece.first > 1 and after[0].tag == "of"
    return part or piece.tag not in _NAMED


def _is_thing(found: Understood, pieces: Sequence[Piece], place: int) -> bool:
    return pieces[place].tag in ("item", "items") and not _is_verb(found, pieces, place)


def _borne(found: Understood, pieces: Sequence[Piece], thing: int, end: int) -> Deed:
    """ "I popped out in my coveralls", "... with my rings on"."""
    place = thing - 1
    while place > 0 and pieces[place].tag in ("det", "poss", "filler"):
        place -= 1
    low = found.tokens[pieces[place].first].low if place > 0 else ""
    if low not in ("in", "with") or pieces[place].last - pieces[place].first > 1:
        return Deed()
    if pieces[place].tag not in ("in", "with") or not any(
        p.tag in ("unknown", "act") for p in pieces[:place]
    ):
        return Deed()
    words = found.text[found.tokens[pieces[place].last - 1].end : end]
    return Deed(f"{'wear' if low == 'in' else 'have'}{words}", place)


def deed_asked(found: Understood, lookup: Lookup) -> tuple[str, tuple[str, ...]] | None:
    """The question whether one may do what was told, and what is left out; None where no deed is asked of."""
    sentences = list(sentences_of(found, sentence_starts(found.text, found.tokens)))
    if len(sentences) < 2 or any(mark == "?" for _, mark in sentences[:-1]):
        return None
    asking, tags = sentences[-1][0], {found.pieces[place].tag for place in sentences[-1][0]}
    asks = asks_whether_so(_lows(found, asking)) and not is_borne(found, asking)
    if tags & _NAMED or not (asks or _is_elliptic(tags, len(asking))):
        return None
    told = next((n for n in range(len(sentences) - 2, -1, -1) if _has_thing(found, sentences[n][0])), -1)
    own = not _SELF.isdisjoint(_lows(found, asking)) and PEOPLE.isdisjoint(_lows(found, asking))
    deed = _told_deed(found, sentences[told][0], own, lookup) if told >= 0 else None
    if deed is None:
        return None
    others = [_text(found, places) + mark for places, mark in sentences[:-1]]
    modal = "must" if tags & _DUTIES else "may"
    question, unused = deed
    return " ".join([*others[:told], *others[told + 1 :], f"{modal} I {question}?"]), unused


def _told_deed(
    found: Understood, told: range, own: bool, lookup: Lookup
) -> tuple[str, tuple[str, ...]] | None:
    """What a sentence tells was done, with the facts told before it; and what of it is left out.

    Where the question is of the speaker's `own` doing, the standing of somebody else says nothing.
    """
    pieces = found.pieces[told[0] : told[-1] + 1]
    deed = shown_deed(found, pieces)
    before = pieces[: deed.begun]
    thing = next(p.first for p in pieces if p.tag in ("item", "items"))
    claimed = claims_something(_lows(found, told)[: thing - pieces[0].first])
    if not deed.said or claimed or any(p.tag in _WEIGHTY for p in before):
        return None
    day = day_said(found, range(told[0], told[0] + deed.begun)) if before else None
    lows = _lows(found, told)
    other = own and _SELF.isdisjoint(lows[: 1 + (lows[0] in _JOINING)])
    facts = [
        _fact(found, p)
        for p in before
        if p.tag in ("fact", "on date") and not (other and _is_standing(p, lookup))
    ]
    facts += [found.text[day.start : day.end]] if day is not None else []
    clauses = any(p.tag in ("comma", "and", "but") for p in before)
    standing = other and any(_is_standing(p, lookup) for p in before)
    loose = clauses or standing or pieces[deed.begun].tag in ("in", "with")
    unused = (said_of(found, before[0], before[-1]),) if loose and before else ()
    return ", ".join([deed.said, *facts]), unused


def _is_standing(piece: Piece, lookup: Lookup) -> bool:
    return piece.tag == "fact" and lookup.facts[piece.fact].family in PERSONAL


def _fact(found: Understood, piece: Piece) -> str:
    words = said_of(found, piece, piece)
    return f"on {words}" if piece.tag == "on date" and words[:2].lower() not in ("on", "in") else words


def _text(found: Understood, places: range) -> str:
    """The words of a stretch of pieces."""
    return said_of(found, found.pieces[places[0]], found.pieces[places[-1]])


def _has_thing(found: Understood, places: range) -> bool:
    return any(found.pieces[place].tag in ("item", "items") for place in places)


def is_borne(found: Understood, asking: range) -> bool:
    """Whether a question says itself what is done with "it": "am I allowed to have it on?"."""
    bears = any(found.pieces[place].tag in _BEARING for place in asking)
    return bears and not _POINTING.isdisjoint(_lows(found, asking))


def _is_elliptic(tags: Set[str], count: int) -> bool:
    """ "May they?", "must I?", "can she do that?"."""
    return bool(tags & _MODALS) and tags <= _MODALS | _BARE and count <= _SHORTEST


def _lows(found: Understood, places: range) -> tuple[str, ...]:
    first, last = found.pieces[places[0]].first, found.pieces[places[-1]].last
    return tuple(token.low for token in found.tokens[first:last])


def in_progress(found: Understood, lookup: Lookup) -> str | None:
    """The text with what was done as the books call it, "I hauled lines" as "I hauling lines"; or None."""
    text, doings = found.text, list(_doings(lookup))
    sentences = sentences_of(found, sentence_starts(found.text, found.tokens))
    told = [place for places, mark in sentences if mark in (".", ";", "!") for place in places]
    for piece in (found.pieces[place] for place in reversed(told)):
        low = found.tokens[piece.first].low
        if piece.tag != "unknown" or not (low.endswith("ed") or low in _PAST):
            continue
        roots = {*stems(low), *stems(_PAST.get(low, low))}
        after = [
            token.key for token in found.tokens[piece.last : piece.last + 4] if token.low not in _ARTICLES
        ]
        named = [doing for doing, rest in doings if roots & {*stems(doing)} and after[: len(rest)] == [*rest]]
        if named:
            start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
            text = f"{text[:start]}{named[0]}{text[end:]}"
    return text if text != found.text else None


_ARTICLES = word_set("the a an my our his her their some")
_PAST = word_pairs("""
    drove=driving gave=giving swept=sweeping rode=riding ran=running sang=singing swam=swimming
    fought=fighting taught=teaching built=building led=leading dove=diving sold=selling
""")


def _doings(lookup: Lookup) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What the books say may be done, each as its first word and the keys of the rest: hauling, lines."""
    for fact in lookup.base.facts:
        if fact.family != "situation":
            continue
        for one in (fact, *fact.values):
            for name in (one.label, *one.other_labels):
                words = tokenize(name)
                if words and words[0].low.endswith("ing") and len(words[0].low) > len("sing"):
                    yield words[0].low, tuple(word.key for word in words[1:])
