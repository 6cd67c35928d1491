"""Verbs of putting on and leaving behind, with what they put between themselves and their particle.

"Sling my cap on", "leave the coat at home". Many of these verbs are nouns as well ("the strap on the
cap"), so
they count only where a verb can stand.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.months import month_number
from kb.reader.pieces.feasts import WEEKDAYS
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_DON = word_set("""
    pop stick sling throw chuck slip pull bung whack strap tie clip buckle fasten hook shove wrap whip
    fling get
    got putting popping sticking slinging throwing chucking slipping pulling strapping tying wrapping put""")
_INTO = word_set("stick put pop shove")
_DOFF = word_set("whip pull slip throw chuck get peel strip kick whipping pulling slipping throwing")
_COME = word_set("come comes coming came")
_TAKE = word_set("take takes taking took taken")
_LET = word_set("let lets letting")
_KEEP = word_set("keep keeps keeping kept leave leaves leaving left have has having had wear put putting")
_PULL = word_set("pull pulls pulling pulled slip slips slipping get gets")
_INSIDE = word_set(
    "earring stud hoop piercing lens earplug plug earphone earbud clip hairpin slide denture ring"
)
_AFTER = word_set("for on at with please then then before after in")
_LEAVE = word_set("leave leaves leaving left")
_AWAY = (("at", "home"), ("behind",), ("on", "the", "peg"), ("in", "the", "locker"), ("in", "my", "locker"))
_BEFORE = word_set("""
    i we you they he she who anyone everyone someone anybody everybody to can could may might must should
    shall
    will would do does did not n't 've have has had 'll let just also still and or please never always""")
_WITH_ARTICLE = word_set("a an the my your our his her their its this that these those some any")
_ENDS = word_set(", and or if while when during") | {""}
_MAY_FOLLOW = {"in": _ENDS, "up": word_set(", and or") | {""}}
_FURTHEST = 9


def parted(tokens: tuple[Token, ...], names: Sequence[Piece]) -> Iterator[Piece]:
    """The verb and the particle of each such verb, as two pieces."""
    for index, token in enumerate(tokens):
        if token.low == "with":
            yield from _taken_off(tokens, index, names)
            continue
        if index and tokens[index - 1].low not in _BEFORE and not _is_subject(token.low, index, names):
            continue
        if token.low in _LEAVE:
            yield from _left_behind(tokens, index)
        yield from _kept_in(tokens, index, names)
        for particle, verbs, tag, arg in _KINDS:
            end = _particle(tokens, index, particle, names) if token.low in verbs else 0
            if end:
                yield Piece(first=index, last=index + 1, tag=tag, arg=arg, how="pattern")
                yield Piece(first=end, last=end + 1, tag="particle", how="pattern")
                break


def is_day(word: str) -> bool:
    """Whether a word after "on" begins a day: "I got my badge on 1 May"."""
    return word[:1].isdigit() or (word != "may" and month_number(word) > 0) or word in WEEKDAYS


def _taken_off(tokens: tuple[Token, ...], index: int, names: Sequence[Piece]) -> Iterator[Piece]:
    """ "With the coat off" is without the coat."""
    first = index + 1
    while first < len(tokens) and tokens[first].low in _WITH_ARTICLE:
        first += 1
    for name in names:
        if name.first != first or name.last >= len(tokens) or tokens[name.last].low != "off":
            continue
        after = tokens[name.last + 1].low if name.last + 1 < len(tokens) else ""
        if after in _ENDS and any(entry.kind == "item" for entry in name.entries):
            yield Piece(first=index, last=index + 1, tag="without", how="pattern")
            yield Piece(first=name.last, last=name.last + 1, tag="particle", how="pattern")
            return


_KINDS = (
    ("on", _DON, "act", "wear"),
    ("in", _INTO, "act", "wear"),
    ("off", _DOFF, "leave off", ""),
    ("off", _COME, "leave off", ""),
    ("out", _COME, "leave off", ""),
    ("up", _TAKE, "act", "alteration"),
    ("in", _TAKE, "act", "alteration"),
    ("out", _LET, "act", "alteration"),
    ("down", _LET, "act", "alteration"),
)


def _is_subject(verb: str, index: int, names: Sequence[Piece]) -> bool:
    """Whether the name of who does it ends right before a verb, "may a hand pop his cap on", or of what
    comes off."""
    before = [{entry.kind for entry in name.entries} for name in names if name.last == index]
    if verb in _COME:
        return any("item" in kinds for kinds in before)
    return any(kinds <= {"value", "group"} for kinds in before)


def _particle(tokens: tuple[Token, ...], index: int, particle: str, names: Sequence[Piece]) -> int:
    """The place of the verb's particle: after an item, or right after the verb before one; 0 if none."""
    first = index + 1
    if first < len(tokens) and tokens[first].low == particle:
        if tokens[index].low in _COME:
            return 0 if any(name.first == first < name.last - 1 for name in names) else first
        after = first + 1
        led = after < len(tokens) and tokens[after].low in _WITH_ARTICLE
        named = any(name.first == after and name.entries[0].kind == "item" for name in names)
        return first if (led or named) and tokens[index].low not in ("put", "got", "get") else 0
    for later in range(index + 2, min(index + _FURTHEST, len(tokens))):
        if tokens[later].low != particle or any(n.first == later < n.last - 1 for n in names):
            continue
        following = tokens[later + 1].low if later + 1 < len(tokens) else ""
        if (
            following in _WITH_ARTICLE
            or is_day(following)
            or following not in _MAY_FOLLOW.get(particle, (following,))
        ):
            return 0
        item = any(
            index < n.first and n.last <= later and any(e.kind == "item" for e in n.entries) for n in names
        )
        return later if item or tokens[later - 1].low in ("it", "them", "one", "this", "that") else 0
    return 0


def _kept_in(tokens: tuple[Token, ...], index: int, names: Sequence[Piece]) -> Iterator[Piece]:
    """ "Keep my earrings in", "take the studs out", of what is worn in an ear, an eye or the hair."""
    verb = tokens[index].low
    particle = "in" if verb in _KEEP else "out" if verb in _TAKE | _PULL else ""
    for name in names if particle else ():
        apart = index + 1 < name.first <= index + 4 and tokens[index + 1].low == "out" == particle
        if apart and tokens[name.last - 1].key in _INSIDE:  # "take out my studs"
            yield Piece(first=index, last=index + 2, tag="leave off", how="pattern")
            return
        later = name.last
        if not index < name.first <= index + 4 or later >= len(tokens) or tokens[later].low != particle:
            continue
        after = tokens[later + 1].low if later + 1 < len(tokens) else ""
        if tokens[later - 1].key in _INSIDE and after in _ENDS | _AFTER:
            tag, arg = ("act", "wear") if particle == "in" else ("leave off", "")
            yield Piece(first=index, last=index + 1, tag=tag, arg=arg, how="pattern")
            yield Piece(first=later, last=later + 1, tag="particle", how="pattern")
            return


def _left_behind(tokens: tuple[Token, ...], index: int) -> Iterator[Piece]:
    """ "Leave the coat at home"."""
    for later in range(index + 2, min(index + _FURTHEST, len(tokens))):
        for words in _AWAY:
            if tuple(token.low for token in tokens[later : later + len(words)]) == words:
                yield Piece(first=index, last=index + 1, tag="leave off", how="pattern")
                yield Piece(first=later, last=later + len(words), tag="particle", how="pattern")
                return
