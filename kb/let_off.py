"""What nothing forbids needs no waiver: the answer where a rule lets off a ban that holds for others alone.

"May a porter wear false nails?" is not answered by "only with a waiver", where nails are forbidden to nurses
alone: the books are silent, waiver or not, unless it is granted by rules that are no exceptions to a ban.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.answer.alike import with_beside
from kb.model.conditions import ALWAYS, tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, AnswerCase, Reading
from kb.model.records import Rule, is_in_force
from kb.model.values import ValueSet, is_empty, subtract
from kb.text import yes_or_no
from kb.wording import clause_reference, say_query, say_rule

_GRANTED = "granted:"


def as_it_is(
    reading: Reading, told: Answer, answer: Callable[[Reading], Answer], lookup: Lookup
) -> tuple[Reading, Answer]:
    """The answer (`told` so far), and how its question was read: as without a waiver, if none is needed."""
    free = _without_waiver(told, lookup)
    return (free, _with_manners(answer(free), lookup)) if free is not None else (reading, told)


def _with_manners(told: Answer, lookup: Lookup) -> Answer:
    """The answer with how the thing must be where it is worn: a beard, short and trimmed."""
    query = told.reading.query
    if query is None or told.verdict != "conditional":
        return told
    manners = [
        f"{say_rule(lookup, rule).removesuffix('.')} ({clause_reference(lookup, rule.clause)})"
        for rule in lookup.base.rules
        if query.items[0] in rule.scope.items
        and rule.modality == "must"
        and rule.condition == ALWAYS
        and lookup.aspects[rule.aspect].within
        and is_in_force(rule, query.case.as_of)
    ]
    return with_beside(told, [f"{manner}." for manner in manners]) if manners else told


def _without_waiver(plain: Answer, lookup: Lookup) -> Reading | None:
    """The reading of a question as of somebody without the waiver, if that is all that the waiver is for.

    So it is where some row without it is silent: what it lets off does not hold there.
    """
    reading, query = plain.reading, plain.reading.query
    if query is None or query.kind != "may" or query.polarity == "not" or query.value is not None:
        return None
    if yes_or_no(plain.headline):
        return None  # what the waiver changes is told beside it
    lets_off = [case for case in plain.cases if _only_lets_off(case, lookup)]
    granted = _grants(lets_off)
    others = [case for case in plain.cases if case not in lets_off]
    if granted is None or not any(case.verdict == "silent" for case in others):
        return None
    if any(case.verdict not in ("silent", "prohibited") for case in others):
        return None
    fact, values = granted
    left = subtract(lookup.domain(fact), values)
    if any(name == fact for name, _ in query.case.facts) or is_empty(left):
        return None
    case = msgspec.structs.replace(query.case, facts=(*query.case.facts, (fact, left)))
    free = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(reading, query=free, text=say_query(lookup, free))


def _only_lets_off(case: AnswerCase, lookup: Lookup) -> bool:
    rules = [lookup.rules[rule] for rule in case.rules]
    return case.verdict == "permitted" and bool(rules) and all(_lets_off(rule, lookup) for rule in rules)


def _lets_off(rule: Rule, lookup: Lookup) -> bool:
    """Whether a rule gives leave where something was granted, as an exception to bans alone."""
    bans = [lookup.rules[name] for name in rule.exception_to if name in lookup.rules]
    waived = any(test.fact.startswith(_GRANTED) for test in tests(rule.condition))
    return waived and bool(bans) and all(ban.modality == "must_not" for ban in bans)


def _grants(cases: list[AnswerCase]) -> tuple[str, ValueSet] | None:
    """The one thing that is granted in all of these cases, with who may have done it."""
    found = {test for case in cases for test in case.when if test[0].startswith(_GRANTED)}
    if len(found) != 1 or not all(found & set(case.when) for case in cases):
        return None
    return found.pop()
