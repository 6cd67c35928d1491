"""Thanks in a talk, and commands miswritten: what is said, and that nothing else changes."""

from __future__ import annotations

from typing import Any

import pytest

from shell.blocks import Said
from shell.commands import COMMANDS
from shell.lines import commands_meant, is_settled, take
from shell.session import Session
from shell.turns import Result
from tests.opening import opened

THANKS = [
    "thanks", "Thanks!", "ok thanks", "OK, thank you.", "thank you very much", "cheers mate", "ta",
    "thanks, that\u2019s all", "thanks for the help", "ok, thanks for looking that up", "No, thank you.",
    "great, thanks", "no thanks", "got it, cheers", "many thanks",
]  # fmt: skip


def talk(base: Any, *lines: str) -> Result:
    session, result = Session(), None
    for line in lines:
        result = take(session, line, base)
        session = result[0]
    assert result is not None
    return result


@pytest.mark.parametrize("line", THANKS)
def test_thanks_leave_the_question_open(line: str, base: Any) -> None:
    before, _ = talk(base, "May I wear the liner?")
    after, reply = take(before, line, base)
    assert after == before
    assert reply.complaint == ""
    assert "You are welcome. What was asked is still open." in str(reply.blocks)
    assert "What is the weather?" in str(reply.blocks)
    assert is_settled(before, after, reply)


@pytest.mark.parametrize("line", THANKS)
def test_thanks_after_an_answer_are_no_question(line: str, base: Any) -> None:
    before, _ = talk(base, "May I wear the coat?")
    after, reply = take(before, line, base)
    assert (after, reply.complaint) == (before, "")
    assert "You are welcome." in str(reply.blocks)
    assert "still open" not in str(reply.blocks)


@pytest.mark.parametrize(
    "line", ["thanks, foul", "foul, thanks", "Foul weather. Thank you!", "ok thanks, foul"]
)
def test_an_answer_with_thanks_is_an_answer(line: str, base: Any) -> None:
    after, reply = talk(base, "May I wear the liner?", line)
    assert after.answers[-1].verdict == "permitted"
    assert reply.complaint == ""


@pytest.mark.parametrize(
    "line", ["thanks, may I wear the coat?", "May I wear the coat, thanks", "Thanks for what?"]
)
def test_a_question_with_thanks_is_asked(line: str, base: Any) -> None:
    base.asked.clear()
    talk(base, line)
    assert base.asked


MEANT = [
    ("hlep", ("help",)),
    ("helpp", ("help",)),
    ("itmes", ("items",)),
    ("itmes coat", ("items",)),
    ("claus 4.12", ("clause",)),
    ("clasue", ("clause",)),
    ("rember K5", ("remember",)),
    ("remembr K5", ("remember",)),
    ("profil", ("profile",)),
    ("qiut", ("quit",)),
    ("/hlep", ("help",)),
    ("forgt rig", ("forget",)),
    ("/florgle", ()),
    ("florgle", ()),
    ("coat", ()),
    ("a", ()),
    ("", ()),
    ("helps may I wear the coat", ()),
]


@pytest.mark.parametrize(("line", "meant"), MEANT)
def test_which_commands_are_meant(line: str, meant: tuple[str, ...]) -> None:
    assert commands_meant(line) == meant


def test_never_more_than_three_and_every_command_is_found_with_a_letter_lost() -> None:
    for command in COMMANDS:
        if len(command.name) > 3 and command.name != "as of":
            found = commands_meant(command.name[:2] + command.name[3:])
            assert command.name in found
            assert len(found) <= 3


@pytest.mark.parametrize("asked", [(), ("May I wear the liner?",), ("May I wear gloves?",)])
@pytest.mark.parametrize("line", ["hlep", "/hlep"])
def test_a_miswritten_command_is_told_which_is_meant(line: str, asked: tuple[str, ...], base: Any) -> None:
    before = talk(base, *asked)[0] if asked else Session()
    after, reply = take(before, line, base)
    assert after == before
    assert reply.complaint == 'There is no command "hlep". Did you mean help?'


def test_a_slash_before_what_is_no_command_points_to_the_help(base: Any) -> None:
    base.asked.clear()
    _, reply = take(Session(), "/florgle", base)
    assert reply.complaint == 'There is no command "florgle". help lists the commands.'
    assert base.asked == []
    _, reply = take(Session(), "/help", base)
    assert "Commands" in str(reply.blocks)


def test_a_word_of_the_books_is_no_miswritten_command(base: Any) -> None:
    base.asked.clear()
    session, reply = take(Session(), "coat", base)
    assert reply.complaint == ""
    assert session.answers[-1].verdict == "permitted"


TOLD = [
    ("my boots squeak, I have the medical waiver", {"holds:medical-waiver"}),
    ("im a K5 in watch rig, and the parrot squeaks", {"grade", "rig"}),
    ("my mate says im a K5, and the parrot squeaks", set[str]()),
    ("if I am a K5, does the parrot squeak", set[str]()),
    ("the parrot squeaks", set[str]()),
]


@pytest.mark.parametrize(("line", "facts"), TOLD)
def test_what_a_refused_line_surely_told_is_kept(line: str, facts: set[str]) -> None:
    session, reply = take(Session(), line, opened("demo"))
    assert {fact for fact, _ in session.profile} == facts
    kept = [block for block in reply.blocks if isinstance(block, Said) and "all the same" in block.label]
    assert bool(kept) == bool(facts)
    assert not any(answer.outcome == "answer" for answer in session.answers)
