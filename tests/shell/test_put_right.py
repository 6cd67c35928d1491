"""Lines given while something is asked back: what they state goes in place of what was said before."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

import kb
from shell.session import Session
from shell.turns import take_line
from tests.opening import opened

TALKS = [
    (
        ("watch coat in parade rig at 4 degrees in May", "at 8 degrees"),
        "May anyone wear the watch coat, in parade rig, air temperature 8 °C, month May?",
    ),
    (
        ("may a K2 wear the white lanyard in parade rig", "K6"),
        "May a K6 wear the white lanyard, in parade rig?",
    ),
    (
        ("may a K2 wear the white lanyard in parade rig", "sorry, K6"),
        "May a K6 wear the white lanyard, in parade rig?",
    ),
    (("may a K3 wear gloves ashore", "afloat"), "May a K3 wear the deck gloves, afloat?"),
    (("may a K3 wear wool gloves", "no, K4"), "May a K4 wear the wool gloves?"),
    (
        ("May a K3 wear the wool scarf with the watch coat in August?", "no, in January"),
        "May a K3 wear the wool scarf, month January, with the watch coat?",
    ),
    (
        ("must a K2 wear the hi-vis vest in town", "a K5 on the slipway at night"),
        "Must a K5 wear the high-visibility vest, on the slipway, at night?",
    ),
    (("may an H2 carry the whistle", "a K3 on watch"), "May a K3 carry the whistle, on watch?"),
    # of somebody else, whatever was asked back
    (
        ("may I wear the liner", "not me, the officer of the day"),
        "May anyone with the appointment of officer of the day wear the quilted liner?",
    ),
    # a thing with facts of its own is another question
    (
        ("H2 in the dark hours needs a torch?", "deck knife in town in boat rig"),
        "May anyone carry the deck knife, in boat rig, in town?",
    ),
    (
        ("may a K3 wear the storm hat in watch rig?", "knit cap in watch rig in town"),
        "May anyone wear the knit cap, in watch rig, in town?",
    ),
    # replies stay replies
    (("May I wear the storm coat?", "watch rig"), "May anyone wear the storm coat, in watch rig?"),
    (("may a K3 wear wool gloves", "no"), "May a K3 wear the wool gloves, not hauling lines?"),
]


@pytest.fixture(scope="module")
def demo() -> kb.KnowledgeBase:
    return opened("demo")


@pytest.fixture(scope="module")
def tower(tmp_path_factory: pytest.TempPathFactory) -> kb.KnowledgeBase:
    books = Path(__file__).parents[1] / "small" / "cathedral" / "books"
    return kb.KnowledgeBase.open(books, tmp_path_factory.mktemp("tower"))


@pytest.mark.parametrize(("lines", "read"), TALKS, ids=[" / ".join(lines) for lines, _ in TALKS])
def test_what_is_stated_replaces_what_was_said(
    demo: kb.KnowledgeBase, lines: tuple[str, ...], read: str
) -> None:
    session = Session()
    for line in lines:
        session, _ = take_line(session, line, demo)
    assert session.answers[-1].reading.text == read


def test_a_reply_is_taken_into_the_question(demo: kb.KnowledgeBase) -> None:
    session, _ = take_line(Session(), "may a K3 wear wool gloves", demo)
    asked = session.answers[-1].ask
    assert asked is not None
    session, _ = take_line(session, "no", demo)
    assert asked.fact in dict(session.replies)


MISSED = [
    (
        ("May I wear the service cap in the scullery?", "and in the mess?"),
        "May anyone wear the service cap, in the mess?",
    ),
    (("Can a stoker carry a phone on watch?", "and a K5?"), "May a K5 carry the pocket telephone, on watch?"),
    (
        ("Must a stoker wear the hi-vis vest?", "what about wardens?"),
        "Must wardens wear the high-visibility vest?",
    ),
    (
        ("Can I wear rings?", "and in the scullery?", "and in the mess?"),
        "May anyone wear the finger ring, in the mess?",
    ),
    # other words than those that were not understood: what was asked is not known
    (("May I wear the service cap in the scullery?", "and with the watch coat?"), None),
    (("May I wear the service cap in the scullery?", "and for wardens?"), None),
    (("Is the scullery all right in boat rig?", "and in the mess?"), None),
    (("Can a stoker carry a phone in the scullery?", "and a K5?"), ""),
    (("Can I wear rings?", "OK what about a tiara then?", "on parade?", "and hauling lines?"), None),
    (
        ("Are earrings allowed, squiggly ones I mean?", "and in boat rig?", "what about for wardens?"),
        "May wardens wear the earrings, in boat rig?",  # none are, whatever they are like
    ),
]


@pytest.mark.parametrize(("lines", "read"), MISSED)
def test_a_line_says_what_was_not_understood(
    demo: kb.KnowledgeBase, lines: tuple[str, ...], read: str | None
) -> None:
    session = Session()
    for line in lines:
        before = session
        session, _ = take_line(session, line, demo)
    assert (session.answers[-1].reading.text if session.answers != before.answers else None) == read


OPEN = [
    (("How long may my beard be?", "can I have a coat on?", "and in the mess?"), "item"),
    (("Can I take off the cap in the mess?", "where do I carry it then?"), "item"),
]


@pytest.mark.parametrize(("lines", "asked"), OPEN)
def test_a_line_goes_on_from_what_was_asked_back(
    demo: kb.KnowledgeBase, lines: tuple[str, ...], asked: str
) -> None:
    session = Session()
    for line in lines:
        session, _ = take_line(session, line, demo)
    ask = session.answers[-1].ask
    assert ask is not None
    assert ask.fact == asked
    assert ask.choices


def test_why_after_a_line_that_was_missed_is_not_of_the_answer_before(demo: kb.KnowledgeBase) -> None:
    session, _ = take_line(Session(), "May I wear earrings in watch rig?", demo)
    session, _ = take_line(session, "And may the parrot wear the scarf?", demo)
    session, reply = take_line(session, "why?", demo)
    assert "not understood" in reply.complaint


@pytest.mark.parametrize(
    ("line", "whose"),
    [
        ("who made that order?", "Clerk of Works: Tower Order, 2026, clauses 1 and 4"),
        ("who made that rule?", "Dean and Chapter: Vesture Book"),
    ],
)
def test_whose_order_it_is_is_of_the_book_that_is_called_so(
    tower: kb.KnowledgeBase, line: str, whose: str
) -> None:
    day = datetime.date(2026, 12, 1)
    session, _ = take_line(
        Session(as_of=day), "May I wear black shoes for ringing in the great tower?", tower
    )
    session, _ = take_line(session, line, tower)
    assert session.answers[-1].headline.startswith(whose)


@pytest.mark.parametrize("line", ["why not?", "yes", "no", "and by whom?"])
def test_what_only_replies_is_told_that_nothing_was_asked(line: str, demo: kb.KnowledgeBase) -> None:
    session, reply = take_line(Session(), line, demo)
    assert reply.complaint.startswith("Nothing has been asked yet.")
    assert session == Session()


def test_what_is_no_value_is_told_with_what_was_not_understood(demo: kb.KnowledgeBase) -> None:
    session, _ = take_line(Session(), "may I wear the liner", demo)
    after, reply = take_line(session, "on the gangplank", demo)
    assert 'yes or no, not "on the gangplank"' in reply.complaint
    assert 'not understood: "gangplank"' in reply.complaint
    assert after.answers == session.answers
