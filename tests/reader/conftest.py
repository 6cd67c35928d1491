"""The rule bases that the reader is tried on, loaded once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.model.records import Case
from kb.reader import Lexicon, read_turn
from kb.sources import load_rule_base
from tests.opening import opened
from tests.reader.notation import TODAY

HERE = Path(__file__).parent


class Base(NamedTuple):
    """A rule base with its lexicon."""

    lookup: Lookup
    lexicon: Lexicon

    def read(self, text: str, case: Case | None = None, previous: Reading | None = None) -> Reading:
        case = case if case is not None else Case(as_of=TODAY)
        return read_turn(text, lexicon=self.lexicon, lookup=self.lookup, case=case, previous=previous)


def load(folder: Path) -> Base:
    result = load_rule_base(folder)
    assert result.base is not None, result.problems
    lookup = Lookup(result.base)
    return Base(lookup, Lexicon.build(lookup))


def base_of(name: str) -> Base:
    """The books of one of `BOOKS`."""
    books = opened(name)
    return Base(books.lookup, books.lexicon)


@pytest.fixture(scope="session")
def choir() -> Base:
    return load(HERE / "base")


@pytest.fixture(scope="session")
def demo() -> Base:
    return base_of("demo")


@pytest.fixture(scope="session")
def second() -> Base:
    return base_of("second")


@pytest.fixture(scope="session")
def third() -> Base:
    return base_of("third")


@pytest.fixture(scope="session")
def fourth() -> Base:
    return base_of("fourth")


@pytest.fixture(scope="session")
def fifth() -> Base:
    return base_of("fifth")


@pytest.fixture(scope="session")
def sixth() -> Base:
    return base_of("sixth")


@pytest.fixture(scope="session")
def seventh() -> Base:
    return base_of("seventh")


@pytest.fixture(scope="session")
def eighth() -> Base:
    return base_of("eighth")


def lines_of(*sheets: str) -> Iterator[tuple[str, str, str, bool]]:
    """Books, question and read-back of each line "books: question | read-back", and whether it is meant so.

    After " !" instead stands what must not be read; nothing there: nothing must be.
    """
    for line in (line for name in sheets for line in (HERE / name).read_text("utf-8").splitlines()):
        if line and not line.startswith("#"):
            name, _, rest = line.partition(": ")
            meant = " | " in rest
            question, _, said = rest.partition(" | " if meant else " !")
            yield name, question, said.strip(), meant


def assert_read(reading: Reading, said: str, meant: bool) -> None:
    """What `lines_of` has of a line holds of its reading."""
    if meant:
        assert reading.text == said
    elif said:
        assert reading.text != said
    else:
        assert reading.query is None
