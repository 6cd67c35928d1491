"""`suggest-words` as a process: on a terminal, in a pipe, as JSON, and where something is missing."""

from __future__ import annotations

import json
import os
import pty
import re
import select
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from kb.suggesting.keeping import FILE
from tests.suggesting.ferry import write_books

ROOT = Path(__file__).parents[2]
_PATIENCE_S = 60.0


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("cache")


def environment(**more: str) -> dict[str, str]:
    kept = {name: value for name, value in os.environ.items() if not name.startswith("CLOTHBOUND_")}
    return {**kept, "COLUMNS": "80", "TERM": "dumb", "PYTHONIOENCODING": "utf-8", **more}


def command(cache: Path, *arguments: str) -> list[str]:
    return [sys.executable, "-m", "shell.main", "--cache", str(cache), *arguments]


def run(cache: Path, *arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        command(cache, *arguments),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=ROOT,
        env=environment(**more),
        timeout=120,
    )


def talk(cache: Path, books: Path, replies: list[str], *, stop: bool = False) -> tuple[str, int]:
    """What stands on a terminal when each prompt gets a reply, then Ctrl-D or Ctrl-C; and the exit code."""
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        command(cache, "suggest-words", "--books", str(books)),
        cwd=ROOT, env=environment(), stdin=theirs, stdout=theirs, stderr=theirs, close_fds=True,
    )  # fmt: skip
    os.close(theirs)
    seen, waiting, end = "", list(replies), time.monotonic() + _PATIENCE_S
    while time.monotonic() < end:
        if not select.select([ours], [], [], 1.0)[0]:
            continue
        try:
            chunk = os.read(ours, 65536)
        except OSError:
            break
        if not chunk:
            break
        seen += chunk.decode("utf-8")
        if re.search(r"\? \[[^\]]*\] \Z", seen):
            seen += "\0"  # the same prompt is answered once
            if waiting:
                os.write(ours, f"{waiting.pop(0)}\n".encode())
            elif stop:
                process.send_signal(signal.SIGINT)
            else:
                os.write(ours, b"\x04")
    os.close(ours)
    code = process.wait(timeout=10)
    return seen.replace("\0", "").replace("\r\n", "\n"), code


def test_on_a_terminal_it_asks_one_by_one_and_keeps_each_answer(cache: Path, books: Path) -> None:
    replies = ["y", "n", "s", "", "maybe", "own wrap", "own must", "i", "yes", "q"]
    seen, code = talk(cache, books, replies)
    assert code == 0
    assert "red sash (1 of 4)\n  “sash”: a band of material around the waist" in seen
    assert "girdle? [y/n/s/i/own/q] y\n    cincture? [y/n/s/i/own/q] n\n" in seen
    assert "long overcoat (2 of 4)" in seen
    assert "    greatcoat? [y/n/s/i/own/q] maybe\n    y (yes), n (never)" in seen
    assert "“wrap” is kept." in seen
    assert "! A question about “must” is read as something else" in seen
    assert "canvas rucksack (3 of 4)" in seen, "i goes to the next item"
    assert "\n3 accepted, 1 refused. Kept in" in seen
    told = run(cache, "ask", "--books", str(books), "May I wear the girdle?")
    assert told.returncode == 0
    assert "The red sash must not be worn." in told.stdout
    told = run(cache, "ask", "--books", str(books), "May a steersman carry the backpack?")
    assert "The canvas rucksack may be carried" in told.stdout
    again, _ = talk(cache, books, ["q"])
    assert "cincture" not in again, "a refused word is not proposed again"
    assert "waistband? " in again, "one left for later is"


def test_leaving_in_the_middle_keeps_what_was_answered(cache: Path, books: Path) -> None:
    seen, code = talk(cache, books, ["y"])
    assert code == 0
    assert "1 accepted, 0 refused." in seen
    seen, code = talk(cache, books, ["n"], stop=True)
    assert code == 130
    assert "0 accepted, 1 refused." in seen
    assert "Traceback" not in seen
    kept = (books / FILE).read_text("utf-8")
    assert "word: girdle" in kept
    assert "word: cincture" in kept


def test_in_a_pipe_it_lists_and_asks_nothing(cache: Path, books: Path) -> None:
    done = run(cache, "suggest-words", "--books", str(books))
    assert (done.returncode, done.stderr) == (0, "")
    assert "\x1b" not in done.stdout
    assert (
        "red sash (sash)\n"
        "  “sash”: a band of material around the waist that strengthens a skirt or\n"
        "  trousers [WordNet 3.0, 03438071-n]\n"
        "    + girdle\n    + cincture\n    + waistband\n    + waistcloth\n" in done.stdout
    )
    assert "    - drawers: “drawers” is a name of “drawers” (branch) already.\n" in done.stdout
    assert done.stdout.rstrip().splitlines()[-1].endswith(" left out (-).")
    assert not (books / FILE).exists()


def test_items_narrow_it_down(cache: Path, books: Path) -> None:
    done = run(cache, "suggest-words", "--books", str(books), "red sash", "--narrower")
    assert done.returncode == 0
    assert "canvas rucksack" not in done.stdout
    assert "  a kind of “sash”: " in done.stdout
    missing = run(cache, "suggest-words", "--books", str(books), "sahs")
    assert missing.returncode == 2
    assert 'There is no item "sahs". Did you mean' in missing.stderr


