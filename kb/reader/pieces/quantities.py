"""Numbers, measures and dates that state a fact."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from fractions import Fraction

import msgspec

from kb.measures import MeasureError, parse_dates, same_dimension, to_base
from kb.model.lookup import Lookup
from kb.model.months import days_of_month, month_number
from kb.model.records import Fact
from kb.model.values import YES, Interval, ranges
from kb.reader.names.spelling import akin
from kb.reader.pieces.naming import credential_of
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import LINKS, Pieces, fact_piece, named_fact
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import Token, tokenize

_BOUNDS = frozenset({"above", "below", "at least", "at most", "with"})


def numbers(pieces: Pieces, tokens: tuple[Token, ...]) -> Pieces:
    """Bare numbers, in figures or words; "one" only before a name."""
    found = list(pieces)
    for index, piece in enumerate(found):
        word = tokens[piece.first].low
        one = piece.tag == "person" and word == "one" and found[index + 1 : index + 2]
        counted = one and (one[0].tag == "name" or _leads_to_number(found, index + 1, tokens))
        if piece.tag != "unknown" and not counted:
            continue
        number = _number(word)
        if number is not None:
            found[index] = msgspec.structs.replace(piece, tag="number", arg=str(number))
    return tuple(found)


def _leads_to_number(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "One or two", "one to three"."""
    joined = found[index].tag in ("or", "to", "range") and index + 1 < len(found)
    return joined and _number(tokens[found[index + 1].first].low) is not None


def _number(word: str) -> int | None:
    return int(word) if word.isdecimal() and len(word) < 5 else NUMBER_WORDS.get(word)


