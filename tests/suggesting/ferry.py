"""A ferry's rule books, small enough to know every word of them, for tests of suggesting."""

from __future__ import annotations

from pathlib import Path

from kb.model.lookup import Lookup
from kb.reader import Lexicon
from kb.sources import load_rule_base
from kb.suggesting import WordDesk

VOCABULARY = """\
# Words of the ferry. This line and   these   spaces are the writer's.
service: {id: ferry, label: River Ferry, namespace: "https://ferry.example/"}
authorities: [{id: office, label: Ferry Office}]
ladders:
  - id: crew
    label: crew
    one: crew member
    grades: [{id: C1, label: Deckhand}, {id: C2, label: Steersman}]
branches: [{id: galley, label: drawers}]
facts:
  - {id: weather, label: weather, values: [{id: wet, label: wet weather}, {id: dry, label: dry weather}]}
items:
  - {id: glasses, label: spectacles, kind of: accessory}
  - {id: shades, label: sunglasses, other labels: [shades], kind of: accessory}
  - {id: sash, label: red sash, kind of: accessory}
  - {id: long-coat, label: long overcoat, kind of: garment}
  - {id: work-trousers, label: canvas trousers, everyday words: [pants], kind of: garment}
  - {id: deck-boots, label: deck boots, kind of: garment}
  - {id: pack, label: canvas rucksack, kind of: carried}
  - {id: lamp, label: torch, kind of: carried}
  - {id: polish, label: nail polish, kind of: grooming}
  - {id: first-vest, label: blue waistcoat, kind of: garment}
  - {id: shorts, label: shorts, kind of: garment}
  - {id: second-vest, label: white waistcoat, kind of: garment}
"""
BOOK = """\
book: {id: rules, title: Ferry Rules, authority: office}
edition: {id: "1", title: "Ferry Rules, first edition", in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: Spectacles may be worn, the red sash not. A steersman carries a torch and may carry a rucksack.
    rules:
      - may: glasses
      - must not: sash
      - must carry: lamp
        grades: C2
      - may carry: pack
        grades: C2
  - clause: "2"
    text: The overcoat is worn in wet weather, never pants alone; boots, nail polish and waistcoats are free.
    rules:
      - must: long-coat
        when: {weather: wet}
      - may: [work-trousers, deck-boots, polish, first-vest, second-vest, shades]
"""


def write_books(folder: Path) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "vocabulary.yaml").write_text(VOCABULARY, encoding="utf-8")
    (folder / "rules.yaml").write_text(BOOK, encoding="utf-8")
    return folder


def open_desk(folder: Path) -> WordDesk:
    """The desk over books as they are on disk now, read without a cache."""
    loaded = load_rule_base(folder)
    assert loaded.base is not None, loaded.problems
    lookup = Lookup(loaded.base)
    return WordDesk.open(folder, lookup, Lexicon.build(lookup))
