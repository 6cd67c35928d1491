"""What a story is taken for: sure facts, what "it" is, whose claim it is; the rest is named as unused."""

from __future__ import annotations

import pytest

from kb.reader.stories.hearsay import asks_whether_so, claim_starts
from tests.reader.conftest import Base
from tests.reader.notation import write_reading

TOLD = [
    # who is what, and when
    ("My mate is a K5. May I wear the keeper's pin?", "may keepers-pin"),
    ("My mate is a K5. Should he wear the keeper's pin?", "must keepers-pin grade=K5"),
    ("I'm a K2 and my boss is a K5. May I wear the keeper's pin?", "may keepers-pin grade=K2"),
    ("I used to be a K5. May I wear the keeper's pin?", "may keepers-pin"),
    ("I'll be promoted to K5 next week. May I wear the keeper's pin?", "may keepers-pin"),
    ("I made K4 last week. May I wear the keeper's pin?", "may keepers-pin grade=K4"),
    ("I'm a K3 and we're off up in boat rig. Storm coat on or not?", "may storm-coat grade=K3 rig=boat-rig"),
    ("I'm a K3 and back in boat rig. May I wear the storm coat?", "may storm-coat grade=K3 rig=boat-rig"),
    ("I'm back from leave. May I wear the earrings?", "may earrings"),
    # "or not" denies nothing that follows
    ("May I wear the storm coat or not, as a K3, in boat rig?", "may storm-coat grade=K3 rig=boat-rig"),
    ("Is the storm coat allowed or not in boat rig?", "may storm-coat rig=boat-rig"),
    # what "it" is
    ("She never wears the service cap. Is it required?", "must service-cap"),
    ("I really can't be bothered with storm trousers. Do I need them?", "must storm-trousers"),
    (
        "We're in boat rig and my coxswain shrugs at the flotation vest. Must I be in it?",
        "must flotation-vest rig=boat-rig",
    ),
    # claims, and who makes them
    (
        "The old hands keep telling us that sea boots go with the storm rig. Are they right?",
        "may sea-boots rig=storm-rig",
    ),
    (
        "The skipper swears blind that the webbing belt is compulsory in boat rig. Is he having me on?",
        "must webbing-belt rig=boat-rig",
    ),
    (
        "I was told by the boatswain the other day that a wristwatch is allowed in the lamp room. Correct?",
        "may wristwatch place=lamp-room",
    ),
    (
        "We were dressed for boat rig and nobody had a flotation vest on. Did we break a rule?",
        "must flotation-vest rig=boat-rig",
    ),
    # circumstances
    ("I've a bad back. Need I wear the canvas belt in boat rig?", "must canvas-belt rig=boat-rig"),
    ("It might rain. Do I need the storm coat in watch rig?", "must storm-coat rig=watch-rig"),
    ("May I wear the quilted liner with the storm coat off?", "may storm-coat-liner worn:storm-coat=no"),
]


@pytest.mark.parametrize(("text", "expected"), TOLD, ids=[text for text, _ in TOLD])
def test_a_story_is_taken_for_what_it_says(demo: Base, text: str, expected: str) -> None:
    assert write_reading(demo.read(text)) == expected


NOT_CLEAR = [
    "I bought a bandolier and a storm coat. May I wear it?",  # which of the two
    "The storm coat was at the cleaners so I bought a cape. May I wear it in boat rig?",
    "They say the liner may be worn alone, but only in the mess. Is that so?",
    "My aunt knitted me a lovely scarf, bright pink, and I'm dead proud of it. Can I wear it in watch rig?",
    "I've a letter of dispensation for them. Must I wear sea boots in boat rig?",
]


@pytest.mark.parametrize("text", NOT_CLEAR)
def test_what_is_not_clear_is_not_answered(demo: Base, text: str) -> None:
    assert demo.read(text).query is None


@pytest.mark.parametrize(
    ("text", "so"),
    [
        ("is that so", True),
        ("is he right", True),
        ("did we break a rule", True),
        ("fine", True),
        ("am i in trouble", True),
        ("is it rough", False),
        ("may i", False),
        ("does the hat go with it", False),
    ],
)
def test_a_question_that_only_asks_whether_it_is_so(text: str, so: bool) -> None:
    assert asks_whether_so(text.split()) is so


def test_a_claim_begins_after_the_word_of_saying_or_its_that() -> None:
    words = ["i", "was", "told", "by", "bob", "that", "he", "says", "the", "hat", "is", "required"]
    said = [" ".join(words[start:]) for start in claim_starts(words)]
    assert said[0] == "the hat is required"
    assert "he says the hat is required" in said
    assert said[-1] == " ".join(words)
