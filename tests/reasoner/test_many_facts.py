"""Many open facts at once: the answer stays exact and small, whatever the rules make of the facts.

What is worked out is compared with plain enumeration up to ten facts; above that the checker, which shares no
code with the reasoner, verifies the whole answer. Sizes are asserted, never times.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.answer.assemble import answer_query
from kb.answer.encode import answer_to_json
from kb.checker import check
from kb.model.conditions import Condition, NotOf, Test, all_of, any_of, evaluate
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.model.records import Case, Modality, Rule
from kb.model.values import NO, YES, ValueSet, is_subset
from kb.reasoner import Engine, problem, rows
from tests.little import DAY, base, fact, rule

MODALITIES: tuple[Modality, ...] = ("must_not", "may", "must", "need_not")


def on(number: int) -> Condition:
    return Test(f"f{number:02}", YES)


def book(rules: list[Rule], facts: int) -> Lookup:
    return base(*rules, facts=tuple(fact(f"f{number:02}") for number in range(facts)))


def chain(modalities: tuple[Modality, ...], facts: int) -> list[Rule]:
    """Each rule an exception to the one before, with a fact of its own."""
    return [
        rule(f"r{i}", modalities[i % len(modalities)], when=on(i), exception_to=(f"r{i - 1}",) if i else ())
        for i in range(facts)
    ]


def pairs(facts: int, apart: int) -> list[Rule]:
    """A prohibition with exceptions that need two facts each."""
    first = [i for i in range(facts) if i // apart % 2 == 0]
    return [
        rule("ban", "must_not"),
        *(
            rule(f"r{i}", "may", when=all_of([on(i), on(i + apart)]), exception_to=("ban",))
            for i in first
            if i + apart < facts
        ),
    ]


def parity(facts: int) -> Condition:
    odd = on(0)
    for number in range(1, facts):
        odd = any_of([all_of([odd, NotOf(on(number))]), all_of([NotOf(odd), on(number)])])
    return odd


def forms(facts: int) -> Iterator[tuple[str, list[Rule]]]:
    every = [on(number) for number in range(facts)]
    yield "a conjunction", [rule("a", "may", when=all_of(every))]
    yield "a disjunction", [rule("a", "may", when=any_of(every))]
    yield "permissions apart", [rule(f"r{i}", "may", when=one) for i, one in enumerate(every)]
    yield "four modalities", [rule(f"r{i}", MODALITIES[i % 4], when=one) for i, one in enumerate(every)]
    yield "exceptions to exceptions", chain(("must_not", "may"), facts)
    yield "opposite duties in a chain", chain(("must_not", "must"), facts)
    ban = rule("ban", "must_not")
    own = [rule(f"r{i}", "may", when=one, exception_to=("ban",)) for i, one in enumerate(every)]
    yield "exceptions to one ban", [ban, *own]
    yield "exceptions of two facts", pairs(facts, 1)
    yield "exceptions of two facts far apart", pairs(facts, facts // 2)
    either = all_of([any_of([on(i), on(i + 1)]) for i in range(0, facts - 1, 2)])
    yield "a conjunction of choices", [rule("a", "may", when=either)]
    off = [
        rule(f"r{i}", "may", when=one, disables=(f"r{i - 1}" if i else "ban",)) for i, one in enumerate(every)
    ]
    yield "rules that disable each other", [ban, *off]
    yield "parity", [rule("a", "may", when=parity(10))]


def ask(lookup: Lookup) -> Answer:
    query = Query(kind="may", items=("cap",), case=Case(as_of=DAY))
    return answer_query(Engine(lookup, DAY), Reading(question="May I wear the cap?", query=query), "digest")


MANY = [pytest.param(n, name, rules, id=f"{n} {name}") for n in (20, 30) for name, rules in forms(n)]
# A table that exactly these many rows can show is shown whole.
WHOLE = {"a conjunction", "a disjunction", "permissions apart", "exceptions to one ban"}


@pytest.mark.parametrize(("facts", "name", "rules"), MANY)
def test_many_facts_end_in_a_small_table_that_the_checker_verifies(
    facts: int, name: str, rules: list[Rule]
) -> None:
    lookup = book(rules, facts)
    answer = ask(lookup)
    assert answer.verdict == "conditional"
    assert len(answer.cases) <= problem.MOST_ROWS
    if name in WHOLE:
        assert len(answer.cases) == facts + 1
        assert all(case.verdict != "conditional" for case in answer.cases)
    assert check(msgspec.json.decode(answer_to_json(answer)), lookup, "digest") is None


@pytest.mark.parametrize(("facts", "name", "rules"), MANY)
def test_regions_grow_with_the_facts_and_not_with_their_combinations(
    facts: int,
    name: str,  # noqa: ARG001  shown in the test's id
    rules: list[Rule],
) -> None:
    engine = Engine(book(rules, facts), DAY)
    one = engine.problem(engine.group("cap", "wear"), {})
    one.verdicts()
    assert len(one._diagram.regions.levels) < 20 * facts**2


@st.composite
def little_books(draw: st.DrawFn) -> tuple[Lookup, int]:
    """Up to ten yes-or-no facts and rules over a few of them each, with exceptions and disablings."""
    facts = draw(st.integers(3, 10))
    single = st.integers(0, facts - 1).map(on)
    literal = st.one_of(single, single.map(NotOf))
    some = st.lists(literal, min_size=1, max_size=4)
    condition = st.one_of(some.map(all_of), some.map(any_of))
    rules: list[Rule] = []
    for i in range(draw(st.integers(2, 8))):
        earlier = st.lists(st.sampled_from([one.id for one in rules]), max_size=1) if rules else st.just([])
        rules.append(
            rule(
                f"r{i}",
                draw(st.sampled_from(MODALITIES)),
                when=draw(condition),
                exception_to=tuple(draw(earlier)),
                disables=tuple(draw(earlier)) if draw(st.integers(0, 4)) == 0 else (),
                residual=draw(st.integers(0, 9)) == 0,
            )
        )
    return book(rules, facts), facts


def completions(facts: int) -> Iterator[dict[str, ValueSet]]:
    for values in itertools.product((YES, NO), repeat=facts):
        yield {f"f{number:02}": value for number, value in enumerate(values)}


@settings(max_examples=40, deadline=None)
@given(little_books(), st.sampled_from([4, 48]))
def test_each_row_says_what_every_case_in_it_says(made: tuple[Lookup, int], most: int) -> None:
    """With few rows allowed the last are folded: these have two verdicts, the others one."""
    lookup, facts = made
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(problem, "MOST_ROWS", most)
        answer = ask(lookup)
    engine = Engine(lookup, DAY)
    group = engine.group("cap", "wear")
    watched = engine.watched(group)
    found: dict[int, set[str]] = {}
    for full in completions(facts):
        truth = {key: bool(evaluate(one, full.get)) for key, one in watched.items()}
        places = [
            place
            for place, case in enumerate(answer.cases)
            if all(is_subset(full[name], values) for name, values in case.when)
        ]
        assert len(places) == 1
        found.setdefault(places[0], set()).add(engine.decide(group, truth).verdict)
    assert len(found) == len(answer.cases)
    for place, verdicts in found.items():
        said = answer.cases[place].verdict
        assert (len(verdicts) > 1) if said == "conditional" else (verdicts == {said})
    assert check(msgspec.json.decode(answer_to_json(answer)), lookup, "digest") is None


@settings(max_examples=25, deadline=None)
@given(little_books(), st.integers(1, 30))
def test_a_diagram_that_is_cut_short_says_nothing_wrong(made: tuple[Lookup, int], nodes: int) -> None:
    lookup, _ = made
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("kb.reasoner.diagram.MOST_NODES", nodes)
        answer = ask(lookup)
    assert check(msgspec.json.decode(answer_to_json(answer)), lookup, "digest") is None


def test_a_folded_row_cannot_be_passed_off_as_settled_nor_the_other_way_round() -> None:
    lookup = book(pairs(20, 1), 20)
    answer = msgspec.json.decode(answer_to_json(ask(lookup)))
    folded = [row for row in answer["cases"] if row["verdict"] == "conditional"]
    settled = [row for row in answer["cases"] if row["verdict"] != "conditional"]
    assert folded
    assert settled
    for row, verdict in ((folded[0], "prohibited"), (settled[0], "conditional")):
        before, row["verdict"] = row["verdict"], verdict
        refused = check(answer, lookup, "digest")
        assert refused is not None
        assert refused[0].endswith(".verdict")
        row["verdict"] = before
    assert check(answer, lookup, "digest") is None


def test_the_most_decisive_fact_comes_first() -> None:
    """Whether the last fact holds settles the verdict in half of all cases."""
    either = any_of([all_of([on(i), on(i + 1)]) for i in range(0, 18, 2)])
    lookup = book([rule("a", "may", when=all_of([either, on(20)]))], 21)
    engine = Engine(lookup, DAY)
    table = rows(engine.problem(engine.group("cap", "wear"), {}).verdicts())
    assert {when[0][0] for when, _ in table} == {"f20"}
    assert (("f20", NO),) in [when for when, said in table if said == "silent"]
