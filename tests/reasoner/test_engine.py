"""Precedence, exceptions, delegation, repair and unknown facts, on little bases."""

from __future__ import annotations

import datetime

import pytest

from kb.model.conditions import ALWAYS, Condition, NotOf, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.records import Case, Delegation, Scope
from kb.model.values import NO, YES, ValueSet, choices
from kb.reasoner import Engine, possible_facts, rows
from tests.little import AT, DAY, base, fact, rule

FOUL = Test("weather", choices("foul"))
ASHORE = Test("place", choices("ashore"))
FACTS = (fact("weather", "fair", "foul"), fact("place", "ashore", "afloat"), fact("hauling"))


def verdicts(lookup: Lookup, item: str = "cap", **facts: str) -> set[str]:
    known = tuple((name, choices(value)) for name, value in facts.items())
    engine = Engine(lookup, DAY)
    possible = possible_facts(Case(as_of=DAY, facts=known), (item,), False, lookup)
    return {v for _, v in rows(engine.problem(engine.group(item, "wear"), possible).verdicts())}


def principle(lookup: Lookup, left: str, right: str) -> tuple[str, str] | None:
    win = Engine(lookup, DAY).precedence.win(left, right)
    return (win.winner, win.principle) if win else None


@pytest.mark.parametrize(
    ("modality", "verdict"),
    [("must", "required"), ("must_not", "prohibited"), ("may", "permitted"), ("need_not", "not_required")],
)
def test_one_rule_alone_gives_its_verdict(modality: str, verdict: str) -> None:
    assert verdicts(base(rule("a", modality))) == {verdict}  # type: ignore[arg-type]


def test_nothing_said_is_silent_and_never_allowed() -> None:
    assert verdicts(base(rule("a", "must")), item="scarf") == {"silent"}


def test_equal_rules_against_each_other_are_a_conflict() -> None:
    assert verdicts(base(rule("a", "must"), rule("b", "must_not"))) == {"conflict"}


def test_line_1_exception() -> None:
    lookup = base(rule("a", "must_not"), rule("b", "may", exception_to=("a",)))
    assert principle(lookup, "a", "b") == ("b", "exception")
    assert verdicts(lookup) == {"permitted"}


def test_line_1_a_lower_authority_cannot_declare_an_exception_without_delegation() -> None:
    local = rule("b", "may", edition="local/1", authority="station", exception_to=("a",))
    assert principle(base(rule("a", "must_not"), local), "a", "b") == ("a", "authority")


GRANT = Delegation(id="d", clause="order/1/9", to="station", at=AT)


def test_line_2_delegation() -> None:
    local = rule("b", "may", edition="local/1", authority="station", delegation="d")
    lookup = base(rule("a", "must_not"), local, delegations=(GRANT,))
    assert principle(lookup, "a", "b") == ("b", "delegation")


def test_line_2_a_non_derogable_rule_is_not_departed_from() -> None:
    local = rule("b", "may", edition="local/1", authority="station", delegation="d")
    lookup = base(rule("a", "must_not", non_derogable=True), local, delegations=(GRANT,))
    assert principle(lookup, "a", "b") == ("a", "authority")


def test_line_2_a_delegation_to_be_stricter_does_not_let_relax() -> None:
    stricter = Delegation(id="d", clause="order/1/9", to="station", allows="stricter", at=AT)
    relaxed = rule("b", "may", edition="local/1", authority="station", delegation="d")
    tightened = rule("c", "must_not", edition="local/1", authority="station", delegation="d")
    lookup = base(rule("a", "must_not"), rule("m", "may"), relaxed, tightened, delegations=(stricter,))
    assert principle(lookup, "a", "b") == ("a", "authority")
    assert principle(lookup, "m", "c") == ("c", "delegation")


def test_line_2_a_delegation_is_limited_to_its_clauses_and_items() -> None:
    narrow = Delegation(
        id="d", clause="order/1/9", to="station", clauses=("order/1/7",), items=("scarf",), at=AT
    )
    local = rule("b", "may", "scarf", edition="local/1", authority="station", delegation="d")
    lookup = base(
        rule("a", "must_not", "scarf", clause="7"),
        rule("c", "must_not", "scarf"),
        local,
        delegations=(narrow,),
    )
    assert principle(lookup, "a", "b") == ("b", "delegation")
    assert principle(lookup, "c", "b") == ("c", "authority")


def test_line_3_authority() -> None:
    lookup = base(rule("a", "may"), rule("b", "must_not", edition="local/1", authority="station"))
    assert principle(lookup, "a", "b") == ("a", "authority")
    assert verdicts(lookup) == {"permitted"}


def test_line_4_the_later_edition() -> None:
    later = {"notice/1": datetime.date(2025, 1, 1)}
    lookup = base(rule("a", "must"), rule("b", "must_not", edition="notice/1"), editions=later)
    assert principle(lookup, "a", "b") == ("b", "edition")


def test_line_4_gives_way_where_the_earlier_is_strictly_more_specific() -> None:
    later = {"notice/1": datetime.date(2025, 1, 1)}
    lookup = base(
        rule("a", "may", when=FOUL), rule("b", "must_not", edition="notice/1"), editions=later, facts=FACTS
    )
    assert principle(lookup, "a", "b") == ("a", "specificity")


