"""Case analysis in its plainest form: a case is split on one fact after another until all is decided.

Slow and simple on purpose: it is what an answer is checked with, apart from the reasoner.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Container, Mapping, Sequence
from fractions import Fraction
from functools import cached_property
from itertools import combinations
from typing import NamedTuple

from kb.model.conditions import AnyOf, Condition, NotOf, Test, all_of, any_of, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.records import Clause, Rule, Scope
from kb.model.values import (
    EVERYTHING,
    NO,
    YES,
    Choices,
    Interval,
    Ranges,
    ValueSet,
    complement,
    contains,
    intersect,
    unite,
)
from kb.plain.sets import NONE, Sets
from kb.plain.values import has_whole_number, partition

WORN = "worn:"

Known = Mapping[str, ValueSet]
Left = Condition | bool


def restrict(condition: Left, known: Known) -> Left:
    """What is left of a condition once some facts are known; its truth where that is all."""
    if isinstance(condition, bool):
        return condition
    if isinstance(condition, Test):
        truth = evaluate(condition, known.get)
        return condition if truth is None else truth
    if isinstance(condition, NotOf):
        inner = restrict(condition.part, known)
        return not inner if isinstance(inner, bool) else NotOf(inner)
    decisive = isinstance(condition, AnyOf)
    parts = [restrict(part, known) for part in condition.parts]
    if any(part is decisive for part in parts):
        return decisive
    left = tuple(part for part in parts if not isinstance(part, bool))
    return type(condition)(left) if left else not decisive


def outcomes(
    conditions: Sequence[Condition],
    limits: Sequence[Condition],
    known: Known,
    domain: Callable[[str], ValueSet],
    days: Container[str] = (),
) -> frozenset[tuple[bool, ...]]:
    """The truths of the conditions in every case that keeps within the limits; days are whole numbers."""
    memory: dict[tuple[Left, ...], frozenset[tuple[bool, ...]]] = {}
    size = len(conditions)

    def below(left: tuple[Left, ...]) -> frozenset[tuple[bool, ...]]:
        undecided = [one for one in left if not isinstance(one, bool)]
        if any(one is False for one in left[size:]):
            return frozenset()
        if not undecided:
            return frozenset({tuple(one is True for one in left[:size])})
        if left not in memory:
            fact = tests(undecided[0])[0].fact
            sets = [test.values for one in undecided for test in tests(one) if test.fact == fact]
            pieces = partition(known.get(fact, domain(fact)), sets)
            pieces = [piece for piece in pieces if fact not in days or has_whole_number(piece)]
            found = (below(tuple(restrict(one, {fact: piece}) for one in left)) for piece in pieces)
            memory[left] = frozenset().union(*found)
        return memory[left]

    return below(tuple(restrict(one, known) for one in (*conditions, *limits)))


class Effect(NamedTuple):
    """What a rule does to one item in its cases (`items` and `condition`): it closes or supports `values`."""

    key: str
    rule: Rule
    closes: bool
    values: ValueSet
    items: frozenset[str]
    condition: Condition


class CaseSpace:
    """What the records say about cases on one day, before one rule is weighed against another."""

    def __init__(
        self, lookup: Lookup, day: datetime.date, more: frozenset[str] = frozenset(), as_such: bool = False
    ) -> None:
        self.lookup, self.day, self.more, self.as_such = lookup, day, more, as_such
        self.rules = {rule.id: rule for rule in lookup.base.rules if self.in_force(rule)}
        self.days = {fact.id for fact in lookup.base.facts if fact.kind == "date"}
        self._implied: dict[tuple[Condition, Condition], bool] = {}
        self._rules_for: dict[tuple[str, str], list[Rule]] = {}
        self._items: dict[str, frozenset[str]] = {}
        self._effects: dict[tuple[str, str], list[Effect]] = {}
        self._pieces: dict[tuple[str, str], list[ValueSet]] = {}

    def in_force(self, record: Rule | Clause) -> bool:
        start, end = record.valid_from, record.valid_until
        return start <= self.day and (end is None or self.day < end)

    @cached_property
    def terms(self) -> dict[str, Condition]:
        """Each term that has one meaning in force, with it."""
        found: dict[str, list[Condition]] = {}
        for definition in self.lookup.base.definitions:
            if self.in_force(self.lookup.clauses[definition.clause]):
                found.setdefault(definition.term, []).append(definition.condition)
        return {
            term: first
            for term, (first, *others) in found.items()
            if all(first == other or self._same(first, other) for other in others)
        }

    def _same(self, one: Condition, other: Condition) -> bool:
        return all(a == b for a, b in self._within((one, other), {}, self.lookup.base.exclusions))

    def written(self, one: Condition, stated: frozenset[str] = frozenset()) -> Condition:
        """The condition with the terms that the case does not state written out."""
        if isinstance(one, Test):
            if one.fact in stated or one.fact not in self.terms:
                return one
            inner = self.written(self.terms[one.fact], stated | {one.fact})
            return inner if one.values == YES else NotOf(inner)
        if isinstance(one, NotOf):
            return NotOf(self.written(one.part, stated))
        return type(one)(tuple(self.written(part, stated) for part in one.parts))

    def outcomes(self, watched: Sequence[Condition], known: Known) -> frozenset[tuple[bool, ...]]:
        """Truths in every case that no exclusion forbids, a worn item being worn as what is broader too."""
        stated = frozenset(known)
        return self._within(watched, known, [self.written(o, stated) for o in self.lookup.base.exclusions])

    def _within(
        self, watched: Sequence[Condition], known: Known, excluded: Sequence[Condition]
    ) -> frozenset[tuple[bool, ...]]:
        limits = self._limits(watched, excluded)
        return outcomes(watched, limits, known, self.lookup.domain, self.days)

    def _limits(self, watched: Sequence[Condition], excluded: Sequence[Condition]) -> list[Condition]:
        facts = {test.fact for one in (*watched, *excluded) for test in tests(one)}
        limits: list[Condition] = [NotOf(one) for one in excluded]
        for fact in sorted(fact for fact in facts if fact.startswith(WORN)):
            above = {WORN + item for item in self.lookup.broader(fact[len(WORN) :])} & facts - {fact}
            limits += [AnyOf((Test(fact, NO), Test(broad, YES))) for broad in sorted(above)]
        return limits

    def sets(self, watched: Sequence[Condition], known: Known) -> Sets:
        """The sets of cases that the conditions tell apart, within the same limits."""
        stated = frozenset(known)
        limits = self._limits(watched, [self.written(o, stated) for o in self.lookup.base.exclusions])
        return Sets(watched, limits, known, self.lookup.domain, self.days)

    def implies(self, left: Condition, right: Condition) -> bool:
        """Whether every possible case that meets `left` meets `right`."""
        if (left, right) not in self._implied:
            sets = self.sets((left, right), {})
            inside = sets.both(sets.of(left), sets.possible)
            self._implied[left, right] = sets.but(inside, sets.of(right)) == NONE
        return self._implied[left, right]

    def covers(self, scope: Scope, item: str) -> bool:
        above = self.lookup.broader(item)
        named = any(one in above for one in scope.items) if scope.narrower else item in scope.items
        among = (
            not self.as_such
        )  # what no rule names is none of the things that a rule leaves out of its kind
        return named and not any(
            o in above or (among and item in self.lookup.broader(o)) for o in scope.excluding
        )

    def _covered(self, rule: Rule) -> frozenset[str]:
        """All items of the books that a rule covers."""
        if rule.id not in self._items:
            self._items[rule.id] = frozenset(i for i in self.lookup.items if self.covers(rule.scope, i))
        return self._items[rule.id]

    def rules_for(self, item: str, aspect: str) -> list[Rule]:
        """The rules in force that speak of an aspect of an item."""
        if (item, aspect) not in self._rules_for:
            found = [r for r in self.rules.values() if r.aspect == aspect and self.covers(r.scope, item)]
            self._rules_for[item, aspect] = found
        return self._rules_for[item, aspect]

    def aspect_values(self, aspect: str) -> ValueSet:
        """All values of an aspect, with those that only a question names; of a count only whole ones."""
        record = self.lookup.aspects[aspect]
        if record.kind == "act":
            return unite(YES, NO)
        if record.kind in ("measure", "count"):
            return Ranges((Interval(Fraction(0), low_open=record.kind == "measure"),))
        if record.kind == "choice" and record.values:
            return Choices(frozenset(value.id for value in record.values) | self.more)
        return EVERYTHING

    # -- what a rule says of an item --------------------------------------------------------------------

    def effects(self, rule: Rule, item: str, stated: frozenset[str] = frozenset()) -> list[Effect]:
        values, when = rule.value.values, self.written(rule.condition, stated)
        if rule.modality == "must" and rule.scope.alternatives:
            others = [WORN + one for one in rule.scope.items if one not in self.lookup.broader(item)]
            none = all_of([when, *(Test(other, NO) for other in others)])
            some = all_of([when, any_of(Test(other, YES) for other in others)])
            items, one = frozenset(self.lookup.narrower(item)), rule.scope.alternatives == "one"
            name = f"{rule.id}#{item}#"
            duty = Effect(f"{name}duty", rule, True, complement(values), items, none)
            return [duty, Effect(f"{name}rest", rule, one, values, items, some)]
        items = self._covered(rule)
        speaks = values if rule.modality in ("must_not", "may") else complement(values)
        return [Effect(rule.id, rule, rule.modality.startswith("must"), speaks, items, when)]

    def effects_on(self, item: str, aspect: str) -> list[Effect]:
        if (item, aspect) not in self._effects:
            found = [effect for rule in self.rules_for(item, aspect) for effect in self.effects(rule, item)]
            self._effects[item, aspect] = found
        return self._effects[item, aspect]

    def disablers(self, rule: str) -> list[Rule]:
        return [other for other in self.rules.values() if rule in other.disables]

    def watched(self, item: str, aspect: str, stated: frozenset[str]) -> dict[str, Condition]:
        """All conditions that the fates rest on: of rules, what disables them, and duties they repair."""
        found: dict[str, Condition] = {}
        places = [(item, aspect)]
        for place in places:
            rules = list(self.rules_for(*place))
            found |= {e.key: e.condition for r in rules for e in self.effects(r, place[0], stated)}
            for rule in rules:
                found[rule.id] = self.written(rule.condition, stated)
                if rule.repairs is not None:
                    duty = self.lookup.rules[rule.repairs]
                    found[rule.id] = all_of([found[rule.id], self.broken(duty)])
                    needed = (duty.scope.items[0], duty.aspect)
                    places += [needed] if needed not in places else []
                rules += [other for other in self.disablers(rule.id) if other.id not in found]
        return found

    def broken(self, duty: Rule) -> Condition:
        """That a duty to wear something, or not to, is broken."""
        worn = [WORN + one for one in duty.scope.items]
        if contains(duty.value.values, "yes") != (duty.modality == "must"):
            return Test(worn[0], YES)
        none = all_of(Test(one, NO) for one in worn)
        if duty.scope.alternatives != "one":
            return none
        return any_of([none, *(all_of(Test(one, YES) for one in pair) for pair in combinations(worn, 2))])

    def pieces(self, item: str, aspect: str) -> list[ValueSet]:
        """The values of an aspect, cut into those that no rule for the item tells apart."""
        if (item, aspect) not in self._pieces:
            found = partition(self.aspect_values(aspect), [e.values for e in self.effects_on(item, aspect)])
            count = self.lookup.aspects[aspect].kind == "count"
            self._pieces[item, aspect] = [one for one in found if not count or has_whole_number(one)]
        return self._pieces[item, aspect]

    def taken(self, facts: Known, alone: Sequence[str] | None) -> dict[str, ValueSet]:
        """The facts with what is worn or not worn as a consequence; nothing but the items where "alone"."""
        known = dict(facts)
        for fact, values in facts.items():
            item = fact.removeprefix(WORN)
            if item != fact and values in (YES, NO):
                related = self.lookup.broader(item) if values == YES else self.lookup.narrower(item)
                for one in (WORN + one for one in related if WORN + one in self.lookup.facts):
                    known[one] = intersect(known.get(one, values), values)
        kept = {broad for one in alone or () for broad in self.lookup.broader(one)}
        left = [one for one in self.lookup.items if alone is not None and one not in kept]
        return {**{WORN + one: NO for one in left}, **known}
