"""Pieces found by their form: dates, measures with a unit, clause numbers."""

from __future__ import annotations

import bisect
import re
from collections.abc import Iterator

from kb.measures import find_date, find_measure
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.spelled import ORDINALS, days_of_months
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

_CLAUSE = Pattern(
    r"(?:\b(?:clauses?|cl\.?|paragraphs?|para\.?|sections?|sec\.?|articles?|art\.?|rule|regulation)\s+|§\s*)"
    r"(?P<number>[A-Za-z]{0,2}\d{1,4}(?:[.\-]\d{1,4}){0,4}[a-z]?)(?![\w])"
    r"|(?<![\w.,/])(?P<bare>\d{1,3}(?:\.\d{1,3}){1,4})(?![\w/]|\.\d)"
    r"|(?<=\d\)\s)(?P<dated>[A-Za-z]{1,2}\d{1,4}[a-z]?)(?!\w)",  # "clause Supplement (2026) S5"
    re.IGNORECASE,
)


def _token_range(starts: list[int], start: int, end: int) -> tuple[int, int] | None:
    """The tokens that characters `start` to `end` hold in full."""
    first = bisect.bisect_left(starts, start)
    last = bisect.bisect_left(starts, end)
    return (first, last) if first < last else None


def pattern_pieces(text: str, tokens: tuple[Token, ...]) -> tuple[Piece, ...]:
    """Dates first, then measures, then clause numbers; what lies inside an earlier one is left out."""
    if not any(t.low[0].isdigit() or t.low[-1].isdigit() or t.low in _AMOUNT_WORDS for t in tokens):
        return ()
    starts = [token.start for token in tokens]
    taken: list[tuple[int, int]] = []
    found: list[Piece] = []
    for start, end, piece in (*_dates(text), *_ordinals(text), *_measures(text), *_clauses(text)):
        place = _token_range(starts, start, end)
        if (
            place is None
            or tokens[place[1] - 1].end > end
            or any(place[0] < high and low < place[1] for low, high in taken)
        ):
            continue
        taken.append(place)
        found.append(_placed(piece, place))
    return tuple(found)


_AMOUNT_WORDS = ORDINALS | word_set("""
    an half quarter inch inches one two three four five six seven eight nine ten eleven twelve foot centimetre
    centimeter millimetre millimeter metre meter yard
""")


def _placed(piece: Piece, place: tuple[int, int]) -> Piece:
    return Piece(
        first=place[0], last=place[1], tag=piece.tag, how="pattern", arg=piece.arg,
        date=piece.date, measure=piece.measure,
    )  # fmt: skip


def _dates(text: str) -> Iterator[tuple[int, int, Piece]]:
    found = find_date(text)
    while found is not None:
        yield found.start, found.end, Piece(first=0, last=0, tag="on date", date=found.date)
        found = find_date(text, found.end)


def _ordinals(text: str) -> Iterator[tuple[int, int, Piece]]:
    for said in days_of_months(text):
        day = said.within(said.year) if said.year else None
        yield said.start, said.end, Piece(first=0, last=0, tag="on date" if day else "day", date=day)


def _measures(text: str) -> Iterator[tuple[int, int, Piece]]:
    found = find_measure(text)
    while found is not None:
        yield found.start, found.end, Piece(first=0, last=0, tag="measure", measure=found.measure)
        found = find_measure(text, found.end)


def _clauses(text: str) -> Iterator[tuple[int, int, Piece]]:
    for match in _CLAUSE.finditer(text):
        number = match["number"] or match["bare"] or match["dated"]
        yield match.start(), match.end(), Piece(first=0, last=0, tag="clause number", arg=number)
