"""Compiled decisions against the question path: the same verdict and the same rules, whatever is known."""

from __future__ import annotations

import random
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kb import KnowledgeBase
from kb.answer.acts import act_part
from kb.answer.aspects import aspect_part
from kb.compiled import Decided, Decider, Value, set_of, value_of
from kb.errors import UsageError
from kb.model import conditions
from kb.model.conditions import Test, all_of
from kb.model.lookup import Lookup
from kb.model.records import Case, Fact, Rule, RuleBase
from kb.model.values import YES, Choices, Interval, Ranges, choices, point, ranges
from kb.reasoner import Engine, possible_facts
from tests.little import AT, DAY, base, fact, rule
from tests.opening import opened
from tests.proof.random_bases import rule_bases

NOT_WORN = ("possession", "kit-count")
Told = tuple[str, frozenset[str]] | str


def told(decided: Decided) -> Told:
    return decided.verdict, frozenset(decided.rules)


def by_question(engine: Engine, item: str, aspect: str, case: Mapping[str, Value]) -> Told:
    """The verdict and the rules that the answer to a question would give."""
    act = engine.lookup.aspects[aspect].kind == "act"
    facts = tuple((name, set_of(value)) for name, value in case.items())
    wearing = not act and aspect not in NOT_WORN
    possible = possible_facts(Case(as_of=engine.as_of, facts=facts), (item,), wearing, engine.lookup)
    if not engine.check_case(possible):
        return "impossible"
    part = (act_part if act else aspect_part)(engine, item, aspect, possible)
    return part.verdict, frozenset(rule for row in part.cases for rule in row.rules)


def compiled(decider: Decider, item: str, aspect: str, case: Mapping[str, Value]) -> Told:
    try:
        decider.check(item, aspect, case)
        return told(decider.decide(item, aspect, case))
    except UsageError:
        return "impossible"


def bounds(lookup: Lookup, name: str) -> list[Fraction]:
    """Every number that a condition names for a fact, and numbers on both sides of it."""
    written = [r.condition for r in lookup.base.rules] + [d.condition for d in lookup.base.definitions]
    found = {
        bound
        for condition in (*written, *lookup.base.exclusions)
        for test in conditions.tests(condition)
        if test.fact == name and isinstance(test.values, Ranges)
        for interval in test.values.intervals
        for bound in (interval.low, interval.high)
        if bound is not None
    }
    return sorted({n + step for n in found or {Fraction(DAY.toordinal())} for step in (-1, 0, 1)})


def any_value(chooser: random.Random, lookup: Lookup, name: str, partial: bool) -> Value:
    domain = lookup.domain(name)
    if isinstance(domain, Choices):
        names = sorted(domain.members)
        if partial and chooser.random() < 0.3:
            return choices(*chooser.sample(names, chooser.randint(1, len(names))))
        return chooser.choice(names)
    number = chooser.choice(bounds(lookup, name))
    if partial and chooser.random() < 0.3:
        return ranges([Interval(number, number + 2)])
    return value_of(point(number))


@pytest.mark.slow
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
@given(rule_bases(), st.randoms(use_true_random=False))
def test_random_bases_agree(found: RuleBase, chooser: random.Random) -> None:
    lookup = Lookup(found)
    engine, decider = Engine(lookup, DAY), Decider(Engine(lookup, DAY))
    for aspect in dict.fromkeys(r.aspect for r in found.rules):
        for item in lookup.items:
            for share in (1.0, 0.5):
                known = [name for name in lookup.facts if chooser.random() < share]
                case = {name: any_value(chooser, lookup, name, share < 1) for name in known}
                expected = by_question(engine, item, aspect, case)
                assert compiled(decider, item, aspect, case) == expected, (item, aspect, case)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.slow
