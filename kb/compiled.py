"""Decisions in bulk: the rules of an item and aspect made into a tree of plain look-ups.

A case maps a fact to its value: a name, an exact number in base units (a day as its ordinal), or a set of
values where only that much is known. What the facts given decide is one walk down a tree; what they do not
decide goes to the reasoner, and its answer is remembered. Both give what the question path gives.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Hashable, Iterable, Mapping
from fractions import Fraction
from itertools import pairwise
from typing import Any, TypeVar

import msgspec

from kb.answer.citing import citations
from kb.answer.common import decisive
from kb.errors import UsageError
from kb.model.conditions import Condition, tests
from kb.model.lookup import Lookup
from kb.model.questions import ValueStatus, Verdict
from kb.model.records import OWNED_ASPECTS, Case
from kb.model.values import Choices, Ranges, ValueSet, choices, contains, point
from kb.reasoner import WORN, Decision, Engine, Leaf, Tree, possible_facts, rows

Value = str | int | Fraction | ValueSet
CaseFacts = Mapping[str, Value]
Key = TypeVar("Key", bound=Hashable)
Found = TypeVar("Found")

_MOST_KEPT = 50_000


class Decided(msgspec.Struct, frozen=True):
    """The verdict on one case, the clauses to cite for it (ids), and the rules that decide.

    For an aspect with values also what becomes of each class of them, in the order of `Group.classes`.
    """

    verdict: Verdict
    clauses: tuple[str, ...]
    rules: tuple[str, ...]
    statuses: tuple[ValueStatus, ...] = ()


class _Branch(msgspec.Struct, frozen=True):
    """A split on one fact: by name (`names`), or by the place of a number among `bounds`.

    `kids[2 * i + 1]` is for the i-th bound itself, `kids[2 * i]` for what lies between it and the one before.
    """

    fact: str
    names: dict[str, Any]
    bounds: list[int | Fraction]
    kids: list[Any]


class Memory(dict[Key, Found]):
    """What was worked out, up to a number of things; then it starts anew."""

    def __setitem__(self, key: Key, value: Found) -> None:
        if len(self) >= _MOST_KEPT:
            self.clear()
        super().__setitem__(key, value)


def set_of(value: Value) -> ValueSet:
    """A value of a case as a set of values."""
    if isinstance(value, str):
        return choices(value)
    return point(value) if isinstance(value, int | Fraction) else value


def value_of(values: ValueSet) -> Value:
    """A set with one value as that value; whole numbers as `int`, which compare fastest."""
    if isinstance(values, Choices):
        single = len(values.members) == 1 and not values.complement
        return next(iter(values.members)) if single else values
    if len(values.intervals) == 1:
        (only,) = values.intervals
        if only.low is not None and only.low == only.high:
            return _plain(only.low)
    return values


def _plain(number: Fraction) -> int | Fraction:
    return number.numerator if number.denominator == 1 else number


class Decider:
    """Decides cases on the day of its engine. Not to be shared between threads."""

    def __init__(self, engine: Engine) -> None:
        self.engine = engine
        self._compiled: dict[tuple[str, str], _Compiled] = {}
        self._stated: Memory[tuple[str, str, frozenset[str]], _Compiled] = Memory()
        self._terms = frozenset(engine.definitions)
        excluded = (test.fact for one in engine.exclusions() for test in tests(one))
        self._checked = frozenset((*excluded, *engine.definitions)).union(
            fact for fact in engine.lookup.facts if fact.startswith(WORN)
        )
        self._possible: Memory[Hashable, bool] = Memory()

    def decide(self, item: str, aspect: str, case: CaseFacts) -> Decided:
        """The verdict for an item and an aspect; `UsageError` if facts that bear on it exclude each other.

        Facts that no rule for the item tests are not looked at; `check` looks at all. Unknown ids, and values
        that a fact cannot have, are for the caller to refuse.
        """
        compiled = self._compiled.get((item, aspect))
        if compiled is None:
            compiled = self._compiled[item, aspect] = _Compiled(self.engine, item, aspect)
        if self._terms and not self._terms.isdisjoint(case):
            key = (item, aspect, self._terms.intersection(case))
            compiled = self._stated.get(key) or _Compiled(self.engine, *key)
            self._stated[key] = compiled
        return compiled.decide(case)

    def check(self, item: str, aspect: str, case: CaseFacts) -> None:
        """`UsageError` if any facts of a case exclude each other, taken with the question about an item."""
        key = (item, aspect, frozenset(entry for entry in case.items() if entry[0] in self._checked))
        if key not in self._possible:
            lookup = self.engine.lookup
            facts = tuple((fact, set_of(value)) for fact, value in case.items() if fact in self._checked)
            stated = Case(as_of=self.engine.as_of, facts=facts)
            known = possible_facts(stated, (item,), _is_wearing(lookup, aspect), lookup)
            self._possible[key] = self.engine.check_case(known)
        if not self._possible[key]:
            raise _exclusive()


def _is_wearing(lookup: Lookup, aspect: str) -> bool:
    """Whether a question about an aspect takes for granted that the item is worn."""
    return lookup.aspects[aspect].kind != "act" and aspect not in OWNED_ASPECTS


class _Compiled:
    """One item and aspect on one day, for cases that state the terms in `stated` themselves."""

    def __init__(self, engine: Engine, item: str, aspect: str, stated: frozenset[str] = frozenset()) -> None:
        self._engine, self._item = engine, item
        self._lookup = lookup = engine.lookup
        self._group = engine.group(item, aspect)
        self._act = lookup.aspects[aspect].kind == "act"
        self._wearing = _is_wearing(lookup, aspect)
        taken = possible_facts(Case(as_of=engine.as_of), (item,), self._wearing, lookup)
        problem = engine.problem(self._group, {**{term: lookup.domain(term) for term in stated}, **taken})
        self._root = self._build(problem.tree(self._outcome, None), {})
        excluded = {test.fact for one in engine.exclusions(stated) for test in tests(one)}
        worn = [fact[len(WORN) :] for fact in (*problem.facts, *taken) if fact.startswith(WORN)]
        self._guarded = tuple(f for f in problem.facts if f in excluded or f.startswith(WORN))
        near = (one for item in worn for one in (*lookup.broader(item), *lookup.narrower(item)))
        self._near = frozenset(WORN + one for one in near).difference(self._guarded)
        self._bearing = self._near.union(self._guarded)
        self._relevant = stated.union(problem.facts, self._near)
        self._added: Memory[tuple[Any, ...], dict[str, Value]] = Memory()
        self._known: Memory[frozenset[tuple[str, object]], Decided] = Memory()
        self._bounds = _bounds_of((*problem.conditions.values(), *engine.exclusions(stated)))

    def _outcome(self, decision: Decision) -> Decided:
        rules = decisive(decision, self._group.classes) if self._act else decision.rules
        clauses = tuple(dict.fromkeys(self._lookup.rules[rule].clause for rule in rules))
        cited = clauses if decision.verdict == "conflict" else clauses[:1]
        statuses = () if self._act else tuple(fate.status for fate in decision.fates)
        return Decided(decision.verdict, cited, rules, statuses)

    def _build(self, tree: Tree[Decided | None], made: dict[int, Any]) -> Any:
        """The tree as nested tables; what the reasoner shares is shared here."""
        if isinstance(tree, Leaf):
            return tree.outcome
        if id(tree) not in made:
            children = [(values, self._build(child, made)) for values, child in tree.children]
            named = [(values, child) for values, child in children if isinstance(values, Choices)]
            spans = [(values, child) for values, child in children if isinstance(values, Ranges)]
            names = {name: child for values, child in named for name in values.members}
            made[id(tree)] = _Branch(tree.fact, names, *_spread_out(spans))
        return made[id(tree)]

    # -- deciding ---------------------------------------------------------------------------------------

    def decide(self, case: CaseFacts) -> Decided:
        get = case.get
        if self._bearing:
            guarded: tuple[Any, ...] = tuple(map(get, self._guarded))
            if self._near and not self._near.isdisjoint(case):
                guarded += tuple(entry for entry in case.items() if entry[0] in self._near)
            added = self._added.get(guarded)
            if added is None:
                added = self._added[guarded] = self._add(case)
            if added:
                case = {**case, **added}
                get = case.get
        node = self._root
        while type(node) is _Branch:
            value: Any = get(node.fact)
            kind = type(value)
            if kind is str:
                node = node.names.get(value)
            elif kind is int or kind is Fraction:
                bounds = node.bounds
                place = bisect_left(bounds, value)
                exact = place < len(bounds) and bounds[place] == value
                node = node.kids[2 * place + 1] if exact else node.kids[2 * place]
            else:
                return self._ask(case)
        return node if node is not None else self._ask(case)

    def _add(self, case: CaseFacts) -> dict[str, Value]:
        """What follows from the facts that bear on each other; `UsageError` if they exclude each other."""
        stated = tuple((fact, set_of(value)) for fact, value in case.items() if fact in self._bearing)
        facts = Case(as_of=self._engine.as_of, facts=stated)
        found = possible_facts(facts, (self._item,), self._wearing, self._lookup)
        if not self._engine.check_case(found):
            raise _exclusive()
        added = {fact: value_of(values) for fact, values in found.items() if fact in self._bearing}
        return {fact: value for fact, value in added.items() if case.get(fact) != value}

    def _ask(self, case: CaseFacts) -> Decided:
        """What the reasoner says where the facts given do not decide; remembered by the facts that count."""
        key = frozenset(
            (fact, self._place(fact, value)) for fact, value in case.items() if fact in self._relevant
        )
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._reason(case)
        return found

    def _place(self, fact: str, value: Value) -> Value | tuple[int, bool]:
        """A number as its place among the bounds that are tested, between which nothing changes."""
        if not isinstance(value, int | Fraction):
            return value
        bounds = self._bounds.get(fact, [])
        place = bisect_left(bounds, value)
        return place, place < len(bounds) and bounds[place] == value

    def _reason(self, case: CaseFacts) -> Decided:
        known = {fact: set_of(value) for fact, value in case.items() if fact in self._relevant}
        problem = self._engine.problem(self._group, known)
        found = problem.only_decision()
        if found is not None:
            return self._outcome(found)
        said, statuses = problem.said(), () if self._act else problem.statuses()
        if not said:
            raise _exclusive()
        same = len(said) == 1 and statuses is not None
        deciding = problem.decisive_rules if self._act else problem.alive_rules
        table = [deciding(dict(when)) for when, _ in rows(problem.verdicts())]
        clauses = tuple(one.clause for one in citations(self._lookup, table))
        verdict: Verdict = next(iter(said)) if same else "conditional"
        return Decided(verdict, clauses, deciding(), statuses if same and statuses else ())


def _exclusive() -> UsageError:
    return UsageError("These facts exclude each other.")


def _bounds_of(conditions: Iterable[Condition]) -> dict[str, list[int | Fraction]]:
    """The bounds of all intervals that are tested, by fact, in order."""
    found: dict[str, set[Fraction]] = {}
    for test in (test for condition in conditions for test in tests(condition)):
        for interval in test.values.intervals if isinstance(test.values, Ranges) else ():
            bounds = found.setdefault(test.fact, set())
            bounds.update(b for b in (interval.low, interval.high) if b is not None)
    return {fact: [_plain(bound) for bound in sorted(bounds)] for fact, bounds in found.items()}


def _spread_out(spans: list[tuple[Ranges, Any]]) -> tuple[list[int | Fraction], list[Any]]:
    """All bounds in order, and the child for each of them and for each gap between them."""
    bounds = sorted(
        {b for values, _ in spans for i in values.intervals for b in (i.low, i.high) if b is not None}
    )
    if not bounds:
        return [], [_child_at(spans, Fraction(0))]
    above = [*((low + high) / 2 for low, high in pairwise(bounds)), bounds[-1] + 1]
    probes = [bounds[0] - 1, *(probe for pair in zip(bounds, above, strict=True) for probe in pair)]
    return [_plain(bound) for bound in bounds], [_child_at(spans, probe) for probe in probes]


def _child_at(spans: list[tuple[Ranges, Any]], number: Fraction) -> Any:
    return next((child for values, child in spans if contains(values, number)), None)
