"""What no rule says of a class of things, but the names of its kinds: their colour, material or size."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fifth", "seventh", "eighth")}


@pytest.mark.parametrize(
    ("books", "question", "named"),
    [
        ("eighth", "What colour tie goes with Gala Dress?", ["silver tie"]),
        ("eighth", "waht colour tie goes with gala dress", ["silver tie"]),
        ("eighth", "Is the tie in Gala Dress silver or green?", ["silver tie"]),
        ("eighth", "What colour of shirt is worn in Crew Dress?", ["grey shirt"]),
        ("eighth", "What is the colour of the waistcoat in Salon Dress?", ["black waistcoat"]),
        ("eighth", "What size is the apron in Rooms Dress?", ["half apron"]),
        ("seventh", "What colour gloves go with Sail Dress?", ["sailing gloves", "black gloves"]),
        ("demo", "What material is the belt in watch rig?", ["canvas belt", "webbing belt"]),
        ("demo", "What are the socks in the boat rig made of?", ["wool socks", "dress socks"]),
        ("demo", "What colour lanyard does a coxswain wear?", ["white lanyard"]),
        ("fifth", "What colour gloves go with Order A?", ["white gloves", "cut-resistant gloves"]),
    ],
)
def test_the_names_tell_it(
    bases: dict[str, KnowledgeBase], books: str, question: str, named: list[str]
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert [entry.label for entry in answer.entries][: len(named)] == named


def test_an_apron_is_told_of_who_asks_for_its_colour(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["eighth"].ask(
        "What colour is the apron of a house trainee in the kitchen who hasn't passed the hygiene test yet?",
        as_of=DAY,
    )
    assert answer.entries[0].label == "grey apron"
    assert "3.5" in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("eighth", "What colour gloves may I wear in Snow Kit?"),  # lined ones, of no colour
        ("eighth", "What colour must the trousers be in Kitchen Whites?"),
        ("eighth", "How wide is the black belt?"),
        ("eighth", "What colour is the padded coat?"),
        ("seventh", "What colour belt is worn in Daily Dress?"),  # none is
        ("demo", "What colour is the shore coat?"),
        ("fifth", "What are the gloves in Order A made of?"),  # leather ones are of another order
    ],
)
def test_the_names_tell_nothing(bases: dict[str, KnowledgeBase], books: str, question: str) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.verdict == "silent"


def test_a_rule_on_the_colour_goes_before_a_name(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["fifth"].ask("What colour are my boots in Order F?", as_of=DAY)
    assert answer.headline == "The colour of the black boots must be black."
