"""Whether a claim holds: what the reasoner makes of it in every case that the claim speaks of.

A claim is taken as the norms that its rule would have (`kb.reasoner.norms`). It holds in a case if the books
close what it closes there and support what it supports. All cases are looked at, none is sampled.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from typing import Literal

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.names import Names
from kb.guidance.checking.words import KEPT
from kb.model.conditions import AllOf, Condition, NotOf, Test, all_of
from kb.model.records import OWNED_ASPECTS, Case, Rule
from kb.model.values import (
    NO,
    Choices,
    ValueSet,
    complement,
    contains,
    intersect,
    is_empty,
    is_subset,
    others_in,
)
from kb.reasoner import WORN, Decision, Engine, Facts, Group, Norm, covers, possible_facts
from kb.reasoner.norms import norms_of
from kb.reasoner.space import implies
from kb.reasoner.terms import write_out

Outcome = Literal["agrees", "allowed", "silent", "closed", "required", "looser", "conflict"]
_MOST_BOXES = 256
_MOST_ITEMS = 400


class Instance(msgspec.Struct, frozen=True):
    """One kind of case and what becomes of the claim in it: item, facts, the rules that decide there."""

    outcome: Outcome
    item: str
    facts: Facts
    rules: tuple[str, ...]


class Ruling(msgspec.Struct, frozen=True):
    """What becomes of a claim over all its cases; `complete` is False if there were too many to look at."""

    instances: tuple[Instance, ...]
    complete: bool = True

    @property
    def outcomes(self) -> frozenset[Outcome]:
        return frozenset(instance.outcome for instance in self.instances)

    @property
    def holds(self) -> bool:
        return self.complete and self.outcomes == {"agrees"}

    @property
    def never(self) -> bool:
        return bool(self.instances) and "agrees" not in self.outcomes

    def against(self) -> tuple[Instance, ...]:
        return tuple(instance for instance in self.instances if instance.outcome != "agrees")


def boxes(names: Names, condition: Condition) -> list[dict[str, ValueSet]] | None:
    """A condition as alternatives of facts that hold together; None if there are too many."""
    return _boxes(names.plain(condition), names)


def _boxes(condition: Condition, names: Names) -> list[dict[str, ValueSet]] | None:
    if isinstance(condition, Test):
        return [] if is_empty(condition.values) else [{condition.fact: condition.values}]
    if isinstance(condition, NotOf):
        return None
    conjunction = isinstance(condition, AllOf)
    found: list[dict[str, ValueSet]] = [{}] if conjunction else []
    for part in condition.parts:
        more = _boxes(part, names)
        if more is None:
            return None
        if conjunction:
            merged = (_merge(one, other) for one in found for other in more)
            found = [box for box in merged if box is not None]
        else:
            found += [box for box in more if box not in found]
        if len(found) > _MOST_BOXES:
            return None
    return found


def _merge(one: Mapping[str, ValueSet], other: Mapping[str, ValueSet]) -> dict[str, ValueSet] | None:
    merged = dict(one)
    for fact, values in other.items():
        both = intersect(merged[fact], values) if fact in merged else values
        if is_empty(both):
            return None
        merged[fact] = both
    return merged


class Judge:
    """Judges claims on one day, each for an audience (`within`, a condition that holds for all of it)."""

    def __init__(self, engine: Engine, names: Names) -> None:
        self.engine = engine
        self.names = names
        self.lookup = engine.lookup
        self.implies = lru_cache(maxsize=KEPT)(self._implies)
        """Whether one condition, with defined terms written out, holds only where another does."""
        self._effects: dict[tuple[str, Condition], bool] = {}
        self._like = self.lookup.base.rules[0] if self.lookup.base.rules else None

    def written(self, condition: Condition) -> Condition:
        """The condition with defined terms written out."""
        return write_out(condition, self.engine.definitions, ())

    def _implies(self, left: Condition, right: Condition) -> bool:
        sides = (self.written(left), self.written(right))
        return implies(*sides, self.lookup, self.engine.exclusions())

    def possible(self, condition: Condition) -> bool:
        return not self.implies(condition, NotOf(AllOf(())))

    # -- the claim in its cases -------------------------------------------------------------------------

    def items(self, claim: Claim) -> list[str]:
        """The items that a claim is about, those it names first."""
        covered = self.names.covered(claim.scope)
        named = [item for item in claim.scope.items if item in covered or claim.scope.alternatives]
        return [*named, *sorted(covered.difference(named))]

    def rule(self, claim: Claim) -> Rule | None:
        return None if self._like is None else claim.as_rule(self._like)

    def judge(self, claim: Claim, within: Condition) -> Ruling:
        """What becomes of a claim in every case of the audience."""
        rule, items = self.rule(claim), self.items(claim)
        if rule is None or len(items) > _MOST_ITEMS:
            return Ruling((), complete=False)
        instances: dict[tuple[Outcome, tuple[str, ...]], Instance] = {}
        for item in items:
            group = self.engine.group(item, claim.aspect, others_in(claim.value.values))
            for norm in norms_of(self.lookup, rule, item):
                found = boxes(self.names, self.written(all_of([norm.condition, within])))
                if found is None:
                    return Ruling((), complete=False)
                for box in found:
                    for instance in self._in_box(claim, group, norm, box):
                        instances.setdefault((instance.outcome, instance.rules), instance)
        return Ruling(tuple(instances.values()))

    def takes_effect(self, rule: Rule, within: Condition) -> bool:
        """Whether what a rule says is so in some case of the audience, or none of its cases is theirs."""
        key = (rule.id, within)
        if key not in self._effects:
            self._effects[key] = not self.judge(Claim.of(rule), within).never
        return self._effects[key]

    def _in_box(
        self, claim: Claim, group: Group, norm: Norm, box: Mapping[str, ValueSet]
    ) -> Iterator[Instance]:
        act = self.lookup.aspects[group.aspect].kind == "act"
        wearing = not act and group.aspect not in OWNED_ASPECTS
        case = Case(as_of=self.engine.as_of, facts=tuple(box.items()))
        known = possible_facts(case, (group.item,), wearing, self.lookup)
        if any(is_empty(values) for values in known.values()):
            return
        for decision in self.engine.problem(group, known).decisions():
            outcome = self.outcome(claim, group, norm, decision)
            if outcome in ("allowed", "silent") and self._is_owed(claim, group.item, norm, box):
                outcome = "agrees"
            yield Instance(outcome, group.item, case.facts, decision.rules)

    def _is_owed(self, claim: Claim, item: str, norm: Norm, box: Mapping[str, ValueSet]) -> bool:
        """Whether a duty over a set stands in a case though one of the set may be off: another must be on."""
        duty = claim.scope.alternatives is not None and norm.closes and contains(norm.values, "no")
        if not duty or box.get(WORN + item, NO) != NO:
            return False
        case = Case(as_of=self.engine.as_of, facts=tuple({**box, WORN + item: NO}.items()))
        for other in claim.scope.items:
            known = possible_facts(case, (other,), False, self.lookup)
            if other == item or any(is_empty(values) for values in known.values()):
                continue
            group = self.engine.group(other, claim.aspect)
            if all(one.verdict == "required" for one in self.engine.problem(group, known).decisions()):
                return True
        return False

    def outcome(self, claim: Claim, group: Group, norm: Norm, decision: Decision) -> Outcome:
        """What one decided case makes of a norm of the claim."""
        touched = [
            fate.status
            for values, fate in zip(group.classes, decision.fates, strict=True)
            if not is_empty(_shared(values, norm.values))
        ]
        if "contested" in touched or decision.verdict == "conflict":
            return "conflict"
        if norm.closes:
            if all(status == "closed" for status in touched):
                return "agrees" if self._tight(claim, group, norm, decision) else "looser"
            if claim.scope.alternatives and decision.verdict == "prohibited":
                return "agrees"  # the duty over the set falls to the others then
            return "allowed" if "supported" in touched else "silent"
        if "closed" in touched:
            return "closed"
        if decision.verdict in ("required", "prohibited") and self.lookup.aspects[group.aspect].kind == "act":
            return "required"
        return "agrees" if all(status == "supported" for status in touched) else "silent"

    def _tight(self, claim: Claim, group: Group, norm: Norm, decision: Decision) -> bool:
        """Whether a duty leaves open no value that the books close: "at most 3 in" for their 2 is too loose.

        What a single rule of the books leaves open is never too loose: another rule may narrow it further.
        """
        if (
            claim.modality != "must"
            or claim.scope.alternatives
            or self.lookup.aspects[group.aspect].kind == "act"
        ):
            return True
        if any(other.closes and other.values == norm.values for other, _ in group.norms):
            return True
        left = complement(norm.values)
        return not any(
            fate.status == "closed" and not is_empty(_shared(values, left))
            for values, fate in zip(group.classes, decision.fates, strict=True)
        )

    # -- rules that say the same ------------------------------------------------------------------------

    def faithful(self, claim: Claim, within: Condition, rules: Sequence[Rule]) -> list[Rule]:
        """Those of the rules that say what the claim says, in all its cases and perhaps in more."""
        own = all_of([claim.condition, within])
        return [rule for rule in rules if self.says(rule, claim) and self.implies(own, rule.condition)]

    def says(self, rule: Rule, claim: Claim) -> bool:
        """Whether a rule says of the claim's items what the claim says, whatever the circumstances."""
        if rule.aspect != claim.aspect or rule.residual is not claim.residual:
            return False
        if rule.scope.alternatives or claim.scope.alternatives:
            same = rule.scope.alternatives == claim.scope.alternatives and set(rule.scope.items) == set(
                claim.scope.items
            )
            return same and rule.modality == claim.modality and rule.value.values == claim.value.values
        draft = self.rule(claim)
        if draft is None:
            return False
        for item in claim.scope.items:
            if not (covers(self.lookup, rule.scope, item) or self._covers_all(rule, claim)):
                return False
        item = claim.scope.items[0]
        mine, theirs = norms_of(self.lookup, draft, item)[0], norms_of(self.lookup, rule, item)[0]
        if mine.closes != theirs.closes:
            return False
        if claim.modality == "must" and self.lookup.aspects[claim.aspect].kind != "act":
            return _equal(mine.values, theirs.values)
        return _within(mine.values, theirs.values)

    def _covers_all(self, rule: Rule, claim: Claim) -> bool:
        return self.names.covered(claim.scope) <= self.names.covered(rule.scope)

    def about_the_same(self, rule: Rule, claim: Claim) -> bool:
        """Whether a rule speaks of an aspect and an item that the claim speaks of."""
        if rule.aspect != claim.aspect:
            return False
        mine = self.names.covered(claim.scope) | set(claim.scope.items)
        return not mine.isdisjoint(self.names.covered(rule.scope) | set(rule.scope.items))


def _shared(left: ValueSet, right: ValueSet) -> ValueSet:
    if isinstance(left, Choices) is not isinstance(right, Choices):
        return Choices(frozenset())
    return intersect(left, right)


def _within(left: ValueSet, right: ValueSet) -> bool:
    return isinstance(left, Choices) is isinstance(right, Choices) and is_subset(left, right)


def _equal(left: ValueSet, right: ValueSet) -> bool:
    return _within(left, right) and _within(right, left)
