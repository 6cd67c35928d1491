"""A rule base as facts of an answer-set program. Reads the records only, never the reasoner."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable, Sequence
from fractions import Fraction
from pathlib import Path

from kb.model.conditions import AllOf, AnyOf, Condition, NotOf, Test
from kb.model.records import Aspect, Fact, Item, Rule, RuleBase
from kb.model.values import Interval, Ranges, ValueSet
from tests.proof.points import Point, member, names, numbers

HERE = Path(__file__).parent
SEMANTICS = (HERE / "semantics.lp").read_text(encoding="utf-8")
SPECIFICITY = (HERE / "specificity.lp").read_text(encoding="utf-8")

Full = dict[str, Point]


def current(start: datetime.date, end: datetime.date | None, day: datetime.date) -> bool:
    return not (day < start or (end is not None and day >= end))


def tests_in(condition: Condition) -> Iterable[Test]:
    if isinstance(condition, Test):
        yield condition
    else:
        for part in (condition.part,) if isinstance(condition, NotOf) else condition.parts:
            yield from tests_in(part)


def quoted(text: str) -> str:
    assert '"' not in text
    assert "\\" not in text
    return f'"{text}"'


class Encoding:
    """The facts of one base on one day; `values` are the points of each aspect, `space` those of each fact.

    `stated` names terms that the case states, so that their definitions do not count; `agreed` those that
    several clauses define alike; `also` gives conditions to number beside those of the rules.
    """

    def __init__(
        self,
        base: RuleBase,
        day: datetime.date,
        stated: frozenset[str] = frozenset(),
        agreed: frozenset[str] = frozenset(),
        also: Sequence[Condition] = (),
    ) -> None:
        self.base, self.day = base, day
        self.lines: list[str] = []
        self.nodes: dict[Condition, int] = {}
        self.sets: dict[str, list[ValueSet]] = defaultdict(list)
        self.facts: dict[str, Fact] = {fact.id: fact for fact in base.facts}
        self.items: dict[str, Item] = {item.id: item for item in base.items}
        self.rules = [rule for rule in base.rules if current(rule.valid_from, rule.valid_until, day)]
        self.aspects: dict[str, Aspect] = {aspect.id: aspect for aspect in base.aspects}
        self._tests: list[tuple[int, Test]] = []
        self._meanings(stated, agreed)
        self._vocabulary()
        self._books()
        self.values = {aspect: self._aspect_points(aspect) for aspect in {r.aspect for r in self.rules}}
        self._value_names = {aspect: _terms(points) for aspect, points in self.values.items()}
        for rule in self.rules:
            self._rule(rule)
        for exclusion in base.exclusions:
            self.add(f"never({self.node(exclusion)})")
        for condition in also:
            self.node(condition)
        self._written_terms()
        self.space = {fact: self._fact_points(fact) for fact in self.sets if fact not in self.meanings}
        self._names = {fact: _terms(points) for fact, points in self.space.items()}
        for number, test in self._tests:
            for point in self.space.get(test.fact, ("yes", "no")):
                if member(point, test.values):
                    self.add(f"allows({number},{self.point(test.fact, point)})")

    def add(self, *atoms: str) -> None:
        self.lines += [f"{atom}." for atom in atoms]

    # -- facts ------------------------------------------------------------------------------------------

    def _meanings(self, stated: frozenset[str], agreed: frozenset[str]) -> None:
        """The definition of each term that has one in force and is not stated. Differing ones cancel out."""
        clauses = {clause.id: clause for clause in self.base.clauses}
        found: dict[str, list[Condition]] = defaultdict(list)
        for definition in self.base.definitions:
            clause = clauses[definition.clause]
            if current(clause.valid_from, clause.valid_until, self.day):
                found[definition.term].append(definition.condition)
        self.meanings = {
            t: c[0] for t, c in found.items() if t not in stated and (t in agreed or len(set(c)) == 1)
        }
        self.disputed = {t: c for t, c in found.items() if t not in stated and t not in self.meanings}

    def _written_terms(self) -> None:
        """The meaning of every term that a condition mentions, and of terms that those mention."""
        done: set[str] = set()
        while waiting := [term for term in self.meanings if term in self.sets and term not in done]:
            for term in waiting:
                done.add(term)
                self.add(f"meaning({quoted(term)},{self.node(self.meanings[term])})")

    def _vocabulary(self) -> None:
        for item in self.items.values():
            self.add(f"item({quoted(item.id)})")
            self.add(*(f"broader({quoted(item.id)},{quoted(parent)})" for parent in item.broader))
            if f"worn:{item.id}" in self.facts:
                self.add(f"worn({quoted('worn:' + item.id)},{quoted(item.id)})")

    def _books(self) -> None:
        ranks = {authority.id: authority.rank for authority in self.base.authorities}
        books = {book.id: book.authority for book in self.base.books}
        editions = {edition.id: edition for edition in self.base.editions}
        clauses = {clause.id: clause for clause in self.base.clauses}
        self.ranks, self.editions, self.clauses = ranks, editions, clauses
        for clause in clauses.values():
            self.add(f"clause({quoted(clause.id)})")
            self.add(*(f"replaces({quoted(clause.id)},{quoted(old)})" for old in clause.replaces))
        for grant in self.base.delegations:
            source = clauses[grant.clause]
            if not current(source.valid_from, source.valid_until, self.day):
                continue
            name = quoted(grant.id)
            giver = ranks[books[editions[source.edition].book]]
            self.add(f"delegation({name})", f"to_rank({name},{ranks[grant.to]})")
            self.add(f"giver_rank({name},{giver})")
            self.add(*(f"grants_clause({name},{quoted(clause)})" for clause in grant.clauses))
            self.add(*(f"grants_item({name},{quoted(item)})" for item in grant.items))
            if grant.allows == "stricter":
                self.add(f"only_stricter({name})")

    def node(self, condition: Condition) -> int:
        """The number of a condition; its facts are added when it is first met."""
        if condition in self.nodes:
            return self.nodes[condition]
        number = self.nodes[condition] = len(self.nodes)
        if isinstance(condition, Test):
            self.sets[condition.fact].append(condition.values)
            self._tests.append((number, condition))
            self.add(f"test({number},{quoted(condition.fact)})")
        elif isinstance(condition, NotOf):
            self.add(f"opposite({number},{self.node(condition.part)})")
        else:
            self.add(f"{'all' if isinstance(condition, AllOf) else 'any'}({number})")
            assert isinstance(condition, AllOf | AnyOf)
            self.add(*(f"part({number},{self.node(part)})" for part in condition.parts))
        return number

    def _fact_points(self, fact: str) -> list[Point]:
        record = self.facts[fact]
        if record.kind == "yes_no":
            return ["yes", "no"]
        if record.kind in ("quantity", "date"):
            return numbers(self.sets[fact], whole=record.kind == "date")
        return [value.id for value in record.values]

    def point(self, fact: str, point: Point) -> str:
        """A value of a fact as a term."""
        return str(point) if point in ("yes", "no") else self._names[fact][point]

    def worn_fact(self, item: str) -> None:
        """Make the wearing of an item a part of every case."""
        self.sets[f"worn:{item}"] += []

    # -- rules ------------------------------------------------------------------------------------------

    def _aspect_points(self, aspect: str) -> list[Point]:
        record = self.aspects[aspect]
        sets = [rule.value.values for rule in self.rules if rule.aspect == aspect]
        if record.kind == "act":
            return ["yes", "no"]
        if record.kind == "measure":
            return [n for n in numbers([*sets, _from_zero()]) if isinstance(n, str) or n > 0]
        if record.kind == "count":
            return [n for n in numbers([*sets, _from_zero()], whole=True) if isinstance(n, str) or n >= 0]
        if record.kind == "choice" and record.values:
            return [value.id for value in record.values]
        return names(sets)

    def value(self, aspect: str, point: Point) -> str:
        """A value of an aspect as a term."""
        return str(point) if point in ("yes", "no") else self._value_names[aspect][point]

    def _rule(self, rule: Rule) -> None:
        name, scope = quoted(rule.id), rule.scope
        self.add(
            f"rule({name})", f"modality({name},{rule.modality})", f"aspect({name},{quoted(rule.aspect)})"
        )
        self.add(*(f"scope({name},{quoted(item)})" for item in scope.items))
        self.add(*(f"excluding({name},{quoted(item)})" for item in scope.excluding))
        self.add(f"first({name},{quoted(scope.items[0])})", f"clause_of({name},{quoted(rule.clause)})")
        self.add(f"condition({name},{self.node(rule.condition)})")
        self.add(f"authority({name},{quoted(rule.authority)})", f"rank({name},{self.ranks[rule.authority]})")
        edition = self.editions[self.clauses[rule.clause].edition]
        self.add(f"dated({name},{edition.valid_from.toordinal()})")
        for point in self.values[rule.aspect]:
            if member(point, rule.value.values):
                self.add(f"says({name},{self.value(rule.aspect, point)})")
        self._flags(rule, name)

    def _flags(self, rule: Rule, name: str) -> None:
        if not rule.scope.narrower:
            self.add(f"only_named({name})")
        if rule.scope.alternatives:
            self.add(f"choice_of({name},{rule.scope.alternatives})")
        if rule.scope.alternatives or rule.repairs:
            duty = next((r for r in self.base.rules if r.id == rule.repairs), rule)
            for item in (*rule.scope.items, *duty.scope.items):
                self.worn_fact(item)
        if rule.repairs:
            self.add(f"repairs({name},{quoted(rule.repairs)})")
        if rule.delegation:
            self.add(f"under({name},{quoted(rule.delegation)})")
        if rule.non_derogable:
            self.add(f"firm({name})")
        if rule.residual:
            self.add(f"residual({name})")
        self.add(*(f"exception({name},{quoted(other)})" for other in rule.exception_to))
        self.add(*(f"disables({name},{quoted(other)})" for other in rule.disables))

    # -- questions --------------------------------------------------------------------------------------

    def asked(self, pairs: Iterable[tuple[str, str]]) -> str:
        """The facts of the items and aspects asked about, with the values of the aspects."""
        lines = [f"asked({quoted(item)},{quoted(aspect)})." for item, aspect in pairs]
        for aspect, points in self.values.items():
            lines += [f"value({quoted(aspect)},{self.value(aspect, p)})." for p in points]
            if self.aspects[aspect].kind == "act":
                lines.append(f"act({quoted(aspect)}).")
        return "\n".join(lines)

    def cases(self, completions: Sequence[Full]) -> str:
        """The facts of numbered completions."""
        lines = [f"case(0..{len(completions) - 1})."]
        for number, full in enumerate(completions):
            lines.append(" ".join(f"has({number},{quoted(f)},{self.point(f, p)})." for f, p in full.items()))
        return "\n".join(lines)

    @property
    def text(self) -> str:
        return "\n".join(self.lines)


def _terms(points: Sequence[Point]) -> dict[Point, str]:
    return {point: f"v{number}" for number, point in enumerate(points)}


def _from_zero() -> ValueSet:
    return Ranges((Interval(low=Fraction(0)),))
