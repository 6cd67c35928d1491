"""What follows from a rule base and is kept in a graph of its own: never read back, only queried.

- `cb:forGrade`: the grades a rule is for, where grade tests are among the conditions that all must hold;
- `eli:based_on`: the clause of a rule made under a delegation, and the clause that delegates;
- OWL-Time intervals of editions and items, for tools that know those.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator

import kb.vocabulary as v
from kb.graph.names import Names
from kb.graph.parts import Triple, typed
from kb.graph.terms import Literal
from kb.model.conditions import AllOf, Condition, Test
from kb.model.records import RuleBase
from kb.model.values import Choices, ValueSet, intersect

GRADE_FACT = "grade"


def _joint_tests(condition: Condition, fact: str) -> Iterator[ValueSet]:
    """The value sets that a fact must be in for the condition to hold, as far as they are joint tests."""
    if isinstance(condition, Test) and condition.fact == fact:
        yield condition.values
    elif isinstance(condition, AllOf):
        for part in condition.parts:
            yield from _joint_tests(part, fact)


def _grades(base: RuleBase, names: Names) -> Iterator[Triple]:
    order = [value.id for fact in base.facts if fact.id == GRADE_FACT for value in fact.values]
    for rule in base.rules:
        tests = [test for test in _joint_tests(rule.condition, GRADE_FACT) if isinstance(test, Choices)]
        if not tests:
            continue
        left: ValueSet = Choices(frozenset(order))
        for test in tests:
            left = intersect(left, test)
        for grade in order:
            if isinstance(left, Choices) and grade in left.members:
                yield names.of("rule", rule.id), v.CB_FOR_GRADE, names.value("fact", GRADE_FACT, grade)


def _based_on(base: RuleBase, names: Names) -> Iterator[Triple]:
    clause_of = {delegation.id: delegation.clause for delegation in base.delegations}
    for rule in base.rules:
        if rule.delegation in clause_of:
            above = clause_of[rule.delegation]
            yield names.of("clause", rule.clause), v.ELI_BASED_ON, names.of("clause", above)


def _interval(subject: str, start: datetime.date | None, end: datetime.date | None) -> Iterator[Triple]:
    if start is None and end is None:
        return
    node = f"{subject}/time"
    yield subject, v.TIME_HAS_TIME, node
    yield from typed(node, v.TIME_PROPER_INTERVAL)
    for predicate, name, day in ((v.TIME_HAS_BEGINNING, "start", start), (v.TIME_HAS_END, "end", end)):
        if day is not None:
            yield node, predicate, f"{node}/{name}"
            yield from typed(f"{node}/{name}", v.TIME_INSTANT)
            yield f"{node}/{name}", v.TIME_IN_XSD_DATE, Literal(day.isoformat(), v.XSD_DATE)


def derived_triples(base: RuleBase, names: Names) -> Iterator[Triple]:
    """Everything that is derived; the end of an interval is the first day after it."""
    yield from _grades(base, names)
    yield from _based_on(base, names)
    for edition in base.editions:
        yield from _interval(names.of("edition", edition.id), edition.valid_from, edition.valid_until)
    for item in base.items:
        yield from _interval(names.of("item", item.id), item.valid_from, item.valid_until)