def quantities(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Measures that state a fact: of a kind that only facts have, or beside the fact's name.

    "Degrees" are those of a temperature; a number without a unit has the unit of the fact it stands beside.
    """
    facts = [fact for fact in lookup.base.facts if fact.kind == "quantity" and fact.unit]
    if not facts and all(piece.measure is None for piece in pieces):
        return pieces
    named = {named_fact(piece) for piece in pieces}
    found = list(pieces)
    if any(piece.measure is not None for piece in pieces):
        from kb.reader.pieces.own_size import own_size  # noqa: PLC0415  few questions tell a measure

        found = list(own_size(pieces, tokens, lookup, facts))
    for index, piece in enumerate(found):
        if piece.tag != "measure" or piece.measure is None:
            continue
        unit = piece.measure.unit
        if same_dimension(unit, "mm") and (lying := _lying(found, index, tokens, lookup)) is not None:
            return quantities((*found[:index], *lying), tokens, lookup)
        fitting = [fact for fact in facts if _is_measured_in(fact, unit, lookup)]
        beside = [fact for fact in fitting if fact.id in named]
        from kb.reader.pieces import measured_fact as told  # noqa: PLC0415  as above

        length = same_dimension(unit, "mm")
        chosen = beside or (told.stood_at(fitting, found, index, tokens, lookup) if length else fitting)
        from kb.reader.pieces.bounded import bounded_fact, stretch  # noqa: PLC0415  few tell a measure

        settled = bounded_fact(piece.measure, tokens, lookup) if not beside else None
        if settled is not None:
            start, end = stretch(settled, found, index, tokens)
            first, last = found[start].first, found[end - 1].last
            found[start:end] = [fact_piece(piece, settled.fact, settled.value, first, last)]
            return quantities(tuple(found), tokens, lookup)
        if not beside and same_dimension(unit, "d"):
            chosen = [fact for fact in chosen if told.concerns(fact, found, tokens, lookup)]
        chosen = [fact for fact in chosen if not told.is_of_growing(piece, tokens, fact)]
        if len(chosen) > 1 and not beside:
            one = told.measured_fact(chosen, found, tokens, lookup)
            chosen = [one] if one is not None else chosen
        if len(chosen) == 1:
            interval = in_unit_of(chosen[0], piece.measure.interval, unit)
            end = told.end_of_measure(chosen[0], found, index, tokens)
            stated = fact_piece(piece, chosen[0].id, ranges([interval]), piece.first, found[end - 1].last)
            found[index:end] = [stated]
    return _bare_numbers(found, tokens, facts, lookup)


_FALLEN = word_set("snow water ice sleet hail mud slush frost")
_ABOUT = word_set("about around outside lying down everywhere underfoot round out there")


def _lying(
    found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup
) -> list[Piece] | None:
    """ "A foot of snow" is no size of a thing: it says that it lies there, where the books know of that.

    None for anything else; what follows it ("about", "on the ground") is taken with it.
    """
    led, matter = (*found[index + 1 : index + 3], None, None)[:2]
    if led is None or matter is None or led.tag != "of" or any(e.kind == "item" for e in matter.entries):
        return None
    said = {token.low for token in tokens[matter.first : matter.last]} & _FALLEN
    lying = [
        fact.id
        for fact in lookup.base.facts
        if fact.kind == "yes_no" and fact.family == "situation" and said & set(fact.label.casefold().split())
    ]
    last = index + 3
    while said and last < len(found) and tokens[found[last].first].low in _ABOUT:
        last += 1
    if not said:
        return None
    first, end = found[index].first, found[last - 1].last
    known = fact_piece(found[index], lying[0], YES, first, end) if len(lying) == 1 else None
    return [known or Piece(first=first, last=end, tag="unknown"), *found[last:]]


def _is_measured_in(fact: Fact, unit: str, lookup: Lookup) -> bool:
    if unit == "deg" and same_dimension(fact.unit or "1", "Cel"):
        return not any(rule.value.measure and rule.value.measure.unit == "deg" for rule in lookup.base.rules)
    return same_dimension(fact.unit or "1", unit)


def in_unit_of(fact: Fact, interval: Interval, unit: str) -> Interval:
    """An interval in the base unit of a fact: plain numbers and degrees are of the fact's own unit."""
    if fact.unit is None or unit not in ("1", "deg") or same_dimension(fact.unit, unit):
        return interval
    low, high = (
        None if bound is None else to_base(bound, fact.unit) for bound in (interval.low, interval.high)
    )
    return Interval(low, high, interval.low_open, interval.high_open)


def _bare_numbers(
    found: list[Piece], tokens: tuple[Token, ...], facts: Sequence[Fact], lookup: Lookup
) -> Pieces:
    """ "A wind of 50", "at minus 6", "below zero"."""
    index = 0
    while index < len(found):
        piece = found[index]
        if piece.tag != "number":
            index += 1
            continue
        first = index
        minus = index > 0 and _is_minus(found, index, tokens)
        first -= minus
        bound = found[first - 1].tag if first and found[first - 1].tag in _BOUNDS else ""
        if bound == "with":
            bound = {"under": "below", "over": "above"}.get(tokens[found[first - 1].first].low, "")
        first -= bool(bound)
        letter = _letter_unit(found, index, tokens)
        cold = bool(letter) or minus or (bool(bound) and tokens[piece.first].low == "zero")
        fact = _fact_beside(found, first, index, facts) or (
            _temperature(facts, found, tokens, lookup) if cold else None
        )
        if fact is not None:
            number = Fraction(int(piece.arg) * (-1 if minus else 1))
            if letter:
                interval = bounded(bound, to_base(number, letter))
            else:
                interval = in_unit_of(fact, bounded(bound, number), "1")
            last = index + bool(letter)
            found[first : last + 1] = [
                fact_piece(piece, fact.id, ranges([interval]), found[first].first, found[last].last)
            ]
            index = first
        index += 1
    return tuple(found)


def bounded(bound: str, number: Fraction) -> Interval:
    """The interval that "above", "below", "at least", "at most" or nothing makes of a number."""
    return {
        "at least": Interval(number, None),
        "at most": Interval(None, number),
        "above": Interval(number, None, low_open=True),
        "below": Interval(None, number, high_open=True),
    }.get(bound, Interval(number, number))


def _is_minus(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    sign, number = tokens[found[index - 1].first], tokens[found[index].first]
    before = found[index - 2].tag if index > 1 else ""
    joined = sign.low == "-" and sign.end == number.start and number.low.isdecimal()  # not "forty-five"
    return sign.low == "minus" or (joined and before != "number")


_LETTERS = {"c": "Cel", "f": "[degF]"}


def _letter_unit(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> str:
    """ "5 C", "41F": the unit that a letter after a number stands for."""
    after = found[index + 1] if index + 1 < len(found) else None
    if after is None or after.tag not in ("unknown", "measure"):
        return ""
    return _LETTERS.get(tokens[after.first].low, "")


def _fact_beside(found: Sequence[Piece], first: int, last: int, facts: Sequence[Fact]) -> Fact | None:
    """The quantity named right before or right after a number."""
    before, after = first - 1, last + 1
    while before >= 0 and found[before].tag in LINKS and found[before].tag != "comma":
        before -= 1
    for place in (before, after):
        name = named_fact(found[place]) if 0 <= place < len(found) else None
        fact = next((fact for fact in facts if fact.id == name), None)
        if fact is not None:
            return fact
    return None


def _temperature(
    facts: Sequence[Fact], pieces: Sequence[Piece], tokens: tuple[Token, ...], lookup: Lookup
) -> Fact | None:
    found = [fact for fact in facts if same_dimension(fact.unit or "1", "Cel")]
    if len(found) < 2:
        return found[0] if found else None
    from kb.reader.pieces.measured_fact import measured_fact  # noqa: PLC0415  as above

    return measured_fact(found, pieces, tokens, lookup)


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
_BETWEEN = LINKS | {
    "self", "service", "date", "unread", "range", "to", "or", "and", "not", "between", "have", "if",
}  # fmt: skip


def dates(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Dates and years that state a fact ("awarded before 1 April 2019", "joined in 2014").

    The others say for which day one asks.
    """
    facts = [fact for fact in lookup.base.facts if fact.kind == "date"]
    if not facts:
        return pieces
    service = {token.key for token in tokenize(lookup.base.service.label)}
    found = list(pieces)
    index = 0
    while index < len(found):
        piece = found[index]
        dated = (piece.tag == "on date" and piece.date is not None) or is_year(piece)
        month = _month_before(found, index, tokens) if is_year(piece) else index
        place = _date_name(found[:month], tokens, facts, service) if dated else None
        if place is None:
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
        written = " ".join(word for word in words if word)
        try:
            values = parse_dates(_of_span(written, piece, tokens) if is_year(piece) else written)
        except MeasureError:
            index += 1
            continue
        held = _held(found[at:index], lookup)  # "got my pilot's badge in 2018": a qualified pilot
        told = [] if held is None else [fact_piece(held[0], held[1], YES, found[at].first, held[0].last)]
        first = found[at].first if held is None else held[0].last
        found[at : last + 1] = [*told, fact_piece(piece, fact, values, first, last_word)]
        index = at + len(told) + 1
    return tuple(found)


def _held(pieces: Sequence[Piece], lookup: Lookup) -> tuple[Piece, str] | None:
    """A thing among the pieces that only the holder of something is given, with what is held."""
    for piece in pieces:
        if piece.tag == "name" and {entry.kind for entry in piece.entries} == {"item"}:
            credential = credential_of(piece, lookup)
            return (piece, credential) if credential is not None else None
    return None


def is_year(piece: Piece) -> bool:
    """Whether a number is a year."""
    return piece.tag == "number" and len(piece.arg) == 4 and piece.arg[:2] in ("19", "20")


def _month_before(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> int:
    """The place of the month that stands before a year ("May of 2019"), or that of the year."""
    if not _named_month(tokens, found[index].first):
        return index
    before = index - 1
    while before and tokens[found[before].last - 1].low in ("of", ","):
        before -= 1
    return before


def _named_month(tokens: tuple[Token, ...], year: int) -> int:
    """The number of the month before a year, 0 if there is none."""
    before = year - 1
    if before > 0 and tokens[before].low in ("of", ","):
        before -= 1
    return month_number(tokens[before].low) if before >= 0 else 0


def _of_span(written: str, piece: Piece, tokens: tuple[Token, ...]) -> str:
    """Days of a year, or of the month before it: all of them, or what lies before, after or from them on."""
    month = _named_month(tokens, piece.first)
    first, last = days_of_month(int(piece.arg), month or 1)
    last = last if month else datetime.date(first.year, 12, 31)
    if written in ("before", "until"):
        return f"before {first}"
    if written == "after":
        return f"after {last}"
    if written == "since":
        return f"on or after {first}"
    return written or f"from {first} to {last}"


def _date_text(pieces: Sequence[Piece], tokens: tuple[Token, ...], place: int) -> str:
    for piece in pieces:
        if piece.first <= place < piece.last and piece.date is not None:
            return piece.date.isoformat() if place == piece.first else ""
    low = tokens[place].low
    return low if low in _DATE_WORDS else ""


def _date_name(
    before: Sequence[Piece], tokens: tuple[Token, ...], facts: Sequence[Fact], service: set[str]
) -> tuple[int, str] | None:
    """Where a date fact is named before the date, and which: by its label, or by a word akin to it."""
    for index in range(len(before) - 1, max(len(before) - 6, -1), -1):
        piece = before[index]
        name = named_fact(piece)
        if name and any(fact.id == name for fact in facts):
            return index, name
        if piece.tag in ("hold", "unknown", "grant", "have"):
            near = [fact for fact in facts if akin_to_fact(fact, tokens[piece.last - 1])]
            if len(near) == 1:
                return index, near[0].id
        if piece.tag == "name" and {entry.kind for entry in piece.entries} == {"item"}:
            continue  # "was awarded the badge on ..."
        if piece.tag not in _BETWEEN and tokens[piece.first].key not in service:
            return None
    return None


_SAID_OF = (
    ("award", word_set("got received earned won gained given")),
    ("join", word_set("enlisted enrolled signed entered started")),
    ("issu", word_set("got received given")),
)
"""How the nouns by which dates are called begin, and what is said of oneself instead: "got my badge on"."""


def akin_to_fact(fact: Fact, word: Token) -> bool:
    """Whether a word shares its stem with one of a date's name ("joined", "date of joining")."""
    names = (fact.id.replace("-", " "), fact.label, *fact.other_labels)
    return any(
        akin(word.low, part.low) or any(word.low in said and part.low.startswith(of) for of, said in _SAID_OF)
        for name in names
        for part in tokenize(name)
        if part.low not in ("date", "day", "of", "on")
    )
