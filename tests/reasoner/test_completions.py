"""Decision trees against plain enumeration: every completion of the facts, one by one."""

from __future__ import annotations

import itertools
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.model.conditions import Condition, NotOf, Test, all_of, any_of, evaluate
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Interval, Ranges, ValueSet, choices, contains, point, ranges
from kb.reasoner import Engine, rows
from kb.reasoner.space import complete, constraints, implies, satisfiable
from tests.little import AT, DAY, base, fact, rule

ITEMS = {"cap": (), "neckwear": (), "scarf": ("neckwear",), "collar": ("neckwear",)}
TEMPERATURE = Fact(id="temperature", label="temperature", ask="?", kind="quantity", unit="Cel", at=AT)
FACTS = (fact("weather", "fair", "foul", "snow"), fact("hauling"), TEMPERATURE)
SAMPLES: dict[str, list[ValueSet]] = {
    "weather": [choices("fair"), choices("foul"), choices("snow")],
    "hauling": [choices("yes"), choices("no")],
    "temperature": [point(n) for n in (-5, 0, 5, 10, 15, 20, 25)],
    "worn:neckwear": [choices("yes"), choices("no")],
    "worn:scarf": [choices("yes"), choices("no")],
}


def interval_sets() -> st.SearchStrategy[Ranges]:
    bound = st.sampled_from([None, Fraction(0), Fraction(10), Fraction(20)])
    return st.builds(
        lambda low, high, a, b: ranges([Interval(low, high, a, b)]),
        bound,
        bound,
        st.booleans(),
        st.booleans(),
    )


def single_tests() -> st.SearchStrategy[Condition]:
    names = st.frozensets(st.sampled_from(["fair", "foul", "snow"]), min_size=1, max_size=2)
    yes_no = st.sampled_from([choices("yes"), choices("no")])
    return st.one_of(
        names.map(lambda n: Test("weather", choices(*n))),
        yes_no.map(lambda v: Test("hauling", v)),
        interval_sets().map(lambda v: Test("temperature", v)),
        yes_no.map(lambda v: Test("worn:neckwear", v)),
        yes_no.map(lambda v: Test("worn:scarf", v)),
    )


def conditions() -> st.SearchStrategy[Condition]:
    return st.recursive(
        single_tests(),
        lambda inner: st.one_of(
            inner.map(NotOf),
            st.lists(inner, min_size=1, max_size=3).map(all_of),
            st.lists(inner, min_size=1, max_size=3).map(any_of),
        ),
        max_leaves=5,
    )


MODALITIES = st.sampled_from(["must", "must_not", "may", "need_not"])


@st.composite
def bases(draw: st.DrawFn) -> Lookup:
    count = draw(st.integers(1, 5))
    rules = []
    for i in range(count):
        earlier = [r.id for r in rules]
        exceptions = draw(st.lists(st.sampled_from(earlier), max_size=2)) if earlier else []
        disables = draw(st.lists(st.sampled_from(earlier), max_size=1)) if earlier else []
        where = draw(st.sampled_from([("order/1", "board"), ("order/1", "board"), ("local/1", "station")]))
        rules.append(
            rule(
                f"r{i}",
                draw(MODALITIES),
                when=draw(conditions()),
                edition=where[0],
                authority=where[1],
                exception_to=tuple(exceptions),
                disables=tuple(disables),
                residual=draw(st.integers(0, 9)) == 0,
            )
        )
    exclusions = tuple(draw(st.lists(conditions(), max_size=1)))
    return base(*rules, items=ITEMS, facts=FACTS, exclusions=exclusions)


def completions(lookup: Lookup) -> list[dict[str, ValueSet]]:
    """Every full case over the sampled values that no exclusion and no broader item forbids."""
    names = list(SAMPLES)
    found = []
    for values in itertools.product(*SAMPLES.values()):
        full = dict(zip(names, values, strict=True))
        if full["worn:scarf"] == choices("yes") and full["worn:neckwear"] == choices("no"):
            continue
        if any(evaluate(e, full.get) for e in lookup.base.exclusions):
            continue
        found.append(full)
    return found


def row_of(table: tuple[tuple[tuple[tuple[str, ValueSet], ...], str], ...], full: dict[str, ValueSet]) -> str:
    def fits(values: ValueSet, of: ValueSet) -> bool:
        member = of.intervals[0].low if isinstance(of, Ranges) else next(iter(of.members))
        assert member is not None
        return contains(values, member)

    matching = [v for when, v in table if all(fits(values, full[name]) for name, values in when)]
    assert len(matching) == 1, "the rows of a table are disjoint and cover every possible case"
    return matching[0]


@settings(max_examples=60, deadline=None)
@given(bases())
def test_a_tree_gives_every_completion_its_verdict(lookup: Lookup) -> None:
    engine = Engine(lookup, DAY)
    group = engine.group("cap", "wear")
    watched = engine.watched(group)
    cases = completions(lookup)
    if not cases:
        return
    table = rows(engine.problem(group, {}).verdicts())
    for full in cases:
        truth = {key: bool(evaluate(condition, full.get)) for key, condition in watched.items()}
        assert row_of(table, full) == engine.decide(group, truth).verdict


@settings(max_examples=60, deadline=None)
@given(bases())
def test_every_fact_in_a_tree_can_change_the_answer(lookup: Lookup) -> None:
    """A reduced tree has no branch whose children are all alike."""
    engine = Engine(lookup, DAY)
    if (
        satisfiable(constraints(engine.watched(engine.group("cap", "wear")).values(), lookup), {}, lookup)
        is None
    ):
        return
    table = rows(engine.problem(engine.group("cap", "wear"), {}).verdicts())
    assert len(table) == 1 or len({verdict for _, verdict in table}) > 1


@settings(max_examples=200, deadline=None)
@given(conditions(), conditions())
def test_implication_agrees_with_enumeration(left: Condition, right: Condition) -> None:
    lookup = base(items=ITEMS, facts=FACTS)
    expected = all(evaluate(right, full.get) for full in completions(lookup) if evaluate(left, full.get))
    assert implies(left, right, lookup) == expected


@settings(max_examples=100, deadline=None)
@given(st.lists(conditions(), min_size=1, max_size=4))
def test_a_completion_decides_every_condition(watched: list[Condition]) -> None:
    lookup = base(items=ITEMS, facts=FACTS)
    full = complete(watched, constraints(watched, lookup), {}, lookup)
    assert full is not None
    assert all(evaluate(condition, full.get) is not None for condition in watched)
