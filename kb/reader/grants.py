"""Who has granted an authorisation."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices
from kb.reader.pieces import Piece
from kb.reader.values import Pieces

_GRANTING = frozenset({"grant", "by", "have", "be", "not", "no", "det", "upward", "joined"})


def granted(pieces: Pieces, lookup: Lookup) -> Pieces:
    """Who has granted an authorisation, said before or after it; the words of granting join it."""
    found = list(pieces)
    for place, piece in enumerate(found):
        if piece.tag != "fact" or lookup.facts[piece.fact].family != "authorisation":
            continue
        fact = lookup.facts[piece.fact]
        grantors = _authorities(found, fact)
        first, last = place, place + 1
        while first and (found[first - 1].tag in _GRANTING or first - 1 in grantors):
            first -= 1
        while last < len(found) and (
            found[last].tag in _GRANTING
            or found[last].tag == "or"
            or last in grantors
            or (found[last].tag == "comma" and not grantors.keys().isdisjoint((last + 1, last + 2)))
        ):
            last += 1
        if any(p.tag in ("grant", "not", "no") for p in found[first:last]):
            _join_grant(found, place, (first, last), grantors, fact, lookup)
    return tuple(found)


def _join_grant(
    found: list[Piece],
    place: int,
    reach: tuple[int, int],
    grantors: dict[int, frozenset[str]],
    fact: Fact,
    lookup: Lookup,
) -> None:
    near = range(*reach)
    able = frozenset(v.id for v in fact.values if v.id in lookup.authorities)
    said = frozenset().union(*(grantors[i] for i in near if i in grantors))
    denied = any(found[i].tag in ("not", "no") for i in near)
    # who cannot grant it has not granted it, whoever is not named
    named = said or (able if denied else valid_grants(fact, lookup).members)
    if any(found[i].tag == "upward" for i in near):
        lowest = max(lookup.authorities[authority].rank for authority in named)
        named = frozenset(a for a in able if lookup.authorities[a].rank <= lowest)
    if denied:
        named = frozenset(v.id for v in fact.values) - named
    found[place] = msgspec.structs.replace(found[place], values=Choices(named))
    for index in near:
        if index != place and (
            found[index].tag in ("grant", "by", "upward", "not", "no") or index in grantors
        ):
            found[index] = msgspec.structs.replace(found[index], tag="joined")


def _authorities(pieces: Sequence[Piece], fact: Fact) -> dict[int, frozenset[str]]:
    """Places of the authorities that can grant, a word that fits several only for those that can."""
    able = {value.id for value in fact.values}
    found: dict[int, frozenset[str]] = {}
    for index, piece in enumerate(pieces):
        named = {entry.id for entry in piece.entries if entry.kind == "authority"} & able
        if piece.tag == "name" and len(named) == 1:
            found[index] = frozenset(named)
    return found
