"""An outfit as the thing asked about: "can I go to the dinner in mess dress": whether it may be worn there.

Books that have rules on a rig as a whole know it as a thing, too. Where a sentence names no other thing, and
asks of being or going somewhere in it, wearing it is what is asked; what else is told stays as it was said.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from kb.model.lookup import Lookup
from kb.model.questions import Reading, Span
from kb.model.values import Choices
from kb.reader.meaning.frame import find_frame
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token

_ITEMS = ("item", "items")
_OPENING = frozenset(
    {"can", "may", "must", "do", "should", "be", "have to", "self", "person", "filler", "allowed", "det"}
)
_ASKING = frozenset({"can", "may", "must", "do", "should", "be", "have to", "allowed"})
_WHICH = frozenset(
    {"what", "which", "who", "where", "how", "how many", "when", "why", "compare", "which clause", "order"}
)
_BEING = word_set("be being")
_GOING = word_set("""
    go going come coming walk walking travel travelling get getting turn show pitch rock appear appearing
    attend attending stand standing sit sitting head heading arrive arriving pop nip dash run slip trot stay
    staying remain remaining return returning wander stroll step stop stopping report seen march marching
    enter entering visit visiting
""")
_ABOUT = word_set("up down out about around round straight right back off over along still just in")
_ENTERING = word_set("enter entering attend attending visit visiting")
_THROUGH = word_set("through across past")


def in_an_outfit(reading: Reading, found: Understood, lookup: Lookup) -> tuple[str, tuple[Span, ...]] | None:
    """The text as a question whether the outfit is worn, with its names, if it asks of being there in it."""
    if reading.query is not None and reading.query.kind != "list":
        return None
    whole = _the_outfit(found.pieces, found.tokens, lookup)
    if whole is None:
        return None
    start = sentence_starts(found.text, found.tokens)[-1]
    pieces = [piece for piece in found.pieces if piece.first >= start]
    if found.pieces[whole[0]].first < start or any(piece.tag in _WHICH for piece in pieces):
        return None
    opening = _opening(pieces, found, lookup)
    gone = _going(pieces[opening:], found)
    asked = any(piece.tag in _ASKING for piece in pieces[:opening])
    there = bool(gone) or any(piece.tag == "be" for piece in pieces[:opening])
    frame = find_frame(tuple(pieces), found.tokens)
    if (asked and not there and pieces[opening] is not found.pieces[whole[0]]) or (
        frame.kind not in ("may", "must", "list") or frame.negated or frame.polarity == "not"
    ):
        return None
    put = _worn(found, pieces, opening, gone, whole, lookup)
    at = found.tokens[found.pieces[whole[0]].first].start
    spans = (s if s.start != at else replace(s, role="item", target=whole[1]) for s in reading.spans)
    plain = not frame.modal and any(piece.tag == "do" for piece in pieces[:opening])
    modal = "Do" if plain else "Must" if frame.kind == "must" else "May"
    return f"{found.text[: found.tokens[start].start]}{modal} {put}?", tuple(spans)


def _the_outfit(pieces: Sequence[Piece], tokens: Sequence[Token], lookup: Lookup) -> tuple[int, str] | None:
    """The place of the one rig that is also a thing, or of the one thing of no kind, that somebody is in."""
    named: list[tuple[int, str]] = []
    for index, piece in enumerate(pieces):
        one = ""
        if piece.tag == "fact" and lookup.facts[piece.fact].family == "rig":
            values = piece.values.members if isinstance(piece.values, Choices) else frozenset()
            one = _as_thing(next(iter(values)), piece.fact, lookup) if len(values) == 1 else ""
        elif piece.tag in _ITEMS:
            loose = piece.tag == "item" and set(lookup.broader(piece.arg)) <= {piece.arg, "anything"}
            one = piece.arg if loose else ""
        else:
            continue
        within = tokens[piece.first].low == "in" or _is_led(pieces, index)
        named.append((index, one if one in lookup.items and within else ""))
    return named[0] if len(named) == 1 and named[0][1] else None


def _as_thing(value: str, fact: str, lookup: Lookup) -> str:
    """The thing that a rig is, by its name or by its label: "crew-outfit" of the rig "crew"."""
    if value in lookup.items:
        return value
    label = next((v.label for v in lookup.facts[fact].values if v.id == value), "")
    return next((item.id for item in lookup.base.items if item.label == label), value)


def _is_led(pieces: Sequence[Piece], index: int) -> bool:
    """Whether it is said to be in it: "in uniform", "in my dress"."""
    before = [piece.tag for piece in pieces[:index] if piece.tag not in ("det", "poss")]
    return before[-1:] == ["in"]


def _opening(pieces: Sequence[Piece], found: Understood, lookup: Lookup) -> int:
    """How many pieces ask, up to what is done: "is it ok to", "do we have to"."""
    for index, piece in enumerate(pieces[:-1]):
        plain = piece.tag == "to" and piece.last - piece.first == 1
        opens = piece.tag in _OPENING or plain or _is_grade(piece, lookup)
        if not opens or found.tokens[piece.first].low in _GOING:
            return index
    return len(pieces) - 1


def _is_grade(piece: Piece, lookup: Lookup) -> bool:
    return piece.tag == "fact" and lookup.facts[piece.fact].family == "grade"


def _going(pieces: Sequence[Piece], found: Understood) -> int:
    """How many pieces after the opening only say that one is or goes somewhere."""
    for index, piece in enumerate(pieces):
        words = [token.low for token in found.tokens[piece.first : piece.last]]
        known = _GOING | _BEING | (_ABOUT if index else frozenset())
        going = words[0] in known and all(word in known or word == "to" for word in words[1:])
        if piece.tag in ("fact", *_ITEMS) or not going:
            return index
    return len(pieces)


def _worn(
    found: Understood, pieces: Sequence[Piece], opening: int, gone: int, whole: tuple[int, str],
    lookup: Lookup,
) -> str:  # fmt: skip
    """Who wears the outfit, and what was told beside it: "I wear the mess dress to the dinner"."""
    place, outfit = whole
    label = lookup.items[outfit].label
    before = place - 1
    while before >= 0 and found.pieces[before].tag in ("det", "poss"):
        before -= 1
    leads = before if before >= 0 and found.pieces[before].tag == "in" else before + 1
    left = {piece.first for piece in found.pieces[leads : place + 1]}
    after = found.pieces[place + 1] if place + 1 < len(found.pieces) else None
    if after is not None and label.casefold().endswith(f" {_said(found, after)}".casefold()):
        left.add(after.first)  # the A of "Order A" is read as an article
    rest = [piece for piece in pieces[opening + gone :] if piece.first not in left]
    grades = [_said(found, piece) for piece in pieces[:opening] if _is_grade(piece, lookup)]
    who = " ".join(grades) or ("I" if any(p.tag == "self" for p in pieces[:opening]) else "anyone")
    to = "to " if gone and _said(found, pieces[opening]) in _ENTERING else ""
    words = " ".join(_beside(found, rest, index, gone) for index in range(len(rest)))
    return f"{who} wear the {label} {to}{words}"


def _beside(found: Understood, rest: Sequence[Piece], index: int, gone: int) -> str:
    """A piece of what is told beside the outfit, with the way there in words that books have."""
    said = _said(found, rest[index])
    if said == "home" and gone:
        return "on the way home"
    leads = said in _THROUGH and index + 1 < len(rest) and rest[index + 1].tag == "fact"
    return "in" if leads else said


def _said(found: Understood, piece: Piece) -> str:
    return found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]
