"""A small folder of rule books that tests may change."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.cache import Generation, ensure

VOCABULARY = """
service: {id: quay, label: Quay Service, namespace: "https://quay.example/"}
authorities:
  - {id: board, label: Board}
ladders:
  - {id: hands, label: hands, one: hand, grades: [{id: H1, label: First Hand}, {id: H2, label: Second Hand}]}
facts:
  - {id: weather, label: weather, ask: Weather?, values: [{id: fair, label: fair}, {id: foul, label: foul}]}
items:
  - {id: coat, label: storm coat, kind of: garment, everyday words: [coat]}
  - {id: scarf, label: scarf, kind of: accessory}
  - {id: cap, label: cap, kind of: garment}
"""
FIRST = """
book: {id: order, title: Order, authority: board}
edition: {id: "1", title: Order, in force from: 2024-03-01}
part: General
clauses:
  - clause: "1"
    heading: Coats
    text: Coats are worn in foul weather.
    rules:
      - must: coat
        when: {weather: foul}
  - clause: "2"
    text: Scarves may be worn by second hands.
    rules:
      - {may: scarf, grades: H2}
"""
SECOND = """
book: {id: notice, title: Notice, authority: board}
edition: {id: "1", title: Notice, in force from: 2025-03-01}
part: Caps
clauses:
  - clause: "1"
    text: Caps are worn.
    rules:
      - must: cap
"""


@pytest.fixture
def books(tmp_path: Path) -> Path:
    folder = tmp_path / "books"
    folder.mkdir()
    for name, text in {"vocabulary": VOCABULARY, "first": FIRST, "second": SECOND}.items():
        (folder / f"{name}.yaml").write_text(text)
    return folder


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "cache"


@pytest.fixture
def built(books: Path, home: Path) -> Generation:
    generation = ensure(books, home)
    assert generation.was_rebuilt
    return generation
