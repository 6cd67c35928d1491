"""Random rule bases with everything that a rule book can say, small enough to try every case.

A base is drawn through a `Chooser`, so that hypothesis (which shrinks) and a plain random generator (which is
fast) draw from the same distribution.
"""

from __future__ import annotations

import datetime
import random
from collections.abc import Sequence
from fractions import Fraction
from typing import Any, Protocol, TypeVar

import msgspec
from hypothesis import strategies as st

from kb.model.conditions import ALWAYS, Condition, NotOf, Test, all_of, any_of
from kb.model.records import (
    Aspect,
    Authority,
    Book,
    Clause,
    Definition,
    Delegation,
    Edition,
    Fact,
    FactValue,
    Item,
    Rule,
    RuleBase,
    RuleValue,
    Scope,
    Service,
)
from kb.model.values import NO, YES, Choices, Interval, ValueSet, choices, ranges
from tests.little import AT, fact

T = TypeVar("T")
ITEMS = ("clothes", "headgear", "cap", "hood", "scarf", "gloves")
GRADES = ("H1", "H2", "K1", "K2")
EARLY, LATE = datetime.date(2020, 1, 1), datetime.date(2024, 1, 1)
EDITIONS = (
    ("order/1", "order", EARLY),
    ("order/2", "order", LATE),
    ("notice/1", "notice", LATE),
    ("local/1", "local", LATE),
    ("local/2", "local", datetime.date(2025, 1, 1)),
    ("pilot/1", "pilot", LATE),
)
AUTHORITIES = {"board": 0, "district": 1, "station": 2, "pilots": 2}
BOOKS = {"order": "board", "notice": "district", "local": "station", "pilot": "pilots"}
ASPECTS = (
    Aspect(id="wear", label="wear", kind="act", verb="wear", done="worn", at=AT),
    Aspect(id="height", label="height", kind="measure", at=AT),
    Aspect(id="count", label="count", kind="count", at=AT),
    Aspect(
        id="colour",
        label="colour",
        kind="choice",
        values=tuple(FactValue(id=c, label=c, at=AT) for c in ("gilt", "silver", "black")),
        at=AT,
    ),
    Aspect(id="position", label="position", kind="position", at=AT),
)


class Chooser(Protocol):
    """Where the choices of a random base come from."""

    def pick(self, options: Sequence[T]) -> T: ...


class Seeded:
    """Choices of a seeded generator."""

    def __init__(self, seed: int) -> None:
        self._random = random.Random(seed)

    def pick(self, options: Sequence[T]) -> T:
        return options[int(self._random.random() * len(options))]


class Drawn:
    """Choices of hypothesis."""

    def __init__(self, draw: Any) -> None:
        self._draw = draw

    def pick(self, options: Sequence[T]) -> T:
        found: T = self._draw(st.sampled_from(options))
        return found


