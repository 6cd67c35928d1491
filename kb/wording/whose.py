"""Whom the rules on a thing are for: pupils, where nobody else has it or it is forbidden to them alone.

Who asks to lend a thing has it, and what the books forbid to most of those whom they bind they forbid to who
asks: that it is otherwise with the rest is said beside it. Leave and duties of some make nobody one of them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Rule, is_in_force
from kb.model.values import Choices, ValueSet, is_empty, unite
from kb.wording.labels import GRADE
from kb.wording.presumed import needed, place_of

_MOST = 2  # at least twice as many grades as are left


def whose(lookup: Lookup, query: Query) -> ValueSet | None:
    """The grades of whoever asks of a thing, as far as the rules on it tell; None where they do not."""
    facts = dict(query.case.facts)
    if GRADE not in lookup.facts or GRADE in facts or "branch" in facts or len(query.items) != 1:
        return None
    wider = set(lookup.broader(query.items[0]))
    rules = [
        rule for rule in lookup.rules_on(wider) if not rule.residual and is_in_force(rule, query.case.as_of)
    ]
    if query.aspect not in _HAVING and lookup.aspects[query.aspect].kind == "act":
        own = place_of(lookup, query.items, query.case.as_of).get(GRADE)
        if own is not None:
            return own
    here = [rule for rule in rules if rule.aspect == query.aspect]
    found = _grades(lookup, here) if all(rule.modality == "must_not" for rule in here) else None
    return found if found is not None and are_most(lookup, found) else None


_HAVING = frozenset({"wear", "carrying", "use", "possession", "kit-count"})


def _grades(lookup: Lookup, rules: Sequence[Rule]) -> Choices | None:
    """The grades that rules are for, where all of them name some."""
    if not rules or any(all(test.fact != GRADE for test in tests(rule.condition)) for rule in rules):
        return None
    domain = lookup.domain(GRADE)
    none: ValueSet = Choices(frozenset())
    found = reduce(unite, (needed(rule.condition, GRADE, domain) for rule in rules), none)
    return found if isinstance(found, Choices) and not is_empty(found) and found != domain else None


def are_most(lookup: Lookup, grades: Choices) -> bool:
    """Whether grades are most of those whom the books bind, and whole ladders: all pupils."""
    order = lookup.facts[GRADE].values
    inside = [value for value in order if value.id in grades.members]
    apart = {value.group for value in order if value.id not in grades.members}
    whole = all(value.group is not None and value.group not in apart for value in inside)
    return whole and len(inside) >= (len(order) - len(inside)) * _MOST
