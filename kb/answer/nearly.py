"""What fails by one thing that was told: leave, or a duty, whose case the question meets in all but that.

"Clear, but blowing 50 km/h: shell jacket?" asks in the light of the clause that lets one go without it in
clear weather unless the wind is above 40 km/h. The duty comes from another clause; this tells why it stands.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.answer.citing import with_cited
from kb.answer.common import Part
from kb.model.conditions import AllOf, Condition, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query
from kb.model.records import Rule
from kb.model.values import YES, ValueSet
from kb.reasoner import WORN, Engine, possible_facts
from kb.text import yes_or_no
from kb.wording import clause_reference, say_rule, say_verdict

_STANDING = ("grade", "branch", "rig", "worn")
_LONGEST = 240


def with_nearly(engine: Engine, query: Query, answer: Answer) -> Answer:
    """The answer with the clauses of what would turn it, under what was told but for one thing."""
    lookup, stated = engine.lookup, dict(query.case.facts)
    cited = {one.clause for one in answer.citations}
    rules = [
        rule
        for rule in _turning(engine, query, answer)
        if rule.clause not in cited
        and not rule.residual
        and _is_nearly(engine.condition(rule.id), stated, lookup)
    ]
    if not rules:
        return answer
    told = dict.fromkeys(
        f"{said.removesuffix('.')} ({clause_reference(lookup, rule.clause)}): that is not so here."
        for rule in rules
        if len(said := say_rule(lookup, rule)) <= _LONGEST
    )
    return msgspec.structs.replace(
        answer,
        citations=with_cited(lookup, answer.citations, (rule.clause for rule in rules)),
        notes=(*answer.notes, *told),
    )


def without_idle(engine: Engine, query: Query, part: Part, answer: Answer) -> Answer:
    """What may not be worn, said without the things beside it without which it may not be worn either.

    "With the jersey" would stand in the first line as if it were the ground.
    """
    lookup = engine.lookup
    if answer.verdict != "prohibited" or query.value is not None or part.aspect != query.aspect:
        return answer
    plain, group = query, engine.group(query.items[0], query.aspect)
    worn = [fact for fact, values in query.case.facts if fact.startswith(WORN) and values == YES]
    for item in dict.fromkeys((*query.items[1:], *(fact.removeprefix(WORN) for fact in worn))):
        facts = tuple(one for one in plain.case.facts if one != (WORN + item, YES))
        fewer = msgspec.structs.replace(
            plain,
            items=(plain.items[0], *(other for other in plain.items[1:] if other != item)),
            case=msgspec.structs.replace(plain.case, facts=facts),
        )
        if engine.problem(group, possible_facts(fewer.case, fewer.items, False, lookup)).always("prohibited"):
            plain = fewer
    before, after = (say_verdict(lookup, "prohibited", one) for one in (query, plain))
    return msgspec.structs.replace(answer, headline=answer.headline.replace(before, after))


def _turning(engine: Engine, query: Query, answer: Answer) -> Iterator[Rule]:
    """The leave that excepts from the ban or duty that is told, or the duty or ban of which one is free."""
    group = (engine.lookup.rules[name] for name in engine.group(query.items[0], query.aspect).rules)
    if answer.verdict in ("permitted", "not_required"):
        against = "must" if (query.kind == "must") is (query.polarity == "do") else "must_not"
        yield from (rule for rule in group if rule.modality == against)
    elif answer.verdict in ("required", "prohibited") or yes_or_no(answer.headline):
        carrying = {rule for cited in answer.citations for rule in cited.rules}
        leave = (rule for rule in group if rule.modality in ("may", "need_not"))
        yield from (rule for rule in leave if not carrying.isdisjoint(rule.exception_to))


def _is_nearly(condition: Condition, told: dict[str, ValueSet], lookup: Lookup) -> bool:
    """Whether one part of a condition was told to be so, and another not to be."""
    parts = condition.parts if isinstance(condition, AllOf) else (condition,)
    truths = {evaluate(part, told.get) for part in parts if _is_of_the_case(part, lookup)}
    return truths >= {True, False}


def _is_of_the_case(part: Condition, lookup: Lookup) -> bool:
    """Whether a part is more than who somebody is, in which rig, and with what."""
    return any(lookup.facts[test.fact].family not in _STANDING for test in tests(part))
