"""A clause that tells a value of the sort that is asked for: a distance, a warmth, a day, a name, somebody.

It is shown where no rule answers, also where the question was read as one of which no rule speaks.
"""

from __future__ import annotations

import datetime
import json

import pytest

from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fifth", "sixth", "seventh", "eighth")}


@pytest.mark.parametrize(
    ("books", "question", "clauses"),
    [
        ("eighth", "how far from a rail counts as on the line", ["1.4"]),
        ("eighth", "Within how many metres of the rail saw are ear defenders worn?", ["7.4", "10.6"]),
        ("eighth", "How warm must it be in the shade before jackets may be allowed off?", ["3.10"]),
        ("eighth", "On what day does winter begin at Tarnhead?", ["1.5"]),
        ("eighth", "As an inspector I'd like to know how many clauses a local order may run to.", ["1.8"]),
        ("eighth", "Storekeeper here: after how many washes is the orange vest to be handed in?", ["9.5"]),
        ("eighth", "Which grade is called the lamp?", ["2.1"]),
        ("eighth", "Somebody called my daughter a pebble on her first day. Which grade is that?", ["2.1"]),
        ("seventh", "which grade is known as the lantern?", ["2.1"]),
        (
            "seventh",
            "how long may they keep us standing on parade when it's 27 degrees",
            ["7.2", "10.6"],
        ),
        ("sixth", "how deep the fold on the tea cosy?", ["4.4"]),
        ("sixth", "What size is the brass stud on the horn's tab?", ["2.3"]),
        ("sixth", "who says what protective clothing must be worn?", ["8.1"]),
        ("sixth", "Within how many minutes must somebody sent to the Linen Room be back?", ["10.3"]),
        ("sixth", "How hot does the hall thermometer have to be for a warm notice?", ["5.2", "N.3"]),
        ("fifth", "how old can a first aid certificate be?", ["4.8"]),
        ("fifth", "Within how many days must loaned Order F kit be handed back?", ["10.2"]),
        ("fifth", "Order F kit I drew on loan - how long till it has to go back?", ["10.2"]),
        ("demo", "Who settles what the rig of the day is?", ["3.1"]),
        ("demo", "My surname is Featherstone, what's the longest my name strip may be?", ["2"]),
    ],
)
def test_a_clause_tells_it(
    bases: dict[str, KnowledgeBase], books: str, question: str, clauses: list[str]
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert [citation.number for citation in answer.citations] == clauses


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("eighth", "How far from the rail may I smoke?"),
        ("eighth", "How warm must it be before the ferry sails?"),
        ("eighth", "On what day does the summer begin at Tarnhead?"),
        ("eighth", "How many cogs do I have to sew on each cuff?"),  # the clause tells a height alone
        ("eighth", "Which grade is called the kettle?"),
        ("demo", "How deep is the water under the boat?"),
        ("demo", "Who settles what we have for dinner?"),
        ("sixth", "who says when the guests leave?"),
        ("fifth", "how long till the court sits?"),
        ("fifth", "How far is the court from the depot?"),
        ("sixth", "How long does the ferry take?"),
        ("sixth", "How far is it from the Slip to the Lodge?"),
    ],
)
def test_no_clause_tells_it(bases: dict[str, KnowledgeBase], books: str, question: str) -> None:
    answers = bases[books].ask(question, as_of=DAY)
    assert not any(answer.citations for answer in answers)


@pytest.mark.parametrize(
    ("books", "question", "read"),
    [
        ("eighth", "how wide is the white tape inside the collar", "9.2"),
        ("demo", "How many pockets are there on the work jacket?", "5"),
    ],
)
def test_what_speaks_of_it_stands_beside_a_silence(
    bases: dict[str, KnowledgeBase], books: str, question: str, read: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.verdict == "silent"
    assert [citation.number for citation in answer.speaking] == [read]
    saved = json.loads(answer_to_json(answer))
    assert bases[books].verify(saved) is None
    saved["speaking"][0]["text"] = "It is 20 mm wide."
    assert bases[books].verify(saved) is not None


def test_a_clause_on_the_thing_alone_does_not_stand_beside(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["demo"].ask("What colour is the shore coat?", as_of=DAY)
    assert answer.verdict == "silent"
    assert answer.speaking == ()


def test_who_carries_what_is_worn(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["eighth"].ask("Who carries the company's telephone?", as_of=DAY)
    assert answer.reading.text == "Who may wear the company's telephone?"
    assert [citation.number for citation in answer.citations] == ["6.8"]
