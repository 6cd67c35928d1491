"""A generation for one process only, where no cache can be written."""

from __future__ import annotations

import shutil
import tempfile
import weakref
from pathlib import Path

from kb.cache.generation import Generation
from kb.cache.opening import built_generation
from kb.cache.shelf import shelf_path
from kb.errors import StoreUnavailableError


def build_temporary(folder: Path, reason: str) -> Generation:
    """A generation in a temporary folder that is removed with it, at the latest when the process ends.

    `reason` says why there is no cache, and stands in its note.
    Raises `StoreUnavailableError` with the reason if not even that can be written.
    """
    try:
        home = Path(tempfile.mkdtemp(prefix="clothbound-"))
    except OSError as error:
        raise StoreUnavailableError(reason) from error
    try:
        note = f"{reason} It is built anew each time."
        built = built_generation(folder, shelf_path(home, folder), note)
    except BaseException:
        shutil.rmtree(home, ignore_errors=True)
        raise
    weakref.finalize(built.lease, shutil.rmtree, home, ignore_errors=True)
    return built
