"""Grades and other ordered values: "K5 and above", "below W1", "H1 to H3", "a five"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.forms import NUMBER_WORDS
from kb.reader.pieces import Piece
from kb.reader.tokens import Token
from kb.reader.values import LIGHT, Pieces, fact_piece, named_fact


def numbered_grades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "a five" where one grade's code alone ends in that number."""
    grade = next((fact for fact in lookup.base.facts if fact.family == "grade"), None)
    if grade is None:
        return pieces
    found = list(pieces)
    for index, piece in enumerate(found):
        if piece.tag != "unknown":
            continue
        word = tokens[piece.first]
        number = NUMBER_WORDS.get(
            word.key, int(word.key) if word.key.isdecimal() and len(word.key) < 3 else 0
        )
        plural = word.low != word.key
        named = index and (found[index - 1].tag == "det" or named_fact(found[index - 1]) == grade.id)
        if not number or not (plural or named):
            continue
        codes = [
            value.id
            for value in grade.values
            if value.id.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ-") == str(number)
        ]
        if len(codes) == 1:
            found[index] = fact_piece(piece, grade.id, Choices(frozenset(codes)), piece.first, piece.last)
    return tuple(found)


def _ordered(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """The order of a finite scale, empty for other facts."""
    if piece.tag != "fact" or not isinstance(piece.values, Choices):
        return ()
    fact = lookup.facts[piece.fact]
    return lookup.order(piece.fact) if fact.kind == "scale" and fact.family != "authorisation" else ()


def compare_values(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "K5 and above", "below W1", "at least K2", "H1 to H3", "from K3 to K5"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        order = _ordered(found[index], lookup)
        if order:
            _compare_at(found, index, order, tokens)
        index += 1
    return tuple(found)


def _span(order: Sequence[str], keep: Callable[[int], bool]) -> Choices:
    return Choices(frozenset(value for rank, value in enumerate(order) if keep(rank)))


def _compare_at(found: list[Piece], index: int, order: tuple[str, ...], tokens: tuple[Token, ...]) -> None:
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
            span = _span(order, lambda rank: min(ranks) <= rank <= max(high))
            if span.members:
                found[start : other + 1] = [
                    fact_piece(piece, piece.fact, span, found[start].first, found[other].last)
                ]


def _ranks(piece: Piece, order: Sequence[str]) -> list[int]:
    members = piece.values.members if isinstance(piece.values, Choices) else frozenset()
    return [rank for rank, value in enumerate(order) if value in members] or [0]