def test_the_demo_agrees(demo: KnowledgeBase) -> None:
    """Through the candidate query: every item and aspect with rules, with all facts known and with some."""
    engine, decider = demo.engine(DAY), Decider(demo.engine(DAY))
    chooser, lookup = random.Random(5), demo.lookup
    seen: set[str] = set()
    places = [
        (item, aspect)
        for item in lookup.items
        for aspect in dict.fromkeys(r.aspect for r in lookup.base.rules)
    ]
    for item, aspect in places:
        group = engine.group(item, aspect)
        if not group.rules:
            continue
        names = (*engine.problem(group, {}).facts, "grade", "rig", "place", "weather", "activity")
        for share in (1.0, 0.7):
            known = [name for name in dict.fromkeys(names) if chooser.random() < share]
            case = {name: any_value(chooser, lookup, name, share < 1) for name in known}
            expected = by_question(engine, item, aspect, case)
            assert compiled(decider, item, aspect, case) == expected, (item, aspect, case)
            seen.add(expected if isinstance(expected, str) else expected[0])
    assert seen >= {"required", "permitted", "prohibited", "conditional", "silent", "impossible"}


def little(*rules: Rule, **more: Any) -> Decider:
    temperature = Fact(id="temperature", label="temperature", ask="?", kind="quantity", unit="Cel", at=AT)
    return Decider(Engine(base(*rules, facts=(fact("weather", "fair", "foul"), temperature), **more), DAY))


BELOW_FOUR = Test("temperature", ranges([Interval(high=Fraction(4), high_open=True)]))
COLD = rule("cold", "must", when=BELOW_FOUR, clause="7")


@pytest.mark.parametrize(
    ("case", "verdict", "clauses"),
    [
        ({"temperature": 3}, "required", ("order/1/7",)),
        ({"temperature": Fraction(399, 100)}, "required", ("order/1/7",)),
        ({"temperature": 4}, "silent", ()),
        ({"temperature": 40}, "silent", ()),
        ({}, "conditional", ("order/1/7",)),
        ({"temperature": ranges([Interval(Fraction(3), Fraction(5))])}, "conditional", ("order/1/7",)),
        ({"temperature": ranges([Interval(Fraction(1), Fraction(2))])}, "required", ("order/1/7",)),
    ],
)
def test_numbers_fall_on_the_right_side(
    case: dict[str, Value], verdict: str, clauses: tuple[str, ...]
) -> None:
    decided = little(COLD).decide("cap", "wear", case)
    assert (decided.verdict, decided.clauses) == (verdict, clauses)


def test_a_conflict_names_both_clauses() -> None:
    decided = little(COLD, rule("never", "must_not", clause="8", when=BELOW_FOUR)).decide(
        "cap", "wear", {"temperature": 0}
    )
    assert decided == Decided("conflict", ("order/1/8", "order/1/7"), ("never", "cold"))


def test_what_is_worn_counts_as_what_is_broader() -> None:
    kinds = {"neckwear": (), "scarf": ("neckwear",), "cap": ()}
    decider = little(rule("bare", "must_not", when=Test("worn:neckwear", YES)), items=kinds)
    assert decider.decide("cap", "wear", {"worn:scarf": "yes"}).verdict == "prohibited"
    assert decider.decide("cap", "wear", {"worn:neckwear": "no"}).verdict == "silent"
    assert decider.decide("cap", "wear", {"worn:scarf": "no"}).verdict == "conditional"
    with pytest.raises(UsageError, match="exclude"):
        decider.decide("cap", "wear", {"worn:scarf": "yes", "worn:neckwear": "no"})


def test_excluded_facts_are_refused() -> None:
    frost = all_of([Test("weather", choices("foul")), BELOW_FOUR])
    decider = little(COLD, exclusions=(frost,))
    with pytest.raises(UsageError, match="exclude"):
        decider.decide("cap", "wear", {"temperature": 0, "weather": "foul"})
    assert decider.decide("cap", "wear", {"weather": "foul"}).verdict == "silent", "so it is not cold"
    with pytest.raises(UsageError, match="exclude"):
        decider.check("scarf", "wear", {"temperature": 0, "weather": "foul"})


def test_memory_stays_small(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kb.compiled._MOST_KEPT", 10)
    decider = little(COLD)
    for n in range(100):
        values = ranges([Interval(Fraction(n), Fraction(n + 1))])
        assert decider.decide("cap", "wear", {"temperature": values}).verdict
    (only,) = decider._compiled.values()
    assert len(only._known) <= 10
