"""Answers that use all that the books say: the book that is named, limits on numbers, measures as written."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import jsonschema
import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
SCHEMA = json.loads((Path(__file__).parents[2] / "ontology/schemas/answer.schema.json").read_text("utf-8"))


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def ask(demo: KnowledgeBase, question: str) -> Answer:
    (answer,) = demo.ask(question, as_of=DAY)
    saved = json.loads(answer_to_json(answer))
    jsonschema.validate(saved, SCHEMA, jsonschema.Draft202012Validator)
    assert demo.verify(saved) is None
    if answer.reading.query is not None:
        (again,) = demo.ask(answer.reading.text, as_of=DAY)
        assert again.reading.query == answer.reading.query
    return answer


# -- the book that is named -----------------------------------------------------------------------------


def test_a_question_about_a_book_is_answered_from_that_book(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What does the Station Order say about the service cap?")
    assert {citation.book for citation in answer.citations} == {"station-order"}
    assert len(answer.citations) > 1
    assert answer.headline == "Station Order of Gannet Ness, 2025, clauses 4 and 13"


def test_a_book_that_does_not_speak_of_an_item_says_so(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What does the Station Order say about gloves?")
    assert (answer.verdict, answer.citations) == ("silent", ())
    assert "Station Order" in answer.headline
    assert ask(demo, "Which clauses speak of gloves?").citations, "another book does"


def test_an_edition_that_is_named_answers_though_it_is_out_of_force(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What does the Dress Order 2019 say about the knit cap?")
    assert [(c.edition, c.number) for c in answer.citations] == [("dress-order/2019", "3.4")]


def test_a_saved_answer_from_another_book_is_refused(demo: KnowledgeBase) -> None:
    saved = json.loads(answer_to_json(ask(demo, "What does the Station Order say about the service cap?")))
    saved["reading"]["book"] = "dress-order"
    assert demo.verify(saved) is not None
    saved["reading"]["book"] = "no-such-book"
    assert demo.verify(saved) is not None


# -- limits on numbers ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("question", "said"),
    [
        (
            "May I wear the storm hood with the watch coat?",
            "The storm hood must not be worn with the watch coat.",
        ),
        (
            "May the liner be worn under the watch coat?",
            "The quilted liner must not be worn with the watch coat.",
        ),
    ],
)
def test_a_limit_on_numbers_settles_what_is_worn_besides(
    demo: KnowledgeBase, question: str, said: str
) -> None:
    """Clause 2.4: one outer garment at a time; the storm coat, without which both are forbidden, is one."""
    answer = ask(demo, question)
    assert answer.verdict == "conditional", "a limit can be broken: the table keeps the case"
    assert answer.headline == f"No. {said} Dress Order (2024) 2.4 leaves no room for the storm coat as well."


@pytest.mark.parametrize(
    ("question", "room"),
    [
        ("May a W2 wear the watch coat on watch in shore rig?", "the storm coat or the shore coat"),
        ("I am not on watch, may I wear the shore coat in shore rig?", "the storm coat"),
    ],
)
def test_what_the_headline_begins_with_is_not_said_again_of_the_limit(
    demo: KnowledgeBase, question: str, room: str
) -> None:
    answer = ask(demo, question)
    assert answer.headline.endswith(f"2.4 leaves no room for {room} as well.")
    assert answer.headline.count("may be worn") == 1


def test_without_a_second_outer_garment_nothing_is_settled(demo: KnowledgeBase) -> None:
    assert "leaves no room" not in ask(demo, "May I wear the storm hood?").headline


# -- measures and numbers as written --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("How long may a K3's beard be?", "at most 1 in (25 mm)"),
        ("How many outer garments may I wear at once?", "at most 1"),
        ("How long is the name strip for a long name?", "more than 5 in and at most 7 in"),
    ],
)
def test_bounds_are_said_as_the_clause_writes_them(demo: KnowledgeBase, question: str, said: str) -> None:
    answer = ask(demo, question)
    assert said in answer.headline
    assert "mm (without" not in answer.headline


# -- people and lists -----------------------------------------------------------------------------------


def test_who_is_told_what_the_situation_changes(demo: KnowledgeBase) -> None:
    """Clause 7 of the Station Order forbids the telephone in the lamp room to the officer of the day too."""
    answer = ask(demo, "Who may carry a telephone on watch?")
    (depends,) = [entry for entry in answer.entries if entry.verdict == "conditional"]
    assert depends.condition == "permitted, unless the wearer is in the lamp room"


def test_a_list_carries_the_cautions_of_what_is_in_it(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What must an H2 wear in boat rig?")
    items = {entry.item for entry in answer.entries}
    protecting = [item for item in items if demo.lookup.items[item].protects]
    assert len(protecting) > 1
    (said,) = [text for text in answer.cautions if text.startswith("Protection")]
    assert all(demo.lookup.items[item].label in said for item in protecting)
    assert "safety authority" in said


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("When may I wear the liner?", "The quilted liner may be worn when"),
        ("When may the liner not be worn?", "The quilted liner must not be worn when the wearer does not"),
        ("When may I wear the knit cap?", "The knit cap must be worn when the wearer is in boat rig."),
        ("When must I wear the sunglasses?", "No clause says that the sunglasses must be worn."),
    ],
)
def test_when_is_answered_with_the_cases(demo: KnowledgeBase, question: str, said: str) -> None:
    answer = ask(demo, question)
    assert said in answer.headline
    assert len(answer.cases) > 1


def test_who_may_not_is_told_when_they_may_not(demo: KnowledgeBase) -> None:
    """Clause 7.14: no beard at diving, whoever may wear one."""
    answer = ask(demo, "Who may not wear a beard?")
    depends = [entry for entry in answer.entries if entry.verdict == "conditional"]
    assert depends
    assert all(entry.condition == "prohibited when the wearer is diving" for entry in depends)


# -- what is out of the ordinary ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("day", "headline"),
    [
        (DAY, "Yes. The knit cap may be worn; when the month is April to October, the books are silent."),
        (
            datetime.date(2026, 7, 1),
            "Only when the month is November to March: the knit cap may be worn; "
            "otherwise the books are silent.",
        ),
    ],
)
def test_the_month_of_the_day_leads(demo: KnowledgeBase, day: datetime.date, headline: str) -> None:
    question = "Can I wear the knit cap with watch rig outside on station?"
    (answer,) = demo.ask(question, as_of=day)
    assert (answer.verdict, answer.headline) == ("conditional", headline)
    (again,) = demo.ask("May anyone wear the knit cap, in watch rig, month November to March?", as_of=day)
    months = {case.when for case in answer.cases if case.verdict == "permitted"}
    known = dict(again.reading.query.case.facts) if again.reading.query else {}
    assert {known["month"]} == {dict(when)["month"] for when in months}


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("May the storm coat be worn in watch rig on watch?",
         "No. The storm coat must not be worn, unless the weather is foul."),
        ("May the storm hat be worn in watch rig with the storm coat?",
         "Only when the weather is foul: the storm hat may be worn with the storm coat; "
         "otherwise the books are silent."),
    ],
)  # fmt: skip
def test_what_is_out_of_the_ordinary_is_said_by_what_it_is(
    demo: KnowledgeBase, question: str, headline: str
) -> None:
    """Clauses 3.3 and 4.11 speak of foul weather: never "unless the weather is not foul"."""
    (answer,) = demo.ask(question, as_of=datetime.date(2026, 11, 25))
    assert answer.headline == headline


PHASED = """\
service: {id: po, label: Po, namespace: "https://po.example/"}
authorities: [{id: chief, label: the Chief}]
ladders: [{id: g, label: grades, grades: [{id: G1, label: One}]}]
items:
  - {id: tie, label: tie, kind of: garment}
  - {id: clip-tie, label: clip tie, kind of: garment}
