"""Words for what a measure is taken from or to: "above the eyebrows", "the heel of the black shoes"."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token, tokenize

Pieces = tuple[Piece, ...]
_MEASURING = frozenset({"dimension", "where", "measure", "how", "aspect", "what"})
_LEADING = frozenset({"above", "below", "between", "of", "with", "on", "in", "beyond", "unread"})
_LIGHT = frozenset({"det", "poss", "filler", "comma"})


def datums(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Unknown words of a question about a measure that some rule measures from or to."""
    unknown = [index for index, piece in enumerate(pieces) if piece.tag == "unknown"]
    if not unknown or _MEASURING.isdisjoint(piece.tag for piece in pieces):
        return pieces
    known = {word for rule in lookup.base.rules for word in datum_keys(rule)}
    found = list(pieces)
    for index in unknown:
        if index and pieces[index - 1].tag in ("self", "person"):
            continue
        if tokens[pieces[index].first].key in known:
            found[index] = msgspec.structs.replace(pieces[index], tag="datum")
            _join_compound(found, index, tokens, known)
    return tuple(found)


def _join_compound(found: list[Piece], index: int, tokens: tuple[Token, ...], known: set[str]) -> None:
    """ "turn-up": what a hyphen joins to such a word."""
    if index + 2 >= len(found) or tokens[found[index + 1].first].low != "-":
        return
    second = found[index + 2]
    if tokens[second.first].key in known and second.tag in ("particle", "unknown", "filler"):
        found[index + 2] = msgspec.structs.replace(second, tag="datum")


def datum_keys(rule: Rule) -> Iterator[str]:
    """The words of what a rule measures from and to."""
    measures = [rule.value.measure, *(position.offset for position in rule.value.positions)]
    for measure in measures:
        if measure is None or measure.datum is None:
            continue
        for text in (measure.datum.measured_from, measure.datum.measured_to):
            yield from (token.key for token in tokenize(text or "") if token.low not in ("the", "of", "a"))


def take_datums(pieces: Pieces, tokens: tuple[Token, ...], roles: Roles, lookup: Lookup) -> None:
    """Give the words of a datum their part, where the rules of the one item asked about measure from them."""
    words = {tokens[piece.first].key for piece in pieces if piece.tag == "datum"}
    if not words or len({piece.arg for piece in roles.asked if piece.tag == "item"}) != 1:
        return
    related = {*lookup.broader(roles.asked[0].arg), *lookup.narrower(roles.asked[0].arg)}
    rules = [rule for rule in lookup.rules_on(related) if words <= set(datum_keys(rule))]
    aspects = {rule.aspect for rule in rules}
    if len(aspects) != 1:
        return
    roles.measured = aspects.pop()
    is_told = any(piece.tag == "measure" for piece in pieces)
    for index, piece in enumerate(pieces):
        if piece.tag == "datum":
            roles.used.add(index)
            before = index - 1
            while before >= 0 and pieces[before].tag in _LIGHT:
                before -= 1
            if before >= 0 and pieces[before].tag in _LEADING:
                roles.used.add(before)
            if (
                is_told
                and roles.measured == "position"
                and before >= 0
                and pieces[before].tag in ("above", "below")
            ):
                roles.placing.append(pieces[before])  # "3 in above the elbow" is no height of it