@pytest.mark.parametrize(
    ("narrow", "wide"),
    [
        (all_of([FOUL, ASHORE]), FOUL),
        (FOUL, any_of([FOUL, ASHORE])),
        (all_of([FOUL, NotOf(ASHORE)]), FOUL),
        (FOUL, ALWAYS),
    ],
)
def test_line_5_specificity_by_facts(narrow: Condition, wide: Condition) -> None:
    lookup = base(rule("a", "may", when=narrow), rule("b", "must_not", when=wide), facts=FACTS)
    assert principle(lookup, "a", "b") == ("a", "specificity")


def test_line_5_specificity_by_the_item_taxonomy() -> None:
    items = {"headgear": (), "cap": ("headgear",)}
    lookup = base(rule("a", "may"), rule("b", "must_not", "headgear"), items=items)
    assert principle(lookup, "a", "b") == ("a", "specificity")


def test_line_5_specificity_by_declared_exclusions() -> None:
    """Afloat and hauling exclude each other, so "hauling" lies inside "ashore"."""
    never = all_of([Test("place", choices("afloat")), Test("hauling", YES)])
    lookup = base(
        rule("a", "may", when=Test("hauling", YES)),
        rule("b", "must_not", when=ASHORE),
        facts=FACTS,
        exclusions=(never,),
    )
    assert principle(lookup, "a", "b") == ("a", "specificity")


def test_overlapping_conditions_are_a_tie() -> None:
    lookup = base(rule("a", "may", when=FOUL), rule("b", "must_not", when=ASHORE), facts=FACTS)
    assert principle(lookup, "a", "b") is None
    assert verdicts(lookup, weather="foul", place="ashore") == {"conflict"}
    assert verdicts(lookup, weather="foul", place="afloat") == {"permitted"}


def test_an_unknown_fact_is_never_read_as_false() -> None:
    lookup = base(rule("a", "may", when=FOUL), facts=FACTS)
    assert verdicts(lookup) == {"permitted", "silent"}


def test_a_fact_that_cannot_change_the_answer_is_not_in_the_tree() -> None:
    lookup = base(rule("a", "must"), rule("b", "may", when=FOUL), facts=FACTS)
    engine = Engine(lookup, DAY)
    assert rows(engine.problem(engine.group("cap", "wear"), {}).verdicts()) == (((), "required"),)


def test_a_disabled_rule_does_not_apply() -> None:
    lookup = base(rule("a", "must"), rule("b", "may", "scarf", when=FOUL, disables=("a",)), facts=FACTS)
    assert verdicts(lookup, weather="foul") == {"silent"}
    assert verdicts(lookup, weather="fair") == {"required"}


def test_a_repair_applies_once_the_duty_is_broken_and_stands() -> None:
    rules = (
        rule("duty", "must", when=FOUL),
        rule("repair", "must", "scarf", repairs="duty"),
    )
    lookup = base(*rules, facts=FACTS)
    assert verdicts(lookup, "scarf", weather="foul", **{"worn:cap": "no"}) == {"required"}
    assert verdicts(lookup, "scarf", weather="foul", **{"worn:cap": "yes"}) == {"silent"}
    assert verdicts(lookup, "scarf", weather="fair", **{"worn:cap": "no"}) == {"silent"}


def test_a_repair_of_a_beaten_duty_does_not_apply() -> None:
    rules = (
        rule("duty", "must_not"),
        rule("grant", "may", exception_to=("duty",)),
        rule("repair", "must", "scarf", repairs="duty"),
    )
    assert verdicts(base(*rules), "scarf", **{"worn:cap": "yes"}) == {"silent"}


@pytest.mark.parametrize(
    ("kind", "worn", "expected"),
    [("one", NO, "required"), ("one", YES, "prohibited"), ("any", NO, "required"), ("any", YES, "permitted")],
)
def test_one_duty_over_a_set(kind: str, worn: ValueSet, expected: str) -> None:
    scope = Scope(items=("cap", "scarf"), alternatives=kind)  # type: ignore[arg-type]
    lookup = base(rule("a", "must", scope=scope))
    engine = Engine(lookup, DAY)
    possible = {"worn:scarf": worn}
    table = rows(engine.problem(engine.group("cap", "wear"), possible).verdicts())
    assert table == (((), expected),)


def test_wearing_a_narrower_item_is_wearing_the_broader() -> None:
    items = {"cap": (), "neckwear": (), "scarf": ("neckwear",)}
    lookup = base(rule("a", "must_not", when=Test("worn:neckwear", YES)), items=items)
    assert verdicts(lookup, **{"worn:scarf": "yes"}) == {"prohibited"}
    assert verdicts(lookup, **{"worn:scarf": "no"}) == {"prohibited", "silent"}
    assert verdicts(lookup, **{"worn:neckwear": "no"}) == {"silent"}


def test_alone_means_that_nothing_else_is_worn() -> None:
    lookup = base(rule("a", "must_not", when=Test("worn:scarf", NO)))
    engine = Engine(lookup, DAY)
    possible = possible_facts(Case(as_of=DAY, alone=True), ("cap",), False, lookup)
    assert rows(engine.problem(engine.group("cap", "wear"), possible).verdicts()) == (((), "prohibited"),)


def test_exactly_one_of_a_set_is_stricter_than_a_general_permission_of_a_member() -> None:
    """The duty's effect on the second item has fewer cases than the permission, so it prevails there."""
    scope = Scope(items=("cap", "scarf"), alternatives="one")
    lookup = base(rule("a", "must", scope=scope), rule("b", "may", "scarf"))
    assert verdicts(lookup, "scarf", **{"worn:cap": "yes"}) == {"prohibited"}