rigs: [{id: a, label: dress a}]
book: {id: b, title: Book, authority: chief}
edition: {id: "2020", title: Book, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: A tie or a clip tie is worn.
    rules: [{id: either, must: {any of: [tie, clip-tie]}}]
  - clause: "2"
    text: From 2025 on the tie is not worn.
    rules: [{id: out, phase out: tie, "on": 2025-01-01}]
"""


def test_a_thing_is_phased_out_of_a_duty_with_alternatives(tmp_path: Path) -> None:
    (tmp_path / "books").mkdir()
    (tmp_path / "books" / "b.yaml").write_text(PHASED, "utf-8")
    base = KnowledgeBase.open(tmp_path / "books", tmp_path / "cache")
    before, after = datetime.date(2024, 6, 1), datetime.date(2025, 6, 1)
    verdicts = [base.ask("May I wear the tie?", as_of=day)[0].verdict for day in (before, after)]
    assert verdicts == ["conditional", "prohibited"]
    assert base.ask("Must I wear the clip tie, without the tie?", as_of=after)[0].verdict == "required"


# -- days before any book -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "question",
    [
        "May I wear the storm coat in 1990?",
        "What must I wear in 1990?",
        "Who may wear the dress skirt in 1990?",
        "How long may my hair be in 1990?",
    ],
)
def test_before_the_first_book_it_is_said_that_none_was_in_force(demo: KnowledgeBase, question: str) -> None:
    first = "No book was in force on 1 January 1990: the first is Dress Order (2019), from 1 May 2019."
    assert ask(demo, question).headline == first


def test_of_a_day_with_books_it_is_the_books_that_are_silent(demo: KnowledgeBase) -> None:
    assert "No book was in force" not in ask(demo, "May I wear the tarred smock in 2020?").headline


@pytest.mark.parametrize(
    ("question", "rig"),
    [
        ("Storm hat with the watch coat in watch rig in foul weather?", ""),
        ("Storm hat with the watch coat in foul weather?", ", in watch rig"),
        ("Slip-on tab with the watch coat?", ", in watch, parade or shore rig"),
    ],
)
def test_what_only_a_broken_limit_allows_is_not_allowed(demo: KnowledgeBase, question: str, rig: str) -> None:
    """All of these would need the storm coat over or under the watch coat."""
    answer = ask(demo, question)
    assert answer.headline.startswith(f"No{rig}. The ")
    assert answer.headline.endswith("2.4 leaves no room for the storm coat as well.")
    assert "storm coat;" not in answer.headline


def test_of_two_of_which_one_is_worn_none_must_be(demo: KnowledgeBase) -> None:
    """Clause 3.5: "the tarred smock or the lined smock, one of them"."""
    (answer,) = demo.ask("Tarred smock on 30 September 2026?", as_of=datetime.date(2026, 9, 1))
    assert (
        "The tarred smock may be worn, or the lined smock: one of the two must be, not both;"
        in answer.headline
    )
    (answer,) = demo.ask(
        "Must I wear the tarred smock on 30 September 2026?", as_of=datetime.date(2026, 9, 1)
    )
    assert "must be worn, or the lined smock: one of the two must be, not both;" in answer.headline


def test_what_a_limit_leaves_room_for_is_allowed_as_before(demo: KnowledgeBase) -> None:
    answer = ask(demo, "Storm hat with the storm coat in watch rig in foul weather?")
    assert answer.headline == "Yes. The storm hat may be worn with the storm coat."
