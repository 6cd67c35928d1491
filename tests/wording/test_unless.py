# ruff: noqa: E501  tables read better on one line
"""Tables that are said by their ordinary row: "Yes. ..., unless ..."."""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.model.conditions import Test, any_of, evaluate
from kb.model.questions import Query, QuestionKind, Verdict
from kb.model.records import Case
from kb.model.values import ValueSet, choices, complement, intersect, is_empty, is_subset
from kb.wording import say_usual, say_verdict
from kb.wording.leading import covering
from kb.wording.unless import exceptions, ordinary, say_any, say_joined
from tests.wording.bases import is_, no, words, yes

LOOKUP = words()
Row = tuple[tuple[str, ValueSet], ...]
HAULING, CAP = yes("hauling"), yes("worn:cap")
PARADE = is_("rig", "parade")


def row(*tests: Test) -> Row:
    return tuple((test.fact, test.values) for test in tests)


def rest(test: Test) -> Test:
    return no(test.fact) if test.values == choices("yes") else Test(test.fact, complement(test.values))


def headline(kind: QuestionKind, polarity: str, rows: Sequence[tuple[Row, Verdict]]) -> str:
    case = Case(as_of=datetime.date(2026, 11, 25))
    query = Query(kind=kind, items=("gloves",), case=case, polarity=polarity)  # type: ignore[arg-type]
    facts = [fact for found, _ in rows for fact, _ in found]
    return say_verdict(LOOKUP, "conditional", query, open_facts=facts, rows=rows)


TABLES: list[tuple[QuestionKind, str, tuple[tuple[Row, Verdict], ...], str]] = [
    ("may", "do", ((row(no("hauling")), "permitted"), (row(HAULING), "prohibited")),
     "Yes. The deck gloves may be worn, unless the wearer is hauling lines."),
    ("must", "do", ((row(HAULING), "prohibited"), (row(no("hauling")), "required")),
     "Yes. The deck gloves must be worn, unless the wearer is hauling lines."),
    ("may", "not", ((row(no("hauling")), "required"), (row(HAULING), "permitted")),
     "No: the deck gloves must be worn, unless the wearer is hauling lines."),
    ("may", "do",
     ((row(no("hauling"), no("worn:cap")), "permitted"), (row(no("hauling"), CAP), "required"), (row(HAULING), "silent")),
     "Yes: the deck gloves may or must be worn; when the wearer is hauling lines, the books are silent."),
    ("may", "do",
     ((row(no("hauling"), no("worn:cap")), "prohibited"), (row(no("hauling"), CAP), "permitted"), (row(HAULING), "permitted")),
     "No. The deck gloves must not be worn, unless the wearer wears the service cap or is hauling lines."),
    ("must", "do", ((row(no("hauling")), "permitted"), (row(HAULING), "prohibited")),
     "No. The deck gloves may be worn, but need not be; they must not be if the wearer is hauling lines."),
    ("may", "do", ((row(PARADE), "permitted"), (row(rest(PARADE)), "required")),
     "Yes: the deck gloves may or must be worn, depending on the rig."),
    ("must", "do", ((row(PARADE), "permitted"), (row(rest(PARADE)), "prohibited")),
     "No: the deck gloves need not be worn; whether it may be depends on the rig."),
    # Who asks about a thing that goes with another has that on.
    ("must", "do", ((row(no("worn:cap")), "prohibited"), (row(CAP), "required")),
     "Yes. The deck gloves must be worn with the service cap; without that they must not be."),
    ("may", "do", ((row(no("worn:cap")), "silent"), (row(CAP), "permitted")),
     "Yes. The deck gloves may be worn with the service cap; without that the books are silent."),
    # Where the ordinary case is silent, the only one that is a yes is said.
    ("may", "do", ((row(no("hauling")), "silent"), (row(HAULING), "permitted")),
     "Only when the wearer is hauling lines: the deck gloves may be worn; otherwise the books are silent."),
    ("must", "do",
     ((row(no("hauling"), no("worn:cap")), "silent"), (row(no("hauling"), CAP), "required"), (row(HAULING), "required")),
     "Only when the wearer wears the service cap or is hauling lines: the deck gloves must be worn; "
     "otherwise the books are silent."),
    # Everybody is in some rig and has some grade: none is out of the ordinary, and a short table is said whole.
    ("may", "do", ((row(PARADE), "permitted"), (row(rest(PARADE)), "prohibited")),
     "It depends on the rig: the deck gloves may be worn when the wearer is in parade rig; otherwise they "
     "must not be."),
    ("may", "do", ((row(no("hauling")), "silent"), (row(HAULING), "prohibited")),
     "It depends on whether the wearer is hauling lines: the deck gloves must not be worn when the wearer is hauling "
     "lines; otherwise the books are silent."),
    ("must", "do", ((row(PARADE), "conflict"), (row(rest(PARADE)), "required")),
     "It depends on the rig: the clauses disagree when the wearer is in parade rig; otherwise the deck gloves must be "
     "worn."),
    # What has no ordinary side may be anything, where all of it comes to one verdict.
    ("may", "do",
     ((row(PARADE, no("hauling")), "prohibited"), (row(rest(PARADE)), "prohibited"), (row(PARADE, HAULING), "permitted")),
     "No. The deck gloves must not be worn, unless the wearer is in parade rig and hauling lines."),
    # A row that depends on further facts is said to do so, after the first of what it turns on.
    ("may", "do", ((row(no("hauling")), "permitted"), (row(HAULING), "conditional")),
     "Yes. The deck gloves may be worn, unless the wearer is hauling lines."),
    ("may", "do",
     ((row(no("hauling")), "permitted"), (row(HAULING, PARADE), "conditional"), (row(HAULING, rest(PARADE)), "prohibited")),
     "Yes. The deck gloves may be worn, unless the wearer is hauling lines; it then depends on the rig."),
    ("may", "do", ((row(PARADE), "permitted"), (row(rest(PARADE)), "conditional")), "It depends on the rig."),
    # Of a long table that leads with nothing it is said where alone it can be a yes.
    ("may", "do",
     ((row(PARADE, no("hauling")), "permitted"), (row(PARADE, HAULING, no("worn:cap")), "prohibited"),
      (row(PARADE, HAULING, CAP), "required"), (row(rest(PARADE), HAULING), "prohibited"),
      (row(rest(PARADE), no("hauling")), "silent")),
     "Only when the wearer is in parade rig: the deck gloves may or must be worn, depending on whether the wearer is "
     "hauling lines and whether the wearer wears the service cap; otherwise they must not be, or the books are silent."),
    ("may", "do",
     ((row(rest(PARADE), no("hauling")), "permitted"), (row(rest(PARADE), HAULING, no("worn:cap")), "prohibited"),
      (row(rest(PARADE), HAULING, CAP), "silent"), (row(PARADE, HAULING), "required"),
      (row(PARADE, no("hauling")), "prohibited")),
     "It depends on the rig, whether the wearer is hauling lines and whether the wearer wears the service cap."),
    # Where clauses disagree, that is told by name and not as an exception.
    ("may", "do", ((row(no("hauling")), "prohibited"), (row(HAULING), "conflict")),
     "No. The deck gloves must not be worn; but when the wearer is hauling lines, the clauses disagree."),
    ("may", "do",
     ((row(no("hauling"), no("worn:cap")), "prohibited"), (row(no("hauling"), CAP), "permitted"), (row(HAULING), "conflict")),
     "No. The deck gloves must not be worn, unless the wearer wears the service cap; but when the wearer is hauling lines, "
     "the clauses disagree."),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "polarity", "rows", "expected"), TABLES)
