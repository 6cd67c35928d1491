"""What a generation is made from: the files of a folder of rule books, and the program that reads them."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path

import msgspec

from kb.digests import Digest, digest_name
from kb.files import find_files, is_file

FORMAT = 1
_LARGEST_READ = 5_000_001  # the loader reads no more of a file either
_PACKAGE = Path(__file__).parent.parent
# What decides what a generation holds; a change in any of these files makes another generation.
_MAKERS = (
    "sources",
    "graph",
    "model",
    "measures",
    "cache",
    "reader/words",
    "reader/phrases",
    "reader/names",
    "wording",
    "keywords.py",
    "vocabulary.py",
    "text.py",
    "errors.py",
)


class Sources(msgspec.Struct, frozen=True):
    """The digest of each `*.yaml` file by its name, and the names of files that only bring a warning."""

    digests: Mapping[str, str]
    ignored: tuple[str, ...]

    def digest(self) -> str:
        """Digest of names, contents and program: the name of the generation."""
        total = Digest(program_digest().encode())
        for name, digest in sorted(self.digests.items()):
            total.update(f"{digest} {name}\0".encode("utf-8", "surrogateescape"))
        for name in self.ignored:
            total.update(f"- {name}\0".encode("utf-8", "surrogateescape"))
        return total.hexadecimal()


def _files(folder: Path) -> Iterator[tuple[str, str]]:
    """Every file that the loader looks at: its path, and its name relative to the folder."""
    names, failed = find_files(folder)
    for _, error in failed:
        raise error
    for name in names:
        if name.endswith((".yaml", ".yml")) and not name.rpartition("/")[2].startswith("."):
            path = f"{folder}{os.sep}{name}"
            if is_file(path):
                yield path, name


def read_sources(folder: Path) -> Sources | None:
    """The sources as they are on disk now; None if a file cannot be read (the loader says which)."""
    digests: dict[str, str] = {}
    ignored: list[str] = []
    try:
        for path, name in _files(folder):
            if name.endswith(".yml"):
                ignored.append(name)
                continue
            with open(path, "rb") as stream:  # noqa: PTH123
                digests[name] = digest_name(stream.read(_LARGEST_READ))
    except OSError:
        return None
    return Sources(digests, tuple(sorted(ignored)))


def _modules(names: Iterable[str]) -> Iterator[str]:
    for name in names:
        path = f"{_PACKAGE}{os.sep}{name}"
        if name.endswith(".py"):
            yield path
            continue
        with os.scandir(path) as entries:
            yield from sorted(entry.path for entry in entries if entry.name.endswith(".py"))


@cache
def program_digest() -> str:
    """Digest over size and time of change of the modules that make a generation, and the format's number."""
    total = Digest(str(FORMAT).encode())
    for path in _modules(_MAKERS):
        state = os.stat(path)  # noqa: PTH116
        total.update(f"{path}\0{state.st_size}\0{state.st_mtime_ns}\0".encode("utf-8", "surrogateescape"))
    return total.hexadecimal()
