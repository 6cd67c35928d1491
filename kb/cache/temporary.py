"""A generation for one process only, where no cache can be written."""

from __future__ import annotations

import shutil
import tempfile
import weakref
from pathlib import Path

import msgspec

from kb.cache.generation import Generation
from kb.cache.opening import built_generation
from kb.cache.shelf import shelf_path
from kb.errors import StoreUnavailableError


def build_temporary(folder: Path, reason: str) -> Generation:
    """A generation in a temporary folder that goes with it; `reason` (why there is no cache) is in its note.

    Raises `StoreUnavailableError` with the reason if not even that can be written.
    """
    try:
        home = Path(tempfile.mkdtemp(prefix="clothbound-"))
    except OSError as error:
        raise StoreUnavailableError(reason) from error
    try:
        built = built_generation(folder, shelf_path(home, folder))
    except BaseException:
        shutil.rmtree(home, ignore_errors=True)
        raise
    weakref.finalize(built.lease, shutil.rmtree, home, ignore_errors=True)
    return msgspec.structs.replace(built, note=f"{reason} It is built anew each time.")
