"""Completion as a table: text before the cursor, and what is suggested first."""

from __future__ import annotations

from typing import Any

import pytest

from shell.completion import Entry, make_vocabulary, suggest, vocabulary_of
from tests.shell.fakes import FakeBase

TABLE = [
    ("May I wear the sto", ["storm coat"]),
    ("May I wear the coa", ["oilskin coat", "storm coat"]),
    ("may i wear the storm ", ["storm coat"]),
    ("May I wear the STORM C", ["storm coat"]),
    ("as a k5", []),
    ("I am a K", ["K4", "K5"]),
    ("I am an Upp", ["Upper Keeper"]),
    ("in boat", ["boat rig"]),
    ("in foul w", ["foul weather"]),
    ("May I wear the quitled", ["quilted liner"]),
    ("wh", ["why"]),
    ("Ma", ["May I wear "]),
    ("clause 4", ["4.12"]),
    ("what does clause 4", ["4.12"]),
    ("help cl", ["clause"]),
    ("forget r", ["rig"]),
    ("as of t", ["today"]),
    ("", []),
    ("   ", []),
    ("May I wear the xyzzy", []),
    ("while ha", ["hauling lines"]),
]


@pytest.mark.parametrize(("text", "first"), TABLE)
def test_suggestions(text: str, first: list[str], base: Any) -> None:
    found = suggest(text, len(text), vocabulary_of(base))
    assert {s.text for s in found[: len(first)]} == set(first)
    if not first:
        assert found == ()


def test_a_suggestion_replaces_what_was_typed_and_not_what_follows_the_cursor(base: Any) -> None:
    text = "May I wear the sto in boat rig"
    cursor = text.index(" in boat")
    (found,) = suggest(text, cursor, vocabulary_of(base))
    assert text[: found.start] + found.text + text[cursor:] == "May I wear the storm coat in boat rig"


def test_nothing_is_suggested_twice_and_never_more_than_the_limit() -> None:
    vocabulary = make_vocabulary(Entry(f"coat {n}", kind) for n in range(50) for kind in ("item", "rig"))
    found = suggest("coa", 3, vocabulary, limit=7)
    assert len(found) == 7
    assert len({s.text for s in found}) == 7


def test_worn_facts_are_not_suggested(base: FakeBase) -> None:
    entries = vocabulary_of(base).entries  # type: ignore[arg-type]
    assert all("worn" not in entry.text for entry in entries)
