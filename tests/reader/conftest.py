"""The rule bases that the reader is tried on, loaded once."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

from kb import KnowledgeBase
from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.model.records import Case
from kb.reader import Lexicon, read_turn
from kb.sources import load_rule_base
from tests.reader.notation import TODAY
from tests.reading.sheets import BOOKS, shared_cache

HERE = Path(__file__).parent
DEMO = HERE.parent.parent / "demo_facts"
SECOND = HERE.parent / "second" / "books"
THIRD = HERE.parent / "third" / "books"
FOURTH = HERE.parent / "fourth" / "books"
FIFTH = HERE.parent / "fifth" / "books"
SIXTH = HERE.parent / "sixth" / "books"
SEVENTH = HERE.parent / "seventh" / "books"
EIGHTH = HERE.parent / "eighth" / "books"


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


@pytest.fixture(scope="session")
def choir() -> Base:
    return load(HERE / "base")


@pytest.fixture(scope="session")
def demo() -> Base:
    return load(DEMO)


@pytest.fixture(scope="session")
def second() -> Base:
    return load(SECOND)


@pytest.fixture(scope="session")
def third() -> Base:
    return load(THIRD)


@pytest.fixture(scope="session")
def fourth() -> Base:
    return load(FOURTH)


@pytest.fixture(scope="session")
def fifth() -> Base:
    return load(FIFTH)


@pytest.fixture(scope="session")
def seventh() -> Base:
    return load(SEVENTH)


@pytest.fixture(scope="session")
def sixth() -> Base:
    return load(SIXTH)


@pytest.fixture(scope="session")
def eighth() -> Base:
    return load(EIGHTH)


@cache
def opened(name: str, folder: Path) -> KnowledgeBase:
    """The books of one of `BOOKS`, open."""
    return KnowledgeBase.open(BOOKS[name], folder)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return shared_cache(tmp_path_factory)


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
