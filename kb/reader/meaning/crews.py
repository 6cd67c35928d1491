"""Words that go with the one beside them: "our boat crew", "my new Watch Keeper", "on a bright day"."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.spelled import ORDINALS
from kb.reader.pieces.values import entry_values, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_BUNCH = word_set("crew crews crowd lot folk folks bunch gang types guys chaps lads lasses contingent")
_FRESH = word_set("""
    new young newest fellow dear poor latest mere humble lowly ordinary proud newly freshly fresh little lone
""")
_MADE = word_set("made joined promoted appointed minted")
_DAYS = word_set("day days morning afternoon evening night weather spell sun sunshine sunlight")
_COUNTED = ORDINALS | word_set(
    "last next all every each one whole entire same other another per degree degrees"
)
_PEOPLE = frozenset({"grade", "branch", "qualification", "appointment"})


def is_of_another(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "In the hall" is no hall rig; "on my first day", "all day" do not say that it is light."""
    piece, before = found[index], tokens[found[index].first - 1].low if found[index].first else ""
    day = tokens[piece.first].low in ("day", "days") and piece.last - piece.first == 1
    part = bool(piece.entries) and piece.entries[0].rank > 1 and lookup.facts[piece.fact].family == "rig"
    return (day and before in _COUNTED) or (part and before == "the")


def beside(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Take such a word for what it is in its place, in `found`; False where it is none."""
    piece, word = found[index], tokens[found[index].first].low
    if piece.tag == "aspect value":
        tag = "unknown" if _is_of_weather(piece, tokens) else ""  # "on a bright day"
    else:
        light = (word in _BUNCH and _is_branch(found, index, lookup)) or _goes_with(
            found, index, tokens, lookup
        )
        tag = "filler" if light else ""
    if tag:
        found[index] = msgspec.structs.replace(piece, tag=tag, arg="")
    return bool(tag)


def _is_branch(found: list[Piece], index: int, lookup: Lookup) -> bool:
    """ "The boat crew", of a word that is a rig or a place as well as a branch: then it is the branch."""
    before = found[index - 1] if index else found[index]
    named = [e for e in before.entries if e.kind == "value" and lookup.facts[e.owner].family == "branch"]
    if len(named) != 1:
        return False
    values = entry_values(named[0], lookup)
    found[index - 1] = fact_piece(before, named[0].owner, values, before.first, before.last)
    return True


def _is_of_weather(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    return piece.last < len(tokens) and tokens[piece.last].low in _DAYS


def _goes_with(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "Our boat crew", "my new Watch Keeper", "at considerable level": a word that adds nothing."""
    word, before = tokens[found[index].first].low, found[max(index - 1, 0)]
    if word == "level":
        return before.tag == "fact" and lookup.facts[before.fact].kind == "scale"
    if word in _BUNCH:
        return before.tag == "fact" and lookup.facts[before.fact].family in _PEOPLE
    if word not in _FRESH | _MADE:
        return False
    first, last = index, index + 1  # "a newly made Lead Attendant"
    while first and tokens[found[first - 1].first].low in _FRESH | _MADE:
        first -= 1
    while last < len(found) and tokens[found[last].first].low in _FRESH | _MADE:
        last += 1
    led = first > 0 and found[first - 1].tag in ("det", "poss", "for")
    fact = found[last].fact if last < len(found) and found[last].tag == "fact" else ""
    return led and bool(fact) and lookup.facts[fact].family in _PEOPLE
