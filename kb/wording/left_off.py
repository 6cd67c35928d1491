"""In which rigs somebody asks who would leave a thing off: those in which it is a duty."""

from __future__ import annotations

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import is_in_force
from kb.model.values import Choices, ValueSet, intersect, is_empty, unite
from kb.wording.presumed import RIG, needed
from kb.wording.situations import WORN


def rigs_of_duty(lookup: Lookup, query: Query) -> ValueSet | None:
    """The rigs in which a thing must be worn, of who asks to leave it off; None where all or none are.

    "May I take the jacket off?" is asked by who has to have it on, and nobody leaves off what is not worn.
    """
    if RIG not in lookup.facts or query.polarity != "not" or query.aspect != "wear" or not query.items:
        return None
    known = dict(query.case.facts)
    if RIG in known or len(query.items) > 1 or any(fact.startswith(WORN) for fact in known):
        return None  # what is worn with it tells the rig
    domain = lookup.domain(RIG)
    wider = set(lookup.broader(query.items[0]))
    found: ValueSet = Choices(frozenset())
    for rule in lookup.base.rules:
        if rule.modality != "must" or rule.aspect != "wear" or not is_in_force(rule, query.case.as_of):
            continue
        if not wider.intersection(rule.scope.items) or all(t.fact != RIG for t in tests(rule.condition)):
            continue
        can = (needed(rule.condition, fact, intersect(lookup.domain(fact), v)) for fact, v in known.items())
        if not any(is_empty(values) for values in can):
            found = unite(found, needed(rule.condition, RIG, domain))
    return None if is_empty(found) or found == domain else found
