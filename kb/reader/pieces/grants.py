"""Who has granted an authorisation."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import Pieces
from kb.reader.words.tokens import Token

_GRANTING = frozenset({"grant", "by", "have", "be", "not", "no", "det", "upward", "joined"})


def granted(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Who has granted an authorisation, said before or after it; the words of granting join it."""
    found = list(_nobody(pieces, tokens))
    place = 0
    while place < len(found):
        piece = found[place]
        if piece.tag == "fact" and lookup.facts[piece.fact].family == "authorisation":
            place = _with_grant(found, place, lookup)
        elif piece.tag == "fact" and lookup.facts[piece.fact].family in _HELD:
            _been_granted(found, place)
        place += 1
    return tuple(found)


_HELD = frozenset({"waiver", "qualification", "appointment"})


def _been_granted(found: list[Piece], place: int) -> None:
    """ "I have been granted a waiver": what was so granted is held."""
    at = place - 1
    while at > 0 and found[at].tag in ("det", "poss"):
        at -= 1
    if at > 1 and found[at].tag == "grant" and found[at - 1].tag in ("have", "be"):
        found[at] = msgspec.structs.replace(found[at], tag="hold")


def _with_grant(found: list[Piece], place: int, lookup: Lookup) -> int:
    """The words of granting around an authorisation join it; gives its new place."""
    fact = lookup.facts[found[place].fact]
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
    if not any(p.tag in ("grant", "not", "no") for p in found[first:last]):
        speaker = said_to_be_on(found, place)
        if speaker not in grantors:
            return place
        first = speaker
    return _join_grant(found, place, (first, last), grantors, fact, lookup)


def said_to_be_on(found: Sequence[Piece], place: int) -> int:
    """The place of who "said that summer dress is on", of the authorisation at a place; -1 for nobody."""
    say = place - 1
    while say > 0 and found[say].tag == "det":
        say -= 1
    after = [piece.tag for piece in found[place + 1 : place + 3]]
    on = after in (["be", "on"], ["be", "allowed"])
    return say - 1 if on and say > 0 and found[say].tag == "say" else -1


_NOBODY = (("nobody",), ("no", "one"), ("no", "-", "one"))
_BUT = frozenset({"but", "unless"})
_GOES_ON = frozenset({"self", "can", "may", "must", "should", "do", "is", "what", "poss"})


def _nobody(pieces: Pieces, tokens: tuple[Token, ...]) -> Iterator[Piece]:
    """The pieces with the "nobody" of "nobody has granted it" as the denial that it is."""
    taken = 0
    for place, piece in enumerate(pieces):
        if piece.first < taken:
            continue
        size = next((len(words) for words in _NOBODY if _lows(tokens, piece.first, len(words)) == words), 0)
        after = [other for other in pieces[place + 1 :] if other.first >= piece.first + size][:3]
        grants = [other.tag for other in after[:2]] in (["have", "grant"], ["grant", "have"]) or [
            other.tag for other in after[:1]
        ] == ["grant"]
        if size and grants and not _excepts(pieces[place:]):
            taken = piece.first + size
            yield Piece(first=piece.first, last=taken, tag="no")
        else:
            yield piece


def _excepts(pieces: Sequence[Piece]) -> bool:
    """ "But the Chief", not "but I would like to wear it"."""
    return any(
        piece.tag in _BUT and (after is None or after.tag not in _GOES_ON)
        for piece, after in zip(pieces, (*pieces[1:], None), strict=True)
    )


def _lows(tokens: tuple[Token, ...], first: int, size: int) -> tuple[str, ...]:
    return tuple(token.low for token in tokens[first : first + size])


def _join_grant(
    found: list[Piece],
    place: int,
    reach: tuple[int, int],
    grantors: dict[int, frozenset[str]],
    fact: Fact,
    lookup: Lookup,
) -> int:
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
    said_in = [
        i
        for i in near
        if i == place or i in grantors or found[i].tag in ("grant", "by", "upward", "not", "no")
    ]
    start, end = said_in[0], said_in[-1] + 1
    if end - 1 in grantors and end < len(found) and found[end].tag == "only":
        end += 1  # "granted by the Warden only": who granted it is told, and not what alone is worn
    found[start:end] = [
        msgspec.structs.replace(
            found[place], first=found[start].first, last=found[end - 1].last, values=Choices(named)
        )
    ]
    return start


def _authorities(pieces: Sequence[Piece], fact: Fact) -> dict[int, frozenset[str]]:
    """Places of the authorities that can grant, a word that fits several only for those that can."""
    able = {value.id for value in fact.values}
    found: dict[int, frozenset[str]] = {}
    for index, piece in enumerate(pieces):
        named = {entry.id for entry in piece.entries if entry.kind == "authority"} & able
        if piece.tag == "name" and len(named) == 1:
            found[index] = frozenset(named)
    return found
