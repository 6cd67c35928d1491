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
from shell.state import profile_file
from tests.shell.fakes import FakeBase


@pytest.fixture(autouse=True)
def state(tmp_path, monkeypatch):
    """A history of its own; and after a fault the editor would wait for somebody to press Enter."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    before = signal.signal(signal.SIGALRM, lambda *_: pytest.fail("the shell waits for more keys"))
    signal.alarm(20)
    yield tmp_path
    signal.alarm(0)
    signal.signal(signal.SIGALRM, before)


def screen_of(keys: str, rows: int = 30, columns: int = 80) -> str:
    """All that the line editor writes while the keys are typed; the shell must end well."""
    written = io.StringIO()
    terminal = Vt100_Output(written, lambda: Size(rows=rows, columns=columns), term="xterm")
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


@pytest.fixture
def kept(state):
    """Where the profile of the canned base is kept; its folder is there."""
    assert state.is_dir()
    path = profile_file(FakeBase())
    path.parent.mkdir(parents=True)
    return path


def put_pipe(path):
    os.mkfifo(path)


def put_folder(path):
    path.mkdir()


def put_link(path):
    path.symlink_to("/dev/zero")


def put_circle(path):
    path.symlink_to(path)


def put_noise(path):
    path.write_bytes(b"\xff\x00{" * 1000)


def put_giant(path):
    with path.open("wb") as stream:
        stream.truncate(100_000_000_000)


def put_odd_facts(path):
    path.write_text('{"grade": ["K5"], "\\u202e\\u001b[2J": ["x"], "rig": {"not": 5}, "weather": [[]]}')


@pytest.mark.parametrize(
    "put", [put_pipe, put_folder, put_link, put_circle, put_noise, put_giant, put_odd_facts]
)
def test_a_kept_profile_of_any_kind_is_no_fault(put, kept, capsys):
    put(kept)
    screen = screen_of("I am a K4\rprofile\r\x04")
    captured = capsys.readouterr()
    assert captured.out.count("grade   K4") == 2
    assert "\x1b[2J" not in captured.err
    assert "\u202e" not in captured.err
    assert "xception" not in screen + captured.err
    if put in (put_pipe, put_folder, put_link, put_circle):
        assert "is not kept" in captured.err
        assert not kept.is_file()
    else:
        assert "K4" in kept.read_text()


@pytest.mark.parametrize("home", ["~", "relative", "/dev/null", "/proc"])
def test_without_a_home_the_shell_works_and_says_what_it_cannot_keep(home, monkeypatch, tmp_path, capsys):
    """A user without an entry has no home: "~" stays what it is then."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("XDG_STATE_HOME")
    monkeypatch.setattr("os.path.expanduser", lambda path: path.replace("~", home))
    screen_of("I am a K4\rprofile\r\x04")
    captured = capsys.readouterr()
    assert captured.out.count("grade   K4") == 2
    assert "Lines are not kept" in captured.err
    assert "What you say about yourself is not kept" in captured.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("size", [(1, 1), (2, 5), (5, 20), (24, 3), (0, 0)])
def test_a_window_of_any_size_is_no_fault(size, monkeypatch, capsys):
    monkeypatch.setattr("os.get_terminal_size", lambda *_: os.terminal_size(size[::-1]))
    monkeypatch.delenv("COLUMNS", raising=False)
    monkeypatch.setenv("PAGER", "cat")
    screen = screen_of("I am a K4\rMay I wear the liner?\rwhy\rhelp\r\x04", rows=size[0], columns=size[1])
    assert "internal error" not in capsys.readouterr().err
    assert "xception" not in screen
