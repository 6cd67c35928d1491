"""What is forbidden whatever else holds is answered without words that could not free it, and only then."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
NAMES = ("creamery", "hotel", "racecourse", "shipyard", "quarry")


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in NAMES}


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("creamery", "Just popping over to the farm shop in my white coat, five minutes at most. OK?", "2.1"),
        ("creamery", "Can I run across to the farm shop in my white coat for a sandwich?", "2.1"),
        ("hotel", "Can I at least carry my rucksack through the lobby, it's only small?", "5.7"),
        ("quarry", "Trainee here. Can I still use a paper mask for sweeping up?", "1"),
        ("racecourse", "Can I at least keep my spare trainers on in the stables?", "3.2"),
        ("quarry", "My mate gave me a unicorn sticker for my hard hat. Allowed?", "4.3"),
    ],
)
def test_what_nothing_can_free_is_answered(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.verdict == "prohibited"
    assert answer.headline.startswith("No.")
    assert clause in [citation.number for citation in answer.citations]
    assert answer.reading.unused


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("racecourse", "Can I take a photo of a rucksack in the paddock?"),
        ("racecourse", "Can I buy new trainers for the stables?"),
        ("hotel", "Can I leave my rucksack in the lobby?"),
        ("hotel", "Can I trip over a rucksack in the lobby?"),
        ("creamery", "Can I pop my phone charger in the making room?"),
        ("creamery", "Can I wear the ring my husband gave me at our wedding in the making room?"),
        ("creamery", "Can I wear a bracelet with my blood group on it in the making room?"),
        ("shipyard", "Can I lend a painter my lighter in the paint hall?"),
        ("shipyard", "I came in spare sandals today. Is that a problem beyond the yellow line?"),
        ("racecourse", "Do I need a red skull cap when I'm mounted?"),
    ],
)
def test_another_thing_or_deed_is_not_answered(
    bases: dict[str, KnowledgeBase], books: str, question: str
) -> None:
    answers = bases[books].ask(question, as_of=DAY)
    assert not any(answer.headline.startswith(("Yes", "No")) for answer in answers)


@pytest.mark.parametrize(
    ("books", "question", "word"),
    [
        ("shipyard", "Sandals beyond the yellow line, that's not a problem?", "No."),
        ("hotel", "Nail varnish in the kitchen - not a problem?", "No."),
        ("shipyard", "Sandals beyond the yellow line, is that a problem?", "Yes."),
    ],
)
def test_a_problem_is_no_leave(bases: dict[str, KnowledgeBase], books: str, question: str, word: str) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert (answer.verdict, answer.headline.split()[0]) == ("prohibited", word)
