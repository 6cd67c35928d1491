"""What is typed or pasted into the interactive shell: no fault, and nothing that the terminal acts on."""

import io
import os
import signal

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.data_structures import Size
from prompt_toolkit.history import InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output.vt100 import Vt100_Output

from shell.editor import open_history
from shell.output import Output
from shell.repl import run_repl
from tests.shell.fakes import FakeBase


@pytest.fixture(autouse=True)
def state(tmp_path, monkeypatch):
    """A history of its own; and after a fault the editor would wait for somebody to press Enter."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    before = signal.signal(signal.SIGALRM, lambda *_: pytest.fail("the shell waits for more keys"))
    signal.alarm(20)
    yield
    signal.alarm(0)
    signal.signal(signal.SIGALRM, before)


def screen_of(keys: str) -> str:
    """All that the line editor writes while the keys are typed; the shell must end well."""
    written = io.StringIO()
    terminal = Vt100_Output(written, lambda: Size(rows=30, columns=80), term="xterm")
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=terminal):
        pipe.send_text(keys)
        assert run_repl(FakeBase(), Output(drawn=True, width=80)) == 0
    return written.getvalue()


@pytest.mark.parametrize(
    "keys", ["\x1b[31m", "\x1b[<m", "\x1b[1;2M", "\x1b[M!!!", "\x1b[200~\x1b[2J\x1b[201~"]
)
def test_a_pasted_escape_is_no_fault(keys, capsys):
    screen = screen_of(f"hello {keys} you\r\x04")
    assert "hello" in screen
    assert "xception" not in screen + "".join(capsys.readouterr())


@pytest.mark.parametrize("hidden", ["\u202e", "\u2066", "\u200b", "\U000e0041", "\x9b"])
def test_a_hidden_character_does_not_reach_the_terminal(hidden):
    screen = screen_of(f"abc{hidden}def\r\x04")
    assert "abc" in screen
    assert hidden not in screen


def test_a_history_that_is_a_pipe_is_not_waited_for(tmp_path, capsys):
    path = tmp_path / "clothbound" / "history"
    path.parent.mkdir()
    os.mkfifo(path)
    assert isinstance(open_history(path), InMemoryHistory)
    assert "not kept" in capsys.readouterr().err
