"""A line that asks two things: an answer for each, also where one clause tells both."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from kb.reader import split_questions
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    names = ("demo", "fourth", "fifth", "seventh", "eighth")
    return {name: opened(name) for name in names}


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("A Cadet Leader, how many bars and how wide?", ("A Cadet Leader, how many bars?", "how wide?")),
        (
            "Trainers with Work Dress: who may wear them, and for how long?",
            ("Trainers with Work Dress: who may wear them?", "for how long?"),
        ),
        ("How wide and how high is the strip?", ("How wide is the strip?", "how high is the strip?")),
        (
            "What size and what colour is the name plate?",
            ("What size is the name plate?", "what colour is the name plate?"),
        ),
        ("where and how high does it sit", ("where does it sit", "how high does it sit")),
        ("How soon must I report it, and to whom?", ("How soon must I report it", "to whom?")),
        ("What happens if I lose my cap and who pays?", ("What happens if I lose my cap", "who pays?")),
        ("I have a beard and may I wear a mask?", ("I have a beard. may I wear a mask?",)),
        ("How wide and high is the strip?", ("How wide and high is the strip?",)),
        ("Are studs allowed and hoops banned?", ("Are studs allowed?", "Are hoops banned?")),
        (
            "Is a cape required but a hat optional in town?",
            ("Is a cape required in town?", "Is a hat optional in town?"),
        ),
        ("Studs are fine but hoops aren't", ("Studs are fine?", "hoops aren't fine?")),
        ("The cape is fine and it is required", ("The cape is fine and it is required",)),
        (
            "May those on watch and who wear a coat take it off?",
            ("May those on watch and who wear a coat take it off?",),
        ),
    ],
)
def test_parts(text: str, parts: tuple[str, ...]) -> None:
    assert split_questions(text) == parts


@pytest.mark.parametrize(
    ("books", "text", "clauses"),
    [
        ("eighth", "Where is the company's telephone carried and who carries it?", ["6.8", "6.8"]),
        ("eighth", "How many cords does a first hand wear, and on which shoulder?", ["5.3", "5.3"]),
        (
            "eighth",
            "I'm leaving the company. May I keep my language pins, and how soon must everything else be back"
            " in the stores?",
            ["9.6", "9.6"],
        ),
        ("fourth", "I lost my kit. How soon must I report it, and to whom?", ["10.4", "10.4"]),
        ("fifth", "How long can a band be worn in private mourning, and who has to agree?", ["4.9", "4.9"]),
        (
            "fifth",
            "Remembrance Week: from which day to which day, and which lapel?",
            ["4.10", "4.10"],
        ),
        (
            "seventh",
            "who decides what outfit we're in and how long beforehand do they have to say",
            ["1.7", "1.7"],
        ),
        ("seventh", "A Cadet Leader, how many bars and how wide?", ["5.2", "5.2"]),
        ("fifth", "And the name plate, what size and what colours?", ["4.5", "4.5"]),
        ("seventh", "Trainers with Work Dress: who may wear them, and for how long?", ["4.8", "4.8"]),
        ("demo", "When are members inspected, and by whom?", ["1.12", "1.12"]),
        ("demo", "How many bars does a K4 wear, and how high is each?", ["5.7", "5.7"]),
    ],
)
def test_each_part_is_answered(
    bases: dict[str, KnowledgeBase], books: str, text: str, clauses: list[str]
) -> None:
    answers = bases[books].ask(text, as_of=DAY)
    assert [answer.citations[0].number for answer in answers] == clauses


@pytest.mark.parametrize(
    ("books", "text"),
    [
        ("eighth", "May I wear the silver tie with Gala Dress, and who pays for it?"),
        (
            "demo",
            "Two of my men read the rule on scarves differently. Who decides, and does it hold next week?",
        ),
    ],
)
def test_a_part_that_no_clause_tells_is_not_answered(
    bases: dict[str, KnowledgeBase], books: str, text: str
) -> None:
    first, second = bases[books].ask(text, as_of=DAY)
    assert first.outcome == "answer"
    assert second.outcome != "answer"


@pytest.mark.parametrize(
    ("books", "text", "read"),
    [
        (
            "eighth",
            "I'm leaving. May I keep my language pins?",
            "May anyone choose not to return the flag pin, leaving the company?",
        ),
        (
            "seventh",
            "I am a leaver. May I keep the felt beret?",
            "May anyone choose not to return the felt beret, leaving the Corps?",
        ),
        (
            "seventh",
            "I'm leaving. May I keep the felt beret on?",
            "May anyone wear the felt beret?",
        ),
    ],
)
def test_what_is_kept_on_leaving(bases: dict[str, KnowledgeBase], books: str, text: str, read: str) -> None:
    assert bases[books].read(text, as_of=DAY).text == read
