"""Questions of home, errands and the street, and in the words of the books, are read as meant."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.reader.conftest import HERE, Base


def _lines() -> Iterator[tuple[str, str, str, bool]]:
    told = ((HERE / name).read_text("utf-8") for name in ("of_life.txt", "street.txt", "own_words.txt"))
    for line in (line for text in told for line in text.splitlines()):
        if not line or line.startswith("#"):
            continue
        name, _, rest = line.partition(": ")
        meant = " | " in rest
        question, _, said = rest.partition(" | " if meant else " !")
        yield name, question, said.strip(), meant


LINES = list(_lines())


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
