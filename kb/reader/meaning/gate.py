"""The explained-token gate: every word has a part in the question, or the question is not answered."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.roles import EXPLAINED
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood, is_other

_VERDICTS = frozenset({"allowed", "banned", "required", "optional"})
MODIFIERS = (
    frozenset({"unknown", "fact name", "aspect", "aspect value", "values", "dimension", "place", "degree"})
    | _VERDICTS
)
_MODAL = frozenset({"may", "must", "can", "should", "do", "be"})
_SUPPOSING = frozenset({"be", "self", "not", "filler", "det", "poss", "have", "item", "items"})
_BEFORE_NOUN = tag_set("""
    det, poss, with, act, without, no, and, or, of, filler, fact, leave off, only, item, items, in, on, for
    be, have to, may, must, can
""")


def unexplained(pieces: Sequence[Piece], frame: Frame, roles: Roles) -> tuple[int, ...]:
    """Places of the pieces that nothing explains, in order.

    Beside a word that nothing explains, nothing explains a colour that the books do not know either.
    """
    left = tuple(
        index
        for index, piece in enumerate(pieces)
        if (
            piece.tag not in EXPLAINED
            or _is_attribute(pieces, index)
            or _hangs(pieces, index, frame)
            or _classes(pieces, index)
            or piece.tag == "not"
        )
        and index not in frame.used
        and index not in roles.used
    )
    if supposed := [index for index in range(1, len(pieces)) if _is_supposed(pieces, index)]:
        left = tuple(sorted({*left, *supposed}))
    if not left and frame.kind != "compare":
        return left
    colours = {index for index, piece in enumerate(pieces) if is_other(piece)}
    return tuple(sorted(colours.union(left))) if colours else left


def _is_supposed(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a word of permission stands in a condition, and asks nothing: "if they're prescribed"."""
    if pieces[index].tag not in _VERDICTS:
        return False
    before = index - 1
    while before > 0 and pieces[before].tag in _SUPPOSING:
        before -= 1
    if pieces[before].tag != "if" or before == index - 1:
        return False
    polite = index == len(pieces) - 1 and all(piece.tag == "filler" for piece in pieces[before + 1 : index])
    asked = any(piece.tag in _MODAL for piece in pieces[:before])  # "wondering if it is allowed" asks
    return asked and not polite


def _hangs(pieces: Sequence[Piece], index: int, frame: Frame) -> bool:
    """Whether a preposition ends a yes-or-no question: what it leads to was not said."""
    rest = {piece.tag for piece in pieces[index + 1 :]}
    return (
        frame.kind in ("may", "must")
        and pieces[index].tag in ("with", "of", "in", "for")
        and rest <= {"comma", "filler", "det"}
    )


def _is_attribute(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a word of permission stands before a noun as an adjective does: "the required cap"."""
    around = [
        pieces[place].tag if 0 <= place < len(pieces) else "" for place in (index - 1, index, index + 1)
    ]
    return around[0] in ("det", "poss") and around[1] in _VERDICTS and around[2] in ("item", "items", "fact")


def _classes(pieces: Sequence[Piece], index: int) -> bool:
    """Whether "a kind of" stands between two things: "is the beanie a kind of hat"."""
    piece = pieces[index]
    if piece.tag != "det" or piece.last - piece.first < 2 or not 1 < index + 1 < len(pieces):
        return False
    before = index - 1
    while before and pieces[before].tag == "det":
        before -= 1
    return pieces[before].tag in ("item", "items") and pieces[index + 1].tag in ("item", "items")


_FAMILIES = frozenset({"grade", "branch", "qualification", "appointment"})


def is_modifier(found: Understood, left: Sequence[int], index: int, lookup: Lookup) -> bool:
    """Whether an unexplained word stands right before a linked noun ("red gloves"), as a modifier does.

    A plural is a noun itself; of facts only people are nouns, and only after an article ("a fine singer").
    """
    pieces, token = found.pieces, found.tokens[found.pieces[index].first]
    if pieces[index].tag not in MODIFIERS:
        return False
    if pieces[index].tag == "unknown" and token.low.endswith("s") and token.low != token.key:
        return False
    after = index + 1
    while after < len(pieces) and after in left and pieces[after].tag in MODIFIERS:
        after += 1
    if after >= len(pieces) or pieces[after].tag not in ("item", "items", "fact"):
        return False
    before = index - 1
    while before in left and pieces[before].tag in MODIFIERS:
        before -= 1
    if pieces[after].tag == "fact":
        person = lookup.facts[pieces[after].fact].family in _FAMILIES
        return person and before >= 0 and pieces[before].tag in ("det", "poss")
    return before < 0 or pieces[before].tag in _BEFORE_NOUN
