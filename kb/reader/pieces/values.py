"""Sets of values that words stand for, and the helpers with which pieces are folded together."""

from __future__ import annotations

import msgspec

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.values import Choices, ValueSet, is_subset
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Piece

Pieces = tuple[Piece, ...]


LIGHT = frozenset({"det", "poss"})


LINKS = frozenset({"comma", "in", "on", "for", "be", "of", "filler", "det", "poss", "particle"})


def closure(lookup: Lookup, fact: str, value: str) -> frozenset[str]:
    """A value and everything narrower."""
    parents = {v.id: v.within for v in lookup.facts[fact].values}

    def inside(candidate: str | None) -> bool:
        while candidate is not None and candidate != value:
            candidate = parents.get(candidate)
        return candidate == value

    return frozenset(v for v in parents if inside(v)) or frozenset({value})


def entry_values(entry: Entry, lookup: Lookup) -> Choices:
    """The values that a value or group stands for."""
    fact = lookup.facts[entry.owner]
    if entry.kind == "group":
        members = lookup.groups[entry.id].members
        return Choices(frozenset().union(*(closure(lookup, fact.id, member) for member in members)))
    if fact.family == "authorisation":
        return valid_grants(fact, lookup)
    return Choices(closure(lookup, fact.id, entry.id))


def fact_piece(piece: Piece, fact: str, values: ValueSet, first: int, last: int) -> Piece:
    return msgspec.structs.replace(piece, first=first, last=last, tag="fact", fact=fact, values=values)


def named_fact(piece: Piece) -> str | None:
    """The fact that a piece names by its own label ("weather")."""
    return (
        next((entry.id for entry in piece.entries if entry.kind == "fact"), None)
        if piece.tag == "name"
        else None
    )


def complement_of(lookup: Lookup, fact: str, values: ValueSet) -> ValueSet:
    """The other values of a fact."""
    domain = lookup.domain(fact)
    if isinstance(domain, Choices) and isinstance(values, Choices):
        return Choices(domain.members - values.members)
    return values


def others_of(lookup: Lookup, fact: str, values: Choices) -> Choices:
    """The other values of a fact that has finitely many; else the same."""
    other = complement_of(lookup, fact, values)
    return other if isinstance(other, Choices) else values


def is_bounded(pieces: Pieces, index: int) -> bool:
    """Whether what a name stands for is denied, "not a master", or has something left out of it."""
    before = index - 1
    while before >= 0 and pieces[before].tag == "det":
        before -= 1
    denied = before >= 0 and pieces[before].tag in ("not", "no")
    return denied or (index + 1 < len(pieces) and pieces[index + 1].tag == "but")


def _is_of_several(piece: Piece, lookup: Lookup) -> bool:
    """Whether a name is the end that the names of several rigs share: "service dress" in all seasons."""
    rigs = all(lookup.facts[entry.owner].family == "rig" for entry in piece.entries)
    return rigs and piece.last - piece.first > 1


def as_fact(piece: Piece, lookup: Lookup, bounded: bool = False) -> Piece:
    """A name of nothing but values of one fact becomes that fact; the widest where it is `bounded`."""
    if piece.tag != "name" or not all(entry.kind in ("value", "group") for entry in piece.entries):
        return piece
    owners = {entry.owner for entry in piece.entries}
    sets = {entry_values(entry, lookup) for entry in piece.entries}
    if len(owners) == 1 and len(sets) > 1 and bounded:
        sets = {one for one in sets if all(is_subset(other, one) for other in sets)}  # "cadets but C1"
    if len(owners) == 1 and len(sets) > 1 and _is_of_several(piece, lookup):
        sets = {Choices(frozenset().union(*(one.members for one in sets)))}
    if len(owners) > 1 or len(sets) != 1:
        return piece
    fact, values = owners.pop(), sets.pop()
    if piece.arg == "not":  # "the fell is not white"
        piece, values = msgspec.structs.replace(piece, arg=""), others_of(lookup, fact, values)
    return fact_piece(piece, fact, values, piece.first, piece.last)
