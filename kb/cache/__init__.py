"""A disposable, checked cache of what is made from rule books: store, keyword index, records."""

from __future__ import annotations

from pathlib import Path

from kb.cache.codec import decode_base, encode_base
from kb.cache.generation import STORE, Generation
from kb.cache.opening import built_generation, fresh_generation
from kb.cache.shelf import cache_home, shelf_path
from kb.errors import StoreUnavailableError

__all__ = ["Generation", "decode_base", "encode_base", "ensure", "find"]


def find(folder: Path, cache: Path | None = None) -> Generation | None:
    """The generation of the rule books in a folder as they are now, if there is one that is whole.

    Whether its store is, most of its bytes, is left to whoever opens that (`Generation.has_whole_store`).
    """
    home, _ = cache_home(cache)
    return fresh_generation(folder, shelf_path(home, folder), unread=STORE)


def ensure(folder: Path, cache: Path | None = None) -> Generation:
    """The generation of the rule books in a folder as they are now, built if there is none that is whole.

    `cache` is the folder for all caches (default: CLOTHBOUND_CACHE, else the user's cache folder, else,
    if that cannot be written, a temporary one for this process, which `note` then says).

    Raises `InvalidDataError` with every problem if the sources have errors, `StoreUnavailableError` if
    nothing can be written.
    """
    home, chosen = cache_home(cache)
    shelf = shelf_path(home, folder)
    fresh = fresh_generation(folder, shelf)
    if fresh is not None:
        return fresh
    try:
        return built_generation(folder, shelf)
    except StoreUnavailableError as error:
        if chosen:
            raise
        reason = str(error)
    from kb.cache.temporary import build_temporary  # noqa: PLC0415  a rare way

    return build_temporary(folder, reason)
