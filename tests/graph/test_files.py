"""Files are written whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

import kb.files
from kb.errors import StoreUnavailableError
from kb.files import data_folder, write_atomically


def test_a_new_and_an_old_file_are_written_whole(tmp_path):
    target = tmp_path / "base.nq"
    write_atomically(target, b"one")
    write_atomically(target, b"two")
    assert target.read_bytes() == b"two"
    assert [entry.name for entry in tmp_path.iterdir()] == ["base.nq"]


def test_the_mode_of_an_old_file_stays_and_a_new_one_follows_the_umask(tmp_path):
    old, new = tmp_path / "old", tmp_path / "new"
    old.touch(mode=0o640)
    old.chmod(0o640)
    umask = os.umask(0o027)
    try:
        write_atomically(old, b"x")
        write_atomically(new, b"x")
    finally:
        os.umask(umask)
    assert stat.S_IMODE(old.stat().st_mode) == 0o640
    assert stat.S_IMODE(new.stat().st_mode) == 0o640


def test_a_symbolic_link_is_followed(tmp_path):
    (tmp_path / "real").write_bytes(b"old")
    (tmp_path / "link").symlink_to("real")
    write_atomically(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_bytes() == b"new"


@pytest.mark.parametrize("step", ["fsync", "replace"])
def test_a_failure_leaves_the_old_file_and_no_other(tmp_path, monkeypatch, step):
    target = tmp_path / "base.nq"
    target.write_bytes(b"old")

    def fail(*_arguments):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(*((os, "fsync") if step == "fsync" else (Path, "replace")), fail)
    with pytest.raises(StoreUnavailableError, match="No space left"):
        write_atomically(target, b"new")
    assert target.read_bytes() == b"old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["base.nq"]


def test_data_folders_are_beside_the_package_or_inside_it(tmp_path, monkeypatch):
    assert (data_folder("ontology") / "clothbound.ttl").is_file()
    (tmp_path / "data" / "ontology").mkdir(parents=True)
    monkeypatch.setattr(kb.files, "_PACKAGE", tmp_path)
    assert data_folder("ontology") == tmp_path / "data" / "ontology"
    assert data_folder("demo_facts") == tmp_path.parent / "demo_facts"
