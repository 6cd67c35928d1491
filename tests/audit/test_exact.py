"""The audit's formulas against plain enumeration: every case of random little bases, decided one by one."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from fractions import Fraction

import msgspec
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from kb.audit.conflicts import Struggles
from kb.audit.idle import Effects, liveness
from kb.audit.law import Law, View, covering_rules
from kb.audit.repeats import Repeats
from kb.audit.standing import departure_fault
from kb.model.conditions import Condition, NotOf, Test, all_of, any_of, evaluate
from kb.model.lookup import Lookup
from kb.model.records import Aspect, Delegation, Rule, Scope
from kb.model.values import YES, Interval, ValueSet, choices, intersect, is_empty, ranges
from kb.reasoner import Engine, Group
from kb.reasoner.decide import Decision
from tests.little import AT, DAY, base, fact, rule
from tests.proof.random_bases import without_circles

ITEMS = {"cap": (), "neckwear": (), "scarf": ("neckwear",), "collar": ("neckwear",)}
RECORDS = tuple(base(items=ITEMS).base.items)
FACTS = (fact("weather", "fair", "foul"), fact("hauling"))
ASPECTS = (
    Aspect(id="height", label="height", kind="measure", at=AT),
    Aspect(id="colour", label="colour", kind="choice", values=FACTS[0].values, at=AT),
)
NAMES = ("weather", "hauling", *(f"worn:{item}" for item in ITEMS))
DELEGATION = Delegation(id="to-station", clause="order/1/9", to="station", clauses=("order/1/1",), at=AT)


def _sets(aspect: str) -> st.SearchStrategy[ValueSet]:
    if aspect == "wear":
        return st.just(YES)
    if aspect == "colour":
        return st.sampled_from([choices("fair"), choices("foul"), choices("fair", "foul")])
    bounds = st.sampled_from([Fraction(1), Fraction(2), Fraction(3)])
    return st.tuples(bounds, bounds).map(lambda pair: ranges([Interval(min(pair), max(pair))]))


def _tests() -> st.SearchStrategy[Condition]:
    yes_no = st.sampled_from([choices("yes"), choices("no")])
    return st.one_of(
        st.sampled_from(["fair", "foul"]).map(lambda name: Test("weather", choices(name))),
        st.tuples(st.sampled_from(NAMES[1:]), yes_no).map(lambda pair: Test(*pair)),
    )


def conditions() -> st.SearchStrategy[Condition]:
    return st.recursive(
        _tests(),
        lambda inner: st.one_of(
            inner.map(NotOf),
            st.lists(inner, max_size=2).map(all_of),
            st.lists(inner, min_size=1, max_size=2).map(any_of),
        ),
        max_leaves=3,
    )


@st.composite
def _rules(draw: st.DrawFn, number: int, earlier: list[Rule], aspect: str) -> Rule:
    names = [r.id for r in earlier]
    edition, authority = draw(st.sampled_from([("order/1", "board")] * 2 + [("local/1", "station")]))
    links = st.lists(st.sampled_from(names), max_size=1) if names else st.just([])
    kind = draw(st.integers(0, 9))
    scope = Scope(items=(draw(st.sampled_from(["cap", "neckwear", "scarf"])),))
    modality = draw(st.sampled_from(["must", "must_not", "may", "need_not"]))
    if aspect == "wear" and kind == 0:
        scope = Scope(items=("scarf", "collar"), alternatives=draw(st.sampled_from(["one", "any"])))
        modality = "must"
    duties = [r.id for r in earlier if r.modality in ("must", "must_not") and aspect == "wear"]
    local = authority == "station"
    return rule(
        f"r{number}",
        modality,
        when=draw(conditions()),
        edition=edition,
        clause=draw(st.sampled_from(["1", "2"])),
        authority=authority,
        aspect=aspect,
        values=draw(_sets(aspect)),
        scope=scope,
        exception_to=tuple(draw(links)),
        disables=tuple(draw(links)) if kind == 1 else (),
        repairs=draw(st.sampled_from(duties)) if kind == 2 and duties else None,
        delegation="to-station" if local and draw(st.booleans()) else None,
        residual=kind == 3 and modality == "must_not",
        non_derogable=kind == 4,
    )


@st.composite
def bases(draw: st.DrawFn) -> Lookup:
    aspect = draw(st.sampled_from(["wear", "wear", "height", "colour"]))
    found: list[Rule] = []
    for number in range(draw(st.integers(1, 5))):
        found.append(draw(_rules(number, found, aspect)))
    exclusions = tuple(draw(st.lists(conditions(), max_size=1)))
    lookup = base(
        *without_circles(tuple(found), RECORDS),
        items=ITEMS,
        facts=FACTS,
        aspects=ASPECTS,
        exclusions=exclusions,
        delegations=(DELEGATION,),
    )
    assume(every_case(lookup))
    return lookup


def every_case(lookup: Lookup) -> list[dict[str, ValueSet]]:
    """Every case: all facts known, nothing excluded, and who wears a kind of neckwear wears neckwear."""
    found = []
    for values in itertools.product(["fair", "foul"], *[["yes", "no"]] * (len(NAMES) - 1)):
        case: dict[str, ValueSet] = {n: choices(v) for n, v in zip(NAMES, values, strict=True)}
        kinds = [case[f"worn:{item}"] for item in ("scarf", "collar")]
        if case["worn:neckwear"] == choices("no") and choices("yes") in kinds:
            continue
        if not any(evaluate(exclusion, case.get) for exclusion in lookup.base.exclusions):
            found.append(case)
    return found


def decisions(engine: Engine, view: View, cases: list[dict[str, ValueSet]]) -> Iterator[Decision]:
    """The reasoner's decision of every case that a question about the view's matter allows."""
    group = engine.group(view.item, view.aspect)
    watched = engine.watched(group)
    for case in cases:
        if any(
            is_empty(intersect(values, case[fact])) for fact, values in view.known.items() if fact in case
        ):
            continue
        truth = {key: bool(evaluate(condition, case.get)) for key, condition in watched.items()}
        yield engine.decide(group, truth)


def every_view(law: Law) -> list[View]:
    return [law.view(item, aspect) for item, aspect in law.index]


@settings(max_examples=250, deadline=None)
@given(bases())
def test_unsettled_is_what_some_case_leaves_in_conflict(lookup: Lookup) -> None:
    law, engine = Law(lookup, DAY, covering_rules(lookup)), Engine(lookup, DAY)
    cases, struggles = every_case(lookup), Struggles()
    for view in every_view(law):
        found = [({norm.rule for norm, _ in norms}, case) for norms, _, case in struggles.left(view)]
        conflicts = [set(d.rules) for d in decisions(engine, view, cases) if d.verdict == "conflict"]
        for rules in conflicts:
            assert any(named <= rules for named, _ in found), "each conflict has a finding"
        for named, case in found:
            assert any(named <= rules for rules in conflicts), "each finding has a conflict"
            inside = [c for c in cases if all(not is_empty(intersect(v, c[f])) for f, v in case.items())]
            assert inside, "its case is possible"
            verdicts = {d.verdict for d in decisions(engine, view, inside)}
            assert verdicts == {"conflict"}, "and is in conflict however the other facts stand"


@settings(max_examples=250, deadline=None)
@given(bases())
def test_a_rule_is_dead_if_no_case_lets_it_decide_anything(lookup: Lookup) -> None:
    law, engine = Law(lookup, DAY, covering_rules(lookup)), Engine(lookup, DAY)
    cases = every_case(lookup)
    alive = {r for view in every_view(law) for d in decisions(engine, view, cases) for r in d.rules}
    assert liveness(law, Effects()).dead == {r.id for r in lookup.base.rules} - alive


def _fates(lookup: Lookup, group: Group, cases: list[dict[str, ValueSet]]) -> list[tuple[object, ...]]:
    """Status of each value class, in classes that do not depend on the rules left out."""
    engine = Engine(lookup, DAY)
    own = engine.group(group.item, group.aspect)
    watched = engine.watched(own)
    found = []
    for case in cases:
        truth = {key: bool(evaluate(condition, case.get)) for key, condition in watched.items()}
        fates = engine.decide(own, truth).fates
        found.append(
            tuple(
                next(
                    fate.status
                    for values, fate in zip(own.classes, fates, strict=True)
                    if not is_empty(intersect(values, piece))
                )
                for piece in group.classes
            )
        )
    return found


@settings(max_examples=250, deadline=None)
@given(bases())
def test_leaving_out_a_rule_that_repeats_another_changes_nothing(lookup: Lookup) -> None:
    law = Law(lookup, DAY, covering_rules(lookup))
    dead = liveness(law, Effects()).dead
    cases = every_case(lookup)
    for name in Repeats(law, dead).found():
        kept = tuple(
            msgspec.structs.replace(
                r,
                exception_to=tuple(n for n in r.exception_to if n != name),
                disables=tuple(n for n in r.disables if n != name),
            )
            for r in lookup.base.rules
            if r.id != name
        )
        without = Lookup(msgspec.structs.replace(lookup.base, rules=kept))
        for view in every_view(law):
            known = view.known
            inside = [
                case
                for case in cases
                if not any(is_empty(intersect(v, case[f])) for f, v in known.items() if f in case)
            ]
            assert _fates(lookup, view.group, inside) == _fates(without, view.group, inside)


def test_a_rule_that_stands_where_the_stricter_one_is_put_out_is_no_repeat() -> None:
    """In fair weather the ban puts the duty of exactly 2 out, but leaves room for the duty of 1 to 2."""
    fair = Test("weather", choices("fair"))
    exactly, between = Interval(Fraction(2), Fraction(2)), Interval(Fraction(1), Fraction(2))
    rules = (
        rule("r0", "must", aspect="height", values=ranges([exactly])),
        rule("r1", "must", aspect="height", values=ranges([between]), when=fair),
        rule("r2", "must_not", aspect="height", values=ranges([exactly]), when=fair),
    )
    for kept, repeated in ((rules, {}), (rules[:2], {"r1": "r0"})):
        lookup = base(*kept, items=ITEMS, facts=FACTS, aspects=ASPECTS)
        law = Law(lookup, DAY, covering_rules(lookup))
        assert Repeats(law, ()).found() == repeated


@settings(max_examples=150, deadline=None)
@given(bases())
def test_why_a_rule_may_not_depart_agrees_with_the_order_of_precedence(lookup: Lookup) -> None:
    law = Law(lookup, DAY, covering_rules(lookup))
    ranks = lookup.authorities
    for one, other in itertools.permutations(lookup.base.rules, 2):
        if ranks[one.authority].rank > ranks[other.authority].rank:
            win = law.engine.precedence.win(one.id, other.id)
            assert win is not None
            higher_stands = win.winner == other.id
            exempt = one.id in other.exception_to
            fault = departure_fault(law, one, other)
            assert higher_stands == (fault is not None or exempt)


def test_the_random_bases_have_what_the_properties_speak_of() -> None:
    """Guards the guards: among some hundred bases there are conflicts, dead rules and repeats."""
    seen = {"conflict": 0, "dead": 0, "repeats": 0, "three": 0}

    @settings(max_examples=200, deadline=None, database=None, derandomize=True)
    @given(bases())
    def look(lookup: Lookup) -> None:
        law = Law(lookup, DAY, covering_rules(lookup))
        dead = liveness(law, Effects()).dead
        left = [found for view in every_view(law) for found in Struggles().left(view)]
        seen["conflict"] += bool(left)
        seen["three"] += any(len(norms) > 2 for norms, _, _ in left)
        seen["dead"] += bool(dead)
        seen["repeats"] += bool(Repeats(law, dead).found())

    look()
    assert min(seen["conflict"], seen["dead"], seen["repeats"]) >= 5, seen
