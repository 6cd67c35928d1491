"""Words that nothing explains are left out where the clauses bear the answer out, and only there."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fourth", "fifth", "seventh")}


@pytest.mark.parametrize(
    ("books", "question", "verdict", "clause", "gone"),
    [
        ("demo", "Now winter's started, should I be tarring my lined smock?", "prohibited", "2.8", "started"),
        (
            "fourth",
            "No first-aid qualification yet but my aunt lent me her first-aid badge; can I wear it?",
            "prohibited",
            "4.4",
            "aunt",
        ),
        (
            "fifth",
            "Our newest lad irons a crease in his cargo trousers. He's not supposed to, is he?",
            "prohibited",
            "10.3",
            "newest",
        ),
        (
            "seventh",
            "We're indoors in Work Dress and it's stuffy, may we take the drab overshirts off?",
            "conditional",
            "3.4",
            "stuffy",
        ),
    ],
)
def test_what_the_clauses_bear_out_is_answered(
    bases: dict[str, KnowledgeBase], books: str, question: str, verdict: str, clause: str, gone: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.verdict == verdict
    assert clause in [citation.number for citation in answer.citations]
    assert gone in answer.reading.unused


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("demo", "Is a gopro on the boat helmet allowed when boarding?"),  # the thing itself
        ("demo", "May I wear the rescue medal that my grandfather gave me in parade rig?"),  # which one
        ("demo", "Gilt buttons on the watch coat gone green, can I wear it?"),  # no gilt coat
        ("demo", "My watch coat is navy. May I bleach it?"),  # what is to be done with it
        ("fourth", "Because my dentist recommended it, may I wear sunglasses indoors in station dress?"),
        ("seventh", "It's not stuffy and we're indoors in Work Dress, may we take the drab overshirts off?"),
        ("seventh", "It's 3 o'clock and stuffy indoors in Work Dress, may we take the drab overshirts off?"),
        ("seventh", "We're indoors in Work Dress, may we take the drab gubbins overshirts off?"),
    ],
)
def test_what_may_be_a_thing_a_number_a_denial_or_a_reason_never_goes(
    bases: dict[str, KnowledgeBase], books: str, question: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome in ("ask", "abstain")


def test_another_than_the_nearest_clause_bears_nothing_out(bases: dict[str, KnowledgeBase]) -> None:
    """The words left out stand in a clause on another matter, which speaks of more of the question."""
    text = "The storm hat blew off the hauling crew on the slipway, must I wear the service cap on parade?"
    (answer,) = bases["demo"].ask(text, as_of=DAY)
    assert answer.outcome != "answer" or not {"crew", "blew"} & set(answer.reading.unused)
