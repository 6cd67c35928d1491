"""What is told of two conditions from their tests alone is what a search through all cases finds."""

from __future__ import annotations

import datetime
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.model.conditions import ALWAYS, NEVER, Condition, Test, all_of, any_of
from kb.model.records import Fact
from kb.model.values import NO, YES, Interval, choices, ranges
from kb.reasoner.implications import Implications
from kb.reasoner.space import implies
from tests.little import AT, base
from tests.reasoner.test_completions import FACTS, ITEMS, conditions, single_tests

DAY = Fraction(datetime.date(2026, 3, 31).toordinal())
AWARDED = Fact(id="awarded-on", label="award", ask="?", kind="date", at=AT)


def days() -> st.SearchStrategy[Condition]:
    bound = st.sampled_from([None, DAY, DAY + 1, DAY + Fraction(1, 2)])
    return st.builds(
        lambda low, high, a, b: Test("awarded-on", ranges([Interval(low, high, a, b)])),
        bound,
        bound,
        st.booleans(),
        st.booleans(),
    )


TESTS = st.one_of(single_tests(), days())
CONJUNCTIONS = st.lists(TESTS, max_size=3).map(all_of)
# What is excluded, once so that no case is left.
EXCLUDED = st.one_of(conditions(), st.just(any_of([Test("hauling", YES), Test("hauling", NO)])))
ANY = st.one_of(CONJUNCTIONS, CONJUNCTIONS, conditions(), st.sampled_from([ALWAYS, NEVER]))


@settings(max_examples=300, deadline=None)
@given(st.lists(ANY, min_size=2, max_size=4), st.lists(EXCLUDED, max_size=1))
def test_the_two_agree_on_every_pair(some: list[Condition], exclusions: list[Condition]) -> None:
    lookup = base(items=ITEMS, facts=(*FACTS, AWARDED), exclusions=tuple(exclusions))
    known = Implications(lookup, None)
    for one in some:
        for other in some:
            assert known.implies(one, other) is implies(one, other, lookup), (one, other)


def test_a_rule_of_many_facts_needs_no_search() -> None:
    """Two conjunctions over free facts are compared test by test."""
    lookup = base(items=ITEMS, facts=FACTS)
    known = Implications(lookup, None)
    hauling, foul = Test("hauling", YES), Test("weather", choices("foul"))
    both = all_of([hauling, foul])
    assert known.implies(both, foul)
    assert not known.implies(foul, both)
    assert not known._searched
