"""From sources and a shelf to a generation: the one that is there, or a new one."""

from __future__ import annotations

from pathlib import Path

from kb.cache.generation import Generation, open_generation
from kb.cache.shelf import is_private, locked, make_private
from kb.cache.sources import read_sources
from kb.errors import StoreUnavailableError


def fresh_generation(folder: Path, shelf: Path, unread: str | None = None) -> Generation | None:
    """The generation of the sources as they are now, if the shelf has it whole; `unread` as it is opened."""
    if not is_private(shelf):
        return None
    sources = read_sources(folder)
    return open_generation(shelf / sources.digest(), unread=unread) if sources else None


def built_generation(folder: Path, shelf: Path, note: str = "") -> Generation:
    """The generation of the sources, built unless another process has built it meanwhile."""
    from kb.cache.build import build_generation  # noqa: PLC0415  brings the YAML reader and the index writer

    make_private(shelf)
    with locked(shelf) as alone:
        fresh = fresh_generation(folder, shelf)  # another process may have built it while we waited
        if fresh is not None:
            return fresh
        digest = build_generation(folder, shelf, alone)
        built = open_generation(shelf / digest, was_rebuilt=True, note=note)
    if built is None:
        raise StoreUnavailableError(f"What was built in {shelf} is not whole. Check the disk.")
    return built
