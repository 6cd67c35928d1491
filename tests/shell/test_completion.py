"""Completion as a table: text before the cursor, and what is suggested first."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shell.commands import COMMANDS
from shell.completion import suggest
from shell.vocabulary import Entry, Kind, make_vocabulary, vocabulary_of
from tests.shell.fakes import FakeBase

KINDS: tuple[Kind, ...] = ("item", "rig")
LABELS = make_vocabulary(
    [Entry("storm coat", "item"), Entry("K5", "Keeper", "one"), Entry("in oil", "x", "rig")]
)
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
    # What can stand there goes first, and alone where there is any.
    ("May a u", ["Under Keeper", "Upper Keeper"]),
    ("as a k", ["K4", "K5"]),
    ("I am an und", ["Under Keeper"]),
    ("May I wear it in w", ["watch rig"]),
    ("May I wear the w", []),
    ("when f", ["foul weather", "fair weather"]),
    ("May I go without d", ["deck gloves"]),
    ("name strip in bo", ["boat rig"]),
    # Where nothing that fits begins so, whatever does.
    ("May I wear the boat", ["boat rig"]),
    ("in the storm", ["storm coat"]),
    # Slips of the finger, and the middle of a word.
    ("in boot", ["boat rig"]),
    ("May I wear the skin", ["oilskin coat"]),
    ("May I wear the stom co", ["storm coat"]),
    ("May I wear the stomr coat", ["storm coat"]),
    ("May I wear the great coat", ["storm coat", "oilskin coat"]),
    # A number of a clause inside a sentence, a day on which something changes.
    ("as of 20", ["2026-11-25"]),
    ("save ", ["answer.txt", "answer.md", "answer.json", "answer.svg"]),
    # Facts, and no items, after the word that keeps them.
    ("remember gr", ["grade K4", "grade K5"]),
    ("remember K5 in bo", ["boat rig"]),
    ("remember sto", []),
    ("remember K5 in f", ["foul weather", "fair weather"]),
    ("items co", ["coat"]),
    ("facts we", ["weather"]),
    # A command with a slash before it, as other programs have them.
    ("/he", ["help"]),
    ("/", [command.name for command in COMMANDS][:12]),
    # SPARQL, with the word for it or without.
    ("query ", ["SELECT ", "ASK ", "CONSTRUCT ", "DESCRIBE ", "PREFIX "]),
    ("query SEL", ["SELECT"]),
    ("query SELECT ?item ?label WHERE { ?i", ["?item"]),
    ("query SELECT * WHERE { ?s ?p ?o }\nLIM", ["LIMIT"]),
    ("query SELECT ?coat", []),
    ("query\nSELECT *\n{ ?s ?p ?o } LIM", ["LIMIT"]),
    ("query PREFIX sk", ["skos: <http://www.w3.org/2004/02/skos/core#>"]),
    (
        "query PREFIX ",
        ["cb: <https://clothbound.example/ns#>", "skos: <http://www.w3.org/2004/02/skos/core#>"],
    ),
    ("query SELECT ?s WHERE { ?s sk", ["skos:"]),
    ("query SELECT ?s WHERE { ?s skos:", ["skos:prefLabel"]),
    ("query SELECT ?s WHERE { ?s skos:pr", ["skos:prefLabel"]),
    ("query SELECT ?s WHERE { ?s pref", ["PREFIX", "skos:prefLabel"]),
    ("query SELECT ?s WHERE { ?s skos:prefLabel", []),
    ("query SELECT ?s WHERE { ?s ", ["skos:prefLabel", "cb:rank"]),
    ("query SELECT ?s WHERE { ?s a ", ["cb:Rule"]),
    ("query SELECT ?s WHERE { ?s skos:broader <sto", ["<https://quay.example/item/coat>"]),
    ("query SELECT ?s WHERE { ?s skos:broader <co", ["<https://quay.example/item/coat>"]),
    ('query SELECT ?s WHERE { ?s skos:prefLabel "storm c', ['"storm coat"']),
    ("query SELECT ?s ?name WHERE { ?s skos:prefLabel ", ["?s", "?name"]),
    ("SELECT ?s WHERE { ?s sk", ["skos:"]),
    ("SELECT ?s WHERE { FILTER (?s < 3) ?s sk", ["skos:"]),
    ("PREFIX sk", ["skos: <http://www.w3.org/2004/02/skos/core#>"]),
    ("queryable sto", ["storm coat"]),
]

# After a space, before a letter of the next word: all that fits, in this order.
AFTER_A_SPACE = [
    ("may a ", ["K4", "K5", "Under Keeper", "Upper Keeper"]),
    ("as a ", ["K4", "K5", "Under Keeper", "Upper Keeper"]),
    ("may ", ["I ", "a "]),
    ("May a K5 ", ["wear", "pierce"]),
    ("May a K5 wear ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("May a K5 wear the ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("scarf in ", ["boat rig", "watch rig", "in the mess", "fair weather", "foul weather"]),
    ("May I wear it in ", ["boat rig", "watch rig", "in the mess", "fair weather", "foul weather"]),
    ("May I wear it when ", ["fair weather", "foul weather", "in the mess", "hauling lines"]),
    ("what colour ", ["is the ", "are the ", "must the ", "may the ", "storm coat", "quilted liner",
                      "deck gloves", "name strip"]),
    ("what colour is the ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("what ", ["must I wear ", "may I wear ", "colour"]),
    ("why can't I wear ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("why can\u2019t I ", ["wear", "pierce"]),
    ("why ", ["can't I wear ", "must I wear "]),
    ("may I pierce the ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("May I wear the storm coat ", ["in ", "with ", "without ", "when ", "as a "]),
    ("May I wear the storm coat in boat rig ", ["with ", "without ", "when ", "as a "]),
    ("Where does the ", ["storm coat", "quilted liner", "deck gloves", "name strip"]),
    ("who may ", ["wear", "pierce"]),
    ("remember ", ["K4", "K5", "Under Keeper", "Upper Keeper", "boat rig", "watch rig", "fair weather",
                   "foul weather", "in the mess", "hauling lines"]),
    ("remember K5 ", ["in "]),
    ("florgle ", []),
    ("May I wear the xyzzy ", []),
]  # fmt: skip


@pytest.mark.parametrize(("text", "first"), TABLE)
def test_suggestions(text: str, first: list[str], base: Any) -> None:
    found = suggest(text, len(text), vocabulary_of(base))
    assert {s.text for s in found[: len(first)]} == set(first)
    if not first:
        assert found == ()


@pytest.mark.parametrize(("text", "every"), AFTER_A_SPACE)
def test_after_a_space_all_that_fits_is_offered(text: str, every: list[str], base: Any) -> None:
    assert [s.text for s in suggest(text, len(text), vocabulary_of(base))] == every


def test_variables_after_the_cursor_count_too(base: Any) -> None:
    text = "query SELECT ?na WHERE { ?item skos:prefLabel ?name }"
    found = suggest(text, text.index(" WHERE"), vocabulary_of(base))
    assert [s.text for s in found] == ["?name"]


def test_only_what_is_remembered_can_be_forgotten(base: Any) -> None:
    found = suggest("forget ", 7, vocabulary_of(base), remembered=("grade",))
    assert [s.text for s in found] == ["grade"]


def test_a_word_that_leads_on_is_no_beginning_of_a_label_that_does_not_fit() -> None:
    vocabulary = make_vocabulary(
        [Entry("the Board", "authority", "one"), Entry("in the mess", "place", "situation")]
    )
    assert suggest("May I wear the ", 15, vocabulary) == ()
    assert [s.text for s in suggest("in the ", 7, vocabulary)] == ["in the mess"]
    assert [s.text for s in suggest("by the B", 8, vocabulary)] == ["the Board"]


def test_the_shortest_label_goes_first() -> None:
    vocabulary = make_vocabulary([Entry("storm coat liner", "item"), Entry("storm coat", "item")])
    assert [s.text for s in suggest("the sto", 7, vocabulary)] == ["storm coat", "storm coat liner"]


@given(st.text(max_size=40), st.integers(0, 40))
def test_no_text_is_a_fault_and_every_suggestion_stands_at_the_cursor(text: str, cursor: int) -> None:
    for found in suggest(text, min(cursor, len(text)), LABELS):
        assert 0 <= found.start <= min(cursor, len(text))


def test_a_suggestion_replaces_what_was_typed_and_not_what_follows_the_cursor(base: Any) -> None:
    text = "May I wear the sto in boat rig"
    cursor = text.index(" in boat")
    (found,) = suggest(text, cursor, vocabulary_of(base))
    assert text[: found.start] + found.text + text[cursor:] == "May I wear the storm coat in boat rig"


def test_nothing_is_suggested_twice_and_never_more_than_the_limit() -> None:
    vocabulary = make_vocabulary(Entry(f"coat {n}", kind) for n in range(50) for kind in KINDS)
    found = suggest("coa", 3, vocabulary, limit=7)
    assert len(found) == 7
    assert len({s.text for s in found}) == 7


def test_worn_facts_are_not_suggested(base: FakeBase) -> None:
    entries = vocabulary_of(base).entries  # type: ignore[arg-type]
    assert all("worn" not in entry.text for entry in entries)