def test_json_has_the_same_and_what_was_decided(cache: Path, books: Path) -> None:
    options = ("suggest-words", "--books", str(books), "--json")
    kept = json.loads(run(cache, *options, "--accept", "sash=girdle", "--own", "lamp=glim").stdout)
    assert kept["file"] == str(books / FILE)
    assert [(k["item"], k["word"], k["accepted"]) for k in kept["kept"]] == [
        ("sash", "girdle", True),
        ("lamp", "glim", True),
    ]
    found = json.loads(run(cache, *options, "sash", "shorts").stdout)
    assert found["thesaurus"] == {"name": "WordNet", "version": "3.0"}
    assert [p["word"] for p in found["proposals"] if p["item"] == "sash"] == [
        "cincture",
        "waistband",
        "waistcloth",
    ]
    (first, *_) = found["proposals"]
    assert first["origin"] == {"thesaurus": "WordNet", "version": "3.0", "sense": "03438071-n"}
    assert first["meaning"].startswith("a band of material")
    (left,) = [left for left in found["left_out"] if left["word"] == "drawers"]
    assert left["reason"].startswith("“drawers” is a name of")
    assert left["items"] == []
    assert [d["word"] for d in found["decided"]] == ["girdle", "glim"]
    assert found["decided"][0]["origin"]["sense"] == "03438071-n"
    assert found["decided"][1]["origin"] is None


def test_without_a_terminal_words_are_decided_by_options(cache: Path, books: Path) -> None:
    before = {path.name: path.read_bytes() for path in books.iterdir()}
    done = run(
        cache, "suggest-words", "--books", str(books),
        "--accept", "red sash=waistband", "--refuse", "sash=girdle", "--own", "torch=glim",
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines()[:3] == [
        "Accepted: “waistband” for “red sash” (WordNet 3.0, 03438071-n).",
        "Accepted: “glim” for “torch” (your own).",
        "Refused: “girdle” for “red sash” (WordNet 3.0, 03438071-n).",
    ]
    assert {name: (books / name).read_bytes() for name in before} == before
    told = run(cache, "ask", "--books", str(books), "May a steersman carry a glim?")
    assert "REQUIRED" in told.stdout
    built = run(cache, "build", "--books", str(books))
    assert (built.returncode, built.stderr) == (0, ""), "the shapes find nothing wrong"


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--accept", "sash"], '"sash" is not an item and a word. Write --accept ITEM=WORD'),
        (["--own", "=x"], '"=x" is not an item and a word.'),
        (["--accept", "shorts=drawers"], "“drawers” is a name of “drawers” (branch) already."),
        (["--own", "sash=\x1b[31mred"], "is no word that people say"),
    ],
)
def test_what_makes_no_sense_is_refused(options: list[str], told: str, cache: Path, books: Path) -> None:
    done = run(cache, "suggest-words", "--books", str(books), *options)
    assert done.returncode == 2
    assert told in done.stderr
    assert "\x1b" not in done.stderr
    assert not (books / FILE).exists()


def test_a_broken_file_is_told_with_its_place(cache: Path, books: Path) -> None:
    (books / FILE).write_text(
        "suggested words:\n  - {word: glim, item: lmap, accepted: 2026-01-01}\n", "utf-8"
    )
    done = run(cache, "suggest-words", "--books", str(books))
    assert done.returncode == 3
    assert done.stderr.startswith(f'{FILE}:2:24: error: There is no item "lmap".')


def test_the_demo_is_listed_and_left_as_it_is(cache: Path) -> None:
    listed = run(cache, "suggest-words", "torch", "rucksack")
    assert listed.returncode == 0
    assert "+ haversack" in listed.stdout
    refused = run(cache, "suggest-words", "--accept", "rucksack=haversack")
    assert refused.returncode == 2
    assert "come with the program" in refused.stderr
    assert "--books my-books" in refused.stderr


def test_books_named_by_the_environment_are_the_writers_own(cache: Path, books: Path) -> None:
    done = run(cache, "suggest-words", "--accept", "sash=girdle", CLOTHBOUND_BOOKS=str(books))
    assert done.returncode == 0
    assert (books / FILE).exists()


_WITHOUT = """
import importlib.util, sys
found = importlib.util.find_spec
importlib.util.find_spec = lambda name, *rest: None if name == "wn" else found(name, *rest)
from shell.main import main
sys.exit(main(sys.argv[1:]))
"""


def test_without_the_extra_the_line_that_installs_it_is_told(cache: Path, books: Path) -> None:
    options = ["--cache", str(cache), "suggest-words", "--books", str(books)]
    done = subprocess.run(
        [sys.executable, "-c", _WITHOUT, *options],
        capture_output=True, text=True, cwd=ROOT, env=environment(), timeout=60,
    )  # fmt: skip
    assert done.returncode == 2
    assert done.stdout == ""
    assert 'Install it: pip install "clothbound[words]"' in done.stderr


_ASKING = """
import sys
from shell.main import main
code = main(sys.argv[1:])
print([name for name in sys.modules if name == "wn" or name.startswith("kb.suggesting")], file=sys.stderr)
sys.exit(code)
"""


def test_a_question_loads_nothing_of_it(cache: Path, tmp_path: Path) -> None:
    books = write_books(tmp_path / "asked")
    run(cache, "suggest-words", "--books", str(books), "--accept", "sash=girdle")
    options = ["--cache", str(cache), "ask", "--books", str(books), "May I wear the girdle?"]
    done = subprocess.run(
        [sys.executable, "-c", _ASKING, *options],
        capture_output=True, text=True, cwd=ROOT, env=environment(), timeout=60,
    )  # fmt: skip
    assert "PROHIBITED" in done.stdout
    assert done.stderr.strip() == "[]"
