"""What the interactive shell keeps between two days: lines typed, and a profile for each service."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import TYPE_CHECKING

import kb
from shell.session import Session, merge

if TYPE_CHECKING:
    from kb import KnowledgeBase

_LARGEST = 1_000_000
_ID_SHOWN = 40


def _state_folder() -> Path:
    """XDG_STATE_HOME, else ~/.local/state (XDG Base Directory Specification); only absolute paths count.

    Where there is no home, a place at which nothing can be kept.
    """
    state = os.environ.get("XDG_STATE_HOME", "")
    if not Path(state).is_absolute():
        state = os.path.expanduser("~/.local/state")  # noqa: PTH111  unlike pathlib, never raises
    return (Path(state) if Path(state).is_absolute() else Path(os.devnull)) / "clothbound"


def history_file() -> Path:
    """Where lines are kept."""
    return _state_folder() / "history"


def answered_file() -> Path:
    """Where the lines are kept that were answered."""
    return _state_folder() / "answered"


def profile_file(base: KnowledgeBase) -> Path:
    """Where the profile for these books is kept: it belongs to the service, wherever its books stand."""
    service = base.lookup.base.service
    digest = hashlib.sha256(service.namespace.encode()).hexdigest()[:12]
    name = "".join(c for c in service.id if c.isascii() and (c.isalnum() or c in "-_"))[:_ID_SHOWN]
    return _state_folder() / "profiles" / f"{name}-{digest}.json"


def make_private(path: Path) -> None:
    """Make a file, and the folders above it, for the owner alone; raises `OSError`."""
    for folder in (_state_folder(), path.parent):
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    os.close(os.open(path, os.O_CREAT | os.O_APPEND | os.O_WRONLY | os.O_NOFOLLOW | os.O_NONBLOCK, 0o600))
    path.chmod(0o600)


def _read(path: Path) -> bytes:
    """What is kept; nothing where there is no plain file of a sensible size."""
    try:
        with os.fdopen(os.open(path, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK), "rb") as stream:
            return stream.read(_LARGEST) or b"{}"
    except OSError:
        return b"{}"


def with_profile(session: Session, base: KnowledgeBase) -> tuple[Session, tuple[str, ...]]:
    """The session with the profile that is kept for these books, and what of it they do not know any more."""
    facts, gone = base.unpack_facts(_read(profile_file(base)))
    return Session(profile=merge(facts, session.profile), as_of=session.as_of), gone


def keep_profile(session: Session, base: KnowledgeBase) -> str:
    """Keep the profile; a complaint if it cannot be, else ""."""
    path = profile_file(base)
    try:
        if not session.profile:
            path.unlink(missing_ok=True)
            return ""
        make_private(path)
        kb.write_atomically(path, base.pack_facts(session.profile))
    except OSError as error:
        return f"What you say about yourself is not kept: {path}: {error.strerror}."
    except kb.StoreUnavailableError as error:
        return f"What you say about yourself is not kept: {error}"
    return ""
