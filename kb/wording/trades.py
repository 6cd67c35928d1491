"""What work and rig say of the rest: a keeper is staff, and who is in boat rig is not on parade."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache, reduce

from kb.model.conditions import AllOf, Condition, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.records import is_in_force
from kb.model.values import NO, YES, Choices, ValueSet, intersect, is_empty, subtract, unite
from kb.wording.labels import GRADE
from kb.wording.presumed import RIG, as_test, needed, rig_named
from kb.wording.situations import WORN
from kb.wording.whose import are_most

BRANCH = "branch"


def grade_of_branch(
    lookup: Lookup, facts: Iterable[tuple[str, ValueSet]], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The grades among which the books look for people of a branch: of electricians the yard grades.

    Only whole ladders: that some rule is for the trainees of a branch makes nobody in it a trainee.
    """
    known = dict(facts)
    domain = lookup.domain(GRADE) if GRADE in lookup.facts else None
    if GRADE in known or BRANCH not in known or not isinstance(domain, Choices):
        return {}
    none: ValueSet = Choices(frozenset())
    either = none
    for rule in lookup.base.rules:
        named = {test.fact for test in tests(rule.condition)}
        if not {GRADE, BRANCH} <= named or (day is not None and not is_in_force(rule, day)):
            continue
        within = needed(rule.condition, BRANCH, lookup.domain(BRANCH))
        if within != lookup.domain(BRANCH) and not is_empty(intersect(within, known[BRANCH])):
            either = unite(either, needed(rule.condition, GRADE, domain))
    ladders = [Choices(frozenset(group.members)) for group in lookup.base.groups if group.fact == GRADE]
    inside = [one for one in ladders if is_empty(subtract(one, either))]
    whole = not is_empty(either) and is_empty(subtract(either, reduce(unite, inside, none)))
    return {GRADE: either} if whole and either != domain else {}


def not_in_rig(lookup: Lookup, known: Mapping[str, ValueSet]) -> dict[str, ValueSet]:
    """The situations that no other rig goes by the name of: who is in boat rig is not on parade."""
    apart = _of_other_rigs(lookup, known[RIG]) if RIG in known else ()
    return {fact: values for fact, values in apart if fact not in known}


@lru_cache(maxsize=64)
def _of_other_rigs(lookup: Lookup, rig: ValueSet) -> tuple[tuple[str, ValueSet], ...]:
    """What each situation may be in a rig; a list asks of the same one line by line."""
    found: dict[str, ValueSet] = {}
    for fact in lookup.base.facts:
        if fact.family != "situation" or fact.kind != "choice":
            continue
        for value in fact.values:
            one = Choices(frozenset({value.id}))
            named = rig_named(lookup, [(fact.id, one)]).get(RIG)
            if named is not None and is_empty(intersect(named, rig)):
                found[fact.id] = subtract(found.get(fact.id, lookup.domain(fact.id)), one)
    return tuple(found.items())


def rig_ordered(
    lookup: Lookup, known: Mapping[str, ValueSet], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The rig of the outfit that has to be worn, of who is told: room staff on duty wear Rooms Dress."""
    tied = outfit_rigs(lookup)
    ordered = [
        rule
        for rule in lookup.base.rules
        if rule.modality == "must" and rule.aspect == "wear" and (day is None or is_in_force(rule, day))
        if not tied.keys().isdisjoint(rule.scope.items) and _holds(lookup, rule.condition, known)
    ]
    out = {other for rule in ordered for other in rule.disables}
    rigs = [tied[item] for rule in ordered if rule.id not in out for item in rule.scope.items if item in tied]
    return {RIG: reduce(unite, rigs)} if rigs else {}


def _holds(lookup: Lookup, condition: Condition, known: Mapping[str, ValueSet]) -> bool:
    """Whether a condition is fulfilled by what is known, but for what it makes an exception of."""
    within = dict(known)
    for fact in {test.fact for test in tests(condition)} - known.keys():
        domain = lookup.domain(fact)
        left = needed(condition, fact, domain)
        of_most = fact == GRADE and isinstance(left, Choices) and left != domain and are_most(lookup, left)
        if of_most or (lookup.facts[fact].family == "situation" and _is_most(lookup, fact, left)):
            within[fact] = left
    return evaluate(condition, within.get) is True


def _is_most(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    if lookup.facts[fact].kind != "choice":
        return values == NO
    left = intersect(values, lookup.domain(fact))
    return isinstance(left, Choices) and len(left.members) * _PAIR > len(lookup.facts[fact].values)


def outfit_rigs(lookup: Lookup) -> dict[str, ValueSet]:
    """For each outfit that is worn in one rig alone, as the books say by an exclusion, that rig."""
    tied: dict[str, ValueSet] = {}
    for exclusion in lookup.base.exclusions:
        found = {test.fact: test for part in _parts(exclusion) if (test := as_test(lookup, part)) is not None}
        worn = [fact for fact, test in found.items() if fact.startswith(WORN) and test.values == YES]
        if len(found) == _PAIR and worn and RIG in found:
            tied[worn[0].removeprefix(WORN)] = subtract(lookup.domain(RIG), found[RIG].values)
    return tied


def _parts(condition: Condition) -> Sequence[Condition]:
    return condition.parts if isinstance(condition, AllOf) else (condition,)


_PAIR = 2
