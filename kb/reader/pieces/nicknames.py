"""Names of grades that name things, too ("with the red lamp" is nobody's grade), or a ladder as well."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.reader.names.lexicon import Entry, labels_of
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import LIGHT, Pieces
from kb.reader.words.tokens import Token

_WHERE = frozenset({"on", "in", "at", "under", "over", "beneath", "above", "below", "behind", "near"})
_BARE = frozenset({*_WHERE, "with", "by"})


def things(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """The pieces, with a grade's everyday name left unknown where it names a thing."""
    if not any(lookup.facts[piece.fact].family == "grade" for piece in pieces if piece.tag == "fact"):
        return pieces
    return tuple(
        Piece(first=piece.first, last=piece.last, tag="unknown")
        if _is_nickname(piece, tokens, lookup) and _is_thing(pieces, index, tokens)
        else piece
        for index, piece in enumerate(pieces)
    )


def _is_nickname(piece: Piece, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether one small word is no grade's own name, nor any part of it."""
    if piece.tag != "fact" or piece.last - piece.first != 1 or lookup.facts[piece.fact].family != "grade":
        return False
    low, ids = tokens[piece.first].low, {entry.id for entry in piece.entries if entry.kind == "value"}
    labels = [value.label for value in lookup.facts[piece.fact].values if value.id in ids]
    owns = low.endswith(("'s", "s'", "’s", "s’"))
    return bool(labels) and not owns and low.isalpha() and all(low not in one.casefold() for one in labels)


def _is_thing(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "On top", "under the lamp", "with a lit lamp": said of where something is, or of what it is like."""
    before = index - 1
    if before >= 0 and tokens[pieces[before].first].low in _BARE:
        return True  # no article: nobody is spoken of
    while before >= 0 and pieces[before].tag in LIGHT:
        before -= 1
    if before < 0 or before == index - 1:
        return before >= 0 and _is_like(pieces[before])
    return tokens[pieces[before].first].low in _WHERE


def _is_like(piece: Piece) -> bool:
    return piece.tag == "aspect value" or {entry.kind for entry in piece.entries} == {"aspect value"}


def so_called(values: tuple[Entry, ...], words: Sequence[Token], lookup: Lookup) -> tuple[Entry, ...]:
    """Of grades and a ladder those called so as it is written: "a ranger" is none of all the rangers."""
    if len(values) < 2 or {lookup.facts[entry.owner].family for entry in values} != {"grade"}:
        return values
    said = " ".join(token.low for token in words)
    exact = tuple(entry for entry in values if said in _called(entry, lookup))
    return exact or values


def _called(entry: Entry, lookup: Lookup) -> set[str]:
    if entry.kind == "group":
        group = lookup.groups[entry.id]
        names: tuple[str, ...] = (*labels_of(group), group.one or "")
    else:
        names = labels_of(next(v for v in lookup.facts[entry.owner].values if v.id == entry.id))
    return {name.casefold() for name in names}
