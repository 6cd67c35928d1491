"""`decide` and `verify` as processes: what goes where, bad rows, exit codes, and bounded memory."""

from __future__ import annotations

import csv
import io
import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from kb import demo_folder

ROOT = Path(__file__).parents[2]
HEADER = "member,item,grade,rig,weather\n"


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("decide")


def run(cache: Path, *arguments: str, stdin: bytes = b"") -> subprocess.CompletedProcess[bytes]:
    env = {**os.environ, "PYTHONIOENCODING": "utf-8", "CLOTHBOUND_BOOKS": str(demo_folder())}
    command = [sys.executable, "-m", "shell.main", "--cache", str(cache), *arguments]
    return subprocess.run(command, input=stdin, capture_output=True, cwd=ROOT, env=env, timeout=120)


def table(done: subprocess.CompletedProcess[bytes]) -> list[list[str]]:
    return list(csv.reader(io.StringIO(done.stdout.decode(), newline="")))


def test_a_table_comes_back_with_verdict_clause_and_rules(cache: Path, tmp_path: Path) -> None:
    path = tmp_path / "cases.csv"
    path.write_text(HEADER + "Ann,storm coat,K5,boat rig,foul\n=Bob(),deck gloves,H2,,\n", "utf-8")
    done = run(cache, "decide", str(path), "--as-of", "2026-11-25")
    assert (done.returncode, done.stderr) == (0, b"")
    head, ann, bob = table(done)
    assert head == ["member", "item", "grade", "rig", "weather", "verdict", "clause", "rules"]
    assert ann[:6] == ["Ann", "storm coat", "K5", "boat rig", "foul", "prohibited"]
    assert ann[6] == "dress-order/2024 clause 3.5"
    assert ann[7].startswith("dress-order/2024/")
    assert bob[0] == "'=Bob()", "a formula is disarmed"
    assert bob[5] == "conditional"


def test_bad_rows_are_told_and_marked_and_stop_nothing(cache: Path) -> None:
    rows = [
        "Ann,storm coat,K5,,",
        "Bob,florgle,K5,,",
        "Cy,storm coat,K99,,",
        "Dee,storm coat",
        'Eve,"two\nlines",K5,,',
        "Fay,storm coat,K5,,,,",
        "Gus,\xff,K5,,",
        "Hal,storm coat,K5,,",
    ]
    data = (HEADER + "\n".join(rows) + "\n").encode("latin-1")
    done = run(cache, "decide", "-", stdin=data)
    assert done.returncode == 3
    verdicts = [row[5] for row in table(done)[1:]]
    assert verdicts[0] == verdicts[-1] != "error"
    assert verdicts[1:-1] == ["error"] * 6
    told = done.stderr.decode()
    assert 'standard input:3:2: there is no item "florgle"' in told
    assert "standard input:4:3: " in told
    assert '(column "grade")' in told
    assert "standard input:5:1: there are 2 cells, and 5 columns" in told
    assert "standard input:6:2: " in told, "the line on which the row begins"
    assert "standard input:9:1: the row is not UTF-8 text" in told
    assert "Traceback" not in told


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no line that names the columns"),
        (b"grade\nK5\n", "no column item"),
        (b"item,wether\nstorm coat,fair\n", "weather"),
    ],
)
def test_a_table_without_sense_is_a_usage_error(cache: Path, data: bytes, words: str) -> None:
    done = run(cache, "decide", "-", stdin=data)
    assert done.returncode == 2
    assert done.stdout == b""
    assert words in done.stderr.decode()


def test_a_missing_file_is_a_usage_error(cache: Path) -> None:
    for command in ("decide", "verify"):
        assert run(cache, command, "/no/such/file").returncode == 2


def test_a_quote_that_is_never_closed_does_not_swallow_the_table_in_silence(cache: Path) -> None:
    done = run(cache, "decide", "-", stdin=(HEADER + 'Ann,"storm coat,K5,,\nBob,storm coat,K5,,\n').encode())
    assert done.returncode == 3
    assert "not a row of CSV" in done.stderr.decode()


@pytest.mark.slow
def test_memory_does_not_grow_with_the_table(cache: Path) -> None:
    """Rows go through one by one: thirty times the rows, each with a name of its own, take little more."""
    script = (
        "import sys, resource; from shell.main import main; code = main(sys.argv[1:]); "
        "print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss, file=sys.stderr); sys.exit(code)"
    )
    env = {**os.environ, "CLOTHBOUND_BOOKS": str(demo_folder())}
    peaks = []
    for number in (2_000, 60_000):
        rows = "".join(f"member {n},storm-coat-liner,K5,{n % 1000} °C\n" for n in range(number))
        done = subprocess.run(
            [sys.executable, "-c", script, "--cache", str(cache), "decide", "-"],
            input=f"member,item,grade,air temperature\n{rows}".encode(),
            capture_output=True,
            cwd=ROOT,
            env=env,
            timeout=120,
        )
        assert done.returncode == 0, done.stderr[-500:]
        assert done.stdout.count(b"\n") == number + 1
        peaks.append(int(done.stderr.split()[-1]))
    unit = 1024 if sys.platform == "darwin" else 1
    assert peaks[1] - peaks[0] < 20_000 * unit


def test_a_terminal_is_shown_how_far_it_is(cache: Path, tmp_path: Path) -> None:
    path = tmp_path / "cases.csv"
    path.write_text(HEADER + "Ann,storm coat,K5,,\n" * 3000, "utf-8")
    ours, theirs = pty.openpty()
    env = {**os.environ, "CLOTHBOUND_BOOKS": str(demo_folder()), "COLUMNS": "80"}
    command = [sys.executable, "-m", "shell.main", "--cache", str(cache), "decide", str(path)]
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=theirs, cwd=ROOT, env=env, timeout=60)
    os.close(theirs)
    shown = os.read(ours, 65536).decode()
    os.close(ours)
    assert done.returncode == 0
    assert "rows" in shown
    assert "%" in shown
    assert shown.endswith("\r\x1b[K"), "and taken away at the end"


def test_verify_tells_which_answer_is_refused_and_why(cache: Path) -> None:
    lines = run(
        cache, "ask", "--json", "-", stdin=b"May I wear the liner alone?\nWho may wear the keeper's pin?\n"
    )
    good, other = lines.stdout.splitlines()
    changed = json.loads(good)
    changed["cases"][0]["verdict"] = "permitted"
    done = run(cache, "verify", "-", stdin=b"\n".join([good, json.dumps(changed).encode(), other, b"{", b""]))
    assert done.returncode == 3
    assert done.stdout.decode().splitlines() == [
        "verified: May I wear the liner alone? (prohibited)",
        "verified: Who may wear the keeper's pin? (answer)",
    ]
    told = done.stderr.decode().splitlines()
    assert told[0].startswith("standard input:2: refused: cases[0].verdict: the rules say prohibited")
    assert told[1].startswith("standard input:4: refused: the answer: this is no JSON")
    pretty = json.dumps(json.loads(good), indent=2).encode()
    assert run(cache, "verify", "-", stdin=pretty).returncode == 0
    assert run(cache, "verify", "-", stdin=b" \n").returncode == 2
    assert run(cache, "verify", "-", stdin=b"[" * 100_000).returncode == 3
