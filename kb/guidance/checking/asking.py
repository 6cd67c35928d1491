"""A claim put as a question, "Is it true that ...?", as the structured questions that it comes to.

The grammar of guidance reads a claim before the reader of questions does: every word has its place in it, so
that "unless machinery is running or the wearer is hauling lines" is never taken for hauling lines.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from itertools import combinations

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.truth import boxes
from kb.guidance.checking.words import fold
from kb.model.conditions import Condition, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading, Verdict
from kb.model.records import Case, Modality, Rule, Scope
from kb.model.values import NO, YES, ValueSet, contains, intersect, is_empty
from kb.text import Pattern
from kb.wording import rule_reference, say_query

_CLAIMED = Pattern(r"(?i)\s*is it (?:true|so|right|correct|a fact) that (?P<claim>.+?)[\s.?!]*")
_BROKEN = Pattern(
    r"(?:where|when|if) (?:the duty of )?(?P<duty>.+?) is (?:not (?:complied with|met|kept)|broken), "
    r"(?P<rest>.+)"
)
_MOST = 40
_WORN = "worn:"


def claim_readings(text: str, reading: Reading, claims: Claims, case: Case) -> tuple[Reading, ...]:
    """The readings of a claim that a question asks to confirm, one for each thing and each alternative.

    None if the words leave open what they ask for and `reading`, that of the reader of questions, will do.
    """
    match = _CLAIMED.fullmatch(text)
    found = match and read_claim(match["claim"], claims)
    if not found or (reading.query is not None and (not found[0].sure or found[0].weak)):
        return ()
    queries = [
        _put_as(found[0], reading.query, query) for query in queries_of(found[0], found[1], claims, case)
    ]
    return tuple(
        msgspec.structs.replace(
            reading, text=say_query(claims.lookup, query), query=query, ask=None, abstain=None
        )
        for query in queries
    )


_PUT_AS: dict[tuple[Verdict, ...], Modality] = {("prohibited",): "must_not", ("permitted",): "may"}


def _put_as(claim: Claim, asked: Query | None, query: Query) -> Query:
    """ "It is banned", "it is optional": yes and no are said of that, as the reader of questions has it."""
    said = asked.modalities if asked is not None else ()
    if asked is None or query.kind != "may" or _PUT_AS.get(said) != claim.modality:
        return query
    return msgspec.structs.replace(query, kind=asked.kind, modalities=said)


def read_claim(text: str, claims: Claims) -> tuple[Claim, Rule | None] | None:
    """A claim, and the duty on whose breach it rests if it says so; None if it was not understood."""
    claim = claims.read(text)
    if claim is not None:
        return claim, None
    match = _BROKEN.fullmatch(fold(text))
    duty = match and _repaired(match["duty"], claims.lookup)
    claim = claims.read(match["rest"]) if match and duty else None
    return (claim, duty) if claim is not None and duty else None


def _repaired(reference: str, lookup: Lookup) -> Rule | None:
    """The duty of the clause that a text names, if a rule says what to do once it is broken."""
    named = reference.removeprefix("the ")
    duties = (lookup.rules[rule.repairs] for rule in lookup.base.rules if rule.repairs)
    return next((duty for duty in duties if fold(rule_reference(lookup, duty.id)) == named), None)


def queries_of(claim: Claim, duty: Rule | None, claims: Claims, case: Case) -> tuple[Query, ...]:
    """The questions that a claim comes to; none if they would be too many.

    A duty over a choice asks for each thing without the others, and for every two together where only one may
    be; a class less some of its things asks for each of its other kinds.
    """
    lookup = claims.lookup
    condition = claim.condition if duty is None else all_of([claim.condition, duty.condition, _breach(duty)])
    asked: list[Query] = []
    for kind, items, more in _things(claim, lookup):
        for box in boxes(claims.names, all_of([condition, *more])) or ():
            asked.append(_query(claim, lookup, kind, items, case, box))
    return tuple(asked) if len(asked) <= _MOST else ()


Thing = tuple[str, tuple[str, ...], tuple[Condition, ...]]
"""May or must, the things asked about together, and what else holds of what is worn."""


def _things(claim: Claim, lookup: Lookup) -> Iterator[Thing]:
    scope = claim.scope
    kind = "must" if claim.modality in ("must", "need_not") else "may"
    if scope.alternatives and claim.modality == "must":
        for item in scope.items:
            others = (other for other in scope.items if other != item)
            yield kind, (item,), tuple(Test(_WORN + other, NO) for other in others)
        if scope.alternatives == "one":
            for pair in combinations(scope.items, 2):
                yield "may", pair, ()
        return
    items = [
        item
        for item in (_kinds(scope, lookup) if scope.excluding else scope.items)
        if not (scope.excluding and claim.residual and _is_named(item, claim.aspect, lookup))
    ]
    for item in items or scope.items:
        yield kind, (item,), ()


def _is_named(item: str, aspect: str, lookup: Lookup) -> bool:
    """Whether rules name a thing that has no kinds: what is said of all that no rule names is not of it."""
    named = (rule for rule in lookup.base.rules if rule.aspect == aspect and not rule.residual)
    return len(lookup.narrower(item)) == 1 and any(item in rule.scope.items for rule in named)


def each_kind(reading: Reading, ask: Ask | None, lookup: Lookup) -> tuple[Reading, ...]:
    """The readings of a claim about a class whose kinds fare differently: each kind, and none of them."""
    if ask is None or ask.fact != "item" or reading.query is None:
        return ()
    asked = [
        msgspec.structs.replace(reading.query, items=(item, *reading.query.items[1:]))
        for item, _ in ask.choices
    ]
    asked.append(msgspec.structs.replace(reading.query, as_such=True))
    return tuple(msgspec.structs.replace(reading, text=say_query(lookup, one), query=one) for one in asked)


def _kinds(scope: Scope, lookup: Lookup) -> Iterator[str]:
    """The broadest kinds of a class that have none of what is left out of it."""
    out = {narrow for item in scope.excluding for narrow in lookup.narrower(item)}
    left = list(scope.items)
    for item in left:
        if item in out:
            continue
        if out.isdisjoint(lookup.narrower(item)):
            yield item
        else:
            left += [one for one in lookup.narrower(item)[1:] if item in lookup.items[one].broader]


def _breach(duty: Rule) -> Condition:
    """That a duty to wear something (or not to) is broken."""
    worn = contains(duty.value.values, "yes") == (duty.modality == "must")
    tests = [Test(_WORN + item, NO if worn else YES) for item in duty.scope.items]
    return all_of(tests) if worn else any_of(tests)


def _query(
    claim: Claim, lookup: Lookup, kind: str, items: tuple[str, ...], case: Case, box: Mapping[str, ValueSet]
) -> Query:
    facts = dict(case.facts)
    for (
        fact,
        values,
    ) in box.items():  # what is stated already holds too, unless the claim speaks of other cases
        both = intersect(facts[fact], values) if fact in facts else values
        facts[fact] = values if is_empty(both) else both
    day = case.as_of
    act = lookup.aspects[claim.aspect].kind == "act"
    if claim.since is not None:
        day = max(day, claim.since)
    if claim.until is not None:
        day = min(day, claim.until - datetime.timedelta(days=1))
    return Query(
        kind="must" if kind == "must" else "may",
        items=items,
        aspect=claim.aspect,
        value=None if act else claim.value.values,
        case=Case(as_of=day, facts=tuple(facts.items())),
        as_such=claim.residual or (bool(claim.scope.excluding) and items == claim.scope.items),
    )
