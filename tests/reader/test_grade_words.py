"""Grades that are called as people call each other, and a ladder that shares its name with a grade."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase

DAY = datetime.date(2026, 11, 25)
VOCABULARY = (Path(__file__).parents[1] / "audit/books/vocabulary.yaml").read_text("utf-8")
ORDER = """
book: {id: pier-order, title: Pier Order, authority: council}
edition: {id: "1", title: First, in force from: 2024-01-01}
clauses:
  - {clause: "1", text: Mates wear the hat., rules: [{must: hat, grades: P2}]}
  - {clause: "2", text: Masters wear the coat., rules: [{must: coat, grades: masters}]}
"""


@pytest.fixture(scope="module")
def opened(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    folder = tmp_path_factory.mktemp("grades")
    books = folder / "books"
    books.mkdir()
    words = VOCABULARY.replace("{id: P2, label: Watcher}", "{id: P2, label: Mate}")
    words = words.replace("{id: P5, label: Pier Master}", "{id: P5, label: Old Master}").replace(
        "ladders:\n",
        "ladders:\n  - {id: masters, label: masters, one: master, grades: [{id: M1, label: Young Master}, "
        "{id: M2, label: Master}]}\n",
    )
    (books / "vocabulary.yaml").write_text(words, "utf-8")
    (books / "order.yaml").write_text(ORDER, "utf-8")
    return KnowledgeBase.open(books, folder / "cache")


@pytest.mark.parametrize(
    ("question", "verdict", "grades"),
    [
        ("Must a mate wear the round hat?", "required", {"P2"}),
        ("Do mates wear the round hat?", "required", {"P2"}),
        ("Must a master wear the pier coat?", "required", {"M1", "M2"}),
        ("Do masters wear the pier coat?", "required", {"M1", "M2"}),
    ],
)
def test_a_grade_that_is_named_is_read(
    opened: KnowledgeBase, question: str, verdict: str, grades: set[str]
) -> None:
    (answer,) = opened.ask(question, as_of=DAY)
    assert answer.verdict == verdict
    assert answer.reading.query is not None
    (known,) = [values for fact, values in answer.reading.query.case.facts if fact == "grade"]
    assert known.members == grades  # type: ignore[union-attr]


def test_a_mate_who_says_so_is_not_the_one_asked_about(opened: KnowledgeBase) -> None:
    (answer,) = opened.ask("My mate says I must wear the round hat, is he right?", as_of=DAY)
    assert answer.reading.query is not None
    assert not answer.reading.query.case.facts
