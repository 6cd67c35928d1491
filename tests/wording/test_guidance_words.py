"""What guidance says besides its rules: for whom it is, and what protects."""

from __future__ import annotations

import pytest

from kb import demo_folder
from kb.model.conditions import ALWAYS, Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.model.values import NO, YES, choices
from kb.sources import load_rule_base
from kb.wording import say_audience, say_protection, say_rule

BASE = load_rule_base(demo_folder()).base
assert BASE is not None
LOOKUP = Lookup(BASE)
BOATS = Test("branch", choices("boats"))
DECKS = ("boat-deck", "tender-deck", "skiff")


@pytest.mark.parametrize(
    ("condition", "said"),
    [
        (ALWAYS, "everyone"),
        (BOATS, "members of the boat branch"),
        (Test("rig", choices("boat-rig", "storm-rig")), "everyone in boat or storm rig"),
        (
            all_of([Test("grade", choices("K1")), BOATS, Test("winter", YES)]),
            "a K1 of the boat branch when it is winter",
        ),
        (Test("place", choices(*DECKS)), "everyone on deck"),
        (Test("place", choices("slipway", *DECKS)), "everyone on the slipway or on deck"),
        (
            all_of([Test("weather", choices("fog")), Test("machinery-running", NO), Test("hot-work", YES)]),
            "everyone when the weather is fog; when machinery is not running; "
            "and when hot work is being done",
        ),
    ],
)
def test_an_audience_is_said_by_who_where_and_when(condition: Condition, said: str) -> None:
    assert say_audience(LOOKUP, condition) == said


def test_protection_is_said_by_what_things_protect_from() -> None:
    def said(*items: str) -> str:
        return say_protection(LOOKUP, {item: LOOKUP.items[item].protects for item in items})

    assert said("knit-cap") == "the knit cap protects against cold"
    assert said("knit-cap", "scarf", "sea-boots") == (
        "the knit cap and the wool scarf protect against cold; the sea boots protect the feet"
    )
    assert said("gauntlets") == "the heat gauntlets protect the hands, and against heat and flame"
    assert said("bright-vest", "flotation-vest", "climbing-harness") == (
        "the high-visibility vest protects by being seen; the flotation vest protects against drowning; "
        "the climbing harness protects against falls"
    )
    assert say_protection(LOOKUP, {"knit-cap": ("breathing", "chemicals", "electricity")}) == (
        "the knit cap protects the lungs, and against chemicals and electricity"
    )


def test_a_period_stands_in_the_place_of_the_rules_own() -> None:
    rule = LOOKUP.rules["dress-order/2024/2.8-1"]
    assert say_rule(LOOKUP, rule).startswith("Before 1 October 2026, the ")
    assert say_rule(LOOKUP, rule, "").startswith("The ")
    assert say_rule(LOOKUP, rule, "from 1 May 2027,").startswith("From 1 May 2027, the ")
