"""What is said beside a value: that two units of a clause differ, and where the thing is not worn at all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.answer.acts import wear_question
from kb.answer.common import row_label
from kb.measures.twins import agree, bounds_in_two
from kb.model.questions import AnswerCase, Query
from kb.model.records import OWNED_ASPECTS, Measure, Rule
from kb.model.values import Ranges
from kb.reasoner import Engine, possible_facts, rows
from kb.wording import clause_reference, say_verdict

_MOST = 3


def unit_notes(engine: Engine, query: Query) -> tuple[str, ...]:
    """The clauses that give the measure asked about in two units which are not the same just there."""
    if not isinstance(query.value, Ranges):
        return ()
    asked = [b for i in query.value.intervals for b in (i.low, i.high) if b is not None]
    found: dict[str, None] = {}
    for rule in _rules(engine, query):
        measure = rule.value.measure
        if measure is None or measure.also is None:
            continue
        for first, second in bounds_in_two(measure):
            if first is None or second is None or first == second:
                continue
            low, high = sorted((first, second))
            if any(low <= bound <= high and (bound != first or not agree(measure)) for bound in asked):
                found[_say(engine, rule, measure)] = None
    return tuple(found)


def _rules(engine: Engine, query: Query) -> Iterator[Rule]:
    for aspect in engine.lookup.aspects_within(query.aspect):
        yield from (engine.lookup.rules[name] for name in engine.group(query.items[0], aspect).rules)


def _say(engine: Engine, rule: Rule, measure: Measure) -> str:
    where = clause_reference(engine.lookup, rule.clause)
    apart = "are rounded" if agree(measure) else "disagree"
    return f"{where} gives {measure.text}: the two {apart}, and the first counts."


def unworn_notes(engine: Engine, query: Query, cases: Sequence[AnswerCase]) -> tuple[str, ...]:
    """The cases of which no clause says how a thing must be, because it may not be worn in them at all."""
    lookup, item = engine.lookup, query.items[0]
    silent = [case for case in cases if case.verdict == "silent" and case.when]
    if not silent or query.aspect in OWNED_ASPECTS:
        return ()
    plain = wear_question(engine.lookup, query)
    group = engine.group(item, plain.aspect)
    possible = possible_facts(plain.case, plain.items, False, lookup)
    said = say_verdict(lookup, "prohibited", msgspec.structs.replace(plain, kind="why")).removesuffix(".")
    banned: dict[str, None] = {}
    for case in silent:
        problem = engine.problem(group, {**possible, **dict(case.when)})
        for when, verdict in rows(problem.verdicts()):
            if verdict == "prohibited":
                banned[row_label(lookup, tuple({**dict(case.when), **dict(when)}.items()))] = None
    if len(banned) > _MOST:
        return ()  # then it turns on more than what the table tells apart
    return tuple(f"{said} where {label}." for label in banned)
