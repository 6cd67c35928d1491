"""Two of a thing, told apart by colour, and worn at once: "a black watch and a silver one together".

How many are worn is asked there, and not whether one may be of either colour.
"""

from __future__ import annotations

from fractions import Fraction

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.values import Choices, Interval, Ranges, contains
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.unnamed import settled

_ITEMS = ("item", "items")


def of_values(query: Query, found: Understood, lookup: Lookup) -> Query | Ask:
    """The question with its values settled, whether they are said of one thing or of several."""
    return settled(_at_once(query, found, lookup), lookup)


def _at_once(query: Query, found: Understood, lookup: Lookup) -> Query:
    """The question whether so many may be worn, where each of them is named by a value of its own."""
    plain = isinstance(query.value, Choices) and not query.value.complement and len(query.value.members) > 1
    asked = query.kind == "may" and query.polarity == "do" and len(query.items) == 1
    if not (plain and asked and "count" in lookup.aspects):
        return query
    named = [n for n, p in enumerate(found.pieces) if _is_of(p, query.aspect)]
    linked = found.pieces[named[0] : named[-1]] if named else ()
    tags = {piece.tag for piece in linked}
    together = any(piece.tag == "together" for piece in found.pieces) or found.tokens[-1].low == "both"
    together = together and "and" in tags
    apart = "and" in tags and all(_is_one(found, place) for place in named)
    beside = "with" in tags and all(_is_noun(found, place + 1) for place in named)
    if len(named) < 2 or "or" in tags or not (together or apart or beside):
        return query
    number = Fraction(len(named))
    if _may_be_so_many(query.items[0], number, lookup):
        return query  # then it turns on what colour each is
    return msgspec.structs.replace(query, aspect="count", value=Ranges((Interval(low=number, high=number),)))


def _is_of(piece: Piece, aspect: str) -> bool:
    return piece.tag == "aspect value" and any(entry.owner == aspect for entry in piece.entries)


def _is_one(found: Understood, place: int) -> bool:
    """ "A silver one", "the copper spoon": one thing that is so."""
    if not place or found.pieces[place - 1].tag != "det" or not _is_noun(found, place + 1):
        return False
    return not found.tokens[found.pieces[place + 1].last - 1].low.endswith("s")


def _is_noun(found: Understood, place: int) -> bool:
    piece = found.pieces[place] if place < len(found.pieces) else None
    return piece is not None and (piece.tag in _ITEMS or found.tokens[piece.last - 1].low in ("one", "ones"))


def _may_be_so_many(item: str, number: Fraction, lookup: Lookup) -> bool:
    """Whether rules limit how many of a thing are worn, and none of them shuts so many out."""
    wider = lookup.broader(item)
    limits = [r for r in lookup.base.rules if r.aspect == "count" and not {*wider}.isdisjoint(r.scope.items)]
    return bool(limits) and all(
        contains(rule.value.values, number) == (rule.modality != "must_not") for rule in limits
    )
