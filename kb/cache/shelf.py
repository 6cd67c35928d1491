"""Where generations stand: a private folder for each folder of rule books, and its lock."""

from __future__ import annotations

import contextlib
import fcntl
import os
import stat
import time
from collections.abc import Iterator
from pathlib import Path

from kb.digests import digest_name
from kb.errors import StoreUnavailableError

LOCK = "lock"
MANIFEST = "manifest"
_LOCK_WAIT_S = 60.0


def cache_home(given: Path | None) -> tuple[Path, bool]:
    """The folder for all caches, and whether somebody chose it (argument or CLOTHBOUND_CACHE).

    Otherwise it is `clothbound` in $XDG_CACHE_HOME if that is an absolute path (XDG Base Directory
    Specification), else in ~/.cache.
    """
    if given is not None:
        return given, True
    named = os.environ.get("CLOTHBOUND_CACHE")
    if named:
        return Path(named), True
    base = os.environ.get("XDG_CACHE_HOME", "")
    if not base.startswith("/"):
        base = os.path.expanduser("~/.cache")  # noqa: PTH111  unlike pathlib, never raises
    if not base.startswith("/"):  # nobody's home is the folder one stands in: there is none
        base = os.devnull
    return Path(base, "clothbound"), False


def shelf_path(home: Path, folder: Path) -> Path:
    """The shelf of a folder of rule books; one folder has one shelf, whatever way it is named."""
    full = os.path.realpath(folder)
    return home / digest_name(full.encode("utf-8", "surrogateescape"))[:16]


def unwritable(path: Path, error: OSError) -> StoreUnavailableError:
    reason = error.strerror or str(error).rpartition(": ")[2]
    return StoreUnavailableError(
        f"The cache in {path} cannot be written: {reason}. Name another folder with CLOTHBOUND_CACHE."
    )


def is_private(shelf: Path) -> bool:
    """Whether the folder is a real one, ours, and closed to everybody else. False if there is none."""
    try:
        state = shelf.lstat()
    except OSError:
        return False
    closed = not state.st_mode & 0o077
    return stat.S_ISDIR(state.st_mode) and state.st_uid == os.geteuid() and closed


def make_private(shelf: Path) -> None:
    """Make the folder with mode 0700, or take away what others may do with ours.

    Raises `StoreUnavailableError` if it is not ours (and so not safe to open) or cannot be made.
    """
    try:
        shelf.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        with contextlib.suppress(FileExistsError):
            shelf.mkdir(mode=0o700)
        state = shelf.lstat()
        if stat.S_ISDIR(state.st_mode) and state.st_uid == os.geteuid():
            shelf.chmod(0o700)
    except OSError as error:
        raise unwritable(shelf.parent, error) from error
    if not is_private(shelf):
        raise StoreUnavailableError(
            f"{shelf} belongs to somebody else. Remove it, or name another folder with CLOTHBOUND_CACHE."
        )


@contextlib.contextmanager
def locked(shelf: Path) -> Iterator[bool]:
    """Hold the shelf's lock: one process builds at a time. The system frees it if the holder dies.

    Where the file system has no locks it yields False: two builders may work side by side, and the first
    `rename` stands.
    """
    try:
        handle = os.open(shelf / LOCK, os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o600)
    except OSError as error:
        raise unwritable(shelf, error) from error
    try:
        yield _wait_for(handle, shelf)
    finally:
        os.close(handle)


def _wait_for(handle: int, shelf: Path) -> bool:
    """True once the lock is held, False if there are none."""
    end = time.monotonic() + _LOCK_WAIT_S
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > end:
                raise StoreUnavailableError(
                    f"Another process has been building in {shelf} for a minute. Try again later."
                ) from None
            time.sleep(0.02)
        except OSError:
            return False
        else:
            return True
