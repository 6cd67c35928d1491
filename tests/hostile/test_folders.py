"""Folders of rule books with odd names and odd things in them: a problem, or an answer, never a fault."""

import errno
import os
import shutil
from pathlib import Path

import pytest

from kb.cache.sources import read_sources
from kb.errors import UsageError
from kb.opening import books_folder
from kb.sources import load_rule_base

GOOD = Path(__file__).parents[1] / "sources" / "good"


@pytest.fixture
def books(tmp_path):
    return Path(shutil.copytree(GOOD, tmp_path / "books"))


def found(folder: Path) -> list[tuple[str, str]]:
    return [(problem.at.file, problem.code) for problem in load_rule_base(folder).problems]


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        (b"a\x1b[31m.yaml", "a\\u{1b}[31m.yaml"),
        ("a\u202eb.yaml".encode(), "a\\u{202e}b.yaml"),
        (b"a\nb.yaml", "a\\u{d}b.yaml"),
        (b"a\xff.yaml", "a\\u{dcff}.yaml"),
        (b"a\x9b/b.yaml", "a\\u{dc9b}/b.yaml"),
    ],
)
def test_a_name_that_cannot_be_shown_or_stored_is_a_problem(books, name, shown):
    path = os.path.join(os.fsencode(books), name)  # noqa: PTH118  pathlib takes no bytes
    os.makedirs(os.path.dirname(path), exist_ok=True)  # noqa: PTH103, PTH120
    with open(path, "wb") as stream:  # noqa: PTH123
        stream.write(b"items: []\n")
    assert found(books) == [(shown, "file-name")]


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may read everything")
def test_a_folder_that_cannot_be_listed_is_not_passed_over(books):
    (books / "sub").mkdir(mode=0)
    assert found(books) == [("sub", "unreadable-file")]
    assert read_sources(books) is None


def test_folders_beyond_the_longest_path_are_a_problem(books, monkeypatch):
    monkeypatch.chdir(books)
    for _ in range(50):
        Path("d" * 200).mkdir()
        os.chdir("d" * 200)
    os.chdir(books)
    assert [code for _, code in found(books)] == ["unreadable-file"]
    assert read_sources(books) is None
    shutil.rmtree(books / ("d" * 200))


def test_many_folders_in_each_other_are_no_fault(books, monkeypatch):
    monkeypatch.chdir(books)
    for _ in range(1_800):
        Path("d").mkdir()
        os.chdir("d")
    Path("x.yaml").write_text("items: []\n")
    os.chdir(books)
    assert len(str(books)) + 2 * 1_800 < 4_096
    assert found(books) == []
    sources = read_sources(books)
    assert sources is not None
    assert any(name.endswith("/x.yaml") for name in sources.digests)
    remove_line(books)


def remove_line(folder: Path) -> None:
    """Folders one in the other, from the inside out: `rmtree` is recursive."""
    depth = 0
    while Path("d").is_dir():
        os.chdir("d")
        depth += 1
    Path("x.yaml").unlink()
    for _ in range(depth):
        os.chdir("..")
        Path("d").rmdir()
    os.chdir(folder)


@pytest.mark.parametrize(
    ("name", "reason"),
    [("x" * 5_000, "File name too long"), ("x/" * 3_000, "File name too long"), ("file", "it is no folder"),
     ("file/below", "Not a directory"), ("circle", "symbolic links"), ("none", "")],
)  # fmt: skip
def test_what_is_no_folder_of_books_is_said(tmp_path, name, reason):
    (tmp_path / "file").touch()
    (tmp_path / "circle").symlink_to("circle")
    with pytest.raises(UsageError, match=f"no folder of rule books .*{reason}"):
        books_folder(tmp_path / name)


def refuse(monkeypatch, folder):
    """Let nobody look at what stands in a folder, not even root, for whom modes are nothing."""
    real = os.stat

    def stat(path, *rest, **options):
        if isinstance(path, str | os.PathLike) and Path(path).parent == folder:
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))
        return real(path, *rest, **options)

    monkeypatch.setattr(os, "stat", stat)


def test_a_folder_that_may_be_listed_and_not_entered_is_a_problem(books, monkeypatch):
    """Its files are not passed over: they may hold the rule that decides."""
    inner = books / "inner"
    inner.mkdir()
    (inner / "x.yaml").write_text("items: []\n")
    refuse(monkeypatch, inner)
    assert found(books) == [("inner/x.yaml", "unreadable-file")]
    assert read_sources(books) is None


def test_a_folder_below_one_that_may_not_be_entered_is_said(books, monkeypatch):
    refuse(monkeypatch, books)
    with pytest.raises(UsageError, match="Permission denied"):
        books_folder(books / "inner")


def test_what_is_no_file_is_passed_over(books):
    (books / "x.yaml").mkdir()
    (books / "y.yaml").symlink_to("/dev/zero")
    os.mkfifo(books / "z.yaml")
    (books / "circle").symlink_to(".")
    assert found(books) == []
    assert read_sources(books) is not None
