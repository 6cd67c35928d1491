"""Two claims against each other: which of them stands, by the clauses of the demonstration books."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from kb.reader.stories.claims import two_claims
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
FIRST, SECOND = "the first stands", "the second stands"
# What is said, what stands, the readings, and the clause that decides.
WEIGHED = [
    ("he says the name strip letters are 30 mm high, I say 16", SECOND,
     ["May the height of the letters of the name strip be 30 mm?",
      "May the height of the letters of the name strip be 5/8 in (15.875 mm)?"], "2"),
    ("he says 3 bars for a K4, I say 2", FIRST,
     ["May the number of keeper's bars worn be exactly 3, for a K4?",
      "May the number of keeper's bars worn be exactly 2, for a K4?"], "5.7"),
    ("the chief says dress socks are black, I say white are fine", FIRST,
     ["May the colour of the dress socks be black?", "May the colour of the dress socks be white?"], "2.17"),
    ("my mate reckons service caps come off indoors in watch rig, I reckon they stay on", FIRST,
     ["May anyone go without the service cap, in watch rig, indoors?",
      "May anyone wear the service cap, in watch rig, indoors?"], "4.2"),
    ("I say the tab goes on the left breast, he says the right", FIRST,
     ["May the slip-on tab be worn on the left breast?", "May the slip-on tab be worn on the right breast?"],
     "5.9"),
    ("one says storm coat, the other says watch coat, in watch rig", SECOND,
     ["May anyone wear the storm coat, in watch rig?", "May anyone wear the watch coat, in watch rig?"],
     "3.3"),
    ("According to my mate gloves must be worn when hauling lines, I say they're optional", FIRST,
     ["Must anyone wear the deck gloves, hauling lines?",
      "Is it optional for anyone to wear the deck gloves, hauling lines?"], "7.2"),
    ("he says the first aid badge is polished in boat rig, I say matt. Who's right?", SECOND,
     ["May the finish of the first aid badge be polished, in boat rig?",
      "May the finish of the first aid badge be matt, in boat rig?"], "5.26"),
    ("he says the belt is 2 in wide; she says 3 in", "Neither of the two claims stands",
     ["May the width of the belt be 2 in (50.8 mm)?", "May the width of the belt be 3 in (76.2 mm)?"], "3"),
    ("the bosun says two rings, I say one", "Both claims stand",
     ["May the number of finger rings worn be exactly 2?",
      "May the number of finger rings worn be exactly 1?"],
     "6.5"),
    ("Tom thinks the cap device is 1 in high, Ann thinks 1 1/4 in",
     "Of the two claims the first does not stand, the second depends on more than is said.",
     ["May the height of the cap device be 1 in (25.4 mm)?",
      "May the height of the cap device be 1 1/4 in (31.75 mm)?"],
     "5.3"),
    ("He says the liner may be worn alone, I say it can't", SECOND,
     ["May anyone wear the quilted liner, with nothing else worn?"], "2.2"),
    ("In boat rig, he says rings are fine, I say they must come off", FIRST,
     ["May anyone wear the finger ring, in boat rig?",
      "Must anyone go without the finger ring, in boat rig?"],
     "6.5"),
    ("is 1 in ok or must it be 1 1/4 in, for a K4's cap device", SECOND,
     ["May the height of the cap device be 1 in (25.4 mm), for a K4?",
      "May the height of the cap device be 1 1/4 in (31.75 mm), for a K4?"], "5.3"),
    ("must the belt be 1 1/2 in or is 2 in ok", FIRST,
     ["May the width of the belt be 1 1/2 in (38.1 mm)?", "May the width of the belt be 2 in (50.8 mm)?"],
     "3"),
    ("he says the umbrella must be black, I say any colour", "what the second says was not understood",
     ["Must the colour of the umbrella be black?"], "6.10"),
]  # fmt: skip
# No two claims against each other.
OTHERS = [
    "The chief says that my mate says rings are fine",
    "he says I say rings are ok",
    "my mate says rings are fine, and I think so too",
    "he says the scarf is ok, and he says gloves are ok",
    "She told me the officer said white gloves are ok in boat rig, is that so?",
    "I say, may I wear the scarf?",
    "My mate says rings are fine. What do you say?",
]


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(("text", "stands", "readings", "clause"), WEIGHED)
def test_it_is_said_which_claim_stands(
    base: KnowledgeBase, text: str, stands: str, readings: list[str], clause: str
) -> None:
    answers = base.ask(text, as_of=DAY)
    assert [answer.reading.text for answer in answers] == readings
    (said,) = answers[0].reading.beside
    assert stands in said
    assert clause in {citation.number for citation in answers[0].citations}


SIZED = [
    # as wide and as high, in either order
    ("is a 5 by 1 in name strip ok",
     ["May the length of the name strip be 5 in (127 mm)?",
      "May the height of the name strip be 1 in (25.4 mm)?"]),
    ("name strip 1 x 5 in?",
     ["May the height of the name strip be 1 in (25.4 mm)?",
      "May the length of the name strip be 5 in (127 mm)?"]),
    ("station patch of 50 by 50 mm ok?", ["May the diameter of the station patch be 50 mm?"]),
    # one measure that only one side of it can be
    ("is exactly 5 in enough for the name strip", ["May the length of the name strip be 5 in (127 mm)?"]),
    ("is 3 cm ok for the belt", ["May the width of the belt be 30 mm?"]),
    # near to both of its sides
    ("is a 2 in belt ok", [""]),
]  # fmt: skip


@pytest.mark.parametrize(("text", "readings"), SIZED)
def test_a_size_is_judged_by_the_sides_it_can_be_of(
    base: KnowledgeBase, text: str, readings: list[str]
) -> None:
    assert [answer.reading.text for answer in base.ask(text, as_of=DAY)] == readings


@pytest.mark.parametrize("text", OTHERS)
def test_no_other_talk_of_what_is_said_is_weighed(text: str) -> None:
    assert two_claims(text) is None


def test_a_claim_of_something_unknown_is_not_answered(base: KnowledgeBase) -> None:
    (answer,) = base.ask("he says the sombrero is fine, I say no", as_of=DAY)
    assert answer.outcome == "abstain"
    assert answer.abstain is not None
    assert "sombrero" in answer.abstain.words


@pytest.mark.parametrize(
    ("books", "text", "lead"),
    [
        (
            "creamery",
            "My name badge sits 104 mm below the shoulder seam and my mate says it has to be 100 on the dot. "
            "Is he right?",
            "No: it need not be 100 exactly. ",
        ),
        (
            "hotel",
            "My cuff shows 12 mm below the sleeve, my boss says it has to be 10 exactly. Is she right?",
            "No: it need not be 10 exactly. ",
        ),
        (
            "hotel",
            "My cuff shows 16 mm below the sleeve, my boss says it has to be 10 exactly. Is she right?",
            "As it is it may not stay. ",
        ),
    ],
)
def test_no_is_said_of_the_measure_that_is_claimed(books: str, text: str, lead: str) -> None:
    base = opened(books)
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.headline.startswith(lead)
