"""Questions of home, errands and the street, and in the words of the books, are read as meant."""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base, lines_of

LINES = list(lines_of("of_life.txt", "street.txt", "own_words.txt"))


@pytest.mark.parametrize(("name", "question", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_is_read_as_meant(
    request: pytest.FixtureRequest, name: str, question: str, said: str, meant: bool
) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    if meant:
        assert reading.text == said
    elif said:
        assert reading.text != said
    else:
        assert reading.query is None or reading.query.clause is not None


@pytest.mark.parametrize(
    ("name", "question", "words"),
    [
        ("eighth", "Were hovercraft allowed in June 2025?", ("hovercraft",)),
        ("demo", "Could I wear a sombrero in summer 2024?", ("sombrero",)),
        ("demo", "May I wear a sombrero on 30 February 2025?", ("sombrero", "30", "2025")),
    ],
)
def test_a_day_that_is_understood_does_not_stop_it(
    request: pytest.FixtureRequest, name: str, question: str, words: tuple[str, ...]
) -> None:
    base: Base = request.getfixturevalue(name)
    abstain = base.read(question).abstain
    assert abstain is not None
    assert abstain.words == words
