"""One generation: all that is made from one state of the sources, never changed, checked before use."""

from __future__ import annotations

import fcntl
import os
import stat
import zlib
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path

import msgspec

from kb.cache.shelf import MANIFEST
from kb.digests import SIZE, digest_name
from kb.errors import Problem, StoreUnavailableError
from kb.keywords import DocumentKind, Hit, search

STORE = "store"
INDEX = "index"
BASE = "base.json"
LEXICON = "lexicon.json"
PARTS = "parts.json"
_LARGEST_MANIFEST = 64_000_000


class Entry(msgspec.Struct, frozen=True, array_like=True):
    """Size of a file and its CRC-32 (ISO/IEC 13239, as zlib computes it), which finds damage and is fast."""

    size: int
    checksum: int


class Manifest(msgspec.Struct, frozen=True):
    """What a generation must consist of. `increments` counts the steps since it was built from nothing.

    `digest` is that of the sources and the program, `books` the SHA-256 of the records, which answers name.
    """

    digest: str
    books: str
    files: Mapping[str, Entry]
    quads: int
    increments: int = 0
    warnings: tuple[Problem, ...] = ()


class Lease:
    """Keeps a generation from being removed for as long as it is held: a shared lock on its manifest."""

    def __init__(self, handle: int) -> None:
        self._handle = handle
        self.index_checked = False
        with suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_SH | fcntl.LOCK_NB)

    def __del__(self) -> None:
        with suppress(OSError):
            os.close(self._handle)


class Generation(msgspec.Struct, frozen=True, kw_only=True):
    """A checked generation. `problems` are warnings of its sources; `note` says if it is not kept."""

    folder: Path
    manifest: Manifest
    lease: Lease
    was_rebuilt: bool = False
    note: str = ""

    @property
    def digest(self) -> str:
        return self.manifest.digest

    @property
    def problems(self) -> tuple[Problem, ...]:
        return self.manifest.warnings

    @property
    def store(self) -> Path:
        """Folder of the on-disk store; open it read-only."""
        return self.folder / STORE

    @property
    def index(self) -> Path:
        """Folder of the keyword index; opening it runs what is in it, so use `search`."""
        return self.folder / INDEX

    @property
    def base_json(self) -> Path:
        return self.folder / BASE

    @property
    def lexicon_json(self) -> Path:
        return self.folder / LEXICON

    def has_whole_store(self) -> bool:
        """Whether the store is as it was sealed, byte for byte; for one that was opened `unread`."""
        return _is_whole(self.folder, self.manifest.files, f"{STORE}{os.sep}")

    def search(
        self, words: Sequence[str], kinds: Sequence[DocumentKind] = (), limit: int = 10
    ) -> tuple[Hit, ...]:
        """What the keyword index finds. Raises `StoreUnavailableError` if the index was changed."""
        if not self.lease.index_checked:
            if not _is_whole(self.folder, self.manifest.files, INDEX):
                raise StoreUnavailableError(
                    "The keyword index was changed by something else. Build it again."
                )
            self.lease.index_checked = True
        return search(self.index, words, kinds, limit)


def _names(folder: Path) -> set[str]:
    """Every file below a folder, with names relative to it."""
    start = len(str(folder)) + 1
    return {f"{above}{os.sep}{name}"[start:] for above, _, names in os.walk(folder) for name in names}


def describe(path: Path) -> Entry:
    data = path.read_bytes()
    return Entry(len(data), zlib.crc32(data))


def _is_file_of(state: os.stat_result, size: int) -> bool:
    """Reading anything but a plain file might wait for ever, and a larger one might fill the memory."""
    return stat.S_ISREG(state.st_mode) and state.st_size == size


def _is_whole(folder: Path, files: Mapping[str, Entry], part: str = "", unread: str | None = None) -> bool:
    """Whether the folder (or one part of it) has exactly these files with these contents.

    Of what stands in `unread` only names and sizes are compared.
    """
    wanted = {name: entry for name, entry in files.items() if name.startswith(part)}
    found = {name for name in _names(folder) if name.startswith(part)} - {MANIFEST}
    if found != set(wanted):
        return False
    try:
        paths = {name: f"{folder}{os.sep}{name}" for name in wanted}
        if not all(_is_file_of(os.lstat(paths[name]), entry.size) for name, entry in wanted.items()):
            return False
        read = (name for name in wanted if unread is None or not name.startswith(f"{unread}{os.sep}"))
        return all(describe(Path(paths[name])) == wanted[name] for name in read)
    except OSError:
        return False


def seal(folder: Path, digest: str, quads: int, increments: int, warnings: tuple[Problem, ...]) -> None:
    """Write the manifest of a finished generation."""
    from hashlib import sha256  # noqa: PLC0415  see `kb.digests`

    files = {name: describe(folder / name) for name in sorted(_names(folder))}
    books = sha256((folder / BASE).read_bytes()).hexdigest()
    data = msgspec.json.encode(Manifest(digest, books, files, quads, increments, warnings))
    (folder / MANIFEST).write_bytes(digest_name(data).encode() + b"\n" + data)


def _read_manifest(handle: int) -> Manifest | None:
    state = os.fstat(handle)
    if not stat.S_ISREG(state.st_mode) or state.st_size > _LARGEST_MANIFEST:
        return None
    with os.fdopen(os.dup(handle), "rb") as stream:
        data = stream.read()
    start = 2 * SIZE + 1
    if digest_name(data[start:]).encode() + b"\n" != data[:start]:
        return None
    try:
        return msgspec.json.decode(data[start:], type=Manifest)
    except (msgspec.DecodeError, UnicodeDecodeError):
        return None


def open_generation(
    folder: Path, *, was_rebuilt: bool = False, note: str = "", unread: str | None = None
) -> Generation | None:
    """The generation in a folder if every byte of it is as it was sealed, else None.

    The contents of the part `unread` are left to whoever opens it (`has_whole_store`).
    """
    try:
        handle = os.open(folder / MANIFEST, os.O_RDONLY | os.O_CLOEXEC | os.O_NONBLOCK)
    except OSError:
        return None
    lease = Lease(handle)
    manifest = _read_manifest(handle)
    if (
        manifest is None
        or manifest.digest != folder.name
        or not _is_whole(folder, manifest.files, unread=unread)
    ):
        return None
    return Generation(folder=folder, manifest=manifest, lease=lease, was_rebuilt=was_rebuilt, note=note)
