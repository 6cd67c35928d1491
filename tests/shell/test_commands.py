"""Which lines are commands, which are statements, and which stay questions."""

from __future__ import annotations

import pytest

from shell.commands import BY_NAME, COMMANDS, needs_more, read_line, split_lines
from shell.examples import example_of
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
    (
        "clause Dress Order, second edition, clause 4.1",
        "command",
        "clause",
        "Dress Order, second edition, clause 4.1",
    ),
    ("clause 4.1, 4.2 and Notice 3", "command", "clause", "4.1, 4.2 and Notice 3"),
    ("clause that changed in 2026", "question", "", "clause that changed in 2026"),
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
    ("query\nSELECT *\n{ ?s ?p ?o }", "command", "query", "SELECT *\n{ ?s ?p ?o }"),
    ("SELECT * WHERE { ?s ?p ?o }", "command", "query", "SELECT * WHERE { ?s ?p ?o }"),
    ("select ?s { ?s ?p ?o }", "command", "query", "select ?s { ?s ?p ?o }"),
    ("PREFIX x: <http://x/> ASK { }", "command", "query", "PREFIX x: <http://x/> ASK { }"),
    ("ask { ?s ?p ?o }", "command", "query", "ask { ?s ?p ?o }"),
    ("Construct { } where { }", "command", "query", "Construct { } where { }"),
    ("describe cb:Rule", "command", "query", "describe cb:Rule"),
    ("SELECT label FROM items", "command", "query", "SELECT label FROM items"),
    ("Describe the storm coat", "question", "", "Describe the storm coat"),
    ("describe: what is a badge", "question", "", "describe: what is a badge"),
    ("ask the coxswain?", "question", "", "ask the coxswain?"),
    ("Select a cap (any)", "question", "", "Select a cap (any)"),
    ("base layer?", "question", "", "base layer?"),
    ("/help", "command", "help", ""),
    ("/clause 4.12", "command", "clause", "4.12"),
    ("/ why", "command", "why", ""),
    ("/florgle", "question", "", "/florgle"),
    ("/I am a K5", "question", "", "/I am a K5"),
    ("save answer.md", "command", "save", "answer.md"),
    ("save my answers/today 1.json", "command", "save", "my answers/today 1.json"),
    ('save "my answers/today 1.json"', "command", "save", "my answers/today 1.json"),
    ("save 'answer.md'", "command", "save", "answer.md"),
    ("save", "command", "save", ""),
    ("save the coat for when?", "question", "", "save the coat for when?"),
    ("help", "command", "help", ""),
    ("?", "command", "help", ""),
    ("help as of", "command", "help", "as of"),
    ("help florgle", "command", "help", "florgle"),
    ("help me", "question", "", "help me"),
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


OPEN = [
    ("query", True),
    ("query ", True),
    ("query SELECT * {", True),
    ("query SELECT *", True),
    ("query SELECT * { ?s ?p ?o }", False),
    ("query SELECT * { { ?s ?p ?o }", True),
    ('query SELECT * { ?s ?p "}" ', True),
    ('query SELECT * { ?s ?p """}""" ', True),
    ('query SELECT * { ?s ?p "a\\"}" ', True),
    ("query SELECT * { <http://x/}> ?p ?o ", True),
    ("query SELECT * { ?s ?p ?o # }", True),
    ("query SELECT * { ?s ?p ?o # {\n}", False),
    ("query SELECT * { FILTER (1 < 2 && 3 > 2) }", False),
    ("query DESCRIBE <http://x/y>", False),
    ("query DESCRIBE", True),
    ("query PREFIX x: <http://x/>", True),
    ("query mine.rq", False),
    ("query SELECT * {\n", False),
    ("query the master", False),
    ("SELECT * WHERE {", True),
    ("SELECT ?s", True),
    ("PREFIX x: <http://x/>", True),
    ("SELECT * WHERE { ?s ?p ?o }", False),
    ("SELECT label FROM items", False),
    ("describe cb:Rule", False),
    ("Describe the coat {", False),
    ("May I {", False),
    ("", False),
]


@pytest.mark.parametrize(("text", "expected"), OPEN)
def test_whether_a_query_goes_on_below(text: str, expected: bool) -> None:
    assert needs_more(text) is expected


PASTED = [
    ("one\n\n two \n", ["one", "two"]),
    ("query SELECT *\n{\n?s ?p ?o }\nLIMIT 3\nwhy", ["query SELECT *\n{\n?s ?p ?o }\nLIMIT 3", "why"]),
    ("query SELECT * {\n\n} order by ?s\nLimit 2", ["query SELECT * {\n\n} order by ?s\nLimit 2"]),
    ("SELECT *\n{\n?s ?p ?o }\nLIMIT 3\nwhy", ["SELECT *\n{\n?s ?p ?o }\nLIMIT 3", "why"]),
    ("why\nlimit of the coat", ["why", "limit of the coat"]),
    ("query SELECT * {", ["query SELECT * {"]),
    ("\n \n", []),
]


@pytest.mark.parametrize(("text", "lines"), PASTED)
def test_pasted_lines_are_told_apart(text: str, lines: list[str]) -> None:
    assert list(split_lines(text)) == lines


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.name)
def test_every_command_has_help_and_an_example_that_is_read_as_it(command: object, base: FakeBase) -> None:
    known = BY_NAME[command.name]  # type: ignore[attr-defined]
    assert known.does
    assert known.usage.startswith(known.name)
    assert read_line(known.example).name == known.name
    _, reply = take_line(Session(), f"help {known.name}", base)  # type: ignore[arg-type]
    assert read_line(example_of(known.name, base)).name == known.name  # type: ignore[arg-type]
    assert example_of(known.name, base) in str(reply.blocks)  # type: ignore[arg-type]


def test_help_lists_every_command(base: FakeBase) -> None:
    _, reply = take_line(Session(), "help", base)  # type: ignore[arg-type]
    assert all(command.usage in str(reply.blocks) for command in COMMANDS)
