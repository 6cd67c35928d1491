"""The uniform as a whole: on the way, off duty and in one's own time, by the rule that speaks of it."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("name", "question", "headline", "clause"),
    [
        # "Uniform must not be worn off duty, except when travelling directly to or from ..."
        ("cadets", "Can I wear uniform off duty?", "No. The uniform must not be worn, unless", "1.6"),
        ("cadets", "I'm off duty Saturday. Can I go shopping in uniform?", "No. The uniform must", "1.6"),
        ("cadets", "Can I wear my uniform on the bus to drill night?", "Yes. The uniform may be", "1.6"),
        ("cadets", "Can I walk home in my uniform after drill?", "Yes. The uniform may be worn.", "1.6"),
        ("ambulance", "Can't I wear my uniform on the train to my duty?", "Yes. The uniform may be", "1.1"),
        ("ambulance", "I walked home from my duty in my uniform. Was that ok?", "Yes. The uniform", "1.1"),
        # "Off duty no uniform is worn, ..., except the fleece ... and the green overcoat"
        ("eighth", "Can I wear uniform off duty?", "No. Any uniform other than the green overcoat", "9.8"),
        # "Uniform may be worn in town on the direct way to and from duty"
        (
            "fifth",
            "Can I wear uniform on the bus to duty?",
            "Yes. The uniform may be worn when the wearer is in town; otherwise",
            "8.6",
        ),
    ],
)
def test_the_uniform_is_answered_as_a_whole(
    ask: Ask, name: str, question: str, headline: str, clause: str
) -> None:
    answer = ask(name, question)
    assert answer.headline.startswith(headline)
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("ambulance", "Can I smoke in uniform on the way home?"),  # more is asked than to wear it
        ("ambulance", "Can I stop at the shops on the way home in uniform?"),  # not directly
        ("ambulance", "I walked home from my duty in uniform and stopped at the pub. Was that ok?"),
        ("ambulance", "Do I have to wear my uniform on the way to my duty?"),
        ("airferry", "Can I wear my uniform on the bus home?"),  # a book without a way to duty
        ("demo", "Can I wear my uniform on the bus to the station?"),  # a book without a rule on it
    ],
)
def test_what_no_rule_on_the_uniform_tells_is_not_answered(ask: Ask, name: str, question: str) -> None:
    assert ask(name, question).outcome in ("abstain", "ask")
