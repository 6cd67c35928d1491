"""How, where and how many of a thing that may not be worn: the answer is that it may not."""

from __future__ import annotations

import pytest

from kb import KnowledgeBase
from tests.opening import opened


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("question", "clause"),
    [
        ("May an H2 wear two earrings?", "6.5"),
        ("How many earrings may I wear?", "6.5"),
        ("Where does an H1 wear the cap device?", "5.2"),
        ("What colour is the tarred smock?", "2.7"),
    ],
)
def test_what_may_not_be_worn_is_said_to_be_so(demo: KnowledgeBase, question: str, clause: str) -> None:
    (answer,) = demo.ask(question)
    assert answer.verdict == "prohibited"
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("How many rings may I wear?", "required"),  # at most two
        ("Where does an H2 wear the cap device?", "required"),
        ("How do I wash the storm coat?", "required"),
        ("How many qualification devices may I wear?", "required"),
    ],
)
def test_what_may_be_worn_is_answered_as_asked(demo: KnowledgeBase, question: str, verdict: str) -> None:
    (answer,) = demo.ask(question)
    assert answer.verdict == verdict
    assert answer.reading.query is not None
    assert answer.reading.query.aspect != "wear"


@pytest.fixture(scope="module")
def ropeway() -> KnowledgeBase:
    return opened("third")


@pytest.mark.parametrize(("grade", "lead"), [("A1", "No"), ("A2", "Yes")])
def test_who_may_have_none_without_a_waiver_may_have_none_of_that_length(
    ropeway: KnowledgeBase, grade: str, lead: str
) -> None:
    """Clause 52: a beard of at most 20 mm may be worn by all but Probationers."""
    (answer,) = ropeway.ask("Can I have a 10 mm beard?", facts=(ropeway.fact("grade", grade),))
    assert answer.headline.startswith(lead)


def test_how_long_a_plate_may_be_is_answered_though_it_is_not_worn_by_all(ropeway: KnowledgeBase) -> None:
    (answer,) = ropeway.ask("My name plate is 90 mm long. Near enough?", facts=(ropeway.fact("grade", "A2"),))
    assert answer.reading.query is not None
    assert answer.reading.query.aspect != "wear"


@pytest.mark.parametrize(
    ("question", "clause"),
    [
        ("Can I take the deck knife into town on my belt?", "6.12"),
        ("Should wardens have a branch flash above the cuff?", "5.19"),
        ("May I wear the keeper's pin on my collar, as an H1?", "5.10"),
    ],
)
def test_what_may_not_be_had_may_not_be_had_at_a_place(
    demo: KnowledgeBase, question: str, clause: str
) -> None:
    (answer,) = demo.ask(question)
    assert answer.verdict == "prohibited"
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    "question",
    [
        "May I carry the deck knife on my belt in the boat rig?",
        "Should keepers have a branch flash above the cuff?",
    ],
)
def test_what_may_be_had_is_asked_back_with_its_place(demo: KnowledgeBase, question: str) -> None:
    (answer,) = demo.ask(question)
    assert answer.outcome == "ask"


def test_a_strip_that_a_grade_does_not_wear_is_not_worn_above_the_plate() -> None:
    corps = opened("fifth")
    (answer,) = corps.ask("As an O1, should I have a branch strip above my name plate?")
    assert answer.verdict == "prohibited"
