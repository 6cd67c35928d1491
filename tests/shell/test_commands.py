"""Which lines are commands, which are statements, and which stay questions."""

from __future__ import annotations

import pytest

from shell.commands import BY_NAME, COMMANDS, read_line
from shell.session import Session
from shell.turns import take_line
from tests.shell.fakes import FakeBase

LINES = [
    ("why", "command", "why", ""),
    ("Why?", "command", "why", ""),
    ("why may I not wear the liner?", "question", "", "why may I not wear the liner?"),
    ("why is that", "question", "", "why is that"),
    ("clause 4.12", "command", "clause", "4.12"),
    ("clause clause 4.12", "command", "clause", "clause 4.12"),
    ("clause dress-order/2024 4.12", "command", "clause", "dress-order/2024 4.12"),
    ("clause", "command", "clause", ""),
    ("clause words", "question", "", "clause words"),
    ("clause 4.12 forbids what?", "question", "", "clause 4.12 forbids what?"),
    ("json", "command", "json", ""),
    ("json of the badge", "question", "", "json of the badge"),
    ("profile", "command", "profile", ""),
    ("forget", "command", "forget", ""),
    ("forget grade", "command", "forget", "grade"),
    ("forget my cap, may I?", "question", "", "forget my cap, may I?"),
    ("as of 2025-03-01", "command", "as of", "2025-03-01"),
    ("As Of today", "command", "as of", "today"),
    ("as of 2025-03-01 may I wear the cap", "question", "", "as of 2025-03-01 may I wear the cap"),
    ("items", "command", "items", ""),
    ("items coat", "command", "items", "coat"),
    ("items required in boat rig", "question", "", "items required in boat rig"),
    ("items required", "question", "", "items required"),
    ("facts weather", "command", "facts", "weather"),
    ("query SELECT * WHERE { ?s ?p ?o }", "command", "query", "SELECT * WHERE { ?s ?p ?o }"),
    ("query the master", "question", "", "query the master"),
    ("help", "command", "help", ""),
    ("?", "command", "help", ""),
    ("help as of", "command", "help", "as of"),
    ("help me with gloves", "question", "", "help me with gloves"),
    ("quit", "command", "quit", ""),
    ("exit", "command", "quit", ""),
    ("quit wearing the cap when?", "question", "", "quit wearing the cap when?"),
    ("remember K5", "command", "remember", "K5"),
    ("I am a K5 in boat rig", "statement", "", "I am a K5 in boat rig"),
    ("I'm a diver.", "statement", "", "I'm a diver."),
    ("I am a K5, may I wear the cap", "question", "", "I am a K5, may I wear the cap"),
    ("I am a K5. What must I wear?", "question", "", "I am a K5. What must I wear?"),
    ("It is foul weather", "statement", "", "It is foul weather"),
    ("  May I wear the cap? ", "question", "", "May I wear the cap?"),
    ("whyever", "question", "", "whyever"),
]


@pytest.mark.parametrize(("text", "kind", "name", "argument"), LINES)
def test_line(text: str, kind: str, name: str, argument: str) -> None:
    line = read_line(text)
    assert (line.kind, line.name, line.argument) == (kind, name, argument)


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.name)
def test_every_command_has_help_and_an_example_that_is_read_as_it(command: object, base: FakeBase) -> None:
    known = BY_NAME[command.name]  # type: ignore[attr-defined]
    assert known.does
    assert known.usage.startswith(known.name)
    assert read_line(known.example).name == known.name
    _, reply = take_line(Session(), f"help {known.name}", base)  # type: ignore[arg-type]
    assert known.example in str(reply.blocks)


def test_help_lists_every_command(base: FakeBase) -> None:
    _, reply = take_line(Session(), "help", base)  # type: ignore[arg-type]
    assert all(command.usage in str(reply.blocks) for command in COMMANDS)
