"""A question that names the present: the day that it is asked on is then known, and the month of that."""

from __future__ import annotations

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.months import month_of
from kb.model.records import Case
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.parts import Roles


def with_today(case: Case, roles: Roles, lookup: Lookup) -> Case:
    """What is known, with the month of the day of the question, if a rule on the thing rests on it."""
    dated = month_of(case.as_of, lookup) if roles.as_of is None else None
    items = [piece.arg for piece in roles.asked if piece.arg]
    if dated is None or not items or dated[0] in {*roles.facts, *dict(case.facts)}:
        return case
    if not _bears(items, roles.aspect or "wear", dated[0], lookup):
        return case
    return merge_case(case, {dated[0]: dated[1]}, None, False, lookup)


def _bears(items: list[str], aspect: str, month: str, lookup: Lookup) -> bool:
    """Whether a rule tests the month, or what cannot be so in every month: the season."""
    if aspect not in lookup.aspects:
        return False
    tied = {month}
    for exclusion in lookup.base.exclusions:
        facts = {test.fact for test in tests(exclusion)}
        tied |= facts if month in facts else set()
    for defined in lookup.base.definitions:
        tied |= {defined.term} if any(test.fact in tied for test in tests(defined.condition)) else set()
    return any(
        test.fact in tied for rule in rules_of_aspect(items, aspect, lookup) for test in tests(rule.condition)
    )
