"""The reasoner: candidate rules and a case in, decisions out.

One `Engine` serves one base on one day. It is pure but for its memory of what it already worked out.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Hashable, Mapping, Sequence
from itertools import combinations
from typing import TypeVar

import msgspec

from kb.model.conditions import Condition, Test, all_of, any_of, tests
from kb.model.lookup import Lookup
from kb.model.questions import ValueStatus, Verdict
from kb.model.records import is_in_force
from kb.model.values import NO, YES, Choices, Interval, Ranges, ValueSet, contains, is_empty
from kb.reasoner.decide import Decision, act_verdict, fates, mask_of, value_classes, value_verdict
from kb.reasoner.diagram import Diagram
from kb.reasoner.norms import Norm, covers, item_of, norms_of, rule_of
from kb.reasoner.precedence import Precedence
from kb.reasoner.problem import Problem
from kb.reasoner.space import WORN, constraints, satisfiable
from kb.reasoner.terms import definitions_in_force, disputed_terms, write_out

Key = TypeVar("Key", bound=Hashable)
_Watched = dict[str, Condition]
_Limits = tuple[Condition, ...]
_PROBLEMS_KEPT = 2000

Candidates = Callable[[str, str, datetime.date], Sequence[str]]

_POSITIVE = Ranges((Interval(low=0, low_open=True),))  # type: ignore[arg-type]
_COUNTS = Ranges((Interval(low=0),))  # type: ignore[arg-type]


def scan_candidates(lookup: Lookup, as_such: bool = False) -> Candidates:
    """Candidates by looking at every rule: the plain reference for the query in the store."""

    def candidates(item: str, aspect: str, day: datetime.date) -> Sequence[str]:
        return [
            rule.id
            for rule in lookup.base.rules
            if rule.aspect == aspect and is_in_force(rule, day) and covers(lookup, rule.scope, item, as_such)
        ]

    return candidates


class Group(msgspec.Struct, frozen=True):
    """All that decides one aspect of one item: its norms and the classes of values they tell apart.

    Each norm comes with the mask of its values. `more` are values beside those that the books name.
    """

    item: str
    aspect: str
    rules: tuple[str, ...]
    norms: tuple[tuple[Norm, int], ...]
    classes: tuple[ValueSet, ...]
    more: frozenset[str] = frozenset()


class Engine:
    """Decides items and aspects on one day; `candidates` gives the rules in force for an item and aspect."""

    def __init__(self, lookup: Lookup, as_of: datetime.date, candidates: Candidates | None = None) -> None:
        self.lookup = lookup
        self.as_of = as_of
        self._candidates = candidates or scan_candidates(lookup)
        self._other_day: Engine | None = None
        self._as_such: Engine | None = None
        self.definitions = definitions_in_force(lookup, as_of)
        self.disputed = disputed_terms(self.definitions)
        self._written: dict[tuple[str, frozenset[str]], Condition] = {}
        self._conditions = _Conditions(self)
        self._exclusions: dict[frozenset[str], tuple[Condition, ...]] = {}
        self.precedence = Precedence(lookup, as_of, self._conditions, self.exclusions())
        self._groups: dict[tuple[str, str, frozenset[str]], Group] = {}
        self._watched: dict[tuple[str, str, frozenset[str]], tuple[_Watched, _Limits, tuple[str, ...]]] = {}
        self._problems: dict[tuple[object, ...], Problem] = {}
        self._disablers: dict[str, list[str]] | None = None

    def on(self, day: datetime.date) -> Engine:
        """The reasoner over the same base on another day; the last one asked for is kept."""
        if day == self.as_of:
            return self
        if self._other_day is None or self._other_day.as_of != day:
            self._other_day = Engine(self.lookup, day, self._candidates)
        return self._other_day

    def as_such(self) -> Engine:
        """The reasoner for things of a class that no rule names: that for all but some holds for them."""
        if self._as_such is None:
            self._as_such = Engine(self.lookup, self.as_of, scan_candidates(self.lookup, as_such=True))
        return self._as_such

    # -- rules and groups -------------------------------------------------------------------------------

    def condition(self, rule: str, stated: frozenset[str] = frozenset()) -> Condition:
        """The condition of a rule with its defined terms written out, save those that the case states."""
        stated = stated.intersection(self.definitions)
        if (rule, stated) not in self._written:
            written = write_out(self.lookup.rules[rule].condition, self.definitions, stated)
            self._written[rule, stated] = written
        return self._written[rule, stated]

    def exclusions(self, stated: frozenset[str] = frozenset()) -> tuple[Condition, ...]:
        """What is declared never to hold together, with defined terms written out as in conditions."""
        stated = stated.intersection(self.definitions)
        if stated not in self._exclusions:
            self._exclusions[stated] = tuple(
                write_out(exclusion, self.definitions, stated) for exclusion in self.lookup.base.exclusions
            )
        return self._exclusions[stated]

    def disablers(self, rule: str) -> Sequence[str]:
        """Rules in force that keep this rule from applying while they apply."""
        if self._disablers is None:
            self._disablers = {}
            for other in self.lookup.base.rules:
                if other.disables and is_in_force(other, self.as_of):
                    for target in other.disables:
                        self._disablers.setdefault(target, []).append(other.id)
        return self._disablers.get(rule, ())

    def domain(self, aspect: str, more: frozenset[str] = frozenset()) -> tuple[ValueSet, bool]:
        """All values of an aspect, with `more` that no book names, and whether only whole numbers count."""
        record = self.lookup.aspects[aspect]
        if record.kind == "act":
            return Choices(frozenset({"yes", "no"})), False
        if record.kind == "measure":
            return _POSITIVE, False
        if record.kind == "count":
            return _COUNTS, True
        if record.kind == "choice" and record.values:
            return Choices(more.union(value.id for value in record.values)), False
        return Choices(frozenset(), complement=True), False

    def group(self, item: str, aspect: str, more: frozenset[str] = frozenset()) -> Group:
        """The candidate rules of an item and aspect with their norms; `more` widens the domain."""
        if (item, aspect, more) not in self._groups:
            lookup = self.lookup
            rules = tuple(dict.fromkeys(self._candidates(item, aspect, self.as_of)))
            norms = [norm for rule in rules for norm in norms_of(lookup, lookup.rules[rule], item)]
            domain, whole = self.domain(aspect, more)
            classes = value_classes([norm.values for norm in norms], domain, whole)
            masked = tuple((norm, mask_of(norm.values, classes)) for norm in norms)
            self._groups[item, aspect, more] = Group(item, aspect, rules, masked, classes, more)
        return self._groups[item, aspect, more]

    # -- one decided case -------------------------------------------------------------------------------

    def applies(self, rule: str, truth: Mapping[str, bool]) -> bool:
        """Whether a rule applies where `truth` says which watched conditions hold."""
        if not truth.get(rule, False):
            return False
        if any(self.applies(other, truth) for other in self.disablers(rule)):
            return False
        duty = self.lookup.rules[rule].repairs
        return duty is None or self._stands(duty, truth)

    def _stands(self, duty: str, truth: Mapping[str, bool]) -> bool:
        """Whether a duty applies and is alive at what it closes; that it is broken is a condition.

        What rests on its being broken has no say in it: a repair never undoes its own duty.
        """
        group = self.group(self.lookup.rules[duty].scope.items[0], self.lookup.rules[duty].aspect)
        decision = self.decide(group, truth, without=duty)
        return any(duty in fate.closed_by for fate in decision.fates)

    def rests_on(self, rule: str, duty: str) -> bool:
        """Whether a rule repairs a duty, or repairs one that does."""
        repaired = self.lookup.rules[rule].repairs
        return repaired is not None and (repaired == duty or self.rests_on(repaired, duty))

    def decide(self, group: Group, truth: Mapping[str, bool], without: str | None = None) -> Decision:
        """The decision of a group in one decided case; `without` leaves out what rests on that duty."""
        applying = [
            (norm, mask)
            for norm, mask in group.norms
            if truth.get(norm.key, False)
            and not (without is not None and self.rests_on(norm.rule, without))
            and self.applies(norm.rule, truth)
        ]
        found = fates(applying, len(group.classes), self.precedence.beats)
        statuses = tuple(fate.status for fate in found)
        return Decision(self.verdict(group, statuses), found)

    def verdict(self, group: Group, statuses: Sequence[ValueStatus]) -> Verdict:
        """The verdict that the fates of a group's value classes amount to."""
        if self.lookup.aspects[group.aspect].kind != "act":
            return value_verdict(statuses)
        by_value = {
            value: status
            for values, status in zip(group.classes, statuses, strict=True)
            if isinstance(values, Choices)
            for value in values.members
        }
        return act_verdict(by_value["yes"], by_value["no"])

    # -- all cases --------------------------------------------------------------------------------------

    def watched(self, group: Group, stated: frozenset[str] = frozenset()) -> dict[str, Condition]:
        """Every condition that the decision of a group rests on, by rule (or norm, where that differs).

        Rules that disable, duties that are repaired, and what decides those duties, bring theirs.
        """
        found: dict[str, Condition] = {}
        groups, rules = [group], list(group.rules)
        for other in groups:
            for norm, _ in other.norms:
                if norm.key != norm.rule:
                    found[norm.key] = write_out(norm.condition, self.definitions, stated)
            rules += other.rules
            for rule in rules:
                if rule in found:
                    continue
                found[rule] = self.condition(rule, stated)
                rules += self.disablers(rule)
                duty = self.lookup.rules[rule].repairs
                if duty is not None:
                    found[rule] = all_of([found[rule], self._broken(duty)])
                    record = self.lookup.rules[duty]
                    needed = self.group(record.scope.items[0], record.aspect)
                    if needed not in groups:
                        groups.append(needed)
        return found

    def _broken(self, duty: str) -> Condition:
        """The test that a duty to wear (or not to wear) something is broken."""
        rule = self.lookup.rules[duty]
        must_wear = contains(rule.value.values, "yes") == (rule.modality == "must")
        if not must_wear:
            return Test(WORN + rule.scope.items[0], YES)
        none = all_of([Test(WORN + item, NO) for item in rule.scope.items])
        if rule.scope.alternatives != "one":
            return none
        pairs = combinations(rule.scope.items, 2)
        return any_of([none, *(all_of([Test(WORN + item, YES) for item in pair]) for pair in pairs)])

    def problem(self, group: Group, possible: Mapping[str, ValueSet]) -> Problem:
        """A group under the facts that are known: the diagram of everything its decision rests on.

        Kept for the facts that matter to it, so that a change of another fact costs nothing.
        """
        stated = frozenset(fact for fact in possible if fact in self.definitions)
        place = (group.item, group.aspect, stated)
        if place not in self._watched:
            watched = self.watched(group, stated)
            limits = constraints(tuple(watched.values()), self.lookup, self.exclusions(stated))
            facts = {test.fact for condition in (*watched.values(), *limits) for test in tests(condition)}
            self._watched[place] = (watched, limits, tuple(sorted(facts)))
        watched, limits, names = self._watched[place]
        known = (*place, group.more, tuple(possible.get(fact) for fact in names))
        if known not in self._problems:
            if len(self._problems) >= _PROBLEMS_KEPT:
                self._problems.pop(next(iter(self._problems)))
            diagram = Diagram(tuple(watched.values()), limits, possible, self.lookup)
            self._problems[known] = Problem(self, group, watched, diagram)
        return self._problems[known]

    def check_case(self, possible: Mapping[str, ValueSet]) -> bool:
        """Whether the known facts can hold together."""
        if any(is_empty(values) for values in possible.values()):
            return False
        exclusions = self.exclusions(frozenset(possible))
        limits = constraints(exclusions, self.lookup, exclusions)
        return satisfiable(limits, possible, self.lookup) is not None


class _Conditions(dict[str, Condition]):
    """Conditions of rules, and of norms with cases of their own, written out when first asked for."""

    def __init__(self, engine: Engine) -> None:
        super().__init__()
        self._engine = engine

    def __missing__(self, key: str) -> Condition:
        item = item_of(key)
        if item is None:
            self[key] = self._engine.condition(key)
        else:
            lookup = self._engine.lookup
            norms = norms_of(lookup, lookup.rules[rule_of(key)], item)
            condition = next(norm.condition for norm in norms if norm.key == key)
            self[key] = write_out(condition, self._engine.definitions, ())
        return self[key]
