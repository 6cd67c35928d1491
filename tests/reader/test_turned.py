"""Words that turn what is told into its contrary, or the question into another, are not passed over."""

from __future__ import annotations

import pytest

from tests.opening import opened
from tests.reader.conftest import assert_read, lines_of
from tests.reading.sheets import TODAY

LINES = list(lines_of("turned.txt"))


@pytest.mark.parametrize(("name", "question", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_is_not_passed_over(name: str, question: str, said: str, meant: bool) -> None:
    reading = opened(name).read(question, as_of=TODAY)
    assert_read(reading, said, meant)


ANSWERS = [
    ("quarry", "I've got a beard. Can I wear the half mask for drilling?", "But hands must not wear"),
    (
        "undertakers",
        "May I wear scrubs in the arranging office?",
        "But the mortuary dress must not be worn",
    ),
]


@pytest.mark.parametrize(("name", "question", "said"), ANSWERS, ids=[line[1] for line in ANSWERS])
def test_is_said_beside(name: str, question: str, said: str) -> None:
    (answer,) = opened(name).ask(question, as_of=TODAY)
    assert said in answer.headline


UNANSWERED = [
    ("zoo", "Can I wear a ring until feeding by hand?"),
    ("school", "May I have my ear studs in before games?"),
    ("school", "Can I wear my scarf until games?"),
    ("zoo", "May I wear my bracelet following contact work?"),
    ("firebrigade", "Do I wear medical gloves if nobody touches the casualty?"),
    ("zoo", "I left the quarantine block an hour ago. Still in the respirator?"),
]


@pytest.mark.parametrize(("name", "question"), UNANSWERED, ids=[line[1] for line in UNANSWERED])
def test_another_time_is_not_left_out(name: str, question: str) -> None:
    (answer,) = opened(name).ask(question, as_of=TODAY)
    assert answer.verdict is None
