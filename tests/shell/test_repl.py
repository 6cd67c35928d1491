"""The interactive loop, typed at through a pipe: keys in, a session that survives them out."""

from __future__ import annotations

import stat
from pathlib import Path
from typing import Any

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from shell.completion import vocabulary_of
from shell.output import Output
from shell.repl import _ShellCompleter, history_file, open_history, run_repl, toolbar_text
from shell.session import Session
from shell.turns import take_line
from tests.shell.fakes import HOSTILE, FakeBase

CTRL_C, CTRL_D, ENTER = "\x03", "\x04", "\r"


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    return tmp_path / "clothbound" / "history"


def typed(keys: str, base: Any) -> int:
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        pipe.send_text(keys)
        return run_repl(base, Output(drawn=True, width=80))


def test_questions_are_answered_until_ctrl_d(base: FakeBase, capsys: pytest.CaptureFixture[str]) -> None:
    assert typed(f"May I wear the liner?{ENTER}foul{ENTER}{CTRL_D}", base) == 0
    out = capsys.readouterr().out
    assert "Quay Service" in out
    assert "IT DEPENDS" in out
    assert "PERMITTED" in out


def test_ctrl_c_clears_the_line_and_keeps_the_session(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    assert typed(f"I am a K5{ENTER}half a li{CTRL_C}profile{ENTER}quit{ENTER}", base) == 0
    assert capsys.readouterr().out.count("grade   K5") == 2


def test_a_fault_or_a_stop_in_one_answer_does_not_end_the_session(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    keys = f"I am a K5{ENTER}crash{ENTER}stop it{ENTER}slow{ENTER}profile{ENTER}{CTRL_D}"
    assert typed(keys, base) == 0
    captured = capsys.readouterr()
    assert captured.out.count("grade   K5") == 2
    assert "internal error: RuntimeError" in captured.err
    assert "Stopped." in captured.err
    assert "deadline" in captured.err
    assert "\x1b" not in captured.err


def test_history_is_for_the_owner_alone_and_comes_back(base: FakeBase, state: Path) -> None:
    typed(f"May I wear the coat?{ENTER}{CTRL_D}", base)
    assert history_file() == state
    assert stat.S_IMODE(state.stat().st_mode) == 0o600
    assert stat.S_IMODE(state.parent.stat().st_mode) == 0o700
    history = open_history(state)
    assert isinstance(history, FileHistory)
    assert list(history.load_history_strings()) == ["May I wear the coat?"]


def test_a_history_that_others_may_read_is_closed_to_them(state: Path) -> None:
    state.parent.mkdir(parents=True)
    state.write_text("")
    state.chmod(0o644)
    open_history(state)
    assert stat.S_IMODE(state.stat().st_mode) == 0o600


def test_no_history_file_is_no_reason_to_stop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert isinstance(open_history(tmp_path / "file" / "history"), InMemoryHistory)
    assert "not kept" in capsys.readouterr().err


def test_a_relative_state_folder_is_ignored(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    # XDG Base Directory Specification: a relative path is invalid and is to be ignored.
    monkeypatch.setenv("XDG_STATE_HOME", "here")
    monkeypatch.setenv("HOME", str(tmp_path))
    assert history_file() == tmp_path / ".local" / "state" / "clothbound" / "history"


@pytest.mark.parametrize("width", [30, 60, 100])
def test_the_toolbar_is_one_line_with_profile_and_day(width: int, base: Any) -> None:
    session, _ = take_line(Session(), "I am a K5 in boat rig", base)
    session, _ = take_line(session, "as of 2025-03-01", base)
    text = toolbar_text(session, base, width)
    assert len(text) <= width
    assert "2025-03-01" in text
    assert "K5" in text


def test_completions_show_hostile_labels_visibly() -> None:
    from shell.completion import Entry, make_vocabulary

    completer = _ShellCompleter(make_vocabulary([Entry("coat" + HOSTILE, HOSTILE)]))
    (found,) = completer.get_completions(Document("coa"), None)  # type: ignore[arg-type]
    assert "\x1b" not in found.display_text
    assert "\x1b" not in found.display_meta_text


def test_completion_is_wired_to_the_vocabulary(base: Any) -> None:
    completer = _ShellCompleter(vocabulary_of(base))
    found = [c.text for c in completer.get_completions(Document("May I wear the sto"), None)]  # type: ignore[arg-type]
    assert found == ["storm coat"]


def test_without_drawing_lines_are_read_plainly(
    base: Any, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = iter(["I am a K5", "profile"])

    def read(_prompt: str) -> str:
        try:
            return next(lines)
        except StopIteration:
            raise EOFError from None

    monkeypatch.setattr("builtins.input", read)
    assert run_repl(base, Output(drawn=False, width=80)) == 0
    assert capsys.readouterr().out.count("grade  K5") == 2
