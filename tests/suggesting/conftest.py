"""The ferry's desk."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.suggesting import WordDesk
from kb.suggesting.wordnet import WordNet, open_wordnet
from tests.suggesting.ferry import open_desk, write_books


@pytest.fixture(scope="session")
def wordnet() -> WordNet:
    return open_wordnet()


@pytest.fixture
def books(tmp_path: Path) -> Path:
    return write_books(tmp_path / "ferry")


@pytest.fixture
def desk(books: Path) -> WordDesk:
    return open_desk(books)
