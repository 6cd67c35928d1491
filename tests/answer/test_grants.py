"""A list of dress in a rig takes grants that nobody mentioned as not given, says so, and is proved so."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def _required(answer: Answer) -> set[str]:
    return {entry.item for entry in answer.entries if entry.verdict == "required"}


def test_what_only_a_grant_would_change_is_required(demo: KnowledgeBase) -> None:
    """Clauses 3.2 and 7.15: shirt and trousers, which extreme heat dress alone does away with."""
    (answer,) = demo.ask("What must an H1 wear in watch rig in January?", as_of=DAY)
    assert {"day-shirt", "dress-trousers", "jersey"} <= _required(answer)
    assert any("not granted" in note and "extreme heat dress" in note for note in answer.notes)
    assert demo.verify(json.loads(answer_to_json(answer))) is None


def test_a_grant_that_is_stated_counts(demo: KnowledgeBase) -> None:
    """Clause 7.15: with extreme heat dress the light shirt may take the place of the day shirt."""
    text = "What must an H1 wear in watch rig with extreme heat dress granted by the District Superintendent?"
    (answer,) = demo.ask(text, as_of=DAY)
    assert answer.reading.query is not None
    assert "day-shirt" not in _required(answer)
    assert not any("extreme heat dress" in note for note in answer.notes)
    assert demo.verify(json.loads(answer_to_json(answer))) is None


@pytest.mark.parametrize(
    "text",
    ["What must a K2 own?", "What may people wear?", "Which headgear may an H1 wear in watch rig?"],
)
def test_other_lists_take_nothing_for_granted(demo: KnowledgeBase, text: str) -> None:
    (answer,) = demo.ask(text, as_of=DAY)
    assert answer.entries
    assert not any("not granted" in note for note in answer.notes)


def test_a_saved_list_that_hangs_on_a_grant_is_refused(demo: KnowledgeBase) -> None:
    (answer,) = demo.ask("What must an H1 wear in watch rig in January?", as_of=DAY)
    saved = json.loads(answer_to_json(answer))
    next(entry for entry in saved["entries"] if entry["item"] == "day-shirt")["verdict"] = "conditional"
    assert demo.verify(saved) is not None


def test_what_must_be_owned_is_said_with_its_number(demo: KnowledgeBase) -> None:
    """Clause 8.1: four undershirts, six pairs of wool socks."""
    (answer,) = demo.ask("What must a K2 own?", as_of=DAY)
    told = {entry.item: [value.label for value in entry.values] for entry in answer.entries}
    assert (told["undershirt"], told["watch-coat"]) == (["at least 4"], [])
    assert told["wool-socks"] == ["at least 6 pairs"]
    assert demo.verify(json.loads(answer_to_json(answer))) is None


def test_what_must_be_carried_stands_beside_what_must_be_worn(demo: KnowledgeBase) -> None:
    """Clause 6.12: the boat branch carries whistle and knife in boat rig; the clause is named."""
    (answer,) = demo.ask("What must an H1 of the boat branch wear in boat rig?", as_of=DAY)
    (note,) = [note for note in answer.notes if note.startswith("To be carried besides")]
    assert all(word in note for word in ("whistle", "deck knife", "6.12"))
    assert demo.verify(json.loads(answer_to_json(answer))) is None
    (may,) = demo.ask("What may an H1 of the boat branch wear in boat rig?", as_of=DAY)
    assert not any("carried" in note for note in may.notes)


def test_rigs_are_compared_as_their_lists_are(demo: KnowledgeBase) -> None:
    (answer,) = demo.ask("How do boat rig and watch rig differ for a K5?", as_of=DAY)
    (shirt,) = [one for one in answer.differences if (one.item, one.aspect) == ("day-shirt", "wear")]
    assert [side.verdict for side in shirt.sides] == ["silent", "required"]
    assert any("not granted" in note for note in answer.notes)
    assert demo.verify(json.loads(answer_to_json(answer))) is None
