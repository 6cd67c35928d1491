"""What is asked about together with something that may not be is answered by no."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import Answer, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


def asked(book: str, question: str) -> Answer:
    (answer,) = opened(book).ask(question, as_of=DAY)
    assert opened(book).verify(json.loads(answer_to_json(answer))) is None
    return answer


@pytest.mark.parametrize(
    ("book", "question", "headline", "clause"),
    [
        ("playhouse", "Can stage crew wear a black top with a logo during the show?",
         "No. The logo must not be worn.", "4.1"),
        ("playhouse", "Can an usher wear the claret waistcoat with white gloves at a matinee?",
         "No. The white gloves must not be worn.", "2.3"),
        ("infirmary", "Can a nurse wear ward shoes with sandals in ward dress?",
         "No. The sandals must not be worn.", "6.1"),
    ],
)  # fmt: skip
def test_what_is_with_it_may_not_be(book: str, question: str, headline: str, clause: str) -> None:
    answer = asked(book, question)
    assert (answer.verdict, answer.headline) == ("prohibited", headline)
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    "question",
    [
        "Can stage crew wear a black top with black socks during the show?",
        "Can stage crew wear a black top without a logo during the show?",
        # the top alone is asked about
        "Stage crew: I have a logo on. Can I wear the black top during the show?",
    ],
)
def test_the_thing_itself_is_answered_else(question: str) -> None:
    assert asked("playhouse", question).headline.startswith("Yes: the black long-sleeved top must be worn")


def test_no_half_of_a_word_is_left_out() -> None:
    """Of a short-sleeved top nothing is said by what is said of the long-sleeved one."""
    assert asked("playhouse", "Can stage crew wear a short-sleeved top during the show?").outcome == "abstain"
    whole = asked("playhouse", "Can stage crew wear a black long-sleeved top during the show?")
    assert whole.verdict == "required"
