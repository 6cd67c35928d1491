"""Text longer than the screen, through the user's pager."""

from __future__ import annotations

import os
import shlex
import shutil
import subprocess

_NO_PAGER = ("", "cat")


def pager_command() -> list[str]:
    """PAGER, else `less` where there is one; [] for none."""
    told = os.environ.get("PAGER")
    if told is None:
        return ["less"] if shutil.which("less") else []
    try:
        return [] if told.strip() in _NO_PAGER else shlex.split(told)
    except ValueError:
        return []


def is_long(text: str, rows: int) -> bool:
    """Whether a text, with the prompt below it, is longer than the screen."""
    return text.count("\n") + 2 > rows


def page(text: str, command: list[str]) -> bool:
    """Show a text by a pager and wait for its end; whether there was one. Ctrl-C is the pager's."""
    environment = {"LESS": "-EFRX", "LESSSECURE": "1", **os.environ}
    try:
        with subprocess.Popen(command, stdin=subprocess.PIPE, env=environment) as pager:
            assert pager.stdin is not None
            try:
                pager.stdin.write(text.encode("utf-8", "backslashreplace"))
                pager.stdin.close()
            except (BrokenPipeError, KeyboardInterrupt):  # left before the end was read
                pass
            _wait(pager)
    except BrokenPipeError:  # what was still in the buffer
        pass
    except OSError:
        return False
    return True


def _wait(pager: subprocess.Popen[bytes]) -> None:
    while True:
        try:
            pager.wait()
            return
        except KeyboardInterrupt:  # `less` takes Ctrl-C to stop what it does, not to leave
            continue
