"""What builders do with a shelf besides building: force to disk, put aside, remove what is old."""

from __future__ import annotations

import contextlib
import fcntl
import os
import shutil
import time
from pathlib import Path

from kb.cache.shelf import LOCK, MANIFEST, is_private

TEMPORARY = ".tmp-"
GONE = ".gone-"
_NAME_LENGTH = 64
_KEPT = 2
_SHELVES_KEPT = 8


def fsync_tree(folder: Path) -> None:
    """Force a folder and all in it to the disk."""
    for above, _, names in os.walk(folder):
        for path in (*(f"{above}{os.sep}{name}" for name in names), above):
            handle = os.open(path, os.O_RDONLY)
            try:
                os.fsync(handle)
            finally:
                os.close(handle)


def sync_folder(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def generations(shelf: Path) -> tuple[Path, ...]:
    """The generations of a shelf, the latest made first."""
    found: list[tuple[int, Path]] = []
    for path in shelf.iterdir():
        if len(path.name) == _NAME_LENGTH:
            with contextlib.suppress(OSError):  # another process may just have removed it
                found.append((path.stat().st_mtime_ns, path))
    return tuple(path for _, path in sorted(found, reverse=True))


def _in_use(generation: Path) -> bool:
    """Whether a reader holds the generation (see `Lease`)."""
    try:
        handle = os.open(generation / MANIFEST, os.O_RDONLY | os.O_CLOEXEC | os.O_NONBLOCK)
    except OSError:
        return False
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return True
    except OSError:
        return False
    finally:
        os.close(handle)
    return False


def put_aside(path: Path) -> None:
    """Take a folder out of sight at once, then remove it; readers that hold its files keep them."""
    gone = path.with_name(f"{GONE}{path.name}-{os.getpid()}-{time.monotonic_ns()}")
    path.rename(gone)
    shutil.rmtree(gone, ignore_errors=True)


def tidy(shelf: Path, newest: str, alone: bool) -> None:
    """Remove what killed builders left, and all generations but the last two and those in use.

    Half-built folders only if `alone`: they may be another builder's. What cannot be removed stays until
    the next time.
    """
    for path in shelf.iterdir():
        if path.name.startswith(GONE) or (alone and path.name.startswith(TEMPORARY)):
            shutil.rmtree(path, ignore_errors=True)
    others = [path for path in generations(shelf) if path.name != newest]
    for path in others[_KEPT - 1 :]:
        if not _in_use(path):
            with contextlib.suppress(OSError):
                put_aside(path)


def tidy_home(shelf: Path) -> None:
    """Remove shelves that were not built on for longest, but for the last eight and those in use."""
    with contextlib.suppress(OSError):
        shelves = [path for path in shelf.parent.iterdir() if (path / LOCK).is_file() and is_private(path)]
        shelves.sort(key=lambda path: path.stat().st_mtime_ns, reverse=True)
        for old in shelves[_SHELVES_KEPT:]:
            if old != shelf and not any(_in_use(generation) for generation in generations(old)):
                put_aside(old)
