"""How long a thing is, told before something is asked of another: "my beard is 8 mm, do I need the net?".

Where the books measure it as a circumstance ("beard length"), that is what is told of it.
"""

from __future__ import annotations

from collections.abc import Sequence

from kb.measures import same_dimension
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import ranges
from kb.reader.names.lexicon import joined, name_words
from kb.reader.pieces.distances import distances
from kb.reader.pieces.pieces import Piece, only
from kb.reader.pieces.values import LIGHT, Pieces, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_SIZES = word_set("length width height depth size thickness")
_SIZED = word_set("long wide high deep tall thick broad in length width height")
_ASKING = frozenset({"can", "may", "must", "should", "have to", "do", "have", "be"})
_LEADING = frozenset({"with", "if", "when", "comma"})
_IT = word_set("it its that this they them those these so")


def own_size(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup, facts: Sequence[Fact]) -> Pieces:
    """The pieces with each such thing and its measure as the one fact that they state."""
    found = list(distances(pieces, tokens, lookup, facts))
    index = 0
    while index < len(found):
        fact = _measured(found[index], lookup, facts)
        span = _with_its_measure(found, index, tokens) if fact is not None else None
        if fact is not None and span is not None and _is_of_another(found, index, span, tokens, lookup):
            group = found[span[0] : span[1]]
            measure = next(piece.measure for piece in group if piece.measure is not None)
            if same_dimension(fact.unit or "1", measure.unit):
                piece = fact_piece(
                    found[index], fact.id, ranges([measure.interval]), group[0].first, group[-1].last
                )
                found[span[0] : span[1]] = [piece]
                index = span[0]
        index += 1
    return tuple(found)


def _measured(piece: Piece, lookup: Lookup, facts: Sequence[Fact]) -> Fact | None:
    """The fact that is a size of the one thing that a name may mean."""
    items = {entry.id for entry in only(piece, "item")} if piece.tag == "name" else set[str]()
    if len(items) != 1:
        return None
    (item,) = items
    own = {joined(label) for label in (lookup.items[item].label, *lookup.items[item].other_labels)}
    for fact in facts:
        words = name_words(fact.label)
        rest = "".join(word for word in words if word not in _SIZES and word != "of")
        if rest in own and not _SIZES.isdisjoint(words):
            return fact
    return None


def _with_its_measure(
    found: Sequence[Piece], index: int, tokens: tuple[Token, ...]
) -> tuple[int, int] | None:
    """From where to where a thing and what it measures stand: "beard of 8 mm", "3 mm beard"."""
    if index and found[index - 1].tag == "measure":
        return index - 1, index + 1
    after = index + 1
    while after < len(found) and found[after].tag in (*LIGHT, "be", "of", "filler"):
        after += 1
    if after == index + 1 or after == len(found) or found[after].tag != "measure":
        return None
    end = after + 1
    while end < len(found) and found[end].tag != "comma" and _is_sized(found, end, tokens):
        end += 1
    return index, end


def _is_sized(found: Sequence[Piece], place: int, tokens: tuple[Token, ...]) -> bool:
    """ "Long", "in length"; not "in the kitchen"."""
    piece = found[place]
    lows = [token.low for token in tokens[piece.first : found[min(place + 1, len(found) - 1)].last]]
    said = lows[: piece.last - piece.first]
    return _SIZED.issuperset(said) and (said != ["in"] or _SIZED.issuperset(lows[1:2]))


def _is_of_another(
    found: Sequence[Piece], index: int, span: tuple[int, int], tokens: tuple[Token, ...], lookup: Lookup
) -> bool:
    """Whether something is asked of another thing, with no word that may mean this one."""
    (own,) = {entry.id for entry in only(found[index], "item")}
    kin = {*lookup.broader(own), *lookup.narrower(own)}
    others = [
        n
        for n, piece in enumerate(found)
        if piece.tag == "name" and {e.kind for e in piece.entries} == {"item"}
        if kin.isdisjoint(entry.id for entry in piece.entries)
    ]
    if len(others) != 1 or any(token.low in _IT for token in tokens):
        return False
    (other,) = others
    if other > span[1]:
        return any(piece.tag in _ASKING for piece in found[span[1] : other])
    before = [piece.tag for piece in found[other + 1 : span[0]] if piece.tag not in LIGHT]
    return before[-1:] != [] and before[-1] in _LEADING
