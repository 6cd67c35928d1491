"""The explained-token gate: every word has a part in the question, or the question is not answered."""

from __future__ import annotations

from collections.abc import Sequence

from kb.reader.english import tag_set
from kb.reader.frame import Frame
from kb.reader.pieces import Piece
from kb.reader.roles import EXPLAINED, Roles

_VERDICTS = frozenset({"allowed", "banned", "required", "optional"})
MODIFIERS = (
    frozenset({"unknown", "fact name", "aspect", "aspect value", "values", "dimension", "place"}) | _VERDICTS
)
_BEFORE_NOUN = tag_set("""
    det, poss, with, act, without, no, and, or, of, filler, fact, leave off, only, item, items, in, on, for
    be, have to, may, must, can
""")


def unexplained(pieces: Sequence[Piece], frame: Frame, roles: Roles) -> tuple[int, ...]:
    """Places of the pieces that nothing explains, in order."""
    return tuple(
        index
        for index, piece in enumerate(pieces)
        if (piece.tag not in EXPLAINED or _is_attribute(pieces, index))
        and index not in frame.used
        and index not in roles.used
    )


def _is_attribute(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a word of permission stands before a noun as an adjective does: "the required cap"."""
    around = [
        pieces[place].tag if 0 <= place < len(pieces) else "" for place in (index - 1, index, index + 1)
    ]
    return around[0] in ("det", "poss") and around[1] in _VERDICTS and around[2] in ("item", "items", "fact")


def is_modifier(pieces: Sequence[Piece], left: Sequence[int], index: int) -> bool:
    """Whether an unexplained word stands right before a linked noun ("red gloves"), as a modifier does."""
    if pieces[index].tag not in MODIFIERS:
        return False
    after = index + 1
    while after < len(pieces) and after in left and pieces[after].tag in MODIFIERS:
        after += 1
    if after >= len(pieces) or pieces[after].tag not in ("item", "items", "fact"):
        return False
    before = index - 1
    while before in left and pieces[before].tag in MODIFIERS:
        before -= 1
    return before < 0 or pieces[before].tag in _BEFORE_NOUN
