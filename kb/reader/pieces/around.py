"""Circumstances said by the nouns of their names: "passengers about", "no wind", "the certificate"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

import msgspec

from kb.measures import same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import NO, YES, Interval, ranges
from kb.reader.names.lexicon import CREDENTIALS, Entry, name_words
from kb.reader.pieces.pieces import SHARING, Piece
from kb.reader.pieces.values import LIGHT, Pieces, fact_piece, named_fact
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize, word_key

_AMONG = word_set("among amongst amid near beside")
_ABOUT = word_set("about around round nearby near present")
_NONE = frozenset({"no", "without"})
_HOLDING = frozenset({"det", "poss", "without", "no", "hold", "have", "with"})
_HELD = frozenset({"without", "no", "hold", "have", "with"})
_OTHER_NOUNS = frozenset({"unknown", "particle", "place"})
_BOUNDS = frozenset({"above", "below", "at least", "at most", "measure", "number"})


def around(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """The pieces with such nouns as the facts that they state in their place."""
    found = list(pieces)
    nouns = _nouns(lookup)
    for index in range(len(found) - 1, -1, -1):
        piece = found[index]
        if piece.tag == "unknown" and tokens[piece.first].key in nouns:
            _company(found, index, nouns[tokens[piece.first].key], tokens)
        elif piece.tag == "name" and index and found[index - 1].tag in _NONE and _none(found, index, lookup):
            continue
        elif piece.tag in ("unknown", "name"):
            _credential(found, index, tokens, lookup)
        elif piece.tag == "fact" and (
            _is_degree(piece, tokens)
            or (piece.arg != SHARING and _is_attribute(found, index, tokens, lookup))
        ):
            found[index] = Piece(first=piece.first, last=piece.last, tag="unknown")
    return tuple(found)


def _is_degree(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    """ "At the height of summer": nobody works at a height."""
    after = tokens[piece.last].low if piece.last < len(tokens) else ""
    return after == "of" and tokens[piece.last - 1].low in ("height", "depth", "depths", "heart", "middle")


def _is_attribute(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "A rain hat", "wear low boots": one word before a thing says what it is, not what the weather is."""
    piece, before = found[index], found[index - 1].tag if index else ""
    if piece.last < len(tokens) and tokens[piece.last].start - tokens[piece.last - 1].end > 1:
        return False  # "In the dark. Hat?"
    after = found[index + 1].entries if index + 1 < len(found) else ()
    plain = piece.last - piece.first == 1 and lookup.facts[piece.fact].family in ("situation", "branch")
    following = found[index + 1].tag if index + 1 < len(found) else ""
    if plain and piece.how == "everyday" and before in ("det", "poss") and following in _OTHER_NOUNS:
        return True  # "a bad back"
    return plain and before in ("det", "poss", "act") and any(entry.kind == "item" for entry in after)


def _nouns(lookup: Lookup) -> dict[str, str]:
    """The noun of each fact of company, "among passengers", with the fact."""
    found = {}
    for fact in lookup.base.facts:
        if fact.family == "situation" and fact.kind == "yes_no":
            for name in (fact.label, *fact.other_labels):
                words = [token for token in tokenize(name) if token.low not in ("the", "a", "an")]
                if len(words) == 2 and words[0].low in _AMONG:
                    found[words[1].key] = fact.id
    return found


def _company(found: list[Piece], index: int, fact: str, tokens: tuple[Token, ...]) -> None:
    """ "With passengers around", "no passengers about", "when there are passengers"."""
    piece, first, last = found[index], index, index + 1
    said = last < len(found) and tokens[found[last].first].low in _ABOUT
    last += said
    while first and found[first - 1].tag in LIGHT:
        first -= 1
    before = found[first - 1] if first else None
    denied = before is not None and before.tag in _NONE
    leads = before is not None and (
        tokens[before.last - 1].low in ("with", "are", "of", *_AMONG) or before.tag == "filler"
    )
    if denied or leads or said:
        first -= denied
        stated = fact_piece(piece, fact, NO if denied else YES, found[first].first, found[last - 1].last)
        found[first:last] = [stated]


def _none(found: list[Piece], index: int, lookup: Lookup) -> bool:
    """ "With no wind": there is nothing of what is measured from nought."""
    record = lookup.facts.get(named_fact(found[index]) or "")
    after = found[index + 1].tag if index + 1 < len(found) else ""
    if record is None or record.kind != "quantity" or after in _BOUNDS or not record.unit:
        return False
    if any(same_dimension(record.unit, scale) for scale in ("Cel", "deg")):
        return False
    nought = ranges([Interval(Fraction(0), Fraction(0))])
    first = found[index - 1].first
    found[index - 1 : index + 1] = [fact_piece(found[index], record.id, nought, first, found[index].last)]
    return True


def _credential(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "The certificate": the one of these that there is, else that the rules on what is named ask for."""
    piece = found[index]
    if index == 0 or found[index - 1].tag not in _HOLDING or piece.last - piece.first > 1:
        return
    if _is_head_of_item(piece):
        _instead_of_item(found, index, tokens, lookup)
        return
    named = {entry.owner for entry in piece.entries}
    if piece.tag == "name" and (len(named) < 2 or {entry.kind for entry in piece.entries} != {"value"}):
        return
    led = tokens[found[index - 1].first].low
    if led in ("a", "an", "any", "some") and found[max(index - 2, 0)].tag not in _NONE:
        return
    word = tokens[piece.first].key
    held = [fact for fact in lookup.base.facts if fact.family in CREDENTIALS and _is_called(fact, word)]
    if len(held) > 1:
        asked = _asked_for(found, lookup)
        held = [fact for fact in held if fact.id in asked]
    if len(held) == 1:
        entry = Entry("value", "yes", held[0].id)
        found[index] = msgspec.structs.replace(
            piece, tag="fact", fact=held[0].id, values=YES, entries=(entry,), arg=""
        )


def _is_head_of_item(piece: Piece) -> bool:
    return piece.tag == "name" and all(e.kind == "item" and e.rank > 1 for e in piece.entries)


def _instead_of_item(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "With that waiver", where there is a written waiver to carry, too: the one that the rules ask for.

    If it cannot be told which, the word explains nothing.
    """
    held = index - 1
    while held and found[held].tag in LIGHT:
        held -= 1
    piece, word = found[index], tokens[found[index].first].key
    facts = [f for f in lookup.base.facts if f.family in CREDENTIALS and _is_called(f, word)]
    if found[held].tag not in _HELD or not facts:
        return
    asked = _asked_for([*found[:index], *found[index + 1 :]], lookup)
    facts = [fact for fact in facts if fact.id in asked] if len(facts) > 1 else facts
    blank = Piece(first=piece.first, last=piece.last, tag="unknown", how="pattern")  # no item by the index
    found[index] = fact_piece(blank, facts[0].id, YES, piece.first, piece.last) if len(facts) == 1 else blank


def _is_called(fact: Fact, word: str) -> bool:
    return name_words(fact.label)[-1] == word == word_key(tokenize(fact.label)[-1].low)


def _asked_for(found: Sequence[Piece], lookup: Lookup) -> set[str]:
    """The facts that rules on the things named test."""
    items = {entry.id for piece in found for entry in piece.entries if entry.kind == "item"}
    return set(_tested({broad for item in items for broad in lookup.broader(item)}, lookup))


def _tested(items: set[str], lookup: Lookup) -> Iterator[str]:
    for rule in lookup.base.rules:
        if not items.isdisjoint(rule.scope.items):
            yield from (test.fact for test in tests(rule.condition))
