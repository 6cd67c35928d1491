"""What further words go on from after a clause was shown in place of an answer."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase, demo_folder
from shell.session import Session
from shell.turns import Reply, take_line
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
SEVENTH = Path(__file__).parents[1] / "seventh" / "books"
EIGHTH = Path(__file__).parents[1] / "eighth" / "books"
FIFTH = Path(__file__).parents[1] / "fifth" / "books"


def _talk(base: KnowledgeBase, *lines: str) -> Answer:
    previous, answer = None, None
    for line in lines:
        answer = base.ask(line, as_of=DAY, previous=previous)[-1]
        previous = answer.reading
    assert answer is not None
    return answer


@pytest.fixture(scope="module")
def seventh() -> KnowledgeBase:
    return opened("seventh")


@pytest.fixture(scope="module")
def fifth() -> KnowledgeBase:
    return opened("fifth")


@pytest.mark.parametrize(
    ("lines", "read", "verdict"),
    [
        (("may I have one as a C1?",), "May a C1 wear the beard?", "conditional"),
        (("may I have one as a C4?",), "May a C4 wear the beard?", "permitted"),
        (
            ("I'm a C1, may I have one without it?",),
            "May a C1 without the waiver wear the beard?",
            "conditional",
        ),
        (
            ("may I have one as a C4?", "how long?"),
            "What must the length of the beard be, for a C4?",
            "required",
        ),
    ],
)
def test_the_thing_that_the_clause_was_asked_of_is_meant(
    seventh: KnowledgeBase, lines: tuple[str, ...], read: str, verdict: str
) -> None:
    answer = _talk(seventh, "who may give me a waiver for a beard?", *lines)
    assert (answer.reading.text, answer.verdict) == (read, verdict)


def test_a_clause_shown_in_between_leaves_the_case_as_it_was(fifth: KnowledgeBase) -> None:
    lines = ("black leather gloves with Order C?", "and when I shake somebody's hand?")
    shown = _talk(fifth, *lines)
    assert shown.reading.query is not None
    assert shown.reading.query.clause is not None
    assert _talk(fifth, *lines, "and in Order B?").reading.text == (
        "May anyone wear the black leather gloves, in Order B?"
    )


def test_a_clause_of_nothing_that_was_named_leaves_nothing_to_go_on_from() -> None:
    base = opened("demo")
    answer = _talk(base, "who orders the rig of the day?", "may I wear it ashore?")
    assert answer.outcome != "answer"


@pytest.mark.parametrize(
    ("books", "lines", "complaint"),
    [
        (EIGHTH, ("mustache?", "how long", "and a beard in the kitchen", "6 mm"), "still open"),
        (demo_folder(), ("May I wear deck gloves in rain ashore?", "no fog"), "not clear what is denied"),
    ],
)
def test_what_is_not_clear_is_not_taken_for_something_else(
    books: Path, lines: tuple[str, ...], complaint: str, tmp_path: Path
) -> None:
    base, session, reply = KnowledgeBase.open(books, tmp_path), Session(as_of=DAY), Reply()
    for line in lines:
        session, reply = take_line(session, line, base)
    assert complaint in reply.complaint


def test_a_thing_of_another_is_not_gone_on_from_as_ones_own() -> None:
    base = opened("sixth")
    first = "I'm a ladle acting as top pan for 10 days. May I wear the tab of the higher grade?"
    answer = _talk(base, first)
    assert [citation.number for citation in answer.citations] == ["2.4"]
    assert _talk(base, first, "and if it's 20 days?").outcome != "answer"


def test_another_outfit_is_what_the_thing_is_worn_in(seventh: KnowledgeBase) -> None:
    first = "May I wear ear studs with Daily Dress?"
    assert (
        _talk(seventh, first, "What about Sail Dress?").reading.text
        == "May anyone wear the ear stud, in Sail Dress?"
    )
    asked = _talk(seventh, "May I wear Daily Dress in town?", "What about Sail Dress?")
    assert asked.reading.text == "May anyone wear the Sail Dress?"


def test_a_measure_alone_is_of_what_was_measured() -> None:
    base, session = opened("eighth"), Session(as_of=DAY)
    for line in ("mustache?", "how long", "6 mm"):
        session, _ = take_line(session, line, base)
    assert session.answers[-1].reading.text == "May the length of the moustache be 6 mm?"
