"""A participle after "how" names the aspect asked about, "which sleeve" asks for a place, and "where" asks
for none before what is said of a case: "where the kit is worn, must I ...?".
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.reader.names.spelling import akin
from kb.reader.phrases.english import ARRANGED
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token, tokenize

Pieces = tuple[Piece, ...]
_ITEMS = ("item", "items")
_QUESTION_VERBS = frozenset({"for", "be", "do", "may", "can", "must", "should", "have to"})
_SUBJECTS = frozenset({"det", "poss", "self", "person", "fact", *_ITEMS})


def asked_manner(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "How is it tucked": the aspect akin to the word or with a value that holds it, else how it is worn."""
    heads = [piece.tag for piece in pieces if piece.tag not in ("filler", "comma")]
    if heads[:1] != ["how"]:
        return pieces
    found = list(pieces)
    for index, piece in enumerate(pieces):
        word = tokens[piece.first]
        if (
            piece.tag not in ("unknown", "fasten", "fix", "run")
            or not index
            or pieces[index - 1].tag not in (*_ITEMS, "be", "self")
        ):
            continue
        aspects = list(dict.fromkeys(_aspects_of(word, lookup)))
        if len(aspects) == 1:
            found[index] = msgspec.structs.replace(piece, tag="aspect", arg=aspects[0])
        elif word.low in ARRANGED:
            found[index] = msgspec.structs.replace(piece, tag="act", arg="wear")
    return tuple(found)


def _aspects_of(word: Token, lookup: Lookup) -> Iterator[str]:
    """Aspects, no acts, whose label is akin to a participle, or of which a value's name holds it."""
    if not word.low.endswith(("ed", "en")) and word.low not in ARRANGED:
        return
    for aspect in lookup.base.aspects:
        names = (aspect.label, *aspect.other_labels)
        if aspect.within is not None and aspect.kind == "act":
            if any(token.key == word.key for name in names for token in tokenize(name)):
                yield aspect.within
        elif aspect.verb is None and any(akin(word.low, name.casefold()) for name in names):
            yield aspect.id


def asked_place(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "Which sleeve for the band": a part of something worn, asked for beside another item, is a place."""
    others = [p for p in pieces if p.tag in _ITEMS and not _is_part(p, lookup)]
    found = list(pieces)
    for index in range(len(pieces) - 1):
        word, part = pieces[index], pieces[index + 1]
        before = pieces[index - 1].tag if index else ""
        if word.tag not in ("which", "what") or not _is_part(part, lookup) or before in ("on", "in"):
            continue
        verb, subject = ((*(p.tag for p in pieces[index + 2 : index + 4]), "", ""))[:2]
        owners = {lookup.items[entry.id].part_of for entry in part.entries}
        worn = [p for p in others if not owners.intersection(entry.id for entry in p.entries)]
        last = not verb and any(p in worn for p in pieces[:index])  # "the band: which sleeve"
        if last or (worn and verb in _QUESTION_VERBS and subject in _SUBJECTS):
            where = msgspec.structs.replace(word, last=part.last, tag="where")
            return (*found[:index], where, *found[index + 2 :])
    return pieces


_ASKING = frozenset({"may", "can", "must", "should", "do", "be", "have to"})
_OPENING = frozenset({"filler", "and", "but", "comma"})


def where_it_is_so(pieces: Pieces) -> Pieces:
    """ "Where fire kit is worn, must I ...": a case that is told before what is asked, and no place."""
    index = next((n for n, piece in enumerate(pieces) if piece.tag not in _OPENING), None)
    if index is None or pieces[index].tag != "where" or [p.tag for p in pieces].count("where") > 1:
        return pieces
    ends = [n for n in range(index, len(pieces) - 1) if pieces[n].tag == "comma"]
    end = next((n for n in ends if pieces[n + 1].tag in _ASKING), None)
    told = pieces[index + 1 : end] if end is not None else ()
    if not told or told[0].tag in _ASKING or not any(p.tag in ("fact", "name") for p in told):
        return pieces
    led = msgspec.structs.replace(pieces[index], tag="if")
    return (*pieces[:index], led, *pieces[index + 1 :])


def _is_part(piece: Piece, lookup: Lookup) -> bool:
    return piece.tag in _ITEMS and all("feature" in lookup.broader(entry.id) for entry in piece.entries)
