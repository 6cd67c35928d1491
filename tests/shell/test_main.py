"""The command line as a process: what comes out where, and with which exit code."""

from __future__ import annotations

import csv
import io
import json
import os
import shlex
import signal
import subprocess
import sys
import time
from pathlib import Path
from xml.etree import ElementTree

import pytest

import kb
from kb.errors import Location
from shell.arguments import EXAMPLES, make_parser
from shell.main import _arguments, main
from shell.output import complain_problems
from tests.shell.fakes import HOSTILE

ROOT = Path(__file__).parents[2]
COMMAND = [sys.executable, "-m", "tests.shell.run_fake"]


def run(*arguments: str, stdin: str = "", **environment: str) -> subprocess.CompletedProcess[str]:
    env = {**os.environ, "COLUMNS": "80", "PYTHONIOENCODING": "utf-8", **environment}
    return subprocess.run(
        [*COMMAND, *arguments],
        input=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=ROOT,
        env=env,
        timeout=60,
    )


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (["ask", "May I wear the coat?"], 0),
        (["ask", "May I wear the liner?"], 0),
        (["ask", "May I wear a spoon?"], 0),
        (["ask", "May I wear the florgle?"], 4),
        (["ask", "May I wear gloves?"], 4),
        (["ask", "Must I wear the badge?"], 4),
        (["ask", "coat and also florgle"], 4),
        (["ask", "coat", "--grade", "K99"], 2),
        (["ask", "coat", "--fact", "weather"], 2),
        (["ask", "coat", "--fact", "grade=K4", "--grade", "K5"], 2),
        (["ask", "coat", "--as-of", "someday"], 2),
        (["ask", "coat", "--as-of", "2026-02-30"], 2),
        (["ask", "coat", "--nonsense"], 2),
        (["ask", "SELECT * { ?s ?p ?o }"], 2),
        (["ask", "ask { ?s ?p ?o }"], 2),
        (["ask", "/help"], 2),
        (["ask", "MAY I WEAR THE COAT"], 0),
        (["dance"], 2),
        (["--books", "/missing", "ask", "coat"], 2),
        (["ask", "coat", "--books", "/missing"], 2),
        (["build"], 0),
        (["build", "--books", "broken"], 3),
        (["clause", "4.12"], 0),
        (["clause", "99"], 2),
        (["query", "SELECT * {}"], 0),
        (["query", "SELECT * {}", "--deadline", "0.001"], 5),
        (["query", "SELECT * {}", "--deadline", "-1"], 2),
        (["query", "none/such.rq"], 2),
        (["ask", "slow"], 5),
        (["ask", "crash"], 70),
        (["ask", "stop"], 130),
        (["--version"], 0),
        (["--help"], 0),
    ],
)
def test_exit_code(arguments: list[str], code: int, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(arguments) == code
    captured = capfd.readouterr()
    assert "Traceback" not in captured.err
    if code in (2, 3, 5, 70):
        assert captured.out == ""
        assert captured.err
    if code == 130:
        assert captured.err == ""


def test_exit_code_of_a_process() -> None:
    assert run("ask", "May I wear the coat?").returncode == 0
    assert run("ask", "florgle").returncode == 4
    assert run("ask", "crash").returncode == 70


def test_a_bug_is_one_line_and_the_traceback_is_for_those_who_ask() -> None:
    quiet = run("ask", "crash")
    assert len(quiet.stderr.splitlines()) == 1
    assert "internal error" in quiet.stderr
    assert "please report" in quiet.stderr
    assert "\x1b" not in quiet.stderr
    assert "Traceback" in run("ask", "crash", CLOTHBOUND_DEBUG="1").stderr


@pytest.mark.parametrize("command", [["ask", "-"], ["ask"]])
def test_questions_come_one_a_line_from_standard_input(command: list[str]) -> None:
    done = run(*command, stdin="May I wear the coat?\n\nflorgle?\n")
    assert done.returncode == 4
    assert "PERMITTED" in done.stdout
    assert "NOT ANSWERED" in done.stdout
    assert "Quay Service" not in done.stdout, "no greeting in a pipe"


def test_json_is_one_object_a_line() -> None:
    done = run("ask", "-", "--json", stdin="coat\ncoat and also florgle\n")
    assert [json.loads(line)["verdict"] for line in done.stdout.splitlines()] == [
        "permitted",
        "permitted",
        None,
    ]


def test_piped_output_has_no_terminal_codes_and_needs_no_screen_library() -> None:
    probe = (
        "import sys; sys.argv[1:] = ['ask', 'hostile']; from tests.shell.run_fake import *; vars(kb).update("
        "KnowledgeBase=FakeBase, Opening=FakeOpening); from shell.main import main; main(); "
        "print([m for m in ('rich', 'prompt_toolkit', 'rapidfuzz', 'yaml', 'rdflib') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True, cwd=ROOT, timeout=60)
    assert done.stdout.splitlines()[-1] == "[]"
    assert "\x1b" not in done.stdout
    assert "\u202e" not in done.stdout
    assert "[/para]" in done.stdout


def test_build_lists_problems_with_their_place() -> None:
    done = run("build", "--books", "broken")
    assert 'order/gloves.yaml:12:5: error: There is no item "cote". Write "coat".' in done.stderr
    assert "1 error, 0 warnings." in done.stderr
    assert "rules" in run("build").stdout


def test_query_formats() -> None:
    table = run("query", "SELECT * {}")
    assert "storm coat" in table.stdout
    assert "Rows: 4" in table.stdout
    assert "\x1b" not in table.stdout
    rows = list(csv.reader(io.StringIO(run("query", "SELECT * {}", "--format", "csv").stdout)))
    assert rows[0] == ["item", "label"]
    assert rows[2] == ["'=1+1", ""], "a formula is disarmed, an unbound variable is empty"
    data = json.loads(run("query", "-", "--format", "json", stdin="SELECT * {}").stdout)
    assert data["head"]["vars"] == ["item", "label"]
    assert "label" not in data["results"]["bindings"][1], (
        "unbound variables are left out (SPARQL 1.1 JSON, 3.2.2)"
    )
    assert data["results"]["bindings"][2]["item"]["value"] == HOSTILE
    # SPARQL 1.1 Query Results JSON Format, 3.2.2: the forms of RDF terms.
    assert data["results"]["bindings"][0]["item"]["type"] == "uri"
    assert data["results"]["bindings"][0]["label"] == {"type": "literal", "value": "storm coat"}
    assert data["results"]["bindings"][2]["label"]["xml:lang"] == "en"
    assert data["results"]["bindings"][3]["item"] == {"type": "bnode", "value": "b0"}
    assert data["results"]["bindings"][3]["label"]["datatype"].endswith("#integer")


def test_a_yes_or_no_query() -> None:
    assert run("query", "ASK {}").stdout == "Result: yes\n"
    assert json.loads(run("query", "ASK {}", "--format", "json").stdout) == {"head": {}, "boolean": True}
    assert run("query", "ASK {}", "--format", "csv").stdout.splitlines() == ["boolean", "true"]


def test_a_cut_result_says_so() -> None:
    done = run("query", "SELECT * {}", "--limit", "2")
    assert "Rows: the first 2" in done.stdout
    assert "first 2 rows" in done.stderr


def test_query_from_a_file(tmp_path: Path) -> None:
    path = tmp_path / "q.rq"
    path.write_text("SELECT * { }", encoding="utf-8")
    assert "SELECT * {" in run("query", str(path)).stdout


def test_export_to_standard_output_and_to_a_file(tmp_path: Path) -> None:
    assert run("export", "--format", "nquads").stdout == "# nquads\n"
    target = tmp_path / "base.ttl"
    done = run("export", "-o", str(target))
    assert done.stdout == ""
    assert target.read_text() == "# turtle\n"


def test_why_shows_the_chain() -> None:
    assert "The whole way" not in run("ask", "liner").stdout
    assert "The whole way" in run("ask", "liner", "--why").stdout


def test_a_picture_is_well_formed_and_points_nowhere(tmp_path: Path) -> None:
    target = tmp_path / "screen.svg"
    assert run("ask", "hostile", "--svg", str(target)).returncode == 0
    text = target.read_text(encoding="utf-8")
    ElementTree.fromstring(text)
    assert "http" not in text.replace('xmlns="http://www.w3.org/2000/svg"', "")
    assert "\x1b" not in text
    assert oct(target.stat().st_mode & 0o777) != oct(0o600), "readable like any file the user makes"
    assert run("ask", "coat", "--svg", str(tmp_path / "no" / "x.svg")).returncode == 5


def test_a_reader_that_leaves_early_is_no_error_to_talk_about() -> None:
    many = "May I wear the coat?\n" * 3000
    command = " ".join([*map(shlex.quote, COMMAND), "ask", "-", "|", "head", "-1"])
    done = subprocess.run(
        ["bash", "-c", command], input=many, capture_output=True, text=True, cwd=ROOT, timeout=60
    )
    assert done.stderr == ""
    assert "PERMITTED" in done.stdout


def test_ctrl_c_ends_quietly() -> None:
    child = subprocess.Popen(
        [*COMMAND, "ask", "-"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=ROOT,
    )
    assert child.stdin is not None
    assert child.stdout is not None
    child.stdin.write(b"coat\n" * 2000)
    child.stdin.flush()
    child.stdout.readline()
    time.sleep(0.05)
    child.send_signal(signal.SIGINT)
    _, errors = child.communicate(timeout=30)
    assert errors == b""
    assert child.returncode == 130


def test_an_encoding_that_lacks_a_character_shows_an_escape() -> None:
    done = run("ask", "hostile — liner", PYTHONIOENCODING="ascii")
    assert done.returncode == 0
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("columns", ["60", "80", "120"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_every_command_has_help_that_fits_and_shows_its_examples(
    name: str, columns: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    assert main([name, "--help"] if name else ["--help"]) == 0
    out = capsys.readouterr().out
    assert max(map(len, out.splitlines())) <= int(columns)
    shown = [shlex.split(line) for line in out.replace("\\\n", "").splitlines() if "  clothbound" in line]
    told = [
        [" ".join(word.split()) for word in words] for words in shown
    ]  # as a shell would put them together
    assert told == [shlex.split(example) for example in EXAMPLES[name]]


@pytest.mark.parametrize("command", ["build", "audit", "export"])
def test_a_folder_after_the_command_is_that_of_the_rule_books(command: str) -> None:
    with pytest.raises(kb.UsageError, match="Two folders"):
        _arguments([command, "mine", "--books", "theirs"])
    assert (
        _arguments([command, "mine"]).books == _arguments([command, "--books", "mine"]).books == Path("mine")
    )
    assert _arguments(["--books", "theirs", command]).books == Path("theirs")
    assert _arguments([command]).books is None


@pytest.mark.parametrize("command", ["check", "draft"])
def test_a_folder_where_a_file_is_wanted_is_told_what_to_write(command: str, tmp_path: Path) -> None:
    done = run(command, str(tmp_path))
    assert done.returncode == 2
    assert f"clothbound build {tmp_path}" in done.stderr


def test_no_command_and_no_option_is_without_help() -> None:
    parser = make_parser()
    (commands,) = [a for a in parser._actions if hasattr(a, "choices") and isinstance(a.choices, dict)]
    assert set(commands.choices) == set(EXAMPLES) - {""}
    for command in (parser, *commands.choices.values()):
        for action in command._actions:
            assert action.help or action is commands, action.dest


@pytest.mark.parametrize("example", [e for name in EXAMPLES for e in EXAMPLES[name]])
def test_every_example_is_understood_by_the_parser(example: str) -> None:
    words = shlex.split(example)
    assert words[0] == "clothbound"
    make_parser().parse_args(words[1:])


def test_what_one_cause_makes_of_many_places_is_told_once(capsys: pytest.CaptureFixture[str]) -> None:
    places = [Location("a.yaml", line) for line in range(1, 10)]
    same = tuple(kb.Problem(at, "missing", "There are no rigs.", "Declare them.") for at in places)
    few = tuple(kb.Problem(at, "unknown", "There is no kat.", "Did you mean cat?") for at in places[:3])
    complain_problems((*same, *few))
    lines = capsys.readouterr().err.splitlines()
    assert lines[0] == (
        "a.yaml:1:1: error: There are no rigs. Declare them. (The same at a.yaml:2:1, a.yaml:3:1, "
        "a.yaml:4:1, a.yaml:5:1, a.yaml:6:1, a.yaml:7:1 and 2 more places.)"
    )
    assert [line.split()[0] for line in lines[1:4]] == ["a.yaml:1:1:", "a.yaml:2:1:", "a.yaml:3:1:"]
    assert lines[4:] == ["12 errors, 0 warnings."]


def test_a_question_without_its_command_is_answered_with_the_command() -> None:
    assert run("May I wear it?").stderr == 'Did you mean: clothbound ask "May I wear it?"\n'
    assert "invalid choice" in run("asc").stderr


def test_the_help_says_where_the_demo_is() -> None:
    said = make_parser().format_help()
    assert str(kb.demo_folder()) in said
    assert (kb.demo_folder() / "plans").is_dir()
    assert (
        "places:"
        not in next(iter(make_parser(["ask"])._subparsers._group_actions)).choices["ask"].format_help()
    )  # type: ignore[union-attr,attr-defined]
