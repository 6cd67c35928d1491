"""What a few words take from the question before: its item, its facts, or all of it."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.values import NO, YES, ValueSet
from kb.reader.english import tag_set
from kb.reader.frame import Frame
from kb.reader.parts import Roles
from kb.reader.pieces import Piece, Understood
from kb.reader.query import merge_case

_PRONOUNS = frozenset({"it", "them", "they", "this", "that", "these", "those", "itself", "themselves"})
_ECHO = tag_set("not, filler, comma, be, self, and, and how about, det")


def echoed(found: Understood, before: Query) -> Query | None:
    """ "Why not?", "and without it?": the question before, put another way."""
    tags = {piece.tag for piece in found.pieces}
    if before.kind not in ("may", "must", "why") or not before.items:
        return None
    if "why" in tags and tags <= _ECHO | {"why"}:
        return msgspec.structs.replace(before, kind="why", modalities=())
    pronoun = any(token.low in _PRONOUNS for token in found.tokens)
    if before.kind != "why" and pronoun and "without" in tags and tags <= _ECHO - {"not"} | {"without"}:
        return msgspec.structs.replace(before, polarity="not", value=None)
    return None


def take_up(found: Understood, roles: Roles, before: Query) -> None:
    """ "May I wear it ashore?": the item of the question before, where this one names none."""
    if roles.asked or roles.worn or roles.unworn:
        return
    if any(token.low in _PRONOUNS for token in found.tokens):
        roles.asked = [Piece(first=0, last=1, tag="item", arg=item) for item in before.items]


def is_fragment(frame: Frame, roles: Roles) -> bool:
    """A few words that only make sense after a question: "ashore?", "the scarf?", "alone?"."""
    return (
        frame.terse and not roles.aspect and not (roles.asked and (roles.facts or roles.alone or roles.worn))
    )


def continued(before: Query, frame: Frame, roles: Roles, lookup: Lookup) -> Query | Ask | None:
    """The question before, with what the new words say put in place of what it said."""
    if frame.modal or roles.value is not None or frame.kind != "may":
        return None
    unclear = next((p for p in (*roles.asked, *roles.worn, *roles.unworn) if p.tag == "items"), None)
    if unclear is not None:
        return None
    facts = dict(roles.facts)
    facts.update({f"worn:{p.arg}": _yes_no(True) for p in roles.worn})
    facts.update({f"worn:{p.arg}": _yes_no(False) for p in roles.unworn})
    items = tuple(dict.fromkeys(p.arg for p in roles.asked)) or before.items
    if not (facts or roles.asked or roles.alone or roles.as_of):
        return None
    merged = merge_case(before.case, facts, roles.as_of, roles.alone, lookup)
    return msgspec.structs.replace(before, items=items, case=merged)


def _yes_no(yes: bool) -> ValueSet:
    return YES if yes else NO
