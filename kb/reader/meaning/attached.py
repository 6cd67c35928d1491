"""Verbs of attaching: "pin the badge on my coat", "sew on the knot", "button the liner into the coat".

What is attached is worn, where no rule says in what way it is fastened; what it is attached to says where.
"""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.reader.meaning.placed import fitting
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_ATTACHING = word_set("""
    sew stitch pin attach fix clip hook button zip snap fasten affix mount stick put tack hang fit strap
    sewing stitching pinning attaching fixing clipping hooking buttoning""")
_ONTO = word_set("on onto to in into")
_BEFORE = frozenset({"self", "person", "can", "may", "must", "should", "have to", "to", "fact", "not"})
_BETWEEN = frozenset({"det", "poss", "filler", "number"})
_ITEMS = ("item", "items")
_LOOSE = frozenset({"insignia", "accessory", "carried"})


def attached(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """Turn such a verb into wearing, in place, and the word before what it is attached to into a place."""
    if any(piece.tag in ("where", "how", "act", "leave off") for piece in found):
        return
    for index, piece in enumerate(found):
        if piece.tag not in ("fix", "fasten", "unknown") or piece.last - piece.first > 2 or not index:
            continue
        words = [token.low for token in tokens[piece.first : piece.last]]
        if words[0] not in _ATTACHING or found[index - 1].tag not in _BEFORE:
            continue
        after = index + 1
        led = (
            after < len(found)
            and found[after].tag in ("on", "particle")
            and _word(found[after], tokens) == "on"
        )
        thing = _past(found, after + 1 if led else after)
        if thing >= len(found) or found[thing].tag not in _ITEMS or not _is_loose(found[thing], lookup):
            return
        if _place(found, thing, tokens, lookup):
            found[index] = msgspec.structs.replace(piece, tag="act", arg="wear")
            if led:
                found[after] = msgspec.structs.replace(found[after], tag="filler")
        return


def _word(piece: Piece, tokens: tuple[Token, ...]) -> str:
    return tokens[piece.first].low


def _past(found: list[Piece], index: int) -> int:
    while index < len(found) and found[index].tag in _BETWEEN:
        index += 1
    return index


def _is_loose(piece: Piece, lookup: Lookup) -> bool:
    """Whether everything meant is put on something else, and no rule says how it is fastened."""
    for entry in piece.entries:
        broader = set(lookup.broader(entry.id))
        part = lookup.items[entry.id].part_of is not None and "feature" not in broader
        spoken = {rule.aspect for rule in lookup.rules_on(broader)}
        within = {lookup.aspects[aspect].within or aspect for aspect in spoken}
        if "fastening" in within or not (part or broader & _LOOSE):
            return False
    return True


def _place(found: list[Piece], thing: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether nothing follows, or "to my coat", where rules place it; "into the coat" wears what it is
    part of."""
    before = thing + 1
    if before >= len(found) or found[before].tag in ("comma", "filler"):
        return True
    garment = _past(found, before + 1)
    if _word(found[before], tokens) not in _ONTO or garment >= len(found):
        return found[before].tag in ("fact", "if", "when", "in", "with", "for")
    if found[garment].tag not in _ITEMS:
        return found[garment].tag == "fact"
    wholes = {lookup.items[entry.id].part_of for entry in found[thing].entries}
    whole = bool(wholes & {entry.id for entry in found[garment].entries})
    if not whole and not all(fitting(found[garment], entry.id, lookup) for entry in found[thing].entries):
        return False
    found[before] = msgspec.structs.replace(found[before], tag="with" if whole else "on")
    return True
