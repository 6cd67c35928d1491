"""Parsed files kept by digest, so that only changed ones are parsed again."""

from __future__ import annotations

import contextlib
import hashlib
import os
from pathlib import Path

import msgspec

from kb.cache.sources import program_digest
from kb.sources import Tree, parse_file

TREES = "trees"
_DIGEST_SIZE = 32


class TreeCache:
    """Trees below a shelf. Each file begins with the SHA-256 of the rest: what is odd is parsed again."""

    def __init__(self, shelf: Path) -> None:
        self.folder = shelf / TREES
        self.used: set[str] = set()

    def read(self, data: bytes, name: str) -> Tree:
        """The tree of a file, from here if it was parsed before (see `parse_file`)."""
        key = hashlib.sha256(
            b"\0".join((program_digest().encode(), name.encode("utf-8", "surrogateescape"), data))
        ).hexdigest()
        self.used.add(key)
        tree = self._load(self.folder / key)
        if tree is None:
            tree = parse_file(data, name)
            self._save(self.folder / key, tree)
        return tree

    @staticmethod
    def _load(path: Path) -> Tree | None:
        try:
            data = path.read_bytes()
            if hashlib.sha256(data[_DIGEST_SIZE:]).digest() != data[:_DIGEST_SIZE]:
                return None
            return msgspec.msgpack.decode(data[_DIGEST_SIZE:], type=Tree)
        except (OSError, msgspec.DecodeError):
            return None

    def _save(self, path: Path, tree: Tree) -> None:
        """Written beside and renamed; not forced to the disk, since a torn file is noticed."""
        with contextlib.suppress(OSError, UnicodeEncodeError, RecursionError):
            data = msgspec.msgpack.encode(tree)
            self.folder.mkdir(mode=0o700, exist_ok=True)
            temporary = path.with_name(f".{path.name}.{os.getpid()}")
            temporary.write_bytes(hashlib.sha256(data).digest() + data)
            temporary.replace(path)

    def keep_only_used(self) -> None:
        """Remove the trees of files that are no longer there."""
        with contextlib.suppress(OSError):
            for path in self.folder.iterdir():
                if path.name not in self.used:
                    path.unlink()
