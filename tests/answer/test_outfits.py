"""Of an outfit as such the clause on it is shown; who says they have a medal have what it is awarded for."""

from __future__ import annotations

import datetime
from collections.abc import Callable

import pytest

from kb import Answer
from kb.model.values import YES
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
Ask = Callable[[str, str], Answer]


@pytest.fixture(scope="module")
def ask() -> Ask:
    return lambda name, text: opened(name).ask(text, as_of=DAY)[-1]


@pytest.mark.parametrize(
    ("book", "text", "clause"),
    [
        ("forest", "Do I have to wear saw dress when I'm using a chainsaw?", "2.2"),
        ("forest", "Who wears parade dress?", "2.4"),
        ("forest", "Can I wear riding dress on foot patrol?", "2.3"),
        ("demo", "Which rig is worn on parade?", "3.10"),
        ("demo", "May I wear shore rig in the mess?", "3.14"),
        ("demo", "What about shore rig?", "3.14"),
        ("playhouse", "When is house dress worn?", "2.1"),
        ("playhouse", "Do ushers have to wear evening dress at a matinee?", "2.2"),
        # a list that would name next to nothing to put on
        ("infirmary", "What does a porter wear?", "2.5"),
        ("forest", "What do I wear for fire watch?", "2.1"),
        ("infirmary", "What does a cook wear?", "2.4"),
        ("playhouse", "What is Evening Dress?", "2.2"),
        ("playhouse", "What are Show Blacks?", "4.1"),
    ],
)
def test_the_clause_on_an_outfit_is_shown(ask: Ask, book: str, text: str, clause: str) -> None:
    answer = ask(book, text)
    assert answer.outcome == "answer"
    assert answer.verdict is None
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("second", "What do we wear for river rig?"),  # there is none
        ("demo", "Can I wear it in boat rig?"),
        ("third", "Tie on the platform in 55 km/h wind, cabin dress?"),
        ("forest", "May I wear a cloak in parade dress?"),
    ],
)
def test_what_is_not_of_an_outfit_is_still_asked_back_or_refused(ask: Ask, book: str, text: str) -> None:
    assert ask(book, text).outcome in ("ask", "abstain")


def test_a_list_that_names_what_to_put_on_is_a_list(ask: Ask) -> None:
    assert ask("demo", "What do I wear in watch rig?").entries


@pytest.mark.parametrize(
    ("book", "text", "verdict"),
    [
        ("demo", "I've the rescue medal. May I have it on in the parade rig?", "permitted"),
        ("demo", "She's been awarded the rescue medal. May she wear it in parade rig?", "permitted"),
        (
            "demo",
            "My pilot's badge was awarded in March 2018. Can I hang on to the old pattern?",
            "permitted",
        ),
        ("forest", "I have a medal. Do I wear it on Charter Day?", "required"),
        # of whom nothing is said
        ("demo", "May I wear my rescue medal in parade rig?", "conditional"),
        ("demo", "May I wear the rescue medal in parade rig?", "conditional"),
    ],
)
def test_who_has_an_award_holds_what_it_is_for(ask: Ask, book: str, text: str, verdict: str) -> None:
    answer = ask(book, text)
    query = answer.reading.query
    assert query is not None
    held = any(fact.startswith("holds:") and values == YES for fact, values in query.case.facts)
    assert held == (verdict != "conditional")
    assert answer.verdict == verdict
