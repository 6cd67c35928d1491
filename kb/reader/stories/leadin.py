"""A sentence that leads to the question: "my team complain about the whistle. Is it compulsory?"."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading, Span
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.stories.aside import Read
from kb.reader.stories.shown import has_rival
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token
from kb.text import Pattern

_POINTING = word_set("it its they them that this these those one ones")
_ABOUT = word_set("about over regarding concerning")
_HINDERING = tag_set("""
    not, no, no longer, neither, without, unless, or, but, measure, number, on date, day, date, clause number
    alone, only, whatever, items, values, leave off, banned, above, below, at least, at most
""")


def led_in(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of the last sentence, with the one thing and the facts that those before it name.

    None where they say more than that, or where the question does not point back to them.
    """
    starts = sentence_starts(found.text, found.tokens)
    if len(starts) < 2:
        return None
    before = [piece for piece in found.pieces if piece.last <= starts[-1]]
    asked = [piece for piece in found.pieces if piece.first >= starts[-1]]
    things = [piece for piece in before if piece.tag == "item"]
    if len({piece.arg for piece in things}) != 1 or not _HINDERING.isdisjoint(p.tag for p in before):
        return None
    if has_rival(found, range(len(before)), things[0]):
        return None  # "she sewed me a sash to go over the tunic"
    pointing = [token for token in found.tokens[starts[-1] :] if token.low in _POINTING]
    if len(pointing) != 1 or any(piece.tag in ("item", "items") for piece in asked):
        return None
    if not any(piece.tag == "unknown" for piece in before) or not _is_topic(found, before, things):
        return None
    facts = [_said(piece, found, lookup) for piece in before if piece.tag == "fact"]
    again = read(_put(found, starts[-1], pointing[0], f"the {lookup.items[things[0].arg].label}", facts))
    known = dict(again.query.case.facts) if again.query is not None else {}
    if again.query is None or again.query.items != (things[0].arg,):
        return None
    if any(piece.fact not in known for piece in before if piece.tag == "fact"):
        return None
    sentence = found.text[: found.tokens[starts[-1]].start].strip()
    return msgspec.structs.replace(again, unused=(sentence, *again.unused))


def _is_topic(found: Understood, before: Sequence[Piece], things: Sequence[Piece]) -> bool:
    """Whether the thing is only talked about ("complain about the whistle"): nothing is said of its state."""
    place = before.index(things[-1]) - 1
    while place >= 0 and before[place].tag in ("det", "poss"):
        place -= 1
    led = place >= 0 and found.tokens[before[place].last - 1].low in _ABOUT
    return led and not any(piece.tag == "unknown" for piece in before[before.index(things[0]) :])


def _said(piece: Piece, found: Understood, lookup: Lookup) -> str:
    words = found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]
    return f"for {words}" if lookup.facts[piece.fact].family in PERSONAL else words


def _put(found: Understood, start: int, pronoun: Token, label: str, facts: Sequence[str]) -> str:
    begin = found.tokens[start].start
    question = found.text[begin : pronoun.start] + label + found.text[pronoun.end :].rstrip(" ?.!")
    return ", ".join([question, *facts]) + "?"


_SAYER = Pattern(r"(?i)(?:the|an?|my|our|your|his|her|their|one|some|another|this|that|every)\b")


def told_before(text: str, around: Sequence[tuple[int, int]], named: list[Span]) -> tuple[str, list[Span]]:
    """ "H1 here, I was told that ...", "in the mess, somebody said ...": what is told before a claim, with
    its comma, and the names that belong to who makes it.

    "The K6, a friend of mine, said" tells who says it.
    """
    first = min(around, default=(0, 0))
    comma = text.find(",", *first)
    told = [s for s in named if first[0] <= s.start < comma and s.role in ("fact", "grade")]
    if not told or _SAYER.match(text[first[0] :]):
        return "", named
    return f"{text[first[0] : comma]}, ", [s for s in named if s.start > comma]
