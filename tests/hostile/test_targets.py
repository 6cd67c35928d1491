"""A file that is asked for never takes the place of something that is no file."""

import os
import stat
from pathlib import Path

import pytest

from kb.errors import StoreUnavailableError
from kb.files import write_atomically
from shell.blocks import Said
from shell.picture import write_picture


def _write_bytes(path: Path) -> None:
    write_atomically(path, b"x")


def _write_picture(path: Path) -> None:
    write_picture(path, (Said("Rows", "1"),), "title")


@pytest.fixture(params=[_write_bytes, _write_picture], ids=["bytes", "picture"])
def write(request):
    return request.param


def test_a_pipe_stays_a_pipe_also_behind_a_link(tmp_path, write):
    """Run as root the same would take away a device such as /dev/null."""
    pipe, link = tmp_path / "pipe", tmp_path / "link"
    os.mkfifo(pipe)
    link.symlink_to(pipe)
    for path in (pipe, link):
        with pytest.raises(StoreUnavailableError, match="not a plain file"):
            write(path)
    assert stat.S_ISFIFO(pipe.stat().st_mode)
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["link", "pipe"]


def test_a_folder_is_refused_whatever_it_is_called(tmp_path, write, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for path in (tmp_path, Path(), Path("/")):
        with pytest.raises(StoreUnavailableError):
            write(path)
    assert not list(tmp_path.iterdir())


def test_a_link_is_followed_and_stays(tmp_path, write):
    target, link = tmp_path / "target", tmp_path / "link"
    target.write_bytes(b"old")
    link.symlink_to(target)
    write(link)
    assert link.is_symlink()
    assert target.read_bytes() != b"old"


def test_links_in_a_circle_are_refused(tmp_path, write):
    circle = tmp_path / "circle"
    circle.symlink_to(circle)
    with pytest.raises(StoreUnavailableError, match="not a plain file"):
        write(circle)
    assert circle.is_symlink()
    assert [entry.name for entry in tmp_path.iterdir()] == ["circle"]
