"""Words of colour: names of the books, shades of them, and colours that no book names."""

from __future__ import annotations

import pytest

from kb.reader.words.colours import HEADS, may_be
from tests.reader.conftest import Base
from tests.reader.notation import write_reading

NAVY = "may knit-cap aspect:colour value:navy"
DEMO = (
    ("May the knit cap be pink?", "may knit-cap aspect:colour value:other:pink"),
    ("Is a dark green knit cap allowed?", "may knit-cap aspect:colour value:other:dark-green"),
    ("Can my knit cap be blue-grey?", "may knit-cap aspect:colour value:other:blue-grey"),
    ("Can my knit cap be lime green?", "may knit-cap aspect:colour value:other:lime-green"),
    ("Can the knit cap be navy?", NAVY),
    ("Can the knit cap be blue?", NAVY),
    ("Can the knit cap be dark blue?", NAVY),
    ("May the knit cap be pink or purple?", "may knit-cap aspect:colour value:other:pink,other:purple"),
    ("Must the knit cap be pink?", "must knit-cap aspect:colour value:other:pink"),
    ("Who may wear a pink knit cap?", "may knit-cap aspect:colour value:other:pink"),
    ("May I wear pink bananas?", "abstain pink, bananas"),
    ("Does the belt buckle need a particular finish?", "how belt-buckle aspect:finish"),
    ("I have a purple knit cap. Can I wear it?", "may knit-cap aspect:colour value:other:purple"),
    (
        "I have a purple knit cap. Can I wear the storm coat?",
        "ask reading I have a knit cap. Can I wear the storm coat?",
    ),
    ("What about a mint green knit cap?", "may knit-cap aspect:colour value:other:mint-green"),
    ("Is a mint knit cap allowed?", "may knit-cap aspect:colour value:other:mint"),
    ("Do I need a mint with the knit cap?", "abstain mint"),
    (
        "I've dyed my hair blue. Is that a problem?",
        "may hair aspect:colour value:other:blue verdicts:prohibited",
    ),
    ("Can I leave off my pink knit cap?", "ask reading What must the colour of the knit cap be?"),
    (
        "Can I wear the name strip on my right thigh?",
        "may name-strip aspect:position value:other:on-my-right-thigh",
    ),
    ("May the name strip be worn on the back?", "ask reading Where must the name strip be worn?"),
    ("May the belt buckle be glossy?", "may belt-buckle aspect:finish value:other:glossy"),
)
SECOND = (
    ("May the helmet be green?", "may helmet aspect:colour value:other:green"),
    ("May I wear a neon pink helmet?", "may helmet aspect:colour value:other:neon-pink"),
    ("Can the helmet be navy?", "ask reading What must the colour of the helmet be?"),
)
THIRD = (
    ("May the umbrella be green?", "may umbrella aspect:colour value:other:green"),
    ("Can my hair be brown?", "may hair aspect:colour value:natural"),
    ("Can I dye my hair blond?", "may hair aspect:colour value:natural"),
    ("Can my hair be red?", "ask reading What must the colour of the hair be?"),
    ("Can I dye my hair bright green?", "may hair aspect:colour value:other:bright-green"),
    ("Can my hair be bright blue?", "may hair aspect:colour value:other:bright-blue"),
)
TALK = (
    (("Can the knit cap be white?", "what about pink?"), "may knit-cap aspect:colour value:other:pink"),
    (("Can the knit cap be white?", "dark green?"), "may knit-cap aspect:colour value:other:dark-green"),
    (("Can the knit cap be pink?", "or black?"), "may knit-cap aspect:colour value:black"),
    (("What colour must the knit cap be?", "and grey?"), "may knit-cap aspect:colour value:grey"),
    (("May I wear the knit cap?", "even a pink one?"), "may knit-cap aspect:colour value:other:pink"),
    (("What colour is the knit cap?", "can it be anything else?"), "how knit-cap aspect:colour"),
    (("May I wear the knit cap?", "does the colour matter?"), "how knit-cap aspect:colour"),
)


@pytest.mark.parametrize(("text", "expected"), DEMO, ids=[text for text, _ in DEMO])
def test_demo(demo: Base, text: str, expected: str) -> None:
    assert write_reading(demo.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), SECOND, ids=[text for text, _ in SECOND])
def test_second(second: Base, text: str, expected: str) -> None:
    assert write_reading(second.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), THIRD, ids=[text for text, _ in THIRD])
def test_third(third: Base, text: str, expected: str) -> None:
    assert write_reading(third.read(text)) == expected


@pytest.mark.parametrize(("turns", "expected"), TALK, ids=[turns[1] for turns, _ in TALK])
def test_talk(demo: Base, turns: tuple[str, ...], expected: str) -> None:
    reading = None
    for turn in turns:
        reading = demo.read(turn, previous=reading)
    assert reading is not None
    assert write_reading(reading) == expected


def test_a_read_back_is_read_as_it_was(demo: Base) -> None:
    first = demo.read("Could the knit cap be bright green?")
    assert demo.read(first.text).query == first.query


# Whether the first may be the second, from common usage; no source.
NEAR = (
    ("blue", "navy blue", True), ("navy", "blue", True), ("royal blue", "navy blue", False),
    ("dark blue", "navy blue", True), ("dark green", "green", True), ("green", "navy blue", False),
    ("gold", "gilt", True), ("brass", "gilt", True), ("silver", "gilt", False), ("maroon", "dark red", True),
    ("light blue", "dark blue", False), ("blue grey", "grey", True), ("pink", "red", False),
    ("brown", "a natural hair colour", True), ("pink", "a natural hair colour", False),
    ("pink", "team colours", True), ("matt", "polished", False), ("glossy", "polished", True),
)  # fmt: skip


@pytest.mark.parametrize(("asked", "label", "near"), NEAR)
def test_shades(asked: str, label: str, near: bool) -> None:
    assert may_be(tuple(asked.split()), tuple(label.split())) is near


def test_a_colour_may_be_itself() -> None:
    assert all(may_be((word,), (word,)) for word in HEADS)
