"""Numbers, measures and dates that state a fact."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.measures import MeasureError, parse_dates, same_dimension
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import ranges
from kb.reader.english import NUMBER_WORDS
from kb.reader.pieces import Piece
from kb.reader.tokens import Token
from kb.reader.values import Pieces, fact_piece, named_fact


def numbers(pieces: Pieces, tokens: tuple[Token, ...]) -> Pieces:
    """Bare numbers, in figures or words; "one" only before a name."""
    found = list(pieces)
    for index, piece in enumerate(found):
        word = tokens[piece.first].low
        one = piece.tag == "person" and word == "one" and found[index + 1 : index + 2]
        if piece.tag != "unknown" and not (one and one[0].tag == "name"):
            continue
        number = _number(word)
        if number is not None:
            found[index] = msgspec.structs.replace(piece, tag="number", arg=str(number))
    return tuple(found)


def _number(word: str) -> int | None:
    return int(word) if word.isdecimal() and len(word) < 5 else NUMBER_WORDS.get(word)


def quantities(pieces: Pieces, lookup: Lookup) -> Pieces:
    """Measures that state a fact: of a kind that only facts have, or beside the fact's name."""
    facts = [fact for fact in lookup.base.facts if fact.kind == "quantity" and fact.unit]
    named = {named_fact(piece) for piece in pieces}
    found = list(pieces)
    for index, piece in enumerate(found):
        if piece.tag != "measure" or piece.measure is None:
            continue
        unit = piece.measure.unit
        fitting = [fact for fact in facts if same_dimension(fact.unit or "1", unit)]
        beside = [fact for fact in fitting if fact.id in named]
        chosen = beside or ([] if same_dimension(unit, "mm") else fitting)
        if len(chosen) == 1:
            values = ranges([piece.measure.interval])
            found[index] = fact_piece(piece, chosen[0].id, values, piece.first, piece.last)
    return tuple(found)


_DATE_WORDS = frozenset(
    {
        "before",
        "after",
        "since",
        "on",
        "from",
        "later",
        "earlier",
        "not",
        "or",
        "to",
        "until",
        "between",
        "and",
    }
)


def dates(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Dates that state a fact ("awarded before 1 April 2019"); the others say for which day one asks."""
    facts = [fact for fact in lookup.base.facts if fact.kind == "date"]
    found = list(pieces)
    index = 0
    while index < len(found):
        piece = found[index]
        place = _date_name(found[:index], tokens, facts) if piece.tag == "on date" else None
        if place is None or piece.date is None:
            index += 1
            continue
        at, fact = place
        last = index
        if (
            index + 2 < len(found)
            and found[index + 1].tag in ("to", "range", "and")
            and found[index + 2].tag == "on date"
        ):
            last = index + 2
        first_word, last_word = found[at].last, found[last].last
        words = [_date_text(found, tokens, place) for place in range(first_word, last_word)]
        try:
            values = parse_dates(" ".join(word for word in words if word))
        except MeasureError:
            index += 1
            continue
        found[at : last + 1] = [fact_piece(piece, fact, values, found[at].first, last_word)]
        index = at + 1
    return tuple(found)


def _date_text(pieces: Sequence[Piece], tokens: tuple[Token, ...], place: int) -> str:
    for piece in pieces:
        if piece.first <= place < piece.last and piece.date is not None:
            return piece.date.isoformat() if place == piece.first else ""
    low = tokens[place].low
    return low if low in _DATE_WORDS else ""


def _date_name(
    before: Sequence[Piece], tokens: tuple[Token, ...], facts: Sequence[Fact]
) -> tuple[int, str] | None:
    """Where a date fact is named before the date, and which: by its label, or by a word akin to it."""
    for index in range(len(before) - 1, max(len(before) - 5, -1), -1):
        piece = before[index]
        name = named_fact(piece)
        if name and any(fact.id == name for fact in facts):
            return index, name
        if piece.tag == "hold":
            stem = tokens[piece.last - 1].low[:5]
            akin = [
                f
                for f in facts
                if any(w.startswith(stem) for w in (*f.label.lower().split(), *f.id.split("-")))
            ]
            if len(akin) == 1:
                return index, akin[0].id
    return None
