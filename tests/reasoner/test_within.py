"""What is said of cases within further facts, also where these cut across what the rules tell apart."""

from __future__ import annotations

import itertools

import pytest

from kb.model.conditions import Test
from kb.model.records import Case
from kb.model.values import choices
from kb.reasoner import Engine, possible_facts
from tests.little import DAY, base, fact, rule

WEATHER = ("fair", "rain", "fog", "snow")
LOOKUP = base(
    rule("wet", "must", when=Test("weather", choices("rain", "snow"))),
    rule("clear", "must_not", when=Test("weather", choices("fair"))),
    facts=(fact("weather", *WEATHER),),
)
VERDICT = {"fair": "prohibited", "rain": "required", "fog": "silent", "snow": "required"}


@pytest.mark.parametrize(
    "chosen", [some for n in range(1, 5) for some in itertools.combinations(WEATHER, n)], ids="-".join
)
def test_every_set_of_values_has_the_verdicts_of_its_values(chosen: tuple[str, ...]) -> None:
    engine = Engine(LOOKUP, DAY)
    possible = possible_facts(Case(as_of=DAY), ("cap",), False, LOOKUP)
    problem = engine.problem(engine.group("cap", "wear"), possible)
    within = {"weather": choices(*chosen)}
    assert problem.said(within) == {VERDICT[value] for value in chosen}
    rules = {"wet": {"rain", "snow"}, "clear": {"fair"}}
    assert set(problem.decisive_rules(within)) == {name for name, at in rules.items() if at & set(chosen)}
