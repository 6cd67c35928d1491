"""A claim that only some may: "is it true that only officers may wear it" asks whether the others may."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case
from kb.model.values import Choices
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.query import build_query
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.values import complement_of

_CLAIMS = ("is it true", "is it right that", "is it correct that", "is it the case that")


def claimed_only(
    found: Understood, left: Sequence[int], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Query | None:
    """The question of everybody else; None where the claim is of anything but grades."""
    said = " ".join(token.low for token in found.tokens)
    if not any(words in said for words in _CLAIMS) or len(left) != 1 or frame.kind not in ("may", "must"):
        return None
    after = found.pieces[left[0] + 1 :]
    some = next((piece for piece in after if piece.tag not in ("det", "filler", "for")), None)
    if found.pieces[left[0]].tag != "only" or some is None or some.tag != "fact":
        return None
    query = build_query(frame, roles, case, lookup)
    if not isinstance(query, Query) or not query.items or lookup.facts[some.fact].family != "grade":
        return None
    facts = dict(query.case.facts)
    others = complement_of(lookup, some.fact, facts[some.fact]) if some.fact in facts else None
    if not isinstance(others, Choices) or not others.members:
        return None
    known = tuple((fact, others if fact == some.fact else values) for fact, values in query.case.facts)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=known))
