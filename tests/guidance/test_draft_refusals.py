"""A plan whose local rules overstep is refused: the clause, the principle, what would make it possible."""

from __future__ import annotations

import datetime
import random

import pytest

from kb.audit import audit_base
from kb.errors import Problem
from kb.guidance.refuse import refusals
from tests.guidance.draft_cases import SECOND, opened, plan_text

STRICT, WORKING = "dress-order/2024/local-strictness", "dress-order/2024/local-working-dress"


def rule(*lines: str, under: str = "") -> tuple[str, ...]:
    """The lines of a plan with one local clause of one rule."""
    body = [*lines, *([f"under: {under}"] if under else [])]
    first, *rest = body
    return (
        "clauses:",
        '  - clause: "1"',
        "    text: What the station wants.",
        "    rules:",
        f"      - {first}",
        *(f"        {line}" for line in rest),
    )


def refused(*lines: str, books: object = None, **plan: str) -> list[Problem]:
    return list(refusals(opened(plan_text(*lines, **plan), books)))  # type: ignore[arg-type]


# What the rule does, the code, and what the message and the remedy name.
REFUSED = [
    # relaxes a clause from which nobody may depart, whatever delegation it names
    (
        rule("need not: flotation-vest", "when: {place: slipway, hauling: yes}", under=STRICT),
        "non-derogable",
        ("relaxes Dress Order (2024) 7.1", "only the Board of Lights could change"),
    ),
    (
        rule("need not: flotation-vest", "when: {place: slipway, hauling: yes, weather: fair}"),
        "non-derogable",
        ("7.1", "not derogable"),
    ),
    # more lenient under a delegation to be stricter
    (
        rule("may: headphones", "when: {activity: lamp-work, on-watch: yes}", under=STRICT),
        "stricter-only",
        ("6.14", "allows: anything"),
    ),
    # turns a duty round under a delegation to be stricter
    (
        rule("must not: boat-helmet", "when: {activity: boarding}", under=STRICT),
        "stricter-only",
        ("overrides Dress Order (2024) 7.9", "turn the duty round"),
    ),
    # permits what is prohibited, requires what is prohibited
    (rule("may: earrings", "when: {place: mess}"), "no-delegation", ("6.5", "allows: anything")),
    (rule("must: shore-coat", "rig: boat-rig"), "no-delegation", ("overrides", "3.5", "allows: anything")),
    # an exception without a delegation
    (
        rule("may: canvas-trousers", "rig: watch-rig", "when: {place: town}",
             "exception to: dress-order/2024 clause 3.16"),
        "no-delegation",
        ("3.16",),
    ),
    # permits what is closed because nothing mentions it
    (rule("may: station-patch"), "no-delegation", ("1.7", "unless provided for")),
    # stricter than a clause that leaves the choice, without a delegation or beyond it
    (rule("must: spectacles"), "no-delegation", ("is stricter than", "6.2", "allows: stricter")),
    (rule("must: spectacles", under=WORKING), "outside-delegation", ("6.2", "1.9")),
    (rule("must: qualification-device", "count: at most 1"), "no-delegation", ("is stricter than", "5.12")),
    (rule("must: hair-fastening", "colour: black"), "no-delegation", ("6.17",)),
    # a delegation that is not about the matter, in which no rule above stands
    (rule("must alter: shore-coat", under=STRICT), "outside-delegation", ("1.15",)),
    (rule("must: shore-coat", "colour: black", under=STRICT), "outside-delegation", ("no rule of theirs",)),
    # says what the books say already: one clause, two clauses together
    (
        rule("must: service-cap", "rig: [watch-rig, parade-rig]", "when: {indoors: no}", under=WORKING),
        "repeats",
        ("4.1",),
    ),
    (rule("must: jersey", "rig: [boat-rig, storm-rig]", under=WORKING), "repeats", ("3.4", "3.6")),
    # never applies
    (rule("must: boat-helmet", "when: {place: afloat, activity: parade}", under=STRICT), "never-applies", ()),
]  # fmt: skip

ALLOWED = [
    rule("must not carry: telephone", "when: {place: mess}", under=STRICT),
    rule("must: boat-helmet", "when: {place: open-decks, sea-state: moderate and above}", under=STRICT),
    rule("must: boat-helmet", "when: {place: town}", under=STRICT),
    rule("need not: canvas-trousers", "rig: workshop-rig", "when: {activity: lamp-work}",
         "exception to: dress-order/2024 clause 3.8", under=WORKING),
    rule("may carry: rucksack", "rig: watch-rig", "when: {activity: lamp-work}",
         "exception to: dress-order/2024 clause 6.11", under=WORKING),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "code", "named"), REFUSED)
