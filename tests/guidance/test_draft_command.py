"""`clothbound draft` as people run it, and its kept demo."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from kb import KnowledgeBase, demo_folder
from shell.main import main
from tests.guidance.draft_demo import KEPT, PLAN, demo_draft
from tests.guidance.test_draft_refusals import rule
from tests.opening import opened


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("draft")
    opened("demo")
    return folder


@pytest.fixture(autouse=True)
def settings(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CLOTHBOUND_CACHE", str(cache))
    monkeypatch.delenv("CLOTHBOUND_BOOKS", raising=False)


def test_a_draft_goes_to_standard_output(capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    assert main(["draft", str(PLAN)]) == 0
    out, err = capfdbinary.readouterr()
    assert out.startswith(b"# Dress of the boat crews in winter\n")
    assert err == b""


@pytest.mark.parametrize(
    ("form", "start"), [("markdown", b"# "), ("html", b"<!DOCTYPE html>"), ("word", b"PK")]
)
def test_a_draft_goes_to_a_file(form: str, start: bytes, tmp_path: Path) -> None:
    target = tmp_path / "draft"
    assert main(["draft", str(PLAN), "--format", form, "-o", str(target)]) == 0
    assert target.read_bytes().startswith(start)


def test_what_is_refused_is_not_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = tmp_path / "bad.plan"
    text = PLAN.read_text("utf-8").partition("clauses:")[0]
    plan.write_text(
        text + "\n".join(rule("need not: flotation-vest", "when: {hauling: yes}")), encoding="utf-8"
    )
    target = tmp_path / "draft.md"
    target.write_text("what stood here before", encoding="utf-8")
    assert main(["draft", str(plan), "-o", str(target)]) == 3
    assert target.read_text("utf-8") == "what stood here before"
    assert sorted(p.name for p in tmp_path.iterdir()) == ["bad.plan", "draft.md"]
    out, err = capsys.readouterr()
    assert out == ""
    assert "bad.plan:20:9: error: " in err
    assert "7.1" in err
    assert "Traceback" not in err


def test_a_plan_that_is_not_there_or_cannot_be_written_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["draft", str(tmp_path / "none.plan")]) == 2
    assert main(["draft", str(tmp_path)]) == 2
    assert main(["draft", str(PLAN), "--format", "odt"]) == 2
    assert main(["draft", str(PLAN), "-o", str(tmp_path / "no" / "draft.md")]) == 5
    assert "Traceback" not in capsys.readouterr().err


def test_a_name_with_control_characters_does_not_reach_the_terminal(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = tmp_path / "a\x1b[31m.plan"
    plan.write_text("plan: {}\n", encoding="utf-8")
    assert main(["draft", str(plan)]) == 3
    assert "\x1b" not in capsys.readouterr().err


def test_a_word_file_is_not_for_a_terminal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdout.isatty", lambda: True)
    assert main(["draft", str(PLAN), "--format", "word"]) == 2
    assert "-o FILE" in capsys.readouterr().err


def test_plans_among_rule_books_are_not_read_as_books(tmp_path: Path) -> None:
    shutil.copytree(demo_folder(), tmp_path / "books")
    assert list((tmp_path / "books").rglob("*.plan"))
    digests = {
        KnowledgeBase.open(folder, tmp_path / "c").digest for folder in (tmp_path / "books", demo_folder())
    }
    assert len(digests) == 1


def test_the_demo_draft_is_the_one_that_was_read_through() -> None:
    assert demo_draft() == KEPT.read_text("utf-8"), (
        "The demo's draft has changed: python -m tests.guidance.draft_demo, then read the difference."
    )


@pytest.mark.parametrize("form", ["markdown", "word"])
def test_a_fresh_draft_is_in_order(form: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / ("draft.docx" if form == "word" else "draft.md")
    assert main(["draft", str(PLAN), "--format", form, "-o", str(target)]) == 0
    assert main(["check", str(target), "--plain"]) == 0, capsys.readouterr().out
