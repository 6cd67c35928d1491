"""A colour by the head word of its name: "navy", where the books know only "navy blue"."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.reader.asked_back import COLOURS
from kb.reader.lexicon import Entry
from kb.reader.tokens import Token, word_key
from kb.reader.values import Pieces


def shades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Unknown words of colour that begin the name of one colour of the books become that colour."""
    if "colour" not in lookup.aspects or not any(piece.tag == "unknown" for piece in pieces):
        return pieces
    found = list(pieces)
    for index, piece in enumerate(pieces):
        word = tokens[piece.first]
        if piece.tag != "unknown" or word.low not in COLOURS or _is_thing(pieces, index, tokens):
            continue
        values = [
            value
            for value in lookup.aspects["colour"].values
            if any(
                word_key(name.casefold().split()[0]) == word.key
                for name in (value.label, *value.other_labels)
            )
        ]
        if len(values) == 1:
            entry = Entry("aspect value", values[0].id, "colour")
            found[index] = msgspec.structs.replace(piece, tag="aspect value", entries=(entry,))
    return tuple(found)


def _is_thing(pieces: Pieces, index: int, tokens: tuple[Token, ...]) -> bool:
    """ "My medals from the navy": a colour after "the", with no noun after it, is none."""
    piece = pieces[index]
    before = tokens[piece.first - 1].low if piece.first else ""
    after = pieces[index + 1].tag if index + 1 < len(pieces) else ""
    return before == "the" and after in ("", "comma") and not any(other.tag == "or" for other in pieces)