def test_what_oversteps_is_refused_with_clause_principle_and_way_out(
    lines: tuple[str, ...], code: str, named: tuple[str, ...]
) -> None:
    (problem,) = refused(*lines)
    assert problem.code == code, problem
    assert all(part in str(problem) for part in named), problem
    assert (problem.at.file, problem.at.line) == ("little.plan", 12)
    assert problem.severity == "error"
    assert code in ("repeats", "never-applies") or "The principle:" in problem.message
    assert problem.remedy


@pytest.mark.parametrize("lines", ALLOWED)
def test_what_a_delegation_reaches_is_not_refused(lines: tuple[str, ...]) -> None:
    assert refused(*lines) == []


def test_a_rule_above_that_lets_it_is_named() -> None:
    (problem,) = refused(*rule("must not carry: telephone", "when: {place: mess}"))
    assert f"under: {STRICT}" in problem.remedy
    assert "1.10" in problem.remedy


def test_only_the_people_and_places_of_the_plan_count() -> None:
    """A local rule that clashes with the books only for others does not clash here."""
    lines = rule("must: white-lanyard", "rig: parade-rig", "when: {holds: coxswain}", under=STRICT)
    assert {p.code for p in refused(*lines)} == {"outside-delegation"}
    narrow = ("audience: {grades: K3 to K7}", "rigs: boat-rig")
    assert {p.code for p in refused(*narrow, *lines)} <= {"outside-delegation", "never-applies"}


def test_other_books_with_other_delegations_are_judged_alike() -> None:
    lines = rule(
        "may: hall-cap", "rig: hall-rig", "when: {place: low-tarn-hut}", under="fell-book/2025/hut-dress"
    )
    assert refused(*lines, books=SECOND, authority="cold-pike-keeper", day="2026-02-01") == []
    bare = rule("may: hall-cap", "rig: hall-rig", "when: {place: low-tarn-hut}")
    (problem,) = refused(*bare, books=SECOND, authority="cold-pike-keeper", day="2026-02-01")
    assert (problem.code, "under: fell-book/2025/hut-dress" in problem.remedy) == ("no-delegation", True)
    boots = rule("must not: fell-boots", "when: {place: low-tarn-hut}", under="fell-book/2025/hut-dress")
    (problem,) = refused(*boots, books=SECOND, authority="cold-pike-keeper", day="2026-02-01")
    assert (problem.code, "2.12" in problem.message) == ("outside-delegation", True)


def test_a_rule_is_judged_on_every_day_of_the_guidance() -> None:
    """Clause 6.14 lets headphones be worn when travelling until January; from then on they are prohibited."""
    lines = rule("may: headphones", "when: {activity: travelling, on-watch: no, place: slipway}")
    (problem,) = refused(*lines, end="2027-02-01")
    assert problem.code == "no-delegation"
    assert "Interim Notice to the Dress Order (2026) 6" in problem.message


MODALITIES = ("must", "must not", "may", "need not")
ITEMS = ("jersey", "telephone", "boat-helmet", "earrings", "day-shirt", "deck-shoes", "headphones",
         "storm-coat", "flotation-vest", "white-gloves", "satchel", "scarf", "bright-vest")  # fmt: skip
WHENS = ("", "{place: mess}", "{place: slipway, weather: foul}", "{place: afloat, activity: parade}",
         "{on-watch: yes}", "{machinery-running: yes}", "{worn: storm-coat}")  # fmt: skip
RIGS = ("", "watch-rig", "workshop-rig", "[boat-rig, storm-rig]")


def _random_clauses(dice: random.Random, number: int) -> list[str]:
    lines = ["clauses:"]
    for i in range(number):
        lines += [f'  - clause: "{i + 1}"', "    text: At random.", "    rules:"]
        lines.append(f"      - {dice.choice(MODALITIES)}: {dice.choice(ITEMS)}")
        when, rig, under = dice.choice(WHENS), dice.choice(RIGS), dice.choice(("", STRICT, WORKING))
        lines += [f"        when: {when}"] * bool(when) + [f"        rig: {rig}"] * bool(rig)
        lines += [f"        under: {under}"] * bool(under)
    return lines


@pytest.mark.parametrize("seed", range(6))
def test_whatever_the_audit_finds_in_local_rules_is_refused(seed: int) -> None:
    """The audit looks at the books with the plan's rules among them; it knows nothing of plans."""
    dice = random.Random(seed)
    plan = opened(plan_text(*_random_clauses(dice, 8)))
    places = {problem.at for problem in refusals(plan)}
    local = {r.id: r.at for r in plan.lookup.base.rules if r.clause.startswith("little/")}
    report = audit_base(plan.lookup.base, datetime.date(2026, 12, 1))
    found = [f for f in report.of("error", "warning") if f.rules and f.rules[0] in local]
    missed = [f for f in found if f.code != "idle-exception" and local[f.rules[0]] not in places]
    assert not missed, missed
