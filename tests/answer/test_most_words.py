"""Open questions that no rule answers: the one clause that most of their words speak of, or none."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "third", "fifth")}


@pytest.mark.parametrize(
    ("books", "question", "clause", "unused"),
    [
        (
            "demo",
            "What happens if the Master forgets to send his order to the Superintendent?",
            "1.9",
            ["forgets"],
        ),
        (
            "demo",
            "I'm K2, promoted to K3 tomorrow, what new things have I got to own?",
            "8.3",
            ["promoted", "tomorrow", "new"],
        ),
        ("demo", "My waiver is signed by the physician. How long does it stay valid?", "9.1", ["stay"]),
        (
            "third",
            "He says my service badge should touch the pocket. How far above it does it go?",
            "37",
            ["touch"],
        ),
        ("third", "How do I get a wet down jacket dry, can it be wrung out?", "55", ["wet"]),
        ("third", "What does a dog handler put on when working with the dog, and when not?", "40", []),
        ("fifth", "Who decides whether the weather is foul when we don't agree?", "1.4", ["agree"]),
        (
            "fifth",
            "I have a skin rash from shaving. How long does the doctor's note last?",
            "7.5",
            ["rash", "shaving", "last"],
        ),
    ],
)
def test_the_clause_is_shown(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str, unused: list[str]
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert [citation.number for citation in answer.citations] == [clause]
    assert (answer.verdict, list(answer.reading.unused)) == (None, unused)


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("demo", "How much do the climbing harness and the boat helmet cost?"),  # of another matter
        ("demo", "Who cooks for the officer of the day on watch?"),
        ("demo", "How many people fit in the skiff in rough sea?"),
        ("demo", "What does the Master eat in the mess on parade days?"),
        ("demo", "Who sells black shoes and dress socks in town?"),
        ("demo", "Are boots exchanged against the old pair or simply handed out?"),  # a choice
        ("third", "Who drives the cabin to the summit in snow?"),
        ("third", "How much does a cabin weigh when the wind is strong?"),
        ("third", "What's the penalty for not wearing the harness on a tower?"),
        ("fifth", "What is the salary of an Escort in the Workshop branch?"),
        ("fifth", "Who drives the van on the Flats road at night?"),
        ("fifth", "What does the Corps doctor charge for a note?"),
    ],
)
def test_no_clause_tells_it(bases: dict[str, KnowledgeBase], books: str, question: str) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome != "answer"
