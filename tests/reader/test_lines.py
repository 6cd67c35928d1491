"""Several questions in one line, or lines of one session: each goes on from what was said before it."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from shell.session import Session
from shell.turns import take_line
from tests.opening import opened

LINES = [
    ("May I wear the scarf? Where does the name strip go? How wide is the belt?",
     ["May anyone wear the wool scarf?", "Where must the name strip be worn?",
      "What must the width of the belt be?"]),
    ("May I wear the scarf and must I wear the service cap outdoors?",
     ["May anyone wear the wool scarf?", "Must anyone wear the service cap, not indoors?"]),
    ("May I wear the scarf at night? And in town?",
     ["May anyone wear the wool scarf, at night?", "May anyone wear the wool scarf, in town, at night?"]),
    ("May an H2 wear a beard? How long may it be?",
     ["May an H2 wear the beard?", "What must the length of the beard be, for an H2?"]),
    ("I am a W2. May I carry an umbrella in town? And in boat rig?",
     ["May a W2 carry the umbrella, in town?", "May a W2 carry the umbrella, in boat rig, in town?"]),
    ("May I wear a sombrero? May I wear the scarf?", ["", "May anyone wear the wool scarf?"]),
    # what is said once for all, wherever it stands
    ("Sunglasses? Rings? A neck chain? On the slipway.",
     ["May anyone wear the sunglasses, on the slipway?", "May anyone wear the finger ring, on the slipway?",
      "May anyone wear the neck chain, on the slipway?"]),
    ("Can I carry an umbrella? a satchel with shore rig?",
     ["May anyone carry the umbrella, in shore rig?", "May anyone carry the satchel, in shore rig?"]),
    ("Do I need a torch? A whistle? On watch in the dark hours.",
     ["Must anyone carry the pocket torch, on watch, dark hours?",
      "Must anyone carry the whistle, on watch, dark hours?"]),
    ("As a K5: beard? moustache? lanyard in parade rig?",
     ["May a K5 wear the beard, in parade rig?", "May a K5 wear the moustache, in parade rig?",
      "May a K5 wear the white lanyard, in parade rig?"]),
    ("Scarf? Neck cloth? When it's 5 degrees.",
     ["May anyone wear the wool scarf, air temperature 5 °C?",
      "May anyone wear the neck cloth, air temperature 5 °C?"]),
    ("Where does the cap device go and how big is it for a warden?",
     ["Where must the cap device be worn, by wardens?",
      "What must the height of the cap device be, for wardens?"]),
    # a setting of its own stays with its question
    ("May I wear the scarf in summer? the watch coat in winter?",
     ["May anyone wear the wool scarf, not winter?", "May anyone wear the watch coat, winter?"]),
    # questions that a comma or "also" joins
    ("where do the bars go, how many does a K4 wear, and how high are they",
     ["Where must the keeper's bars be worn?", "How many keeper's bars may be worn, for a K4?",
      "What must the height of the keeper's bars be, for a K4?"]),
    ("How wide is the belt and also who wears the brassard",
     ["What must the width of the belt be?", "Who may wear the officer of the day's brassard?"]),
    ("Where machinery is running, must I take rings off?",
     ["Must anyone go without the finger ring, machinery running?"]),
    # of two things that "or" joins the one that may be; the other is told beside it
    ("May I wear the watch coat or the storm coat in watch rig?",
     ["May anyone wear the watch coat, in watch rig?"]),
]  # fmt: skip


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(("line", "expected"), LINES)
def test_each_question_of_a_line_is_answered(base: KnowledgeBase, line: str, expected: list[str]) -> None:
    answers = base.ask(line, as_of=datetime.date(2026, 11, 25))
    assert [answer.reading.text for answer in answers] == expected


SESSIONS = [
    (("Can I wear a poncho with boat rig?", "The lined smock, I mean.", "And my umbrella?"),
     "May anyone carry the umbrella, in boat rig?"),
    (("Do I have to wear the flotation vest?", "Can I juggle in deck gloves?", "And the helmet?"),
     "Must anyone wear the flotation vest?"),  # whether one may juggle with it is not known
    (("May I carry the satchel in watch rig?", "And a rucksack?", "Travelling on duty.", "And in town?"),
     "May anyone carry the rucksack, in watch rig, in town, travelling on duty?"),
    (("May an H2 wear a beard?", "I have a medical waiver."),
     "May an H2 with the medical waiver wear the beard?"),
    (("Shorts with watch rig?", "It's not been granted and I'm on watch.", "And if it is?"),
     "May anyone wear the service shorts, in watch rig, on watch, extreme heat dress granted by the "
     "District Superintendent or higher?"),
    (("May I wear the tarred smock in boat rig?", "So what's the smock now?", "Should I tar it?"),
     "Must anyone tar the lined smock, in boat rig?"),
    (("May I wear the knit cap in shore rig?", "No, the service cap."),
     "May anyone wear the service cap, in shore rig?"),
    (("What colour is the watch coat?", "Juggle with the watch coat?", "And in March?"),
     "What must the colour of the watch coat be?"),  # no answer but the first, which is of no month
    (("Do I have to wear the flotation vest?", "May I wear a tiara?", "why's that?"),
     "Must anyone wear the flotation vest?"),  # why a tiara is not is not known
    (("Must I wear the flotation vest?", "why's that?"),
     "Why, or why not, may anyone wear the flotation vest?"),
    (("Must I tar the lined smock?", "May I wear a cap?", "can I tar it?"), ""),  # of which cap
    (("Can I take it off yet?", "the belt, my zorbing is on Friday", "how wide is it?"),
     "What must the width of the belt be?"),  # the thing of what was not understood is sure
    (("May I wear the wool gloves at 9 degrees ashore?", "Deck gloves? Wool gloves? At 2 degrees."),
     "May anyone wear the wool gloves, ashore, air temperature 2 °C?"),  # for all, whatever was said before
    (("May I wear the deck shoes in the mess?", "Deck shoes? Sea boots? On the slipway."),
     "May anyone wear the sea boots, on the slipway?"),
    # what is told instead of what the question itself said
    (("May I wear the scarf in parade rig at 9 degrees?", "no, sorry, only 3 degrees"),
     "May anyone wear the wool scarf, in parade rig, air temperature 3 °C?"),
    (("May I wear deck gloves ashore at 9 degrees?", "so I can't?"),
     "May anyone wear the deck gloves, ashore, air temperature 9 °C?"),
    (("May I wear deck shoes in the mess in watch rig?", "I'm in the engine room now"),
     "May anyone wear the deck shoes, in watch rig, in the engine room?"),
    (("May a K1 wear the keeper's pin?", "I'm a K5", "and in boat rig?"),
     "May a K5 wear the keeper's pin, in boat rig?"),
    (("May I wear the wool gloves at 9 degrees ashore?", "it's 2 degrees"),
     "May anyone wear the wool gloves, ashore, air temperature 2 °C?"),
    (("Must I wear the high-visibility vest on the slipway at night?", "it's daylight"),
     "Must anyone wear the high-visibility vest, on the slipway, by day?"),
    (("May I wear shorts in watch rig on watch?", "I am in boat rig"),
     "May anyone wear the service shorts, in boat rig, on watch?"),
    (("May I wear the neck cloth?", "I'm in parade rig", "it's 2 degrees"),
     "May anyone wear the neck cloth, in parade rig?"),
    (("May I wear the scarf in boat rig?", "and the neck cloth?", "back to the scarf. It's 3 degrees."),
     "May anyone wear the wool scarf, in boat rig, air temperature 3 °C?"),
    (("May I wear rings when hauling lines?", "and a wristwatch?", "back to the rings. I'm in the mess"),
     "May anyone wear the finger ring, in the mess, hauling lines?"),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "expected"), SESSIONS)
def test_a_session_goes_on_from_what_was_said(
    base: KnowledgeBase, lines: tuple[str, ...], expected: str
) -> None:
    session = Session(as_of=datetime.date(2026, 11, 25))
    for line in lines:
        session, _ = take_line(session, line, base)
    assert session.answers[-1].reading.text == expected


STILL_OPEN = [
    ("May anyone wear an ochre scarf?", "and in boat rig?"),
    ("May anyone wear an ochre scarf?", "K2s too?"),
    ("Where does that one go on the day shirt?", "and with the coxswain's badge on?"),
]


@pytest.mark.parametrize(("line", "further"), STILL_OPEN)
def test_few_words_are_not_asked_of_all_that_is_worn_or_of_an_older_question(
    base: KnowledgeBase, line: str, further: str
) -> None:
    session = Session(as_of=datetime.date(2026, 11, 25))
    for said in ("How many qualification badges may I wear?", line):
        session, _ = take_line(session, said, base)
    after, reply = take_line(session, further, base)
    assert "still open" in reply.complaint
    assert after.answers[-1].outcome == "ask"


CARRIED = [
    ("May a K5 wear the liner in boat rig?", "which clause", "2.2"),
    ("Where does the hands' knot go for an H1?", "which clause says so?", "5.6"),
    ("May I wear the umbrella in town in boat rig?", "says who?", "6.10"),
]


@pytest.mark.parametrize(("question", "line", "clause"), CARRIED)
def test_which_clause_names_those_that_carried_the_answer(
    base: KnowledgeBase, question: str, line: str, clause: str
) -> None:
    """Other clauses speak of the thing, too; what is asked is what the answer before rests on."""
    session = Session(as_of=datetime.date(2026, 11, 25))
    session, _ = take_line(session, question, base)
    (before,) = session.answers
    session, _ = take_line(session, line, base)
    (told,) = session.answers
    assert told.citations == before.citations
    assert clause in {cited.number for cited in told.citations}
    assert told.headline.count(clause) == 1
    session, _ = take_line(session, "and in shore rig?", base)
    query = session.answers[-1].reading.query
    assert query is not None
    assert before.reading.query is not None
    assert query.items == before.reading.query.items
    assert query.kind == before.reading.query.kind
