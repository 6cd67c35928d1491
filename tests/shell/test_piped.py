"""A talk out of a pipe, as a process over the demo: commands, further questions, and the exit code."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from shell.piped import whole_lines

ROOT = Path(__file__).parents[2]


def talk(tmp_path: Path, *lines: str) -> subprocess.CompletedProcess[str]:
    env = {**os.environ, "CLOTHBOUND_CACHE": str(tmp_path), "XDG_STATE_HOME": str(tmp_path / "state")}
    command = [sys.executable, "-m", "shell.main"]
    return subprocess.run(
        command, input="\n".join(lines), capture_output=True, text=True, cwd=ROOT, env=env, timeout=60
    )


def test_lines_go_on_from_the_ones_before(tmp_path: Path) -> None:
    done = talk(tmp_path, "May I wear the quilted liner alone?", "", "why?", "quit", "May I wear sea boots?")
    assert done.returncode == 0, done.stderr
    said = done.stdout.splitlines()
    assert [line for line in said if line.startswith("> ")] == [
        "> May I wear the quilted liner alone?",
        "> why?",
        "> quit",
    ], "each line stands above its reply, and nothing follows quit"
    assert any("It would be otherwise if" in line for line in said), "why? shows the whole way"


def test_what_is_remembered_holds_for_the_talk_alone(tmp_path: Path) -> None:
    done = talk(tmp_path, "I am a K5", "profile")
    assert done.returncode == 0
    assert "K5" in done.stdout.partition("> profile")[2]
    assert "K5" not in talk(tmp_path, "profile").stdout.partition("> profile")[2]


def test_help_is_a_command_and_a_line_not_understood_tells_in_the_exit_code(tmp_path: Path) -> None:
    done = talk(tmp_path, "help", "florgle?")
    assert done.returncode == 4
    assert "Everything else is a question" in done.stdout
    assert 'Not understood: "florgle"' in done.stdout


def test_a_complaint_tells_in_the_exit_code(tmp_path: Path) -> None:
    done = talk(tmp_path, "json")
    assert done.returncode == 4
    assert "Nothing has been answered yet" in done.stderr


@pytest.mark.parametrize(
    ("lines", "wholes"),
    [
        (["a", "", "b"], ["a", "b"]),
        (["query SELECT * WHERE {", "?s ?p ?o }", "a"], ["query SELECT * WHERE {\n?s ?p ?o }", "a"]),
        (["query SELECT * WHERE {", "", "a"], ["query SELECT * WHERE {", "a"]),
        (["query SELECT * WHERE {"], ["query SELECT * WHERE {"]),
    ],
)
def test_a_query_is_taken_with_all_its_lines(lines: list[str], wholes: list[str]) -> None:
    assert list(whole_lines(lines)) == wholes
