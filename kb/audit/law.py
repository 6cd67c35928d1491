"""The rules of one day as formulas over the facts: when a rule applies, and when it is alive at a value.

This writes section 2 of the design ("one question, everywhere") as conditions, so that "is there any case in
which ..." is one satisfiability question, decided exactly. The reasoner decides single cases; here all cases
are asked about at once, and a test compares the two case by case.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from functools import cached_property

from kb.audit.hull import Hull, exclude_each_other, hull_of
from kb.model.conditions import Condition, Test, all_of, any_of, negate, tests
from kb.model.lookup import Lookup
from kb.model.records import OWNED_ASPECTS, Case, Rule, RuleBase, is_in_force
from kb.model.values import ValueSet
from kb.reasoner import WORN, Engine, Group, Norm, possible_facts
from kb.reasoner.norms import covered_items
from kb.reasoner.space import constraints, satisfiable
from kb.reasoner.terms import write_out

Known = Mapping[str, ValueSet]
Index = Mapping[tuple[str, str], Sequence[str]]
ViewKey = tuple[str, str, tuple[str, ...], frozenset[str]]


def covering_rules(lookup: Lookup) -> Index:
    """For each item and aspect the rules that cover it, on any day."""
    found: dict[tuple[str, str], list[str]] = {}
    place = {item.id: i for i, item in enumerate(lookup.base.items)}
    for rule in lookup.base.rules:
        for item in sorted(covered_items(lookup, rule.scope), key=place.__getitem__):
            found.setdefault((item, rule.aspect), []).append(rule.id)
    return found


def giving_clauses(base: RuleBase) -> frozenset[str]:
    """The clauses that delegate or define."""
    given = [delegation.clause for delegation in base.delegations]
    return frozenset([*given, *(definition.clause for definition in base.definitions)])


def _state(lookup: Lookup, day: datetime.date) -> frozenset[str]:
    """What makes rules mean the same on two days: the clauses in force that delegate or define."""
    giving, clauses = giving_clauses(lookup.base), lookup.clauses
    return frozenset(c for c in giving if is_in_force(clauses[c], day))


class Law:
    """What holds on one day. `index` is that of `covering_rules`, shared by all days."""

    def __init__(self, lookup: Lookup, day: datetime.date, index: Index) -> None:
        self.lookup = lookup
        self.day = day
        self.index = index
        self.engine = Engine(lookup, day, self._candidates)
        self.rules = tuple(r for r in lookup.base.rules if is_in_force(r, day))
        self.state = _state(lookup, day)
        self._hulls: dict[str, Hull] = {}
        self._limits: dict[frozenset[str], tuple[Condition, ...]] = {}
        self._together: dict[tuple[str, str], bool] = {}
        self._views: dict[tuple[str, str, str], View] = {}

    def _candidates(self, item: str, aspect: str, day: datetime.date) -> Sequence[str]:
        rules = self.lookup.rules
        return [rule for rule in self.index.get((item, aspect), ()) if is_in_force(rules[rule], day)]

    # -- satisfiability ---------------------------------------------------------------------------------

    def case(self, conditions: Sequence[Condition], known: Known | None = None) -> dict[str, ValueSet] | None:
        """Facts that make all the conditions true, by what excludes what; None if there are none."""
        given = [Test(fact, values) for fact, values in (known or {}).items()]
        names = frozenset(test.fact for part in (*conditions, *given) for test in tests(part))
        if names not in self._limits:
            everything = (*conditions, *given)
            self._limits[names] = constraints(everything, self.lookup, self.engine.exclusions())
        return satisfiable((*conditions, *self._limits[names]), known or {}, self.lookup)

    def always(self, condition: Condition, known: Known) -> bool:
        """Whether every possible case within the known facts meets the condition."""
        return self.case((negate(condition),), known) is None

    def hull(self, key: str, condition: Condition) -> Hull:
        if key not in self._hulls:
            self._hulls[key] = hull_of(condition, self.lookup)
        return self._hulls[key]

    def together(self, one: Norm, other: Norm) -> bool:
        """Whether the conditions of two norms, as written, hold in one case."""
        pair = (one.key, other.key) if one.key < other.key else (other.key, one.key)
        if pair not in self._together:
            written = [self.written(norm) for norm in (one, other)]
            hulls = [self.hull(norm.key, text) for norm, text in zip((one, other), written, strict=True)]
            self._together[pair] = not exclude_each_other(*hulls) and self.case(written) is not None
        return self._together[pair]

    def written(self, norm: Norm) -> Condition:
        """The condition of a norm with its defined terms written out."""
        if norm.key == norm.rule:
            return self.engine.condition(norm.rule)
        return write_out(norm.condition, self.engine.definitions, ())

    # -- groups -----------------------------------------------------------------------------------------

    @cached_property
    def views(self) -> tuple[View, ...]:
        """One view for each set of norms on a value space; items that no norm tells apart share one.

        Things that a rule names come before those it only covers, and single things before kinds, so that the
        first view of a matter is the one to show.
        """
        lookup = self.lookup
        named = {(item, rule.aspect) for rule in self.rules for item in rule.scope.items}
        order = {item.id: i for i, item in enumerate(lookup.base.items)}

        def rank(place: tuple[str, str]) -> tuple[bool, bool, int, str]:
            item, aspect = place
            return len(lookup.narrower(item)) > 1, place not in named, order[item], aspect

        seen: set[tuple[str, tuple[str, ...]]] = set()
        found = []
        for item, aspect in sorted(self.index, key=rank):
            rules = tuple(self._candidates(item, aspect, self.day))
            if not rules:
                continue
            if self._alike(rules, aspect):
                if (aspect, rules) in seen:
                    continue
                seen.add((aspect, rules))
            found.append(self.view(item, aspect))
        return tuple(found)

    def _alike(self, rules: Sequence[str], aspect: str) -> bool:
        """Whether rules mean the same for every item that has just them."""
        records = [self.lookup.rules[rule] for rule in rules]
        if any(record.scope.alternatives or record.repairs for record in records):
            return False
        if self.lookup.aspects[aspect].kind == "act":
            return True
        written = (*self.engine.exclusions(), *(self.engine.condition(rule) for rule in rules))
        return not any(test.fact.startswith(WORN) for part in written for test in tests(part))

    def view(self, item: str, aspect: str, without: str = "") -> View:
        """The view of an item and aspect; `without` leaves out what rests on that duty being broken."""
        place = (item, aspect, without)
        if place not in self._views:
            self._views[place] = View(self, self.engine.group(item, aspect), without)
        return self._views[place]


class View:
    """The norms of one item and aspect, and the conditions under which they are alive.

    Views with one `key` are alike, also on different days.
    """

    def __init__(self, law: Law, group: Group, without: str = "") -> None:
        self.law = law
        self.group = group
        self.item, self.aspect = group.item, group.aspect
        self.everything = (1 << len(group.classes)) - 1
        rests_on = law.engine.rests_on
        norms = [(n, m) for n, m in group.norms if not (without and rests_on(n.rule, without))]
        self.closing = [(n, m) for n, m in norms if n.closes and not n.residual]
        self.supporting = [(n, m) for n, m in norms if not n.closes]
        self.residual = [(n, m) for n, m in norms if n.closes and n.residual]
        self._watched = law.engine.watched(group)
        self.key = (group.item, group.aspect, tuple(self._watched), law.state)
        self._alive: dict[tuple[str, int], Condition] = {}
        self._applies: dict[str, Condition] = {}
        self._known: dict[str, ValueSet] | None = None

    @property
    def known(self) -> dict[str, ValueSet]:
        """What a question about this item and aspect takes for granted: whoever asks how wears it."""
        if self._known is None:
            act = self.law.lookup.aspects[self.aspect].kind == "act"
            wearing = not act and self.aspect not in OWNED_ASPECTS
            case = Case(as_of=self.law.day)
            self._known = possible_facts(case, (self.item,), wearing, self.law.lookup)
        return self._known

    def norms(self) -> list[tuple[Norm, int]]:
        return [*self.closing, *self.supporting, *self.residual]

    # -- applying ---------------------------------------------------------------------------------------

    def applies(self, norm: Norm) -> Condition:
        """When a norm has its effect: its own condition, and its rule's."""
        own = self.rule_applies(norm.rule)
        return own if norm.key == norm.rule else all_of([self._watched[norm.key], own])

    def rule_applies(self, rule: str) -> Condition:
        """When a rule applies: its condition holds, nothing disables it, and the duty it repairs stands."""
        if rule not in self._applies:
            engine = self.law.engine
            parts = [self._watched[rule]]
            parts += [negate(self.rule_applies(other)) for other in engine.disablers(rule)]
            duty = engine.lookup.rules[rule].repairs
            if duty is not None:
                parts.append(self._stands(engine.lookup.rules[duty]))
            self._applies[rule] = all_of(parts)
        return self._applies[rule]

    def _stands(self, duty: Rule) -> Condition:
        view = self.law.view(duty.scope.items[0], duty.aspect, duty.id)
        return any_of(
            view.effective(norm, mask, i)
            for norm, mask in [*view.closing, *view.residual]
            if norm.rule == duty.id
            for i in places(mask)
        )

    # -- alive ------------------------------------------------------------------------------------------

    def killers(self, norm: Norm, mask: int, place: int) -> list[Norm]:
        """The norms that beat this one at a value class when they apply."""
        beats, together = self.law.engine.precedence.beats, self.law.together
        against = self.supporting if norm.closes else self.closing
        rivals = [other for other, theirs in against if theirs >> place & 1]
        if norm.closes:
            rivals += [
                other
                for other, theirs in self.closing
                if other.key != norm.key and not self.everything & ~mask & ~theirs
            ]
        return [other for other in rivals if together(norm, other) and beats(other.key, norm.key)]

    def alive(self, norm: Norm, mask: int, place: int) -> Condition:
        """When a norm applies and nothing that applies beats it at a value class. Not for residual norms."""
        key = (norm.key, place)
        if key not in self._alive:
            beaten = [negate(self.applies(other)) for other in self.killers(norm, mask, place)]
            self._alive[key] = all_of([self.applies(norm), *beaten])
        return self._alive[key]

    def effective(self, norm: Norm, mask: int, place: int) -> Condition:
        """When a norm has a say in the fate of a value class: alive, or closing it as the residual rule."""
        return self._closes_rest(norm, mask, place) if norm.residual else self.alive(norm, mask, place)

    def _any_alive(self, norms: Sequence[tuple[Norm, int]], place: int) -> Condition:
        return any_of(self.alive(norm, mask, place) for norm, mask in norms if mask >> place & 1)

    def _closes_rest(self, norm: Norm, mask: int, place: int) -> Condition:
        """A residual rule closes what nothing addresses while some value outside it is not closed."""
        addressed = any_of(
            [
                self._any_alive(self.closing, place),
                self._any_alive(self.supporting, place),
                *(
                    self.alive(n, m, i)
                    for n, m in self.supporting
                    if n.frees and not m >> place & 1
                    for i in places(m)
                ),
            ]
        )
        left_open = [
            negate(all_of([self._any_alive(self.closing, i), negate(self._any_alive(self.supporting, i))]))
            for i in places(self.everything & ~mask)
        ]
        return all_of([self.applies(norm), negate(addressed), any_of(left_open)])


def places(mask: int) -> list[int]:
    """The value classes of a mask."""
    return [i for i in range(mask.bit_length()) if mask >> i & 1]
