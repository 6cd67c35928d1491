"""An aspect named by two words that stand apart: "how high are the letters", "the height of the letters"."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.records import Aspect
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Piece, only
from kb.reader.pieces.values import Pieces
from kb.reader.words.tokens import Token, tokenize


def named_dimensions(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """A dimension and an unknown noun that together make the label of one measure become that measure."""
    places = [index for index, piece in enumerate(pieces) if _dimension(piece, lookup)]
    nouns = [index for index, piece in enumerate(pieces) if piece.tag == "unknown"]
    if not nouns:
        return pieces
    found = list(pieces)
    if not places:
        return _named_alone(found, nouns, tokens, lookup)
    for noun in nouns:
        word = tokens[pieces[noun].first].key
        fitting = [
            (place, aspect)
            for place in places
            for aspect in _measures_of(word, _dimension(pieces[place], lookup), lookup)
        ]
        if len(fitting) == 1:
            place, aspect = fitting[0]
            found[noun] = msgspec.structs.replace(found[noun], tag="joined")
            if found[place].tag == "name":
                entry = Entry("aspect", aspect.id)
                found[place] = msgspec.structs.replace(found[place], entries=(entry,))
            else:
                found[place] = msgspec.structs.replace(found[place], arg=aspect.id)
    return tuple(found)


def _named_alone(found: list[Piece], nouns: list[int], tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "The letters of the strip, 11/16 in": a noun with an amount, where one measure alone is of it."""
    if not any(piece.tag == "measure" for piece in found):
        return tuple(found)
    for noun in nouns:
        word = tokens[found[noun].first].key
        fitting = [a for a in lookup.base.aspects if a.kind == "measure" and _is_height_of(a, word, lookup)]
        if len(fitting) == 1:
            entry = Entry("aspect", fitting[0].id)
            found[noun] = msgspec.structs.replace(found[noun], tag="name", entries=(entry,))
    return tuple(found)


def _is_height_of(aspect: Aspect, noun: str, lookup: Lookup) -> bool:
    """Whether a measure is called by a noun and the name of another measure: "height of the letters"."""
    words = set(_words(aspect))
    others = {
        word for a in lookup.base.aspects if a.kind == "measure" and a.id != aspect.id for word in _words(a)
    }
    return noun in words and noun not in others and bool(words & others)


def _dimension(piece: Piece, lookup: Lookup) -> str:
    """The measure that a piece names, "" if none."""
    if piece.tag == "dimension":
        return piece.arg if piece.arg in lookup.aspects else ""
    named = only(piece, "aspect") if piece.tag == "name" else ()
    measured = [entry.id for entry in named if lookup.aspects[entry.id].kind == "measure"]
    return measured[0] if len(measured) == 1 else ""


def _measures_of(noun: str, dimension: str, lookup: Lookup) -> Iterator[Aspect]:
    """Measures whose names hold the noun, and that are of the dimension or hold its word."""
    own = set(_words(lookup.aspects[dimension]))
    for aspect in lookup.base.aspects:
        if aspect.kind != "measure" or aspect.id == dimension:
            continue
        words = set(_words(aspect))
        if noun in words and (own & words or aspect.id in lookup.aspects_within(dimension)):
            yield aspect


def _words(aspect: Aspect) -> Iterator[str]:
    for name in (aspect.label, *aspect.other_labels, aspect.id.replace("-", " ")):
        for token in tokenize(name):
            if token.low not in ("of", "the", "a", "an"):
                yield token.key
