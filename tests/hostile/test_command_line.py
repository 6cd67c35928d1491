"""Odd arguments, input and environment at the command line, over two small rule books."""

import json
import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest

import kb

BOOKS = Path(__file__).parents[1] / "sources" / "good"


@pytest.fixture(scope="module")
def home(tmp_path_factory):
    return tmp_path_factory.mktemp("home")


@pytest.fixture
def run(home):
    """Run the program as a user would; the exit code, standard output and standard error."""

    def start(
        *arguments, given=b"", stdout=subprocess.PIPE, stderr=subprocess.PIPE, preexec_fn=None, **environment
    ):
        done = subprocess.run(
            [sys.executable, "-m", "shell", *arguments],
            input=given,
            stdout=stdout,
            stderr=stderr,
            preexec_fn=preexec_fn,
            check=False,
            timeout=60,
            env={
                **os.environ,
                "CLOTHBOUND_CACHE": str(home / "cache"),
                "CLOTHBOUND_BOOKS": str(BOOKS),
                **environment,
            },
        )
        return done.returncode, done.stdout, (done.stderr or b"").decode()

    return start


@pytest.mark.parametrize("seconds", ["nan", "inf", "1e308", "-1", "0", "3601"])
def test_a_deadline_is_a_time(run, seconds):
    code, _, said = run("query", "ASK {}", "--deadline", seconds)
    assert (code, "deadline" in said) == (2, True)


@pytest.mark.parametrize("form", ["table", "json", "csv"])
def test_rows_without_columns_are_shown(run, form):
    code, shown, _ = run("query", "SELECT * { {} UNION {} }", "--format", form)
    assert code == 0
    assert shown == b"Rows: 2\n" if form == "table" else shown


@pytest.mark.parametrize("option", ["--books", "--cache", "-o"])
def test_an_empty_path_is_not_the_folder_one_stands_in(run, option):
    assert run("export", option, "")[0] == 2


def test_a_wide_terminal_is_no_fault(run):
    assert run("ask", "?", COLUMNS="9" * 5_000)[0] == 4


@pytest.mark.parametrize("given", [b"\xff\xfe may I?", b"\xed\xa0\x80", "may I \x9b31m\u202e?".encode()])
def test_json_is_json_whatever_was_asked(run, given):
    code, shown, _ = run("ask", "--json", given=given)
    assert code == 4
    text = shown.decode()
    assert kb.visible(text) == text
    assert json.loads(text)["question"] == given.decode(errors="replace")


def test_json_of_a_query_is_read_back_unchanged(run):
    code, shown, _ = run("query", 'SELECT ("\x9b\u202e\x7f\U000e0001" AS ?x) {}', "--format", "json")
    text = shown.decode()
    assert code == 0
    assert kb.visible(text) == text
    assert json.loads(text)["results"]["bindings"] == [
        {"x": {"type": "literal", "value": "\x9b\u202e\x7f\U000e0001"}}
    ]


def test_a_flood_of_problems_is_cut(run, tmp_path):
    (tmp_path / "a.yaml").write_text("".join(f"key{number}: x\n" for number in range(3_000)))
    code, _, said = run("build", "--books", str(tmp_path))
    assert code == 3
    assert len(said.splitlines()) == 1_002
    assert said.splitlines()[-1] == "3001 errors, 0 warnings."


has_full_device = pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")


@has_full_device
@pytest.mark.parametrize(
    "command", [("ask", "?"), ("export",), ("query", "SELECT * {?s ?p ?o}"), ("--help",), ("ask", "--help")]
)
def test_a_full_disk_is_said(run, command):
    with Path("/dev/full").open("wb") as full:
        code, _, said = run(*command, stdout=full)
    assert (code, said) == (5, "The output cannot be written: No space left on device.\n")


@has_full_device
@pytest.mark.parametrize(("command", "code"), [(("build",), 0), (("clause", "99.99"), 2), (("ask", "?"), 4)])
def test_what_cannot_be_complained_about_changes_nothing(run, command, code):
    """`build` warns on standard error and goes on; all end with the exit code that they always have."""
    with Path("/dev/full").open("wb") as full:
        assert run(*command, stderr=full)[0] == code
        assert run(*command, stdout=full, stderr=full)[0] == (2 if code == 2 else 5)


@pytest.mark.parametrize("words", [("",), ("  ",), ("", "")])
def test_an_empty_question_is_none(run, words):
    code, shown, said = run("ask", *words, given=b"May I wear the coat?\n")
    assert (code, shown) == (2, b"")
    assert said.startswith("There is no question.")


@pytest.mark.parametrize("command", [("ask", "-"), (), ("decide", "-")])
def test_a_line_without_end_is_not_read_to_its_end(run, command):
    """Two lines that fit, and one of 10 MB that is held in memory in part only."""
    known = b"item\n_x\n" if command[:1] == ("decide",) else b"?\n?\n"
    code, shown, said = run(*command, given=known + b"a" * 10_000_000, preexec_fn=little_memory)
    assert code in (2, 3)
    assert "characters" in said
    assert shown


def little_memory():
    resource.setrlimit(resource.RLIMIT_DATA, (400_000_000, 400_000_000))


@pytest.mark.parametrize("command", ["verify", "decide", "check", "draft"])
def test_a_device_without_end_is_not_read_to_its_end(run, command):
    code, shown, said = run(command, "/dev/zero", preexec_fn=little_memory)
    assert code in (2, 3)
    assert shown == b""
    assert "/dev/zero" in said or command == "decide"


@pytest.mark.parametrize("command", ["verify", "decide", "query", "check", "draft"])
def test_a_file_that_is_none_is_said(run, command, tmp_path):
    (tmp_path / "folder.rq").mkdir()
    for name in ("folder.rq", "missing.rq", "x" * 5_000 + ".rq", "new\nline\x1b[31m.rq"):
        code, shown, said = run(command, str(tmp_path / name))
        assert (code, shown) == (2, b"")
        assert "cannot be read" in said
        assert "\x1b" not in said


@pytest.mark.parametrize("closed", [(0,), (1,), (2,), (0, 1, 2)])
def test_closed_streams_are_no_fault(run, closed):
    def close():
        for number in closed:
            os.close(number)

    code, _, said = run("query", "ASK {}", preexec_fn=close)
    assert (code, said) == (0, "")
