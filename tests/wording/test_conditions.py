# ruff: noqa: E501  tables read better on one line
"""Conditions as clauses, decision-table rows and cases."""

from __future__ import annotations

import datetime

import pytest

from kb.model.conditions import ALWAYS, NEVER, AllOf, AnyOf, Condition, NotOf
from kb.model.records import Case
from kb.wording import say_case, say_condition, say_depends, say_facts, say_holders
from tests.wording.bases import both, is_, no, span, words, yes

LOOKUP = words()
FOUL, DOWN, HAULING = is_("weather", "foul"), is_("sleeves", "down"), yes("hauling")
BOAT, ASHORE = is_("rig", "boat"), is_("place", "ashore", "town", "pier")
TOWN = is_("place", "town")
K5_UP = is_("grade", "K5", "K6", "K7", "W1", "W2", "W3", "W4")

CONDITIONS: list[tuple[Condition, str]] = [
    (ALWAYS, ""),
    (NEVER, "when never"),
    (both(FOUL, DOWN, NotOf(HAULING)), "when the weather is foul and the sleeves are down, unless hauling lines"),
    (ASHORE, "when ashore"),
    (both(BOAT, ASHORE), "when in boat rig ashore"),
    (both(BOAT, FOUL), "in boat rig when the weather is foul"),
    (both(K5_UP, FOUL), "for K5 and above when the weather is foul"),
    (NotOf(HAULING), "unless hauling lines"),
    (both(FOUL, no("hauling")), "when the weather is foul and the wearer is not hauling lines"),
    (both(HAULING, yes("guard")),
     "when hauling lines and a member of the guard"),
    (AnyOf((FOUL, HAULING)), "when the weather is foul or the wearer is hauling lines"),
    (AnyOf((ASHORE, HAULING)), "when ashore or hauling lines"),
    # An "and" that is set off by a comma could go with both cases.
    (AnyOf((FOUL, both(BOAT, TOWN, yes("holds:diver")))),
     "when the weather is foul, or the wearer is in boat rig and in town and holds the diver qualification"),
    (AnyOf((FOUL, both(BOAT, TOWN, K5_UP))),
     "when (1) the weather is foul, or (2) the wearer is in boat rig and in town, and the wearer's grade is K5 or above"),
    (AnyOf((both(FOUL, DOWN), HAULING)),
     "when the weather is foul and the sleeves are down, or the wearer is hauling lines"),
    (NotOf(AllOf((FOUL, NotOf(HAULING)))), "unless the weather is foul and the wearer is not hauling lines"),
    (both(FOUL, AnyOf((HAULING, both(DOWN, AnyOf((ASHORE, BOAT)))))),
     "when the weather is foul, and at least one of these holds: (a) the wearer is hauling lines; "
     "(b) the sleeves are down, and the wearer is ashore or in boat rig"),
    (both(yes("worn:cap"), no("worn:scarf")), "when wearing the service cap and not wearing the wool scarf"),
]  # fmt: skip


@pytest.mark.parametrize(("condition", "expected"), CONDITIONS)
def test_conditions(condition: Condition, expected: str) -> None:
    assert say_condition(LOOKUP, condition) == expected


def _facts(*conditions: Condition) -> tuple[tuple[str, object], ...]:
    return tuple((test.fact, test.values) for test in conditions)  # type: ignore[union-attr]


def test_a_row_of_a_decision_table_is_made_of_clauses() -> None:
    rows = [
        (_facts(FOUL, DOWN), "the weather is foul and the sleeves are down"),
        (
            _facts(ASHORE, no("hauling"), FOUL),
            "the wearer is ashore and not hauling lines, and the weather is foul",
        ),
        (_facts(K5_UP), "the wearer's grade is K5 or above"),
        (_facts(), ""),
    ]
    assert [say_facts(LOOKUP, facts) for facts, _ in rows] == [text for _, text in rows]  # type: ignore[arg-type]


def test_holders_are_people() -> None:
    not_k5 = is_("grade", *(grade for grade in LOOKUP.order("grade") if grade != "K5"))
    assert (
        say_holders(LOOKUP, _facts(K5_UP, yes("holds:diver"))) == "K5 and above with the diver qualification"
    )  # type: ignore[arg-type]
    assert say_holders(LOOKUP, _facts(yes("holds:diver"))) == "members with the diver qualification"  # type: ignore[arg-type]
    assert (
        say_holders(LOOKUP, _facts(not_k5, no("holds:beard")))
        == "everyone without the beard waiver except K5"
    )  # type: ignore[arg-type]
    assert say_holders(LOOKUP, ()) == "everyone"


def test_a_case_as_a_read_back() -> None:
    facts = _facts(is_("grade", "K5"), BOAT, ASHORE, FOUL, DOWN, yes("worn:storm-coat"))
    case = Case(as_of=datetime.date(2026, 11, 25), facts=facts, alone=True)  # type: ignore[arg-type]
    assert say_case(LOOKUP, case) == (
        "a K5 in boat rig, ashore, foul weather, sleeves down, with the storm coat, nothing else worn"
    )
    assert say_case(LOOKUP, Case(as_of=datetime.date(2026, 11, 25))) == "someone"
    warm = Case(as_of=datetime.date(2026, 11, 25), facts=_facts(span("temperature", 30, None, "l")))  # type: ignore[arg-type]
    assert say_case(LOOKUP, warm) == "someone, air temperature above 30 °C"


def test_what_it_depends_on_is_listed_once() -> None:
    assert (
        say_depends(LOOKUP, ["weather", "sleeves", "weather"])
        == "the weather and whether the sleeves are down or up"
    )
