"""Who can grant an authorisation."""

from __future__ import annotations

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices


def valid_grants(fact: Fact, lookup: Lookup) -> Choices:
    """Who can grant an authorisation so that a rule takes it as granted; anybody where no rule tests it."""
    able = frozenset(value.id for value in fact.values if value.id in lookup.authorities)
    tested = [
        test.values for rule in lookup.base.rules for test in tests(rule.condition) if test.fact == fact.id
    ]
    counted = [v.members for v in tested if isinstance(v, Choices) and not v.complement and v.members <= able]
    return Choices(frozenset().union(*counted) or able)
