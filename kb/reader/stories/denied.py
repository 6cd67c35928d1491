"""What is told that there is none of, beside a question: "no tanker discharging", "nobody on the line"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set

_NOBODY = word_set("nobody nothing none no-one neither never")
_LEADING_IN = word_set("in on at under near by during for inside outside aboard beside")


def denied(found: Understood, pieces: Sequence[Piece]) -> set[Piece]:
    """The pieces of a clause that "no", "without" and "nobody" deny."""
    return {piece for n, p in enumerate(pieces) if _is_no(found, p) for piece in _led(found, pieces, n)}


def _is_no(found: Understood, piece: Piece) -> bool:
    """Whether a piece denies what follows it: "no", "without", "nobody", "no one's"."""
    low = found.tokens[piece.first].low
    return piece.tag in ("no", "without") or low in _NOBODY or low.split("'")[0].split("’")[0] in _NOBODY


def _led(found: Understood, pieces: Sequence[Piece], place: int) -> Iterator[Piece]:
    """What "no" denies: the first name or unknown word after it, and the circumstance that this leads.

    "No tanker discharging in the yard" is in the yard, and of no discharging.
    """
    for piece in pieces[place + 1 :]:
        if piece.tag == "fact" and found.tokens[piece.first].low in _LEADING_IN:
            return
        if piece.tag in ("item", "items", "fact", "unknown"):
            yield piece
        if piece.tag in ("item", "items", "fact"):
            return
