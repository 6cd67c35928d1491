"""Running the examples of a page as a reader would: in one folder, one after the other."""

from __future__ import annotations

import doctest
import os
import pty
import re
import select
import subprocess
import sys
import termios
import time
from pathlib import Path

from tests.documents.pages import Fence

INSTALLS = "python3 -m venv "
_PATIENCE_S = 60.0
_PROMPT = re.compile(r"(?:^|\n)> \Z")


def environment(cache: Path) -> dict[str, str]:
    """A reader's environment: the installed program on the path, an 80 column terminal, a fresh cache."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("CLOTHBOUND_")}
    return {
        **kept,
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ.get('PATH', '')}",
        "CLOTHBOUND_CACHE": str(cache),
        "XDG_STATE_HOME": str(cache / "state"),
        "COLUMNS": "80",
        "TERM": "dumb",
        "PYTHONIOENCODING": "utf-8",
    }


def write_file(fence: Fence, folder: Path) -> None:
    """A YAML example whose first line is a comment with a file name becomes that file."""
    name = re.match(r"# (\S+\.yaml)\n", fence.text)
    assert name, "a YAML example starts with the name of its file, as in: # band/rules.yaml"
    path = folder / name[1]
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(fence.text, encoding="utf-8")


def commands_of(fence: Fence) -> list[tuple[str, str]]:
    """The commands of a console example, each with the output shown below it."""
    parts = re.split(r"^\$ (.+)\n", fence.text, flags=re.MULTILINE)
    assert parts[0] == "", "a console example starts with a command"
    return list(zip(parts[1::2], parts[2::2], strict=True))


def fits(shown: str, real: str) -> bool:
    """Whether the output is the one shown; three dots stand for any lines, or for any part of a line."""
    lines = [line.rstrip() for line in shown.strip("\n").splitlines()]
    some = ".*".join
    pattern = "".join(
        r"(?:.*\n)*?" if line == "..." else some(map(re.escape, line.split("..."))) + r"\n" for line in lines
    )
    found = "".join(line.rstrip() + "\n" for line in real.strip("\n").splitlines())
    return re.fullmatch(pattern, found) is not None


def run_command(command: str, folder: Path, env: dict[str, str]) -> str:
    """Standard output and standard error of a command that answers or says why it does not."""
    done = subprocess.run(
        command, shell=True, cwd=folder, env=env, text=True, encoding="utf-8", check=False,
        stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=_PATIENCE_S,
    )  # fmt: skip
    assert done.returncode in (0, 3, 4), f"{command} ended with {done.returncode}:\n{done.stdout}"
    return done.stdout


def run_session(command: str, lines: list[str], folder: Path, env: dict[str, str]) -> str:
    """What stands on a terminal after a session in which the lines were typed, one at each prompt."""
    ours, theirs = pty.openpty()
    settings = termios.tcgetattr(theirs)
    settings[1] &= ~termios.OPOST
    settings[3] &= ~termios.ECHO
    termios.tcsetattr(theirs, termios.TCSANOW, settings)
    process = subprocess.Popen(
        command.split(), cwd=folder, env=env, stdin=theirs, stdout=theirs, stderr=theirs, close_fds=True
    )
    os.close(theirs)
    seen, waiting, end = "", list(lines), time.monotonic() + _PATIENCE_S
    try:
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
            if waiting and _PROMPT.search(seen):
                line = waiting.pop(0)
                seen += line + "\n"
                os.write(ours, (line + "\n").encode("utf-8"))
        assert process.wait(timeout=5) == 0, seen
    finally:
        os.close(ours)
        process.kill()
        process.wait()
    return seen


def run_console(fence: Fence, folder: Path, env: dict[str, str]) -> list[str]:
    """The mistakes of a console example: what a command really prints where it is not what is shown."""
    wrong = []
    for command, shown in commands_of(fence):
        typed = [line[2:] for line in shown.splitlines() if line.startswith("> ")]
        real = run_session(command, typed, folder, env) if typed else run_command(command, folder, env)
        if not fits(shown, real):
            wrong.append(f"line {fence.line}: {command}\n{real}")
    return wrong


def run_python(fence: Fence, folder: Path, env: dict[str, str]) -> list[str]:
    """The mistakes of a Python example: what a prompt really gives where it is not what is shown."""
    script = folder / "example.pycon"
    script.write_text(fence.text, encoding="utf-8")
    options = doctest.NORMALIZE_WHITESPACE | doctest.ELLIPSIS
    code = (
        f"import doctest, sys; sys.exit(doctest.testfile('example.pycon', False, optionflags={options})[0])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=folder, env=env, text=True, capture_output=True, check=False,
        timeout=_PATIENCE_S,
    )  # fmt: skip
    return [] if done.returncode == 0 else [f"line {fence.line}:\n{done.stdout}{done.stderr}"]
