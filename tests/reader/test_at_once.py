"""Two of a thing of two colours at once: how many may be worn is asked, where that is what bars it."""

from __future__ import annotations

import datetime

import pytest

from kb import Answer, KnowledgeBase

BOOKS = """
service: {id: mill, label: Mill Wardens, namespace: "https://mill.example/"}
authorities: [{id: board, label: Board}]
aspects: [{id: colour, values: [{id: red, label: red}, {id: blue, label: blue}, {id: grey, label: grey}]}]
items:
  - {id: pin, label: pin, kind of: accessory}
  - {id: cord, label: cord, kind of: accessory}
  - {id: hood, label: hood, kind of: garment}
book: {id: order, title: Mill Order, authority: board}
edition: {id: "1", title: Mill Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: One pin, red or blue. Two cords at most, red or blue. The hood is red or blue.
    rules:
      - {must: pin, colour: [red, blue], count: at most 1}
      - {must: cord, colour: [red, blue], count: at most 2}
      - {must: hood, colour: [red, blue]}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("mill")
    (books / "mill.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _answer(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=datetime.date(2026, 11, 25))
    return answer


@pytest.mark.parametrize(
    "question",
    [
        "May I wear a red pin and a blue one?",
        "May I wear a red pin and a blue pin together?",
        "I've a red pin and a blue one. Can I wear the two of them together?",
        "I've got a red pin and a blue one. Can I wear both at once?",
        "Red and blue pin at the same time, ok?",
    ],
)
def test_two_are_one_too_many(question: str, base: KnowledgeBase) -> None:
    answer = _answer(base, question)
    assert (answer.verdict, answer.reading.query and answer.reading.query.aspect) == ("prohibited", "count")


@pytest.mark.parametrize(
    ("question", "verdict", "aspect"),
    [
        ("May I wear a red cord and a blue one?", "permitted", "colour"),  # two may be, if of these colours
        ("May I wear a red cord and a grey one?", "prohibited", "colour"),
        ("May I wear a red hood and a blue one together?", "silent", "count"),  # nothing is said of two
        ("May the pin be red or blue?", "permitted", "colour"),
        ("May I wear a red or a blue pin?", "permitted", "colour"),
    ],
)
def test_else_it_turns_on_the_colours(question: str, verdict: str, aspect: str, base: KnowledgeBase) -> None:
    answer = _answer(base, question)
    said = "permitted" if answer.verdict == "required" else answer.verdict
    assert (said, answer.reading.query and answer.reading.query.aspect) == (verdict, aspect)
