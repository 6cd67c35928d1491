"""Tables of cases: what columns and cells mean, and what is said of those that mean nothing."""

from __future__ import annotations

import datetime
import itertools

import pytest

from kb import CellProblem, KnowledgeBase, UsageError
from kb.answer.acts import act_answer
from kb.bulk import CaseTable
from kb.compiled import Decided
from kb.model.questions import Query
from kb.model.records import Case
from kb.model.values import YES
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def decide(base: KnowledgeBase, **cells: str) -> Decided | CellProblem:
    return base.case_table(list(cells), DAY).decide(list(cells.values()))


def verdict(base: KnowledgeBase, **cells: str) -> str:
    decided = decide(base, **cells)
    assert isinstance(decided, Decided), decided
    return decided.verdict


@pytest.mark.parametrize(
    ("cells", "question"),
    [
        (
            {"item": "storm coat", "grade": "K5", "rig": "boat rig"},
            "May a K5 wear the storm coat in boat rig?",
        ),
        ({"item": "storm-coat", "grade": "First Petty Keeper"}, "May a K5 wear the storm coat?"),
        ({"item": "deck-gloves", "place": "ashore", "grade": "K5"}, "Can a K5 wear deck gloves ashore?"),
        ({"item": "beard", "holds:religious-waiver": "yes"}, "May I wear a beard with a religious waiver?"),
        (
            {"item": "watch coat", "rig": "watch rig", "worn:storm-coat": "yes"},
            "May I wear the watch coat with the storm coat in watch rig?",
        ),
        ({"item": "light shirt", "air temperature": "32 °C"}, "may I wear the light shirt at 32 °C"),
    ],
)
def test_a_row_has_the_verdict_of_the_question(
    demo: KnowledgeBase, cells: dict[str, str], question: str
) -> None:
    (answer,) = demo.ask(question, as_of=DAY)
    assert answer.verdict is not None
    decided = decide(demo, **cells)
    assert isinstance(decided, Decided)
    assert decided.verdict == answer.verdict
    assert set(decided.rules) == {rule for case in answer.cases for rule in case.rules}
    if answer.verdict != "conditional":
        allowing = {demo.lookup.rules[rule].clause for change in answer.changes for rule in change.rules}
        cited = {citation.clause for citation in answer.citations}
        assert set(decided.clauses) <= cited <= {*decided.clauses, *allowing}


def test_aspect_and_day_have_columns(demo: KnowledgeBase) -> None:
    assert verdict(demo, item="belt", aspect="width") == "required"
    before = decide(demo, item="belt", aspect="width", as_of="2026-05-31")
    after = decide(demo, item="belt", aspect="width", as_of="2026-06-01")
    assert isinstance(before, Decided)
    assert isinstance(after, Decided)
    assert before.clauses != after.clauses
    assert demo.case_table(["item"]).texts(after)[1] == "interim-notice/2026 clause 3"


def test_an_everyday_word_names_an_item_where_it_fits_that_one_alone(demo: KnowledgeBase) -> None:
    assert decide(demo, item="liner") == decide(demo, item="storm-coat-liner")
    problem = decide(demo, item="coat")
    assert isinstance(problem, CellProblem)
    assert "fits storm-coat and watch-coat and" in problem.message


def test_days_between_changes_share_what_was_compiled(demo: KnowledgeBase) -> None:
    table = CaseTable(demo.lookup, demo.engine, ["item", "as_of"], DAY)
    for day in range(1, 29):
        assert isinstance(table.decide(["storm-coat", f"2026-02-{day:02}"]), Decided)
    assert len(table._deciders) == 1


@pytest.mark.parametrize(
    ("cells", "column", "words"),
    [
        ({"item": "florgle"}, 1, 'no item "florgle"'),
        ({"item": ""}, 1, "there is no item"),
        ({"item": "coat"}, 1, "storm-coat"),
        ({"_note": "x", "item": "storm-coat", "rig": "moon rig"}, 3, "moon rig"),
        ({"item": "storm-coat", "aspect": "smell"}, 2, 'no aspect "smell"'),
        ({"item": "storm-coat", "as_of": "2026-13-01"}, 2, "not a date"),
        ({"item": "storm-coat", "hauling": "perhaps"}, 2, "yes"),
        ({"item": "storm-coat", "air temperature": "3 mm"}, 2, "temperature"),
        ({"item": "storm-coat", "place": "afloat", "activity": "parade"}, 0, "exclude"),
        ({"item": "deck-gloves", "place": "x" * 2000}, 2, "too long"),
        ({"item": "\x1b[31m"}, 1, "\\u{1b}"),
    ],
)
def test_what_is_wrong_is_said_with_its_column(
    demo: KnowledgeBase, cells: dict[str, str], column: int, words: str
) -> None:
    problem = decide(demo, **cells)
    assert isinstance(problem, CellProblem)
    assert problem.column == column
    assert words in problem.message
    assert problem == decide(demo, **cells), "and again when it is remembered"


@pytest.mark.parametrize(
    ("header", "words"),
    [
        (["grade"], "no column item"),
        (["item", "wether"], "Did you mean weather"),
        (["item", "weather", "Weather"], "both for weather"),
        (["item", "name"], 'with "_"'),
        (["item", "item"], "both for item"),
        ([""], "no fact"),
    ],
)
def test_a_header_that_makes_no_sense_is_refused(demo: KnowledgeBase, header: list[str], words: str) -> None:
    with pytest.raises(UsageError, match=words):
        demo.case_table(header)


def test_a_row_of_another_length_is_a_problem(demo: KnowledgeBase) -> None:
    table = demo.case_table(["item", "grade"])
    for cells in ([], ["storm-coat"], ["storm-coat", "K5", "K6"]):
        assert isinstance(table.decide(cells), CellProblem)


def test_an_item_whose_kinds_differ_asks_for_the_kind(demo: KnowledgeBase) -> None:
    answers = demo.ask("May I wear a belt?", as_of=DAY)
    kinds = {item for one in answers if one.reading.query is not None for item in one.reading.query.items}
    assert len(kinds) > 1, "each of them has an answer of its own"
    problem = decide(demo, item="belt")
    assert isinstance(problem, CellProblem)
    assert all(kind in problem.message for kind in kinds)


def test_cells_written_for_a_spreadsheet_are_read_back(demo: KnowledgeBase) -> None:
    assert verdict(demo, item="light shirt", **{"air temperature": "'-5 °C"}) == verdict(
        demo, item="light shirt", **{"air temperature": "-5 °C"}
    )


def test_limits_on_numbers_bind_rows_as_they_bind_questions(demo: KnowledgeBase) -> None:
    """Every pair of kinds that one limit counts, as a row and as a structured question."""
    lookup, engine = demo.lookup, demo.engine(DAY)
    counted = {item for rule in lookup.base.rules if rule.aspect == "count" for item in rule.scope.items}
    verdicts = []
    for kind in sorted(counted):
        for one, other in itertools.permutations(lookup.narrower(kind)[1:6], 2):
            table = demo.case_table(["item", f"worn:{other}"], DAY)
            try:
                asked = act_answer(
                    engine,
                    Query(
                        kind="may",
                        items=(one,),
                        case=Case(as_of=DAY, facts=((f"worn:{other}", YES),)),
                    ),
                ).verdict
            except UsageError:
                continue
            decided = table.decide([one, "yes"])
            if isinstance(decided, Decided):
                verdicts.append((decided.verdict, asked))
    assert len(verdicts) > 20
    assert ("prohibited", "prohibited") in verdicts
    assert [pair for pair in verdicts if pair[0] != pair[1]] == []
