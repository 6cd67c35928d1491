"""Every command, option, word of the shell, exit code and setting is documented."""

from __future__ import annotations

import argparse
import re

import kb
from shell.arguments import EXAMPLES, make_parser
from shell.commands import COMMANDS
from tests.documents.code import python_files
from tests.documents.pages import DEVELOPERS, README, rows_of, section_of, text_of


def _commands() -> dict[str, argparse.ArgumentParser]:
    (action,) = [a for a in make_parser()._actions if isinstance(a, argparse._SubParsersAction)]
    return dict(action.choices)


def test_every_command_is_in_the_readme_and_has_an_example() -> None:
    assert len(_commands()) >= 5
    for name, parser in _commands().items():
        assert re.search(rf"clothbound {name}\b", text_of(README)), name
        assert EXAMPLES[name], name
        shown = " ".join(parser.format_help().replace("\\\n", " ").split())
        assert all(" ".join(example.split()) in shown for example in EXAMPLES[name])
        assert all(example.startswith(f"clothbound {name}") for example in EXAMPLES[name])


def test_every_option_says_what_it_does() -> None:
    for parser in (make_parser(), *_commands().values()):
        for action in parser._actions:
            assert action.help or isinstance(action, argparse._SubParsersAction), action.dest


def test_every_word_of_the_shell_is_in_the_readme_and_has_an_example() -> None:
    section = section_of(README, "The shell")
    for command in COMMANDS:
        assert re.search(rf"`{command.name}\b", section), command.name
        assert command.example.startswith(command.name)


def test_every_exit_code_is_in_the_readme() -> None:
    codes = {error.exit_code for error in (kb.UsageError, kb.InvalidDataError, kb.StoreUnavailableError)}
    told = {int(row[0]) for row in rows_of(section_of(README, "Asking")) if row[0].isdecimal()}
    assert told == codes | {0, 4, kb.ClothboundError.exit_code}


def test_every_setting_of_the_environment_is_in_the_readme() -> None:
    found = {
        name
        for path in python_files("kb", "shell")
        for name in re.findall(r"\bCLOTHBOUND_[A-Z]+\b", path.read_text(encoding="utf-8"))
    }
    assert {name for name in found if f"`{name}" not in text_of(README)} == set()
    assert set(re.findall(r"\bCLOTHBOUND_[A-Z]+\b", text_of(README))) == found


def test_what_kb_exports_is_little_and_told() -> None:
    assert len(kb.__all__) <= 22
    assert [name for name in kb.__all__ if f"`{name}`" not in text_of(DEVELOPERS)] == []
