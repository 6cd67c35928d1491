"""A disposable, checked cache of what is made from rule books: store, keyword index, records."""

from __future__ import annotations

import shutil
import tempfile
import weakref
from pathlib import Path

import msgspec

from kb.cache.codec import decode_base, encode_base
from kb.cache.generation import Generation, open_generation
from kb.cache.shelf import cache_home, is_private, locked, make_private, shelf_path
from kb.cache.sources import read_sources
from kb.errors import StoreUnavailableError

__all__ = ["Generation", "decode_base", "encode_base", "ensure"]


def ensure(folder: Path, cache: Path | None = None) -> Generation:
    """The generation of the rule books in a folder as they are now, built if there is none that is whole.

    `cache` is the folder for all caches (default: CLOTHBOUND_CACHE, else the user's cache folder, else,
    if that cannot be written, a temporary one for this process, which `note` then says).

    Raises `InvalidDataError` with every problem if the sources have errors, `StoreUnavailableError` if
    nothing can be written.
    """
    home, chosen = cache_home(cache)
    shelf = shelf_path(home, folder)
    fresh = _fresh(folder, shelf)
    if fresh is not None:
        return fresh
    try:
        return _built(folder, shelf)
    except StoreUnavailableError as error:
        if chosen:
            raise
        return _temporary(folder, str(error))


def _fresh(folder: Path, shelf: Path) -> Generation | None:
    if not is_private(shelf):
        return None
    sources = read_sources(folder)
    return open_generation(shelf / sources.digest()) if sources else None


def _built(folder: Path, shelf: Path) -> Generation:
    from kb.cache.build import build_generation  # noqa: PLC0415  brings the YAML reader and the index writer

    make_private(shelf)
    with locked(shelf):
        fresh = _fresh(folder, shelf)  # another process may have built it while we waited
        if fresh is not None:
            return fresh
        digest = build_generation(folder, shelf)
        built = open_generation(shelf / digest, was_rebuilt=True)
    if built is None:
        raise StoreUnavailableError(f"What was built in {shelf} is not whole. Check the disk.")
    return built


def _temporary(folder: Path, reason: str) -> Generation:
    """A generation in a temporary folder that goes when it is no longer used."""
    try:
        home = Path(tempfile.mkdtemp(prefix="clothbound-"))
    except OSError as error:
        raise StoreUnavailableError(reason) from error
    try:
        built = _built(folder, shelf_path(home, folder))
    except BaseException:
        shutil.rmtree(home, ignore_errors=True)
        raise
    weakref.finalize(built.lease, shutil.rmtree, home, ignore_errors=True)
    return msgspec.structs.replace(built, note=f"{reason} It is built anew each time.")
