"""Words that turn what is told into its contrary, or the question into another, are not passed over."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from kb import KnowledgeBase
from tests.reader.conftest import HERE
from tests.reading.sheets import BOOKS, TODAY, shared_cache


@cache
def _base(name: str, folder: Path) -> KnowledgeBase:
    return KnowledgeBase.open(BOOKS[name], folder)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return shared_cache(tmp_path_factory)


def _lines() -> Iterator[tuple[str, str, str, bool]]:
    for line in (HERE / "turned.txt").read_text("utf-8").splitlines():
        if line and not line.startswith("#"):
            name, _, rest = line.partition(": ")
            meant = " | " in rest
            question, _, said = rest.partition(" | " if meant else " !")
            yield name, question, said.strip(), meant


LINES = list(_lines())


@pytest.mark.parametrize(("name", "question", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_is_not_passed_over(folder: Path, name: str, question: str, said: str, meant: bool) -> None:
    reading = _base(name, folder).read(question, as_of=TODAY)
    if meant:
        assert reading.text == said
    elif said:
        assert reading.text != said
    else:
        assert reading.query is None


ANSWERS = [
    ("quarry", "I've got a beard. Can I wear the half mask for drilling?", "But hands must not wear"),
    (
        "undertakers",
        "May I wear scrubs in the arranging office?",
        "But the mortuary dress must not be worn",
    ),
]


@pytest.mark.parametrize(("name", "question", "said"), ANSWERS, ids=[line[1] for line in ANSWERS])
def test_is_said_beside(folder: Path, name: str, question: str, said: str) -> None:
    (answer,) = _base(name, folder).ask(question, as_of=TODAY)
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
def test_another_time_is_not_left_out(folder: Path, name: str, question: str) -> None:
    (answer,) = _base(name, folder).ask(question, as_of=TODAY)
    assert answer.verdict is None
