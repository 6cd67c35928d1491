"""Opens what is built beside the loading of the modules that ask: most of both is waiting for the other."""

from __future__ import annotations

import os
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from threading import Event, Thread
from typing import TYPE_CHECKING

from kb.cache import Generation, ensure, find
from kb.errors import UsageError
from kb.files import data_folder

if TYPE_CHECKING:
    from kb.sparql import Store


def demo_folder() -> Path:
    """The demo rule books that come with the program."""
    return data_folder("demo_facts")


def books_folder(books: Path | None) -> Path:
    """The folder asked for, the one the environment names, or the demo."""
    if books is None:
        named = os.environ.get("CLOTHBOUND_BOOKS")
        books = Path(named) if named else demo_folder()
    if not os.path.isdir(books):  # noqa: PTH112  unlike pathlib, never raises
        where = f"{books}{_reason(books)}"
        raise UsageError(f"There is no folder of rule books at {where}. Give one with --books.")
    return books


def _reason(path: Path) -> str:
    """Why something is no folder that one can look into, where more is to say than that nothing is there."""
    try:
        path.stat()
    except FileNotFoundError:
        return ""
    except OSError as error:
        return f" ({error.strerror})"
    return " (it is no folder)"


class Opening:
    """Rule books on their way to being open: a thread compares the store with what was sealed and opens it,
    both native code without our lock.

    What is not built yet is built by whoever asks for it, since that takes seconds and has to end at Ctrl-C;
    what the thread could not open is tried again there, since errors belong to whoever asked. The thread is
    no daemon: the store's code must not be cut off by the interpreter's end.
    """

    def __init__(self, books: Path | None = None, cache: Path | None = None) -> None:
        self.folder = books_folder(books)
        self._cache = cache
        self._store: Store | None = None
        self._compared = Event()
        self._is_whole = False
        self._generation = find(self.folder, cache)
        self._thread: Thread | None = None
        if self._generation is not None:
            from kb.sparql import open_store  # noqa: PLC0415  a build needs no store

            self._thread = Thread(target=self._open_early, args=(open_store, self._generation))
            self._thread.start()

    def _open_early(self, open_store: Callable[[Generation], Store], generation: Generation) -> None:
        try:
            self._is_whole = generation.has_whole_store()
        finally:
            self._compared.set()
        if self._is_whole:
            with suppress(Exception):
                self._store = open_store(generation)

    def generation(self) -> Generation:
        """What is built of the books as they are now; builds it if there is none.

        Raises `InvalidDataError` for errors in the sources, `StoreUnavailableError` if there is no cache.
        """
        if self._thread is not None:
            self._compared.wait()
        if self._generation is None or (self._thread is not None and not self._is_whole):
            self._thread, self._store = None, None
            self._generation = ensure(self.folder, self._cache)
        return self._generation

    def store(self) -> Store:
        """The store, open; raises `StoreUnavailableError` if it cannot be."""
        if self._thread is not None:
            self._thread.join()
        if self._store is None:
            from kb.sparql import open_store  # noqa: PLC0415  as above

            self._store = open_store(self.generation())
        return self._store
