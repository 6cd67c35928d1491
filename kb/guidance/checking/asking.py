"""A claim put as a question, "Is it true that ...?", as the structured questions that it comes to.

The grammar of guidance reads what the reader of questions leaves: every word has its place in it, so that
"unless machinery is running or the wearer is hauling lines" is never taken for hauling lines.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from itertools import product

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.truth import boxes
from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.model.values import ValueSet
from kb.text import Pattern
from kb.wording import say_query

_CLAIMED = Pattern(r"(?i)\s*is it (?:true|so|right|correct|a fact) that (?P<claim>.+?)[\s.?!]*")
_TANGLED = Pattern(r"(?i)\b(?:unless|except|other than|neither|nor|either|both|only)\b")
_MOST = 8


def claim_readings(text: str, reading: Reading, claims: Claims, case: Case) -> tuple[Reading, ...]:
    """The readings of a claim that a question asks to confirm, one for each thing and each alternative.

    None if `reading`, that of the reader of questions, will do: it has one and no word in it binds others.
    """
    match = _CLAIMED.fullmatch(text)
    if match is None or (reading.query is not None and _TANGLED.search(match["claim"]) is None):
        return ()
    return tuple(
        msgspec.structs.replace(
            reading, text=say_query(claims.lookup, query), query=query, ask=None, abstain=None
        )
        for query in queries_of(match["claim"], claims, case)
    )


def queries_of(text: str, claims: Claims, case: Case) -> tuple[Query, ...]:
    """The questions that a claim comes to; none if it was not understood.

    A duty over a choice of things, and a class less some of its things, are no single questions either.
    """
    claim = claims.read(text)
    if claim is None or claim.residual or claim.scope.alternatives or claim.scope.excluding:
        return ()
    found = boxes(claims.names, claim.condition)
    pairs = list(product(claim.scope.items, found or ()))
    return tuple(_query(claim, claims, case, item, box) for item, box in pairs) if len(pairs) <= _MOST else ()


def _query(claim: Claim, claims: Claims, case: Case, item: str, box: Mapping[str, ValueSet]) -> Query:
    facts = {**dict(case.facts), **box}
    day = case.as_of
    if claim.since is not None:
        day = max(day, claim.since)
    if claim.until is not None:
        day = min(day, claim.until - datetime.timedelta(days=1))
    act = claims.lookup.aspects[claim.aspect].kind == "act"
    return Query(
        kind="must" if claim.modality in ("must", "need_not") else "may",
        items=(item,),
        aspect=claim.aspect,
        value=None if act else claim.value.values,
        case=Case(as_of=day, facts=tuple(facts.items())),
    )
