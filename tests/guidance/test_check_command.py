"""`clothbound check` as people and scripts use it: screen, JSON, exit codes."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from kb import demo_folder
from shell.main import main
from tests.guidance.check_desk import good
from tests.opening import opened

FALSE = "The storm coat must be black (Dress Order 2024, clause 2.1).\n"
TRUE = "The storm coat must be navy blue (Dress Order 2024, clause 2.1).\n"
UNREAD = "Everyone must wave at the ferry.\n"


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("cache")
    opened("demo")
    return folder


def run(path: Path, text: str, cache: Path, *options: str) -> int:
    path.write_text(text, encoding="utf-8")
    return main(["check", str(path), "--cache", str(cache), "--books", str(demo_folder()), *options])


def test_what_is_false_is_shown_with_its_line_its_clause_and_a_sentence(
    tmp_path: Path, cache: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "guidance.md"
    assert run(path, f"{TRUE}\n{FALSE}", cache, "--as-of", "2026-12-01") == 3
    screen = capsys.readouterr().out
    assert screen.startswith("Not in order: 1 thing to mend.\n")
    assert f"{path}:3: error [wrong-value]" in screen
    assert "“The storm coat is of navy blue proofed cloth with a sewn lining.”" in " ".join(screen.split())
    assert "> The storm coat must be navy blue" in screen
    assert "2 sentences, 1 borne out by the books" in screen


@pytest.mark.parametrize(
    ("text", "options", "code", "first"),
    [
        (TRUE, (), 0, "In order: nothing is false, and every rule in it was understood."),
        (TRUE + "\n" + UNREAD, (), 0, "Nothing false was found; see what follows."),
        (TRUE + "\n" + UNREAD, ("--strict",), 3, "Nothing false was found; see what follows."),
        (
            "Nothing.\n",
            (),
            0,
            "There is nothing to check: no sentence states a rule, and none quotes a clause.",
        ),
        (UNREAD, (), 0, "Nothing was checked: no sentence was understood; see what follows."),
        (FALSE, ("--strict",), 3, "Not in order: 1 thing to mend."),
    ],
)
def test_the_exit_code_is_for_a_check_before_signing(
    text: str, options: tuple[str, ...], code: int, first: str, tmp_path: Path, cache: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    assert run(tmp_path / "guidance.md", text, cache, "--as-of", "2026-12-01", *options) == code
    assert capsys.readouterr().out.splitlines()[0] == first


def test_json_has_the_documented_keys(
    tmp_path: Path, cache: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(tmp_path / "guidance.md", f"{good()}\n{FALSE}\n{UNREAD}", cache, "--json") == 3
    found = json.loads(capsys.readouterr().out)
    assert list(found) == [
        "format", "file", "unit", "ok", "effective", "expires", "books", "made_from", "books_changed",
        "affected", "audience", "counts", "findings", "unread",
    ]  # fmt: skip
    assert (found["ok"], found["effective"], found["expires"]) == (False, "2026-12-01", "2027-03-31")
    assert found["books_changed"] is True
    wrong = next(f for f in found["findings"] if f["code"] == "wrong-value")
    assert wrong["clause"] == "Dress Order (2024) 2.1"
    assert wrong["severity"] == "error"
    assert wrong["suggestion"].startswith("The storm coat must be navy blue")
    assert [unread["text"] for unread in found["unread"]] == [UNREAD.strip()]
    assert found["counts"]["sentences"] >= found["counts"]["confirmed"] + found["counts"]["unread"]


def test_facts_say_for_whom_it_is(tmp_path: Path, cache: Path) -> None:
    text = "The keeper's pin may be worn in watch rig (Dress Order 2024, clause 5.10).\n"
    options = ("--as-of", "2026-12-01")
    assert run(tmp_path / "a.md", text, cache, *options) == 3
    assert run(tmp_path / "a.md", text, cache, "--grade", "K5", *options) == 0
    assert run(tmp_path / "a.md", text, cache, "--grade", "H2", *options) == 3


def test_files_that_are_no_guidance_end_in_a_message(
    tmp_path: Path, cache: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "x.docx").write_bytes(b"junk")
    arguments = ["--cache", str(cache), "--books", str(demo_folder())]
    assert main(["check", str(tmp_path / "x.docx"), *arguments]) == 3
    assert main(["check", str(tmp_path / "none.md"), *arguments]) == 2
    said = capsys.readouterr().err
    assert "no Word document" in said
    assert "cannot be read" in said
    assert "Traceback" not in said


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("caps.html", TRUE, "The file is HTML"),
        ("caps", "<!DOCTYPE html><p>The storm coat must be black.</p>", "The file is HTML"),
        ("caps.plan", "title: Caps", "The file is YAML"),
    ],
)
def test_a_file_of_another_kind_is_refused(
    name: str, text: str, said: str, tmp_path: Path, cache: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(tmp_path / name, text, cache) == 3
    assert said in capsys.readouterr().err


def test_a_quotation_of_no_clause_has_no_colon_before_it(
    tmp_path: Path, cache: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(
        tmp_path / "a.md",
        "No dress rule restricts protective equipment where it is liked; local codes decide.\n",
        cache,
    )
    screen = capsys.readouterr().out
    assert "| “No dress rule restricts" in screen
