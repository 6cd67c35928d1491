"""No waiver is asked for where nothing is forbidden that it could let somebody off."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import pytest

from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
BOOKS = Path(__file__).parent.parent / "small"


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("infirmary")


@pytest.mark.parametrize(
    "question",
    [
        # "must not be worn by nursing grades, cooks or kitchen hands"
        "Can a porter wear false nails?",
        # "must not be carried in clinical areas"
        "Can the head porter carry his mobile phone in the corridor?",
    ],
)
def test_what_nothing_forbids_is_silent(base: KnowledgeBase, question: str) -> None:
    (answer,) = base.ask(question, as_of=DAY)
    assert answer.verdict == "silent"
    assert "waiver of Part 5 not granted" in answer.reading.text


@pytest.mark.parametrize("question", ["Is a beard allowed?", "Can a porter have a beard?"])
def test_a_ban_for_others_is_told_with_how_it_is_worn(base: KnowledgeBase, question: str) -> None:
    (answer,) = base.ask(question, as_of=DAY)
    assert base.verify(json.loads(answer_to_json(answer))) is None
    assert answer.headline.startswith("It depends on the distance from a patient in isolation")
    assert answer.reading.beside == (
        "A beard must be short and trimmed (Dress and Uniform Book (2025) 5.4).",
    )
    assert [citation.number for citation in answer.citations] == ["5.4", "7.3"]


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("Can I wear hair ribbons?", "No. The hair ribbon must not be worn, unless waiver of Part 5"),
        (
            "Can a nurse wear nail varnish?",
            "No. The nail varnish must not be worn, unless the wearer is not on",
        ),
        ("Can I wear stud earrings?", "Yes. The plain stud earrings may be worn, unless"),
    ],
)
def test_the_waiver_stays_where_it_counts(base: KnowledgeBase, question: str, headline: str) -> None:
    (answer,) = base.ask(question, as_of=DAY)
    assert answer.headline.startswith(headline)
    assert "waiver of Part 5" in answer.headline


def test_leave_that_stands_on_its_own_is_needed() -> None:
    """ "When extreme heat dress has been granted, shorts may be worn": an exception to no ban."""
    (answer,) = opened("demo").ask("Shorts with watch rig?", as_of=DAY)
    assert answer.headline.startswith(
        "No. The service shorts must not be worn, unless extreme heat dress has been granted"
    )
