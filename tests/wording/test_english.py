# ruff: noqa: E501  tables read better on one line
"""Articles, number and lists. Words with their articles and plurals are from memory of a dictionary."""

from __future__ import annotations

import pytest

from kb.wording.english import (
    be,
    definite,
    indefinite,
    is_adverbial,
    is_participial,
    listing,
    plural,
    sentence,
    with_shared_end,
    with_shared_start,
)


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        ("K5", "a K5"), ("H2", "an H2"), ("officer", "an officer"), ("uniform", "a uniform"), ("hour", "an hour"),
        ("deck gloves", "deck gloves"), ("headgear", "headgear"), ("the Sash", "the Sash"), ("NCO", "an NCO"),
        ("UK pin", "a UK pin"), ("one-piece suit", "a one-piece suit"), ("outer garment", "an outer garment"),
    ],
)  # fmt: skip
def test_indefinite_article(label: str, expected: str) -> None:
    assert indefinite(label) == expected


def test_definite_article_is_not_doubled() -> None:
    assert [definite(label) for label in ("storm coat", "the Sash", "any coat", "anorak")] == [
        "the storm coat", "the Sash", "any coat", "the anorak",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        ("finger ring", "finger rings"), ("bar of merit", "bars of merit"), ("wool scarf", "wool scarves"),
        ("badge", "badges"), ("brush", "brushes"), ("lanyard", "lanyards"), ("body", "bodies"),
        ("deck gloves", "deck gloves"), ("insignia", "insignia"), ("headgear", "headgear"), ("boatman", "boatmen"),
        ("climbing harness", "climbing harnesses"),
    ],
)  # fmt: skip
def test_plurals(label: str, expected: str) -> None:
    assert plural(label) == expected


@pytest.mark.parametrize(
    ("label", "verb"),
    [("sleeves", "are"), ("weather", "is"), ("harness", "is"), ("status", "is"), ("winds aloft", "are"),
     ("length of the sleeves", "is"), ("hands of the crew", "are")],
)  # fmt: skip
def test_number_of_a_label(label: str, verb: str) -> None:
    assert be(label) == verb


def test_which_labels_stand_by_themselves() -> None:
    assert all(map(is_adverbial, ["ashore", "in town", "on the deck of the cutter", "at night"]))
    assert not any(map(is_adverbial, ["foul weather", "in", "mess"]))
    assert all(map(is_participial, ["hauling lines", "boarding"]))
    assert not any(map(is_participial, ["ring", "evening dress", "string vest"]))


def test_lists_that_cannot_be_misread() -> None:
    assert listing(["a", "b", "c"]) == "a, b and c"
    assert listing(["a or b", "c"]) == "a or b, and c"
    assert listing(["K1", "W3 and above"]) == "K1, and W3 and above"
    assert listing(["it is rough or above", "it is wet"]) == "it is rough or above and it is wet"
    assert with_shared_end(["fair weather", "foul weather"]) == "fair or foul weather"
    assert with_shared_end(["in town", "in harbour"]) == "in town or in harbour"
    assert with_shared_start(["in the mess", "in the engine room"]) == "in the mess or the engine room"


def test_a_sentence_is_closed_once() -> None:
    assert sentence("the cap  must be worn ,") == "The cap must be worn."
    assert sentence("may it") == "May it."
    assert sentence("may it", "?") == "May it?"
