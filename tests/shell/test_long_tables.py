"""Of a long table the cases nearest to the ordinary are shown; "why" shows all of them."""

from __future__ import annotations

import datetime

import pytest

from kb import Answer, KnowledgeBase
from kb.wording.unless import ordinary_sets, strange_in, usually_in
from shell.blocks import Grid, Points, Quote, Said
from shell.layout import arrange
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("eighth")


@pytest.fixture(scope="module")
def answer(base: KnowledgeBase) -> Answer:
    (found,) = base.ask("May I wear the tall hat in the kitchen?", as_of=DAY)
    assert len(found.cases) > 12
    return found


def test_the_nearest_cases_are_shown_and_the_rest_is_counted(base: KnowledgeBase, answer: Answer) -> None:
    blocks = arrange(answer, base)
    (grid,) = [block for block in blocks if isinstance(block, Grid)]
    assert len(grid.rows) == 8
    (more,) = [block for block in blocks if isinstance(block, Said) and block.label == "More"]
    assert more.text.startswith(f"{len(answer.cases) - 8} cases")


def test_no_case_left_out_is_nearer_than_one_shown(base: KnowledgeBase, answer: Answer) -> None:
    assert answer.reading.query is not None
    said = usually_in(base.lookup, answer.reading.query)
    sets = ordinary_sets(base.lookup, [case.when for case in answer.cases], said)
    shown = base.nearest_cases(answer, 8).cases
    assert len(shown) == 8
    far = [len(strange_in(case.when, sets)) for case in answer.cases if case not in shown]
    assert max(len(strange_in(case.when, sets)) for case in shown) <= min(far)


def test_every_clause_is_quoted_or_named(base: KnowledgeBase, answer: Answer) -> None:
    blocks = arrange(answer, base)
    quoted = {block.source.rpartition(" ")[2] for block in blocks if isinstance(block, Quote)}
    (left,) = [b for b in blocks if isinstance(b, Points) and b.title == "Clauses of the other cases"]
    named = {number for line in left.points for number in line.partition(": ")[2].split(", ")}
    assert quoted | named == {one.number for one in answer.citations}
    assert not quoted & named


def test_who_asks_why_sees_all(base: KnowledgeBase, answer: Answer) -> None:
    blocks = arrange(answer, base, chain=True)
    (grid,) = [block for block in blocks if isinstance(block, Grid)]
    assert len(grid.rows) == len(answer.cases)
    assert not any(isinstance(block, Said) and block.label == "More" for block in blocks)
    quoted = {block.source.rpartition(" ")[2] for block in blocks if isinstance(block, Quote)}
    assert quoted == {one.number for one in answer.citations}


def test_a_short_table_is_shown_whole(base: KnowledgeBase) -> None:
    (found,) = base.ask("May track workers wear shorts?", as_of=DAY)
    (grid,) = [block for block in arrange(found, base) if isinstance(block, Grid)]
    assert len(grid.rows) == len(found.cases) <= 12
