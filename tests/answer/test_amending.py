"""What has changed names the clause that stands in place of another, the day, and both texts.

The amendments of the rule books under test are the source: clauses 2 to 6 of the demo's notice, and the
amendment of the fourth book.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase
from tests.opening import opened

TODAY = datetime.date(2026, 11, 25)
FOURTH = Path(__file__).parents[1] / "fourth/books"


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.fixture(scope="module")
def fourth() -> KnowledgeBase:
    return opened("fourth")


def ask(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=TODAY)
    return answer


def clauses(answer: Answer) -> set[str]:
    return {f"{citation.edition} {citation.number}" for citation in answer.citations}


def test_both_texts_are_cited(fourth: KnowledgeBase) -> None:
    answer = ask(fourth, "What has changed about beards since June?")
    assert {"dress-instructions/2025 8.2", "amendment-1/2026 8.2"} <= clauses(answer)
    assert "From 1 June 2026" in answer.headline
    said = {one.label: [side.text for side in one.sides] for one in answer.differences}
    assert said["the length of the beard"] == [
        "must be at most 20 mm (3/4 in)",
        "must be at most 12 mm (1/2 in)",
    ]


def test_of_one_thing_nothing_else_is_told(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What has changed about the name strip this year?")
    assert {"dress-order/2024 5.17", "interim-notice/2026 2"} <= clauses(answer)
    assert "interim-notice/2026 3" not in clauses(answer)


def test_what_a_book_changed_is_all_that_it_replaces(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What did the Notice change?")
    replaced = {
        "dress-order/2024 5.17",
        "dress-order/2024 2.15",
        "dress-order/2024 7.7",
        "dress-order/2024 6.22",
    }
    assert replaced <= clauses(answer)
    assert {one.item for one in answer.differences}.isdisjoint({"tarred-smock", "lined-smock"})


def test_what_is_to_come(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What changes in January?")
    assert [one.item for one in answer.differences] == ["headphones"]
    assert "From 15 January 2027" in answer.headline
    assert ask(demo, "Will anything change about smocks next month?").headline.startswith("Nothing differs")


@pytest.mark.parametrize("question", ["Which clause replaced 5.17?", "Is clause 5.17 still in force?"])
def test_a_clause_is_shown_with_what_stands_in_its_place(demo: KnowledgeBase, question: str) -> None:
    answer = ask(demo, question)
    assert clauses(answer) == {"dress-order/2024 5.17", "interim-notice/2026 2"}
    assert "was replaced" in answer.notes[0]


def test_a_clause_that_ends_another_speaks_of_its_things(demo: KnowledgeBase) -> None:
    assert clauses(ask(demo, "What does the Notice say about whistles?")) == {"interim-notice/2026 5"}


def test_a_short_book_is_shown_whole(fourth: KnowledgeBase) -> None:
    assert clauses(ask(fourth, "What does the Amendment say?")) == {"amendment-1/2026 8.2"}


def test_a_day_before_a_change(fourth: KnowledgeBase) -> None:
    for question in (
        "How long could a beard be before June?",
        "Before the Amendment, how long could my beard be?",
    ):
        answer = ask(fourth, question)
        assert clauses(answer) == {"dress-instructions/2025 8.2"}


def test_what_is_still_to_come_is_noted(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What has changed about headphones?")
    assert answer.headline.startswith("Nothing differs")
    assert any("15 January 2027" in note for note in answer.notes)
