"""Months as days, where two of them are compared: "between September and November 2026"."""

from __future__ import annotations

import datetime

from kb.model.months import MONTHS
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token

_LEADING = tag_set("between, and, to, range, with, or, compare")


def with_months(pieces: tuple[Piece, ...], tokens: tuple[Token, ...]) -> tuple[Piece, ...]:
    """Each month that a joining word leads to as its first day, in the year that is named after it."""
    found: list[Piece] = []
    index = 0
    while index < len(pieces):
        piece = pieces[index]
        month, year = tokens[piece.first].low, _year(pieces[index + 1 :], tokens)
        led = bool(found) and found[-1].tag in _LEADING
        if not (led and year and month in MONTHS and piece.last - piece.first == 1):
            found.append(piece)
            index += 1
            continue
        following = pieces[index + 1] if index + 1 < len(pieces) else None
        dated = following is not None and tokens[following.first].low == str(year)
        last = following.last if following is not None and dated else piece.last
        day = datetime.date(year, MONTHS.index(month) + 1, 1)
        found.append(Piece(first=piece.first, last=last, tag="on date", date=day))
        index += 1 + dated
    return tuple(found)


def _year(pieces: tuple[Piece, ...], tokens: tuple[Token, ...]) -> int:
    """The first year among the pieces, 0 if there is none."""
    for piece in pieces:
        low = tokens[piece.first].low
        if len(low) == 4 and low.isdecimal() and low[:2] in ("19", "20"):
            return int(low)
    return 0
