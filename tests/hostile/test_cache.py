"""A cache in which something else stands where a file was: noticed and built again, no wait and no fault."""

import os
import shutil
from pathlib import Path

import pytest

from kb.cache import ensure
from kb.cache.generation import MANIFEST

GOOD = Path(__file__).parents[1] / "sources" / "good"


def put_folder(path: Path) -> None:
    path.mkdir()


def put_pipe(path: Path) -> None:
    os.mkfifo(path)


def put_link(path: Path) -> None:
    path.symlink_to("/dev/zero")


def put_giant(path: Path) -> None:
    """A file with a hole of 100 GB."""
    with path.open("wb") as stream:
        stream.truncate(100_000_000_000)


@pytest.fixture
def books(tmp_path):
    return Path(shutil.copytree(GOOD, tmp_path / "books"))


def test_a_home_that_is_no_place_is_none(books, tmp_path, monkeypatch):
    """Nothing is written into the folder one stands in; each process builds for itself."""
    for name in ("CLOTHBOUND_CACHE", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("HOME", "relative")
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    assert ensure(books, None).was_rebuilt
    assert ensure(books, None).was_rebuilt
    assert not list(Path().iterdir())


@pytest.mark.parametrize("name", [MANIFEST, "base.json", "store/CURRENT", "empty"])
@pytest.mark.parametrize("put", [put_folder, put_pipe, put_link, put_giant])
def test_something_else_in_place_of_a_file_is_built_again(books, tmp_path, name, put):
    built = ensure(books, tmp_path / "cache")
    empty = next(path for path in (built.folder / "store").iterdir() if not path.stat().st_size)
    path = empty if name == "empty" else built.folder / name
    path.unlink()
    put(path)
    again = ensure(books, tmp_path / "cache")
    assert again.was_rebuilt
    assert again.digest == built.digest
    assert not ensure(books, tmp_path / "cache").was_rebuilt
