"""What is asked back of the words is let be; a line after one that failed says what it goes on from."""

from __future__ import annotations

import datetime

import pytest

from shell.blocks import Block, Said
from shell.layout import arrange
from shell.look_up import Reply
from shell.session import Session
from shell.turns import take_line
from tests.opening import opened

RED = "nail varnish in red, ok?"


def _talk(*lines: str) -> tuple[Session, Reply]:
    base, session, reply = opened("demo"), Session(as_of=datetime.date(2026, 12, 1)), Reply()
    for line in lines:
        session, reply = take_line(session, line, base)
    return session, reply


@pytest.mark.parametrize(
    ("lines", "read"),
    [
        ((RED, "and in natural colour?"), "May the colour of the nail varnish be natural colour?"),
        ((RED, "in boat rig?"), ""),  # of red, or of any: it stays open
        ((RED, "no", "in boat rig?"), "May anyone wear the nail varnish, in boat rig?"),
        ((RED, "yes"), "What must the colour of the nail varnish be?"),
    ],
)
def test_a_line_goes_on_from_the_thing_that_was_asked_of(lines: tuple[str, ...], read: str) -> None:
    assert _talk(*lines)[0].answers[-1].reading.text == read


def test_a_no_is_taken() -> None:
    assert not _talk(RED, "no")[1].complaint


def _labels(blocks: tuple[Block, ...]) -> dict[str, str]:
    return {block.label: block.text for block in blocks if isinstance(block, Said)}


def test_after_a_line_that_failed_it_is_said_what_a_line_goes_on_from() -> None:
    _, reply = _talk(
        "how many qualification badges may I wear?",
        "which goes first?",
        "where does the third one go?",
        "and if I'm wearing the coxswain's badge?",
    )
    assert "order of precedence" in _labels(reply.blocks)["Goes on from"]


def test_what_was_used_of_a_sentence_is_not_said_to_be_left_out() -> None:
    base = opened("demo")
    said = "A coxswain has guests of the Board aboard and it's raining. White lanyard?"
    answer = base.ask(said, as_of=datetime.date(2026, 12, 1))[-1]
    left = _labels(arrange(answer, base))["Not used"]
    assert "coxswain" in left
    assert "raining" not in left


def test_a_single_question_keeps_nothing() -> None:
    base = opened("demo")
    answer = base.ask("Which side of the collar do the collar devices go?")[-1]
    assert "Kept" not in _labels(arrange(answer, base, talk=False))
