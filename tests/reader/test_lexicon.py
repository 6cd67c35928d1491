"""The indexes over the names of a rule base."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from kb.errors import Location
from kb.model.records import Case, Item
from kb.reader import read_question
from kb.reader.names.entries import verb_forms
from kb.reader.words.tokens import tokenize, word_key
from tests.reader.conftest import Base
from tests.reader.notation import TODAY, write_reading


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("scarf", "scarves"), ("glove", "gloves"), ("box", "boxes"), ("badge", "badges"),
        ("patch", "patches"),
        ("foot", "feet"), ("colour", "color"), ("grey", "gray"),
        ("authorised", "authorized"), ("centre", "center"),
        ("keeper", "keeper's"), ("keeper", "keepers'"), ("jewellery", "jewelry"), ("labelled", "labeled"),
        ("tie", "ties"), ("body", "bodies"), ("dress", "dresses"), ("fibre", "fiber"), ("canvas", "canvas"),
    ],
)  # fmt: skip
def test_one_key(one: str, other: str) -> None:
    assert word_key(one) == word_key(other)


@pytest.mark.parametrize(
    ("one", "other"), [("office", "officer"), ("four", "for"), ("glass", "gas"), ("cap", "cape")]
)
def test_different_keys(one: str, other: str) -> None:
    assert word_key(one) != word_key(other)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Can't I?", ["can", "n't", "i"]),
        ("I’m a K5", ["i", "'m", "a", "k5"]),
        ("cannot", ["can", "not"]),
        ("1 1/2 in", ["1", "1/2", "in"]),
        ("a, b", ["a", ",", "b"]),
        ("the keepers' pin", ["the", "keepers'", "pin"]),
    ],
)
def test_tokens(text: str, words: list[str]) -> None:
    tokens = tokenize(text)
    assert [token.low for token in tokens] == words
    assert all(text[t.start : t.end] == t.text for t in tokens)


@pytest.mark.parametrize(
    ("verb", "done", "forms"),
    [
        ("tar", "tarred", {"tar", "tarring", "tarred"}),
        ("carry", "carried", {"carry", "carrying", "carried"}),
        ("pierce", "pierced", {"pierce", "piercing", "pierced"}),
        ("lend", "lent", {"lend", "lending", "lent"}),
    ],
)
def test_verb_forms(verb: str, done: str, forms: set[str]) -> None:
    assert forms <= set(verb_forms(verb, done))


def hundred_items() -> tuple[Item, ...]:
    kinds = ("coat", "cap", "boots", "belt", "tunic")
    return tuple(
        Item(
            id=f"item-{n}", label=f"pattern {word} {kind}",
            other_labels=(f"{word} {kind}", f"old {word} {kind}"),
            everyday=(kind,), broader=("garment",), at=Location("made.yaml"),
        )
        for n, (word, kind) in enumerate((f"{a}{b}", kind) for a in "abcd" for b in "vwxyz" for kind in kinds)
    )  # fmt: skip


def test_the_index_is_asked_for_what_no_label_explains(choir: Base) -> None:
    asked: list[tuple[str, ...]] = []

    def search(words: tuple[str, ...]) -> list[SimpleNamespace]:
        asked.append(words)
        return [SimpleNamespace(kind="item", id="lark-brooch"), SimpleNamespace(kind="item", id="sash")]

    case = Case(as_of=TODAY)
    lexicon, lookup = choir.lexicon, choir.lookup
    found = read_question("may I wear broochlets?", lexicon=lexicon, lookup=lookup, case=case, search=search)
    assert asked == [("broochlets",)]
    assert write_reading(found) == "may lark-brooch"
    assert found.spans[-1].how == "index"
    none = read_question("may I wear velvet?", lexicon=lexicon, lookup=lookup, case=case, search=search)
    assert write_reading(none) == "abstain velvet"
    # what only says which it is stands for nothing by itself
    none = read_question("may I wear lark?", lexicon=lexicon, lookup=lookup, case=case, search=search)
    assert write_reading(none) == "abstain lark"
    asked.clear()
    read_question("may I wear the sash?", lexicon=lexicon, lookup=lookup, case=case, search=search)
    assert asked == []


def test_a_mended_word_is_shown(choir: Base) -> None:
    found = choir.read("may I wear specatcles?")
    assert [span.how for span in found.spans if span.role == "item"] == ["spelling"]
