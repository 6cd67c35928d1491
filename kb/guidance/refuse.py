"""Local rules of a plan that the rule books do not let it make, each with clause, principle and way out.

The law is the audit's. What is asked here on top: every local rule names a delegation that reaches the
matter, and that of a rule stricter than a clause above reaches that clause.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.audit.conflicts import opposed, oppositions, unsettled
from kb.audit.examples import smallest_case
from kb.audit.law import Law, View, covering_rules, places
from kb.audit.standing import Fault, claim_faults, departure_fault
from kb.errors import Location, Problem
from kb.guidance.compose import spell_days
from kb.guidance.effect import Effect, effect_of, without_rule
from kb.guidance.reading import Opened
from kb.guidance.refusals import (
    Departure,
    beyond_reach,
    departs,
    no_effect,
    unnamed,
    unsettled_problem,
)
from kb.guidance.setting import Setting
from kb.model.conditions import Condition, all_of, any_of, negate
from kb.model.records import Delegation, Rule, is_in_force
from kb.reasoner import Norm
from kb.reasoner.norms import covered_items

Placed = tuple[Norm, int]


def refusals(opened: Opened) -> tuple[Problem, ...]:
    """A problem for each rule of a plan that oversteps on some day; empty if none does."""
    lookup, plan = opened.lookup, opened.plan
    local = [r for r in lookup.base.rules if lookup.clauses[r.clause].edition == plan.edition]
    if not local:
        return ()
    index = covering_rules(lookup)
    found: dict[Location, Problem] = {}
    weights: dict[Location, int] = {}
    effects: dict[str, list[Effect]] = {}
    for day in spell_days(opened):
        judge = _Judge(opened, Law(lookup, day, index))
        for rule in local:
            if not is_in_force(rule, day):
                continue
            effects.setdefault(rule.id, []).append(judge.effect(rule))
            stands = judge.refuse(rule)
            if stands is not None and (rule.at not in weights or stands[0] < weights[rule.at]):
                weights[rule.at], found[rule.at] = stands
    for name, on_days in effects.items():
        rule = lookup.rules[name]
        idle = not rule.disables and not any(effect.changes for effect in on_days)
        if idle and _says_it_all(on_days, found.get(rule.at)):
            shown = next((effect for effect in on_days if effect.applies), on_days[0])
            found[rule.at] = no_effect(lookup, rule, shown)
    return tuple(sorted(found.values()))


def _says_it_all(effects: Sequence[Effect], problem: Problem | None) -> bool:
    """Whether that a rule changes nothing is the plainest thing to say of it.

    Of a rule that is beaten in every case, what beats it is; of one that repeats another, the other.
    """
    applying = [effect for effect in effects if effect.applies]
    if problem is None or not applying:
        return True
    return problem.code != "non-derogable" and all(effect.others for effect in applying)


class _Judge:
    """The law of one day as it bears on local rules, within what the plan is for."""

    def __init__(self, opened: Opened, law: Law) -> None:
        self.law = law
        self.lookup = law.lookup
        self.plan = opened.plan
        self.setting = Setting(law, opened.plan.facts)

    def is_local(self, rule: str) -> bool:
        return self.lookup.clauses[self.lookup.rules[rule].clause].edition == self.plan.edition

    def is_above(self, rule: str, local: Rule) -> bool:
        """Whether a rule is of a higher authority than a local one."""
        rank = self.lookup.authorities
        return rank[self.lookup.rules[rule].authority].rank < rank[local.authority].rank

    def views(self, rule: Rule) -> list[View]:
        items = covered_items(self.lookup, rule.scope)
        return [self.law.view(item.id, rule.aspect) for item in self.lookup.base.items if item.id in items]

    # -- why not ----------------------------------------------------------------------------------------

    def refuse(self, rule: Rule) -> tuple[int, Problem] | None:
        """The gravest thing that stands against a rule, 0 the gravest: what it departs from, its delegation,
        a conflict."""
        departures = [d for view in self.views(rule) for d in self._departures(view, rule)]
        if departures:
            gravest = min(departures, key=lambda d: (d.fault != "non-derogable", not d.against, len(d.facts)))
            return int(gravest.fault != "non-derogable"), departs(self, rule, gravest)
        if rule.delegation is None:
            rest = next((found for view in self.views(rule) if (found := self._lifts(view, rule))), None)
            return 2, departs(self, rule, rest) if rest else unnamed(self, rule)
        faults = claim_faults(self.law, rule)
        if faults:
            return 2, beyond_reach(self, rule, faults[0])
        if not self.reaches(rule, self.lookup.delegations[rule.delegation]):
            return 2, beyond_reach(self, rule, "outside-delegation")
        problem = self._unsettled(rule)
        return None if problem is None else (2, problem)

    def _departures(self, view: View, rule: Rule) -> Iterator[Departure]:
        """Rules above that this one relaxes, overrides or tightens without the power to."""
        mine = [(norm, mask) for norm, mask in view.norms() if norm.rule == rule.id]
        for norm, mask in mine:
            for other, theirs in [*view.closing, *view.supporting]:
                if self.is_local(other.rule) or not self.is_above(other.rule, rule):
                    continue
                above = self.lookup.rules[other.rule]
                against = opposed(view, (norm, mask), (other, theirs))
                if not against and not self._tightens(view, (norm, mask), (other, theirs)):
                    continue
                fault = departure_fault(self.law, rule, above) or self._overrides(rule, norm, other, against)
                if fault is None:
                    continue
                matter = all_of([view.applies(norm), view.applies(other)])
                if not against:
                    matter = all_of([matter, negate(self._closed_anyway(view, mask))])
                case = self.setting.case(matter, known=self.setting.of(view))
                if case is not None:
                    facts = smallest_case(view, matter, case)
                    yield Departure(other.rule, fault, relaxed=not norm.closes, against=against, facts=facts)

    def _lifts(self, view: View, rule: Rule) -> Departure | None:
        """What closes everything that is not mentioned, where a rule permits such a thing."""
        mine = [norm for norm, _ in view.norms() if norm.rule == rule.id and not norm.closes]
        without = without_rule(view, rule)
        for norm in mine:
            for other, mask in without.residual:
                closing = any_of(without.effective(other, mask, i) for i in places(mask))
                case = self.setting.case(view.applies(norm), closing, known=self.setting.of(view))
                if case is not None and self.is_above(other.rule, rule):
                    return Departure(other.rule, "no-delegation", relaxed=True, against=True, facts=())
        return None

    def _tightens(self, view: View, mine: Placed, theirs: Placed) -> bool:
        """Whether a closing norm closes what another, that it does not oppose, leaves open."""
        if not mine[0].closes or mine[0].residual:
            return False
        if not theirs[0].closes:
            return self.lookup.aspects[view.aspect].kind == "act"
        return bool(mine[1] & ~theirs[1])

    def _closed_anyway(self, view: View, mask: int) -> Condition:
        """When rules of the books close all that a local rule closes."""
        return all_of(
            any_of(
                view.effective(norm, theirs, i)
                for norm, theirs in [*view.closing, *view.residual]
                if theirs >> i & 1 and not self.is_local(norm.rule)
            )
            for i in places(mask)
        )

    def _overrides(self, rule: Rule, norm: Norm, other: Norm, against: bool) -> Fault | None:
        """A delegation to be stricter does not let a rule turn a duty round."""
        delegation = self.lookup.delegations[rule.delegation] if rule.delegation else None
        turned = against and norm.closes and other.closes
        return "stricter-only" if turned and delegation and delegation.allows == "stricter" else None

    def reaches(self, rule: Rule, delegation: Delegation) -> bool:
        """Whether a clause that a delegation names says something of the same things in the same cases."""
        if not delegation.clauses:
            return True
        for view in self.views(rule):
            mine = [norm for norm, _ in view.norms() if norm.rule == rule.id]
            for norm, _ in view.norms():
                if self.is_local(norm.rule) or not self._is_named(
                    self.lookup.rules[norm.rule].clause, delegation
                ):
                    continue
                known = self.setting.of(view)
                if any(
                    self.setting.case(self.law.written(norm), self.law.written(n), known=known) is not None
                    for n in mine
                ):
                    return True
        return False

    def _is_named(self, clause: str, delegation: Delegation) -> bool:
        earlier = self.lookup.clauses[clause].replaces
        return clause in delegation.clauses or any(self._is_named(name, delegation) for name in earlier)

    def _unsettled(self, rule: Rule) -> Problem | None:
        for view in self.views(rule):
            for norms, matter, _ in unsettled(view, list(oppositions(view))):
                if rule.id not in {norm.rule for norm, _ in norms}:
                    continue
                case = self.setting.case(matter, known=self.setting.of(view))
                if case is not None:
                    facts = smallest_case(view, matter, case)
                    return unsettled_problem(self, rule, [norm.rule for norm, _ in norms], facts)
        return None

    def effect(self, rule: Rule) -> Effect:
        return effect_of(self.setting, rule, self.views(rule))

    # -- what would make it possible --------------------------------------------------------------------

    def delegation_for(self, rule: Rule, above: Rule | None) -> Delegation | None:
        """A delegation of the books under which a rule could be made as it is."""
        for delegation in self.lookup.base.delegations:
            tried = msgspec.structs.replace(rule, delegation=delegation.id)
            if claim_faults(self.law, tried) or not self.reaches(rule, delegation):
                continue
            if above is None or departure_fault(self.law, tried, above) is None:
                return delegation
        return None