def test_headlines(
    kind: QuestionKind, polarity: str, rows: Sequence[tuple[Row, Verdict]], expected: str
) -> None:
    assert headline(kind, polarity, rows) == expected


def test_a_line_of_a_list_is_said_by_the_ordinary_row() -> None:
    rows: list[tuple[Row, Verdict]] = [(row(no("hauling")), "permitted"), (row(HAULING), "prohibited")]
    assert say_usual(LOOKUP, rows, ("permitted",)) == "permitted, unless the wearer is hauling lines"
    assert say_usual(LOOKUP, rows, ("prohibited",)) == ""
    rows[1] = (row(HAULING), "conflict")
    assert say_usual(LOOKUP, rows, ("permitted",)) == ""


NAMES = ("hauling", "worn:cap", "worn:scarf")
ROWS: list[Row] = [
    row(*(Test(name, choices(value)) for name, value in zip(NAMES, values, strict=True)))
    for values in itertools.product(("yes", "no"), repeat=len(NAMES))
]


@settings(max_examples=200, deadline=None)
@given(st.sets(st.integers(0, len(ROWS) - 2), min_size=1))
def test_the_exceptions_hold_in_just_the_rows_that_they_are_of(otherwise: set[int]) -> None:
    assert ordinary(LOOKUP, [(facts, "permitted") for facts in ROWS]) == len(ROWS) - 1
    condition = any_of(exceptions(LOOKUP, ROWS, sorted(otherwise)))
    for index, facts in enumerate(ROWS):
        assert evaluate(condition, dict(facts).get) is (index in otherwise)


def test_cases_with_one_verdict_are_said_as_one() -> None:
    rows: list[Row] = [row(no("hauling"), no("worn:cap")), row(no("hauling"), CAP), row(HAULING)]
    assert say_joined(LOOKUP, rows, (1, 2)) == "when the wearer wears the service cap or is hauling lines"
    assert say_joined(LOOKUP, rows, (2,)) == "when the wearer is hauling lines"


@settings(max_examples=200, deadline=None)
@given(st.sets(st.integers(0, len(ROWS) - 1), min_size=1, max_size=len(ROWS) - 1))
def test_cases_said_as_one_are_just_those(chosen: set[int]) -> None:
    condition = any_of(exceptions(LOOKUP, ROWS, sorted(chosen), every=True))
    for index, facts in enumerate(ROWS):
        assert evaluate(condition, dict(facts).get) is (index in chosen)


@settings(max_examples=200, deadline=None)
@given(st.sets(st.integers(0, len(ROWS) - 2), min_size=1))
def test_outside_of_what_is_named_nothing_is_otherwise(otherwise: set[int]) -> None:
    within = covering(LOOKUP, ROWS, sorted(otherwise))
    assert within
    for index in otherwise:
        assert any(is_subset(values, within[fact]) for fact, values in ROWS[index] if fact in within)
    assert all(is_empty(intersect(within[fact], values)) for fact, values in ROWS[-1] if fact in within)


def test_of_no_condition_nothing_is_said() -> None:
    assert say_any(LOOKUP, []) == ""