class _Maker:
    """One base in the making."""

    def __init__(self, chooser: Chooser) -> None:
        self.pick = chooser.pick
        self.items = self._items()
        self.facts = (
            Fact(
                id="grade",
                label="grade",
                ask="?",
                kind="scale",
                family="grade",
                values=tuple(FactValue(id=g, label=g, at=AT) for g in GRADES),
                at=AT,
            ),
            fact("weather", "fair", "foul", "snow"),
            fact("hauling"),
            Fact(id="temperature", label="temperature", ask="?", kind="quantity", unit="Cel", at=AT),
            Fact(id="awarded-on", label="award", ask="?", kind="date", at=AT),
            Fact(id="winter", label="winter", ask="?", kind="yes_no", family="term", at=AT),
            *(fact(f"worn:{item.id}") for item in self.items),
        )
        plain = ["grade", "weather", "hauling", "temperature", "awarded-on"]
        worn = [f"worn:{item.id}" for item in self.items]
        self.plain = [self.pick(plain)]
        self.topics = [*self.plain, self.pick(plain), self.pick(worn), self.pick(worn)]
        self.has_term = self.chance(4)
        if self.has_term:
            self.topics.append("winter")
        self.edition_ids = (
            ["order/1"] * 3 + ["order/2"] * 2 + ["notice/1", "local/1", "local/1", "local/2", "pilot/1"]
        )
        self.delegations = self._delegations() if self.chance(2) else ()
        self.rules: list[Rule] = []

    def chance(self, one_in: int) -> bool:
        return self.pick(range(one_in)) == one_in - 1

    def _items(self) -> tuple[Item, ...]:
        found: list[Item] = []
        for number in range(self.pick((1, 2, 3, 3, 4))):
            name = ITEMS[number]
            parents = []
            if found and not self.chance(3):
                parents.append(self.pick([item.id for item in found]))
                if self.chance(4):
                    parents.append(self.pick([item.id for item in found]))
            found.append(Item(id=name, label=name, broader=tuple(dict.fromkeys(parents)), at=AT))
        return tuple(found)

    def item(self) -> str:
        return self.pick([item.id for item in self.items])

    # -- conditions -------------------------------------------------------------------------------------

    def interval(self, bounds: Sequence[int]) -> ValueSet:
        low, high = self.pick([None, *bounds]), self.pick([None, *bounds])
        if low is not None and high is not None and low > high:
            low, high = high, low
        if low is None and high is None:
            low = bounds[0]
        made = Interval(
            None if low is None else Fraction(low),
            None if high is None else Fraction(high),
            low is not None and self.chance(2),
            high is not None and self.chance(2),
        )
        return ranges([made])

    def values_of(self, topic: str) -> ValueSet:
        if topic == "grade":
            first, last = sorted((self.pick(range(4)), self.pick(range(4))))
            return choices(*GRADES[first : last + 1])
        if topic == "weather":
            some = choices(self.pick(("fair", "foul", "snow")))
            return Choices(some.members, complement=self.chance(3))
        if topic == "temperature":
            return self.interval((0, 10))
        if topic == "awarded-on":
            return self.interval((737000, 737001, 737002))
        return self.pick((YES, NO))

    def test(self, topics: Sequence[str]) -> Condition:
        topic = self.pick(topics)
        return Test(topic, self.values_of(topic))

    def condition(self, topics: Sequence[str], depth: int = 2) -> Condition:
        shape = self.pick(range(8)) if depth else 0
        if shape < 4:
            return self.test(topics)
        if shape == 4:
            return NotOf(self.condition(topics, depth - 1))
        parts = [self.condition(topics, depth - 1) for _ in range(self.pick((2, 2, 3)))]
        return all_of(parts) if shape < 7 else any_of(parts)

    # -- books ------------------------------------------------------------------------------------------

    def _delegations(self) -> tuple[Delegation, ...]:
        clauses = [f"{edition}/{n}" for edition, _, _ in EDITIONS[:2] for n in (1, 2)]
        return tuple(
            Delegation(
                id=f"grant{number}",
                clause=f"{self.pick(('order/1', 'order/2', 'notice/1'))}/9",
                to=self.pick(("station", "district", "station")),
                clauses=(self.pick(clauses),) if self.chance(2) else (),
                items=(self.item(),) if self.chance(3) else (),
                allows="stricter" if self.chance(3) else "anything",
                at=AT,
            )
            for number in range(self.pick((1, 2)))
        )

    def clauses(self) -> tuple[Clause, ...]:
        found = []
        for edition, _, start in EDITIONS:
            for number in ("1", "2", "8", "9"):
                replaces = ()
                if edition == "order/2" and number == "1" and self.chance(3):
                    replaces = ("order/1/1",)
                found.append(
                    Clause(
                        id=f"{edition}/{number}",
                        edition=edition,
                        number=number,
                        text="Text.",
                        kind="rule",
                        valid_from=start,
                        valid_until=LATE
                        if number == "9" and edition == "order/1" and self.chance(3)
                        else None,
                        replaces=replaces,
                        at=AT,
                    )
                )
        return tuple(found)

    def definitions(self) -> tuple[Definition, ...]:
        if not self.has_term:
            return ()
        made = [
            Definition(term="winter", condition=self.condition(self.plain, 1), clause=clause, at=AT)
            for clause in ("order/1/8", "order/2/8")[: self.pick((1, 1, 2))]
        ]
        return tuple(made)

    # -- rules ------------------------------------------------------------------------------------------

    def value(self, aspect: str) -> ValueSet:
        if aspect == "wear":
            return YES
        if aspect == "height":
            return self.interval((5, 10, 20))
        if aspect == "count":
            return self.interval((1, 2))
        if aspect == "colour":
            first = self.pick(("gilt", "silver", "black"))
            return choices(first, self.pick(("gilt", "silver", "black")))
        return choices(self.pick(("left-cuff", "right-cuff", "collar")))

    def scope(self, modality: str, aspect: str) -> Scope:
        names = [item.id for item in self.items]
        if modality == "must" and aspect == "wear" and len(names) > 1 and self.chance(4):
            first = self.item()
            others = tuple(dict.fromkeys([first, self.item(), self.item()]))
            if len(others) > 1:
                return Scope(items=others, alternatives=self.pick(("one", "any")))
        items = (self.item(),) if not self.chance(6) else tuple(dict.fromkeys([self.item(), self.item()]))
        excluding = (self.item(),) if self.chance(6) else ()
        return Scope(items=items, excluding=excluding, narrower=not self.chance(8))

    def links(self, targets: Sequence[Rule], one_in: int) -> tuple[str, ...]:
        return (self.pick([rule.id for rule in targets]),) if targets and self.chance(one_in) else ()

    def rule(self, number: int, aspect: str) -> Rule:
        edition = self.pick(self.edition_ids)
        book = next(book for name, book, _ in EDITIONS if name == edition)
        modality = self.pick(("must", "must_not", "may", "need_not"))
        scope = self.scope(modality, aspect)
        same = [r for r in self.rules if r.aspect == aspect]
        under = self.links_to_delegation(BOOKS[book])
        return Rule(
            id=f"{edition}/r{number}",
            modality=modality,
            scope=scope,
            aspect=aspect,
            value=RuleValue(values=self.value(aspect)),
            condition=ALWAYS if self.chance(3) else self.condition(self.topics),
            clause=f"{edition}/{self.pick(('1', '2'))}",
            authority=BOOKS[book],
            valid_from=datetime.date(2030, 1, 1) if self.chance(20) else EARLY,
            valid_until=LATE if self.chance(20) else None,
            exception_to=self.links(same, 4),
            disables=self.links(self.rules, 6),
            repairs=self.repaired(),
            delegation=under,
            non_derogable=self.chance(8),
            residual=modality == "must_not" and self.chance(4),
            at=AT,
        )

    def links_to_delegation(self, authority: str) -> str | None:
        if not self.delegations or AUTHORITIES[authority] == 0 or self.chance(3):
            return None
        return self.pick(self.delegations).id

    def repaired(self) -> str | None:
        """A duty to wear or not to wear something, which only rules without a repair can be."""
        duties = [
            rule
            for rule in self.rules
            if rule.aspect == "wear"
            and rule.modality in ("must", "must_not")
            and rule.repairs is None
            and not rule.residual
            and len(rule.scope.items) == (1 if rule.scope.alternatives is None else len(rule.scope.items))
        ]
        return self.pick(duties).id if duties and self.chance(4) else None

    def base(self) -> RuleBase:
        aspects = ["wear", "wear", "wear", self.pick(("wear", "height", "count", "colour", "position"))]
        for number in range(self.pick((2, 3, 4, 5, 6, 7))):
            self.rules.append(self.rule(number, self.pick(aspects)))
        exclusions: list[Condition] = []
        if self.chance(3):
            exclusions.append(all_of([self.test(self.topics), self.test(self.topics)]))
        if self.chance(8):
            worn = [topic for topic in self.topics if topic.startswith("worn:")]
            exclusions.append(all_of([Test(self.pick(worn), NO), self.test(self.topics)]))
        return RuleBase(
            service=Service(id="little", label="Little", namespace="https://little.example/", at=AT),
            authorities=tuple(Authority(id=a, label=a, rank=rank, at=AT) for a, rank in AUTHORITIES.items()),
            facts=self.facts,
            groups=(),
            aspects=ASPECTS,
            items=self.items,
            books=tuple(Book(id=b, label=b, authority=a, at=AT) for b, a in BOOKS.items()),
            editions=tuple(
                Edition(id=e, label=e, book=book, valid_from=start, at=AT) for e, book, start in EDITIONS
            ),
            clauses=self.clauses(),
            delegations=self.delegations,
            definitions=self.definitions(),
            tolerances=(),
            exclusions=tuple(exclusions),
            rules=without_circles(tuple(self.rules), self.items),
        )


