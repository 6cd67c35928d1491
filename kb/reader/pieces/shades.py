"""Words of colour that are no label of the books: "navy" of "navy blue", "pink", "dark green"."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.values import OTHER
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import Pieces
from kb.reader.words.colours import DOUBTFUL, FINISHES, HEADS, MODIFIERS
from kb.reader.words.tokens import Token, word_key

_DASHES = frozenset("-–")
_TAKEN = frozenset({"unknown", "aspect value", "degree", "filler", "fact", "values", "fact name"})
_ITEMS = ("item", "items")


def shades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Words of colour as values of an aspect: the one in the books that begins so, else one that none has."""
    if not any(token.low in HEADS for token in tokens):
        return pieces
    found = list(pieces)
    for index, piece in enumerate(pieces):
        word = tokens[piece.first]
        if piece.tag != "unknown" or word.low not in HEADS or _is_thing(pieces, index, tokens):
            continue
        aspect = _aspect_of(word.low, lookup)
        if aspect is None:
            continue
        values = [
            value
            for value in lookup.aspects[aspect].values
            if any(
                word_key(name.casefold().split()[0]) == word.key
                for name in (value.label, *value.other_labels)
            )
        ]
        value = values[0].id if len(values) == 1 else OTHER + word.low
        entry = Entry("aspect value", value, aspect)
        found[index] = msgspec.structs.replace(piece, tag="aspect value", entries=(entry,))
    return _joined(found, tokens, lookup)


def _aspect_of(word: str, lookup: Lookup) -> str | None:
    """The aspect whose values in the books are words of the same sort: colours, or finishes."""
    sort = FINISHES if word in FINISHES else HEADS - FINISHES
    fitting = [
        aspect.id
        for aspect in lookup.base.aspects
        if aspect.kind == "choice"
        and any(not sort.isdisjoint(value.label.casefold().split()) for value in aspect.values)
    ]
    return fitting[0] if len(fitting) == 1 else None


def _joined(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "Dark green", "blue-grey": the words of one shade as one piece."""
    joined: list[Piece] = []
    for piece in found:
        aspect = _colour_of(piece, lookup)
        first, name = piece.first, [token.low for token in tokens[piece.first : piece.last]]
        while aspect and joined and (before := _leads(joined, tokens, aspect)):
            for _ in range(before):
                first = joined.pop().first
        if first == piece.first:
            joined.append(piece)
            continue
        name = [token.low for token in tokens[first : piece.last] if token.low not in _DASHES]
        entry = Entry("aspect value", OTHER + "-".join(name), aspect)
        joined.append(
            msgspec.structs.replace(
                piece, first=first, tag="aspect value", entries=(entry,), how="pattern", arg="", fact=""
            )
        )
    return tuple(joined)


def _colour_of(piece: Piece, lookup: Lookup) -> str:
    """The aspect of a piece that is a value of one aspect of choices, else empty."""
    owners = {entry.owner for entry in piece.entries} if piece.tag == "aspect value" else set()
    owner = owners.pop() if len(owners) == 1 else ""
    return owner if owner and lookup.aspects[owner].kind == "choice" else ""


def _leads(joined: list[Piece], tokens: tuple[Token, ...], aspect: str) -> int:
    """How many of the last pieces belong to the name of the shade that comes next."""
    dashed = int(tokens[joined[-1].first].low in _DASHES)
    if len(joined) <= dashed:
        return 0
    piece = joined[-1 - dashed]
    words = [token.low for token in tokens[piece.first : piece.last]]
    colour = piece.tag == "aspect value" and {entry.owner for entry in piece.entries} == {aspect}
    shade = len(words) == 1 and words[0] in MODIFIERS and piece.tag in _TAKEN
    return 1 + dashed if colour or shade else 0


def _is_thing(pieces: Pieces, index: int, tokens: tuple[Token, ...]) -> bool:
    """ "My medals from the navy", "sun cream": a word that is no colour in its place."""
    piece = pieces[index]
    before = tokens[piece.first - 1].low if piece.first else ""
    after = pieces[index + 1].tag if index + 1 < len(pieces) else ""
    if before == "the" and after not in (*_ITEMS, "unknown", "aspect value"):
        return not any(other.tag == "or" for other in pieces)
    led = pieces[index - 1].tag if index else ""
    colour = tokens[piece.last].low if piece.last < len(tokens) else ""
    if (
        tokens[piece.first].low not in DOUBTFUL
        or colour in HEADS
        or colour in ("colour", "color", "coloured", "colored")
    ):
        return False
    return not (led == "be" or before in MODIFIERS or (after in _ITEMS and led != "unknown"))
