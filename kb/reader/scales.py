"""Grades and other ordered values: "K5 and above", "below W1", "H1 to H3", "a five"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.values import Choices
from kb.reader.forms import NUMBER_WORDS
from kb.reader.pieces import Piece
from kb.reader.tokens import Token
from kb.reader.values import LIGHT, Pieces, fact_piece, named_fact


def number_of(word: Token) -> int:
    """The small number that a word is, 0 if none: "five", "5", "fives", "5s"."""
    return NUMBER_WORDS.get(word.key, int(word.key) if word.key.isdecimal() and len(word.key) < 3 else 0)


def codes_ending_in(number: int, lookup: Lookup) -> tuple[str, ...]:
    """The codes of grades that are one letter or more and this number."""
    grades = [value.id for fact in lookup.base.facts if fact.family == "grade" for value in fact.values]
    return tuple(code for code in grades if code.lstrip(_LETTERS) == str(number))


_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ-"
_IN_RUN = frozenset({"to", "range", "or", "and", "comma", "but", "between", "det"})
_ONE_OF = frozenset({"a", "an", "any", "every", "each", "another", "all", "no"})
_NOUNS = frozenset({"unknown", "measure"})


def numbered_grades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "a five", "3 to 6 but not 5": numbers that only one ladder has, or that follow a grade of it."""
    grade = next((fact for fact in lookup.base.facts if fact.family == "grade"), None)
    if grade is None:
        return pieces
    found = list(pieces)
    index = 0
    while index < len(found):
        run = _run(found, index, tokens, grade.id)
        numbers = [place for place in run if found[place].tag == "unknown"]
        ladder = _ladder(found, run, tokens, grade.id, lookup) if numbers else None
        for place in numbers if ladder is not None else ():
            code = f"{ladder}{number_of(tokens[found[place].first])}"
            piece = found[place]
            found[place] = fact_piece(piece, grade.id, Choices(frozenset({code})), piece.first, piece.last)
        index = run[-1] + 1 if run else index + 1
    return tuple(found)


def _run(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], grade: str) -> list[int]:
    """Places of numbers and grades that words such as "to" and "or" join, from one on; empty if none is said
    to be a grade."""
    places: list[int] = []
    led = index > 0 and (
        tokens[found[index - 1].last - 1].low in _ONE_OF or named_fact(found[index - 1]) == grade
    )
    while index < len(found):
        piece = found[index]
        if _code(piece, grade):
            places, led = [*places, index], True
        elif piece.tag == "unknown" and number_of(tokens[piece.first]):
            led = led or tokens[piece.first].low != tokens[piece.first].key
            places.append(index)
        elif not places or piece.tag not in _IN_RUN:
            break
        index += 1
    counts = places and places[-1] + 1 < len(found) and _is_counted(found[places[-1] + 1])
    return places if led and not counts else []


def _is_counted(piece: Piece) -> bool:
    return piece.tag in _NOUNS or any(entry.kind == "item" for entry in piece.entries)


def _code(piece: Piece, grade: str) -> str:
    """The one grade that a name is, "" for anything else."""
    codes = [entry.id for entry in piece.entries if entry.kind == "value" and entry.owner == grade]
    return codes[0] if len(codes) == len(piece.entries) == 1 else ""


def _ladder(
    found: Sequence[Piece], run: Sequence[int], tokens: tuple[Token, ...], grade: str, lookup: Lookup
) -> str | None:
    """The letters before the number that all grades of a run can share, if only one set of letters can."""
    shared: set[str] | None = None
    for place in run:
        code = _code(found[place], grade)
        codes = [code] if code else codes_ending_in(number_of(tokens[found[place].first]), lookup)
        letters = {code.rstrip("0123456789") for code in codes}
        shared = letters if shared is None else shared & letters
    return shared.pop() if shared and len(shared) == 1 else None


def _ordered(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """The order of a finite scale, empty for other facts."""
    if piece.tag != "fact" or not isinstance(piece.values, Choices):
        return ()
    fact = lookup.facts[piece.fact]
    return lookup.order(piece.fact) if fact.kind == "scale" and fact.family != "authorisation" else ()


def _months(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """January to December where a fact is the month, which goes on after the end with the beginning."""
    single = piece.tag == "fact" and isinstance(piece.values, Choices) and len(piece.values.members) == 1
    return months_of(lookup.facts[piece.fact]) if single else ()


def compare_values(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "K5 and above", "below W1", "at least K2", "H1 to H3", "from K3 to K5", "November to March"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        order = _ordered(found[index], lookup)
        months = () if order else _months(found[index], lookup)
        if order or months:
            _compare_at(found, index, order or months, tokens, in_a_circle=bool(months))
        index += 1
    return tuple(found)


def _span(order: Sequence[str], keep: Callable[[int], bool]) -> Choices:
    return Choices(frozenset(value for rank, value in enumerate(order) if keep(rank)))


def _compare_at(
    found: list[Piece], index: int, order: tuple[str, ...], tokens: tuple[Token, ...], in_a_circle: bool
) -> None:
    piece = found[index]
    ranks = _ranks(piece, order)
    before = index - 1
    while before >= 0 and found[before].tag in LIGHT:
        before -= 1
    opening = found[before].tag if before >= 0 else ""
    if opening == "with" and tokens[found[before].first].low in ("under", "over"):
        opening = "below" if tokens[found[before].first].low == "under" else "above"
    after = found[index + 1].tag if index + 1 < len(found) else ""
    rules: dict[str, Callable[[int], bool]] = {
        "above": lambda rank: rank > max(ranks), "below": lambda rank: rank < min(ranks),
        "at least": lambda rank: rank >= min(ranks), "at most": lambda rank: rank <= max(ranks),
    }  # fmt: skip
    if in_a_circle and (opening in rules or after in ("upward", "downward")):
        return
    if opening in rules:
        found[before : index + 1] = [
            fact_piece(piece, piece.fact, _span(order, rules[opening]), found[before].first, piece.last)
        ]
    elif after in ("upward", "downward"):
        rule = rules["at least" if after == "upward" else "at most"]
        found[index : index + 2] = [
            fact_piece(piece, piece.fact, _span(order, rule), piece.first, found[index + 1].last)
        ]
    elif after in ("to", "range") or (after == "and" and opening == "between"):
        other = index + 2
        while other < len(found) and found[other].tag in LIGHT:
            other += 1
        if other < len(found) and found[other].tag == "fact" and found[other].fact == piece.fact:
            high = _ranks(found[other], order)
            start = before if opening == "between" else index
            low, top = min(ranks), max(high)
            round_the_end = in_a_circle and low > top
            span = _span(
                order, lambda rank: (rank >= low or rank <= top) if round_the_end else low <= rank <= top
            )
            if span.members:
                found[start : other + 1] = [
                    fact_piece(piece, piece.fact, span, found[start].first, found[other].last)
                ]


def _ranks(piece: Piece, order: Sequence[str]) -> list[int]:
    members = piece.values.members if isinstance(piece.values, Choices) else frozenset()
    return [rank for rank, value in enumerate(order) if value in members] or [0]
