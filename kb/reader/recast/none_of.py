"""What a thing must have none of: "a badge on the knitted cap", "may the bag have lettering?".

A rule that a thing has "no badge", or is "without lettering", answers who asks for a badge or for lettering.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, is_in_force
from kb.reader.meaning.query import said_case
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.tokens import tokenize

_ITEMS = ("item", "items")
_NONE = frozenset({"no", "without"})
_ENDING = frozenset({"other", "except", "save", "but", "unless", "beyond"})
_PLAIN = tag_set(
    "can, may, must, have, be, do, self, person, det, poss, filler, comma, allowed, on, in, with, fact, to"
)
_ASKED = frozenset({"can", "may", "be", "do", "allowed"})


def none_of(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """The question whether a thing may be other than with none of it, where nothing else is said."""
    things = [piece for piece in found.pieces if piece.tag == "item"]
    for thing in things:
        for aspect, words in _bare_of(thing.arg, case, lookup):
            if _asks_for(found, thing, words):
                said = said_case(case, roles, lookup)
                return Query(kind="may", items=(thing.arg,), aspect=aspect, polarity="not", case=said)
    return None


def _bare_of(item: str, case: Case, lookup: Lookup) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The ways in which rules have a thing be without something, each with the words for that."""
    for rule in lookup.rules_on(lookup.broader(item)):
        way = lookup.aspects[rule.aspect]
        begun = is_in_force(rule, case.as_of)
        if way.within is None or rule.modality != "must" or not begun:
            continue
        first, *rest = tokenize(way.label)
        end = next((n for n, token in enumerate(rest) if token.low in _ENDING), len(rest))
        if first.low in _NONE and end > 0:
            yield way.id, tuple(token.key for token in rest[:end])


def _asks_for(found: Understood, thing: Piece, words: tuple[str, ...]) -> bool:
    """Whether nothing but the thing and these words has weight, and it is asked whether it may have them."""
    left, tags = list[str](), list[str]()
    for piece in found.pieces:
        tokens = found.tokens[piece.first : piece.last]
        plain = piece.tag in _PLAIN or (piece.tag == "act" and piece.arg in ("wear", "use", "carrying"))
        if piece.tag == "not" and tags[:2] == ["be", "self"]:
            plain = True  # "am I not allowed"
        if piece is not thing and not plain:
            left += [token.key for token in tokens if token.low not in ("a", "an", "the", "any", "some")]
        tags.append(piece.tag)
    return tuple(left) == words and not _ASKED.isdisjoint(tags)
