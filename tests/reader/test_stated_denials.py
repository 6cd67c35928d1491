"""What is stated not to be so, and asked about; who is said to have let a dress be on; a letter in a name.

Verdicts are those of the demo's clauses; which way a "not" goes is common practice, no source.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase
from kb.reader.names.lexicon import name_words
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    "tail", ["is that ok?", "is that all right?", "ok?", "allowed?", "may I?", "can he?"]
)
@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ("vest isn't fastened", "May the fastening of the flotation vest not be “fastened”?"),
        ("vest is not fastened", "May the fastening of the flotation vest not be “fastened”?"),
    ],
)
def test_what_is_not_so_is_asked_about(demo: KnowledgeBase, said: str, asked: str, tail: str) -> None:
    (answer,) = demo.ask(f"My flotation {said}, {tail}", as_of=DAY)
    assert answer.reading.text == asked
    assert answer.headline == "No: the flotation vest must be fastened."


def test_it_is_a_fault_that_it_is_not_so(demo: KnowledgeBase) -> None:
    for said in ("isn't", "is not", "ISN'T"):
        (answer,) = demo.ask(f"My flotation vest {said} fastened, is that a fault?", as_of=DAY)
        assert answer.headline == "Yes: the flotation vest must be fastened."


def test_a_colour_is_denied_as_well(demo: KnowledgeBase) -> None:
    (answer,) = demo.ask("My jersey isn't navy blue, ok?", as_of=DAY)
    assert answer.headline == "No. The colour of the service jersey must be navy blue."


def test_what_is_put_as_it_is_stays_so(demo: KnowledgeBase) -> None:
    (answer,) = demo.ask("My flotation vest is fastened, is that ok?", as_of=DAY)
    assert answer.headline == "Yes: the flotation vest must be fastened."
    (answer,) = demo.ask("I don't have a scarf, may I wear goggles for welding?", as_of=DAY)
    assert answer.headline.startswith("Yes")


@pytest.mark.parametrize("said", ["says that shirt order is on", "said shirt order is on"])
def test_who_says_that_a_dress_is_on_has_granted_it(demo: KnowledgeBase, said: str) -> None:
    (answer,) = demo.ask(f"The Master of the Station {said}. May I leave the jersey off?", as_of=DAY)
    assert "shirt order granted by the Master of the Station" in answer.reading.text
    (answer,) = demo.ask(f"The cook {said}. May I leave the jersey off?", as_of=DAY)
    assert answer.reading.query is None
    assert answer.reading.abstain is not None
    assert answer.reading.abstain.words == ("cook",)


LETTERED = """
service: {id: club, label: Club, namespace: "https://club.example/"}
authorities: [{id: club-board, label: Club Board}]
items: [{id: cape, label: cape, kind of: garment}]
rigs: [{id: best, label: best rig, other labels: [rig A]}, {id: plain, label: plain rig}]
book: {id: club-rules, title: Club Rules, authority: club-board}
edition: {id: "2026", title: Club Rules of 2026, in force from: 2026-01-01}
clauses: [{clause: "1", text: The cape is worn in rig A., rules: [{must: cape, rig: best}]}]
"""


def test_a_letter_that_ends_a_name_is_no_article(tmp_path: Path) -> None:
    assert name_words("rig A") == ("rig", "a")
    books = tmp_path / "club"
    books.mkdir()
    (books / "rules.yaml").write_text(LETTERED, encoding="utf-8")
    base = KnowledgeBase.open(books, tmp_path / "cache")
    for text in ("Must I wear the cape in rig A?", "cape in rig a?"):
        assert "in best rig" in base.read(text, as_of=DAY).text
    assert base.read("Must I wear the cape in my rig?", as_of=DAY).query is None
