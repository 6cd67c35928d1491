"""What carries an answer: in every case that it speaks of, and not by a clause that permits nothing."""

from __future__ import annotations

import datetime
import json
from collections.abc import Sequence
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase, answer_to_json

BOOKS = Path(__file__).parents[1] / "audit/books"
DAY = datetime.date(2026, 11, 25)


def base(folder: Path, *rules: str) -> KnowledgeBase:
    """A book with a clause for each rule, numbered from 1, on the pier's vocabulary."""
    clauses = "".join(
        f'  - clause: "{number}"\n    text: Rule {number}.\n    rules: [{rule}]\n'
        for number, rule in enumerate(rules, 1)
    )
    books = folder / "books"
    books.mkdir()
    (books / "vocabulary.yaml").write_text((BOOKS / "vocabulary.yaml").read_text("utf-8"), "utf-8")
    (books / "order.yaml").write_text(
        "book: {id: pier-order, title: Pier Order, authority: council}\n"
        f'edition: {{id: "1", title: First, in force from: 2024-01-01}}\nclauses:\n{clauses}',
        "utf-8",
    )
    return KnowledgeBase.open(books, folder / "cache")


def ask(opened: KnowledgeBase, question: str, facts: Sequence[tuple[str, str]] = ()) -> Answer:
    stated = tuple(opened.fact(name, value) for name, value in facts)
    (answer,) = opened.ask(question, facts=stated, as_of=DAY)
    assert opened.verify(json.loads(answer_to_json(answer))) is None
    return answer


def cited(answer: Answer) -> list[str]:
    return [citation.number for citation in answer.citations]


def test_each_case_of_a_single_verdict_has_a_clause_that_is_cited(tmp_path: Path) -> None:
    opened = base(
        tmp_path,
        "{must not: hat, when: {weather: foul}}",
        "{must not: hat, when: {weather: fair}}",
        "{must not: hat, when: {weather: rain}}",
    )
    assert cited(ask(opened, "May I wear the hat?")) == ["1", "2"]
    assert cited(ask(opened, "May I wear the hat?", [("weather", "fair")])) == ["2"]


def test_of_clauses_that_serve_alike_the_one_that_speaks_of_the_case_is_cited(tmp_path: Path) -> None:
    opened = base(tmp_path, "{must not: hat}", "{must not: hat, when: {place: afloat}}")
    assert cited(ask(opened, "May I wear the hat?")) == ["1"]
    assert cited(ask(opened, "May I wear the hat?", [("place", "afloat")])) == ["2"]


@pytest.mark.parametrize(
    ("question", "clauses"),
    [("May I go without the hat?", ["2"]), ("Must I wear the hat?", ["2"]), ("May I wear the hat?", ["3"])],
)
def test_what_frees_from_a_duty_is_cited_to_who_asks_about_the_duty(
    tmp_path: Path, question: str, clauses: list[str]
) -> None:
    opened = base(
        tmp_path,
        "{id: always, must: hat}",
        "{need not: hat, when: {place: afloat, weather: foul}, exception to: always}",
        "{may: hat, when: {place: afloat}}",
    )
    answer = ask(opened, question, [("place", "afloat"), ("weather", "foul")])
    assert (answer.verdict, cited(answer)) == ("permitted", clauses)


def test_a_thing_that_need_not_be_worn_is_not_forbidden_for_want_of_a_permission(tmp_path: Path) -> None:
    opened = base(
        tmp_path,
        "{id: always, must: hat}",
        "{need not: hat, when: {place: afloat}, exception to: always}",
        "{must not: anything, residual: yes}",
    )
    answer = ask(opened, "May I wear the hat?", [("place", "afloat")])
    assert (answer.verdict, cited(answer)) == ("not_required", ["2"])
    assert answer.notes == ()