def _covers(rule: Rule, item: str, parents: dict[str, tuple[str, ...]]) -> bool:
    def above(start: str) -> set[str]:
        return {start}.union(*(above(parent) for parent in parents[start]))

    named = above(item) & set(rule.scope.items) if rule.scope.narrower else {item} & set(rule.scope.items)
    return bool(named) and not any(e in above(item) or item in above(e) for e in rule.scope.excluding)


def without_circles(rules: tuple[Rule, ...], items: tuple[Item, ...]) -> tuple[Rule, ...]:
    """The rules without their repairs where whether a rule applies would hang on itself: no book may say so.

    A rule hangs on those that disable it, and on all that decide whether the duty it repairs stands.
    """
    parents = {item.id: item.broader for item in items}
    named = {rule.id: rule for rule in rules}

    def rests(rule: Rule, duty: str) -> bool:
        return rule.repairs is not None and (rule.repairs == duty or rests(named[rule.repairs], duty))

    hangs: dict[str, set[str]] = {rule.id: {o.id for o in rules if rule.id in o.disables} for rule in rules}
    for rule in rules:
        if rule.repairs is not None:
            duty = named[rule.repairs]
            hangs[rule.id] |= {
                other.id
                for other in rules
                if other.aspect == duty.aspect
                and _covers(other, duty.scope.items[0], parents)
                and not rests(other, duty.id)
            }

    def reaches(start: str) -> set[str]:
        seen: set[str] = set()
        waiting = [start]
        while waiting:
            for following in hangs[waiting.pop()] - seen:
                seen.add(following)
                waiting.append(following)
        return seen

    if any(rule.id in reaches(rule.id) for rule in rules):
        return tuple(msgspec.structs.replace(rule, repairs=None) for rule in rules)
    return rules


def random_base(chooser: Chooser) -> RuleBase:
    """A rule base of up to seven rules, all of whose cases can be tried."""
    return _Maker(chooser).base()


@st.composite
def rule_bases(draw: st.DrawFn) -> RuleBase:
    return random_base(Drawn(draw))
