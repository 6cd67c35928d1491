"""What is said beside a measure that lies between the two in which a clause gives one."""

from __future__ import annotations

from collections.abc import Iterator

from kb.measures.twins import agree, bounds_in_two
from kb.model.questions import Query
from kb.model.records import Measure, Rule
from kb.model.values import Ranges
from kb.reasoner import Engine
from kb.wording import clause_reference


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
