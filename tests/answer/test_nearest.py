"""Where no rule speaks of what was asked of a thing, the nearest that the rules say of it is told."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
SECOND = Path(__file__).parent.parent / "second" / "books"


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


def _said(answer: Answer) -> str:
    return " ".join([answer.headline, *(citation.text for citation in answer.citations)])


@pytest.mark.parametrize(
    ("text", "read_as", "words"),
    [
        ("How long should the service jersey be?", "the fit of the service jersey", "cover the belt"),
        ("What's the white lanyard made of?", "clause Dress Order (2024) 6.9", "pipe-clayed cotton"),
        ("What is the watch coat made of?", "clause Dress Order (2024) 2.6", "navy blue wool"),
        ("May I have a trouser crease?", "Where must the trouser crease", "from the waistband"),
        ("Must I wear the chin strap on deck?", "How must the chin strap be worn", "under the chin"),
        ("Can I bring my shore coat along in boat rig?", "wear the shore coat", "must not be worn"),
    ],
)
def test_the_nearest_is_told_and_said_to_be_so(
    base: KnowledgeBase, text: str, read_as: str, words: str
) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert read_as in answer.reading.text
    assert words in _said(answer)
    assert any("The books are silent" in said for said in answer.reading.beside)


@pytest.mark.parametrize(
    "text", ["How wide is the service jersey?", "How many pockets are there on the work jacket?"]
)
def test_silence_stays_where_nothing_is_near(base: KnowledgeBase, text: str) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.verdict == "silent"


def test_a_manner_is_told_of_what_no_rule_has_worn() -> None:
    second = opened("second")
    (answer,) = second.ask("What do I do with long hair in rope rig?", as_of=DAY)
    assert "tied back" in answer.headline


def test_a_rule_that_speaks_of_it_is_not_passed_over(base: KnowledgeBase) -> None:
    (answer,) = base.ask("Can I carry the satchel in watch rig?", as_of=DAY)
    assert answer.reading.query is not None
    assert answer.reading.query.aspect == "carrying"
