"""What is told is taken, or asked about where the answer turns on it, and never passed over."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
_NAMES = ("demo", "hotel", "tramway", "playhouse", "forest", "creamery", "cadets")


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in _NAMES}


@pytest.mark.parametrize(
    ("books", "question", "fact", "value"),
    [
        (
            "hotel",
            "Chef here. The mincer's running right next to me. Neckerchief?",
            "machinery-running",
            "yes",
        ),
        (
            "hotel",
            "I'm a chef, there's a mixer whirring beside me. Can I wear my neckerchief?",
            "machinery-running",
            "yes",
        ),
        ("tramway", "The pillar drill's spinning right in front of me. Scarf?", "machinery-moving", "yes"),
        ("tramway", "I'm a driver standing by a moving conveyor. Scarf?", "machinery-moving", "yes"),
        ("tramway", "I'm turning. Safety goggles?", "activity", "turning"),
        ("playhouse", "The winch is moving and I'm right beside it. Scarf?", "near-winch", "yes"),
        ("creamery", "The separator is on. Ear defenders?", "separator", "yes"),
    ],
)
def test_a_machine_that_runs_beside_one_is_what_the_books_have_of_it(
    bases: dict[str, KnowledgeBase], books: str, question: str, fact: str, value: str
) -> None:
    (told,) = bases[books].ask(question, as_of=DAY)
    assert told.reading.query is not None
    taken = dict(told.reading.query.case.facts)
    assert value in getattr(taken[fact], "members", ())
    assert told.outcome == "answer"


def test_how_far_it_is_may_be_told_after_it(bases: dict[str, KnowledgeBase]) -> None:
    said = "The chainsaw's going and I'm stood five metres away. Chainsaw trousers?"
    plain = "Chainsaw trousers, distance from a running chainsaw 5 m?"
    one, other = (bases["forest"].ask(text, as_of=DAY)[0] for text in (said, plain))
    assert one.reading.query is not None
    assert other.reading.query is not None
    assert one.reading.query.case == other.reading.query.case


@pytest.mark.parametrize(
    ("books", "question", "fact"),
    [
        ("hotel", "Chef here. The mixer's going in the next room. Neckerchief?", "machinery-running"),
        ("tramway", "I'm a fitter. The lathe's turning and I'm stood right at it. Gloves?", "activity"),
    ],
)
def test_it_is_asked_about_where_it_may_turn_yes_or_no(
    bases: dict[str, KnowledgeBase], books: str, question: str, fact: str
) -> None:
    (asked,) = bases[books].ask(question, as_of=DAY)
    assert asked.outcome == "ask"
    assert asked.ask is not None
    assert asked.ask.fact == fact
    assert asked.speaking


@pytest.mark.parametrize(
    ("books", "question", "lead"),
    [
        ("hotel", "Chef here. The mincer isn't running. Neckerchief?", "Yes"),
        ("hotel", "Chef here. The kettle's boiling right next to me. Neckerchief?", "Yes"),
        (
            "playhouse",
            "Apprentice here, no Chargehand about during the show. Can I wear the radio?",
            "No",
        ),
    ],
)
def test_what_cannot_turn_it_is_not_asked_about(
    bases: dict[str, KnowledgeBase], books: str, question: str, lead: str
) -> None:
    (told,) = bases[books].ask(question, as_of=DAY)
    assert told.outcome == "answer"
    assert told.headline.startswith(lead)


@pytest.mark.parametrize(
    ("books", "said", "plain"),
    [
        (
            "cadets",
            "There's a rip in my life jacket, only a small one. Can I wear it?",
            "My life jacket is torn. May I wear it?",
        ),
        (
            "cadets",
            "My life jacket's got a little tear in it. Can I wear it?",
            "My life jacket is torn. May I wear it?",
        ),
        (
            "forest",
            "My riding helmet took a bang but it still looks fine. Can I wear it?",
            "May I wear a riding helmet after a fall?",
        ),
        (
            "forest",
            "A branch fell on my riding helmet. Can I wear it?",
            "May I wear a riding helmet after a fall?",
        ),
        (
            "tramway",
            "90 decibels in the workshop. Ear muffs?",
            "May I wear ear defenders in the workshop, loud noise?",
        ),
        (
            "tramway",
            "It's 70 dB in here. Must I wear ear defenders?",
            "Must I wear ear defenders, not loud noise?",
        ),
        (
            "tramway",
            "Conductor, it's 1 December and freezing. Can I keep my black gloves on while I give people"
            " their change?",
            "May a conductor wear black gloves, giving change, on 1 December 2026?",
        ),
        (
            "hotel",
            "I'm taking the bread out of the oven. Oven mitts?",
            "May I wear oven mitts, taking anything from the ovens?",
        ),
    ],
)
def test_it_is_read_as_the_plain_question_is(
    bases: dict[str, KnowledgeBase], books: str, said: str, plain: str
) -> None:
    one, other = (bases[books].ask(text, as_of=DAY)[0].reading.query for text in (said, plain))
    assert one is not None
    assert other is not None
    assert (one.kind, one.items, one.case) == (other.kind, other.items, other.case)


@pytest.mark.parametrize(
    ("books", "question", "fact"),
    [
        ("cadets", "There's no rip in my life jacket. Can I wear it in a boat?", "jacket-unfit"),
        ("forest", "My riding helmet nearly took a blow. Can I wear it?", "took-blow"),
        ("forest", "If a branch fell on my riding helmet, can I wear it indoors?", "took-blow"),
    ],
)
def test_damage_that_is_denied_or_supposed_is_none(
    bases: dict[str, KnowledgeBase], books: str, question: str, fact: str
) -> None:
    (told,) = bases[books].ask(question, as_of=DAY)
    query = told.reading.query
    assert query is None or "yes" not in getattr(dict(query.case.facts).get(fact), "members", ())


def test_what_is_left_out_may_be_another_value_of_what_was_read(bases: dict[str, KnowledgeBase]) -> None:
    (asked,) = bases["tramway"].ask("I'm a conductor giving a passenger her change. Black gloves?", as_of=DAY)
    assert asked.ask is not None
    assert asked.ask.fact == "activity"
