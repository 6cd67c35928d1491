"""What would have to change, against plain search over all changes of the stated facts."""

from __future__ import annotations

import itertools

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.answer.changes import TURNS, turning_changes
from kb.model.conditions import Condition, NotOf, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.values import ValueSet, choices
from kb.reasoner import Engine, rows
from tests.little import DAY, base, fact, rule

DOMAINS = {"weather": ("fair", "foul", "snow"), "place": ("ashore", "afloat"), "hauling": ("yes", "no")}
FACTS = (fact("weather", *DOMAINS["weather"]), fact("place", *DOMAINS["place"]), fact("hauling"))


def conditions() -> st.SearchStrategy[Condition]:
    single = st.sampled_from(
        [Test(name, choices(value)) for name, values in DOMAINS.items() for value in values]
    )
    return st.recursive(
        single,
        lambda inner: st.one_of(
            inner.map(NotOf),
            st.lists(inner, min_size=2, max_size=3).map(all_of),
            st.lists(inner, min_size=2, max_size=3).map(any_of),
        ),
        max_leaves=4,
    )


@st.composite
def situations(draw: st.DrawFn) -> tuple[Lookup, dict[str, ValueSet]]:
    modalities = st.sampled_from(["must", "must_not", "may", "need_not"])
    rules = [rule(f"r{i}", draw(modalities), when=draw(conditions())) for i in range(draw(st.integers(1, 4)))]
    stated = {name: choices(draw(st.sampled_from(values))) for name, values in DOMAINS.items()}
    return base(*rules, facts=FACTS), stated


def verdict(engine: Engine, known: dict[str, ValueSet]) -> str:
    ((_, found),) = rows(engine.problem(engine.group("cap", "wear"), known).verdicts())
    return found


@settings(max_examples=80, deadline=None)
@given(situations())
def test_the_smallest_changes_are_those_that_a_plain_search_finds(
    situation: tuple[Lookup, dict[str, ValueSet]],
) -> None:
    lookup, stated = situation
    engine = Engine(lookup, DAY)
    now = verdict(engine, stated)
    found = turning_changes(engine, engine.group("cap", "wear"), stated, now)  # type: ignore[arg-type]
    for change in found:
        changed = {**stated, **dict(change.facts)}
        assert verdict(engine, changed) == change.verdict != now
        assert all(stated[name] != values for name, values in change.facts)
    sizes = {len(change.facts) for change in found}
    assert len(sizes) <= 1
    for size in range(1, min(sizes, default=0)):
        for names in itertools.combinations(DOMAINS, size):
            for values in itertools.product(*(DOMAINS[name] for name in names)):
                other = {**stated, **{n: choices(v) for n, v in zip(names, values, strict=True)}}
                assert verdict(engine, other) not in TURNS[now]  # type: ignore[index]


def test_a_change_names_the_facts_that_turn_the_verdict() -> None:
    foul = Test("weather", choices("foul"))
    lookup = base(rule("a", "must_not", when=NotOf(foul)), rule("b", "may", when=foul), facts=FACTS)
    engine = Engine(lookup, DAY)
    stated: dict[str, ValueSet] = {"weather": choices("fair"), "place": choices("ashore")}
    (change,) = turning_changes(engine, engine.group("cap", "wear"), stated, "prohibited")
    assert (change.verdict, change.facts) == ("permitted", (("weather", choices("foul")),))
