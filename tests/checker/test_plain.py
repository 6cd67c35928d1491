"""The plain meaning that answers are checked with, against the reasoner, in every case of random rule bases.

The two share the records and the algebra of sets, and nothing else.
"""

from __future__ import annotations

from itertools import combinations

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings

from kb.model.lookup import Lookup
from kb.model.records import RuleBase
from kb.model.values import Choices, is_subset
from kb.plain.weighing import Meaning
from kb.reasoner import Engine
from tests.little import DAY
from tests.proof.random_bases import rule_bases


@pytest.mark.slow
@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
@given(rule_bases())
def test_every_case_of_a_random_base_has_the_same_fates(base: RuleBase) -> None:
    lookup = Lookup(base)
    engine, meaning = Engine(lookup, DAY), Meaning(lookup, DAY)
    for item in lookup.items:
        for aspect in dict.fromkeys(rule.aspect for rule in base.rules):
            group = engine.group(item, aspect)
            watched = meaning.watched(item, aspect, frozenset())
            assert set(watched) == set(engine.watched(group))
            for truths in meaning.outcomes(tuple(watched.values()), {}):
                truth = dict(zip(watched, truths, strict=True))
                decision, fates = engine.decide(group, truth), meaning.fates(item, aspect, truth)
                assert meaning.verdict(aspect, fates) == decision.verdict
                for values, fate in zip(group.classes, decision.fates, strict=True):
                    (mine,) = [one for one in fates if is_subset(values, one.values)]
                    assert mine[1:] == (fate.status, set(fate.closed_by), set(fate.supported_by))


@pytest.mark.slow
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(rule_bases())
def test_a_colour_that_no_book_names_fares_alike(base: RuleBase) -> None:
    """As it does where the books name it and no rule does: what is asked about is one value more."""
    green = frozenset({"other:green"})
    wider = [
        msgspec.structs.replace(a, values=(*a.values, msgspec.structs.replace(a.values[0], id="other:green")))
        if a.id == "colour"
        else a
        for a in base.aspects
    ]
    lookup = Lookup(base)
    named = Meaning(Lookup(msgspec.structs.replace(base, aspects=tuple(wider))), DAY)
    engine, meaning = Engine(lookup, DAY), Meaning(lookup, DAY, green)
    for item in lookup.items:
        group = engine.group(item, "colour", green)
        assert sum(is_subset(Choices(green), values) for values in group.classes) == 1
        watched = meaning.watched(item, "colour", frozenset())
        for truths in meaning.outcomes(tuple(watched.values()), {}):
            truth = dict(zip(watched, truths, strict=True))
            decision, fates = engine.decide(group, truth), meaning.fates(item, "colour", truth)
            assert fates == named.fates(item, "colour", truth)
            assert meaning.verdict("colour", fates) == decision.verdict
            for values, fate in zip(group.classes, decision.fates, strict=True):
                (mine,) = [one for one in fates if is_subset(values, one.values)]
                assert mine[1:] == (fate.status, set(fate.closed_by), set(fate.supported_by))


@pytest.mark.slow
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(rule_bases())
def test_the_same_effects_win_on_the_same_line(base: RuleBase) -> None:
    lookup = Lookup(base)
    engine, meaning = Engine(lookup, DAY), Meaning(lookup, DAY)
    for item in lookup.items:
        for aspect in dict.fromkeys(rule.aspect for rule in base.rules):
            engine.group(item, aspect)
            for one, other in combinations(meaning.effects_on(item, aspect), 2):
                if one.rule.id == other.rule.id:
                    continue
                win = engine.precedence.win(one.key, other.key)
                assert meaning.win(one, other) == (("", "") if win is None else (win.winner, win.principle))
