"""Folders of rule books with odd names and odd things in them: a problem, or an answer, never a fault."""

import os
import shutil
from pathlib import Path

import pytest

from kb.cache.sources import read_sources
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


def test_what_is_no_file_is_passed_over(books):
    (books / "x.yaml").mkdir()
    (books / "y.yaml").symlink_to("/dev/zero")
    os.mkfifo(books / "z.yaml")
    (books / "circle").symlink_to(".")
    assert found(books) == []
    assert read_sources(books) is not None
