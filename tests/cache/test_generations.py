"""What a generation holds, when a new one is made, and how little is made again."""

from __future__ import annotations

import datetime
import gc
import os
import subprocess
import sys
from pathlib import Path

import pytest

from kb.cache import Generation, decode_base, ensure
from kb.cache.build import Parts
from kb.cache.shelf import cache_home, shelf_path
from kb.cache.sources import read_sources
from kb.errors import InvalidDataError
from kb.files import data_folder
from kb.graph import to_nquads
from kb.keywords import build_index, documents_of, search
from kb.sources import load_rule_base
from kb.sparql import candidate_rules, open_store, run_user_query
from tests.cache.conftest import SECOND

DAY = datetime.date(2026, 1, 1)
EVERYTHING = "SELECT * { GRAPH ?g { ?s ?p ?o } } ORDER BY ?g ?s ?p ?o"


def edit(path: Path, old: str, new: str) -> None:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))


def assert_equals_a_build_from_nothing(generation: Generation, books: Path, scratch: Path) -> None:
    """Store, index and records are what the sources give without any cache."""
    base = load_rule_base(books).base
    assert base is not None
    assert decode_base(generation.base_json.read_bytes()) == base
    nquads = to_nquads(base)
    assert generation.manifest.quads == nquads.count(b"\n")
    assert run_user_query(generation, EVERYTHING) == run_user_query(nquads, EVERYTHING)
    build_index(scratch, documents_of(base))
    for word in ("coat", "scarf", "cap", "weather", "worn", "hands", "mittens", "boots"):
        ours, fresh = generation.search((word,), limit=99), search(scratch, (word,), limit=99)
        found = [{(hit.kind, hit.id, hit.field) for hit in hits} for hits in (ours, fresh)]
        assert found[0] == found[1]


def test_a_generation_answers(built: Generation, books: Path, tmp_path: Path) -> None:
    assert candidate_rules(open_store(built), ("coat",), ("wear",), DAY) == ("order/1/1-1",)
    assert [hit.id for hit in built.search(("scarves",), ("item",))] == ["scarf"]
    assert_equals_a_build_from_nothing(built, books, tmp_path / "scratch")


def test_nothing_is_built_twice(built: Generation, books: Path, home: Path) -> None:
    again = ensure(books, home)
    assert not again.was_rebuilt
    assert (again.folder, again.digest) == (built.folder, built.digest)


@pytest.mark.usefixtures("built")
def test_one_shelf_for_one_folder(books: Path, home: Path, tmp_path: Path) -> None:
    link = tmp_path / "link"
    link.symlink_to(books)
    assert not ensure(link, home).was_rebuilt
    assert not ensure(books / ".." / "books", home).was_rebuilt
    other = tmp_path / "other"
    other.mkdir()
    for path in books.iterdir():
        (other / path.name).write_bytes(path.read_bytes())
    assert ensure(other, home).was_rebuilt
    assert not ensure(books, home).was_rebuilt, "folders do not push each other out"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("Caps are worn.", "Caps and mittens are worn."),
        ("      - must: cap", "      - may: cap"),
        ("clauses:\n", "# a line more, so that every place moves\nclauses:\n"),
        ("in force from: 2025-03-01", "in force from: 2025-03-01, in force until: 2026-09-01"),
    ],
)
def test_a_small_change_is_an_increment(
    built: Generation, books: Path, home: Path, tmp_path: Path, old: str, new: str
) -> None:
    edit(books / "second.yaml", old, new)
    changed = ensure(books, home)
    assert changed.was_rebuilt
    assert changed.digest != built.digest
    assert changed.manifest.increments == 1
    assert_equals_a_build_from_nothing(changed, books, tmp_path / "scratch")


@pytest.mark.usefixtures("built")
def test_increments_of_increments(
    books: Path, home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Up to a limit, then from nothing: the files of a store grow with every step."""
    monkeypatch.setattr("kb.cache.build._MOST_INCREMENTS", 3)
    counts = []
    for step in range(5):
        (books / "second.yaml").write_text(SECOND.replace("Caps are", f"Caps of {step} kinds are"))
        counts.append(ensure(books, home).manifest.increments)
    assert counts == [1, 2, 3, 0, 1]
    assert_equals_a_build_from_nothing(ensure(books, home), books, tmp_path / "scratch")


@pytest.mark.usefixtures("built")
def test_a_removed_file_takes_its_graph_along(books: Path, home: Path, tmp_path: Path) -> None:
    (books / "second.yaml").unlink()
    changed = ensure(books, home)
    assert changed.manifest.increments == 1
    graph = "<https://quay.example/graph/edition/notice/1>"
    assert run_user_query(changed, f"ASK {{ GRAPH {graph} {{ ?s ?p ?o }} }}").boolean is False
    assert_equals_a_build_from_nothing(changed, books, tmp_path / "scratch")


@pytest.mark.usefixtures("built")
def test_another_vocabulary_is_built_from_nothing(books: Path, home: Path, tmp_path: Path) -> None:
    for path in books.iterdir():
        path.write_text(path.read_text().replace("coat", "boots").replace("Coat", "Boot").replace("H2", "H9"))
    edit(books / "vocabulary.yaml", "https://quay.example/", "https://pier.example/")
    edit(books / "vocabulary.yaml", "label: scarf", "label: long scarf")
    edit(books / "vocabulary.yaml", "label: cap", "label: knit cap")
    changed = ensure(books, home)
    assert_equals_a_build_from_nothing(changed, books, tmp_path / "scratch")


def test_only_changed_files_are_parsed_again(
    built: Generation, books: Path, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import kb.cache.trees as trees

    parsed: list[str] = []
    parse = trees.parse_file
    monkeypatch.setattr(trees, "parse_file", lambda data, name: (parsed.append(name), parse(data, name))[1])
    edit(books / "second.yaml", "Caps", "Warm caps")
    ensure(books, home)
    assert parsed == ["second.yaml"]
    assert len(list((built.folder.parent / "trees").iterdir())) == 3


def test_a_torn_tree_is_parsed_again(built: Generation, books: Path, home: Path) -> None:
    for path in (built.folder.parent / "trees").iterdir():
        path.write_bytes(path.read_bytes()[:-7])
    edit(books / "second.yaml", "Caps", "Warm caps")
    assert ensure(books, home).was_rebuilt


def test_errors_in_the_sources_are_all_reported_and_nothing_is_stored(
    built: Generation, books: Path, home: Path
) -> None:
    edit(books / "second.yaml", "must: cap", "must: hat")
    edit(books / "first.yaml", "must: coat", "must: cloak")
    for _ in range(2):
        with pytest.raises(InvalidDataError) as caught:
            ensure(books, home)
        assert {problem.at.file for problem in caught.value.problems} == {"first.yaml", "second.yaml"}
    assert [path.name for path in built.folder.parent.iterdir() if len(path.name) == 64] == [built.digest]
    edit(books / "second.yaml", "must: hat", "must: cap")
    edit(books / "first.yaml", "must: cloak", "must: coat")
    assert not ensure(books, home).was_rebuilt, "the old state of the sources is still there"


def test_no_folder_and_an_empty_folder(tmp_path: Path, home: Path) -> None:
    for folder in (tmp_path / "none", tmp_path):
        with pytest.raises(InvalidDataError):
            ensure(folder, home)


def test_warnings_are_kept_and_a_misnamed_file_counts(built: Generation, books: Path, home: Path) -> None:
    assert built.problems == ()
    (books / "third.yml").write_text("items: []")
    warned = ensure(books, home)
    assert [problem.severity for problem in warned.problems] == ["warning"]
    assert ensure(books, home).problems == warned.problems
    assert not ensure(books, home).was_rebuilt


@pytest.mark.usefixtures("built")
def test_files_are_seen_as_the_loader_sees_them(books: Path) -> None:
    (books / ".hidden.yaml").write_text("nonsense: [")
    (books / "notes.txt").write_text("nonsense: [")
    (books / "deeper" / ".dotted").mkdir(parents=True)
    (books / "deeper" / "more.yaml").write_text("items: [{id: mitten, label: mitten, kind of: accessory}]")
    (books / "deeper" / ".dotted" / "more.yaml").write_text("items: [{id: sock, label: sock}]")
    found = read_sources(books)
    assert found is not None
    assert dict(found.digests) == load_rule_base(books).digests
    demo = read_sources(data_folder("demo_facts"))
    assert demo is not None
    assert dict(demo.digests) == load_rule_base(data_folder("demo_facts")).digests


def test_the_last_two_generations_are_kept_and_those_in_use(books: Path, home: Path) -> None:
    held = ensure(books, home)
    for step in range(4):
        edit(books / "second.yaml", "Caps", f"Caps {step}")
        ensure(books, home)
        gc.collect()  # what a cycle still holds counts as in use, and `shell` puts collecting off
    shelf = held.folder.parent
    names = {path.name for path in shelf.iterdir() if len(path.name) == 64}
    assert len(names) == 3
    assert held.digest in names
    assert len(open_store(held)) == held.manifest.quads
    assert held.search(("cap",))
    del held
    edit(books / "second.yaml", "Caps", "Caps and so on")
    ensure(books, home)
    assert len([path for path in shelf.iterdir() if len(path.name) == 64]) == 2


def test_a_store_opened_before_its_generation_was_removed_still_answers(
    built: Generation, books: Path, home: Path
) -> None:
    import shutil

    store = open_store(built)
    assert built.search(("coat",))
    shutil.rmtree(built.folder)
    assert candidate_rules(store, ("coat",), ("wear",), DAY) == ("order/1/1-1",)
    assert built.search(("scarf",))
    assert ensure(books, home).was_rebuilt


def test_the_folder_for_caches(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """XDG Base Directory Specification: a relative XDG_CACHE_HOME is ignored; default $HOME/.cache."""
    monkeypatch.setenv("HOME", "/home/someone")
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.delenv("CLOTHBOUND_CACHE", raising=False)
    assert cache_home(None) == (Path("/home/someone/.cache/clothbound"), False)
    monkeypatch.setenv("XDG_CACHE_HOME", "relative/path")
    assert cache_home(None) == (Path("/home/someone/.cache/clothbound"), False)
    monkeypatch.setenv("XDG_CACHE_HOME", "/var/cache/me")
    assert cache_home(None) == (Path("/var/cache/me/clothbound"), False)
    monkeypatch.setenv("CLOTHBOUND_CACHE", "/elsewhere")
    assert cache_home(None) == (Path("/elsewhere"), True)
    assert cache_home(tmp_path) == (tmp_path, True)


def test_shelves_not_used_for_long_are_removed(
    books: Path, home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kb.cache.tidying._SHELVES_KEPT", 2)
    folders = []
    for n in range(4):
        folder = tmp_path / f"books{n}"
        folder.mkdir()
        for path in books.iterdir():
            (folder / path.name).write_bytes(path.read_bytes())
        ensure(folder, home)
        gc.collect()  # as above
        os.utime(shelf_path(home, folder), (1_000_000 + n, 1_000_000 + n))
        folders.append(folder)
    assert [shelf_path(home, folder).exists() for folder in folders] == [False, False, True, True]
    assert not ensure(folders[-1], home).was_rebuilt
    assert ensure(folders[0], home).was_rebuilt


COLD = """
import sys
from pathlib import Path
from kb.cache import decode_base, ensure
generation = ensure(Path(sys.argv[1]), Path(sys.argv[2]))
decode_base(generation.base_json.read_bytes())
heavy = {"yaml", "rdflib", "pyshacl", "whoosh", "rapidfuzz", "prompt_toolkit", "rich", "pyoxigraph",
         "kb.sources", "kb.graph", "kb.cache.build", "subprocess", "tempfile", "shutil"}
print("built" if generation.was_rebuilt else "fresh", *sorted(heavy & set(sys.modules)))
"""


@pytest.mark.usefixtures("built")
def test_a_fresh_cache_imports_nothing_heavy(books: Path, home: Path) -> None:
    """Asked again if the program itself was changed meanwhile, which makes another generation."""
    said: list[list[str]] = []
    while not said or (said[-1][0] == "built" and len(said) < 4):
        found = subprocess.run(
            [sys.executable, "-c", COLD, str(books), str(home)], capture_output=True, text=True, check=True
        )
        said.append(found.stdout.split())
    assert said[-1] == ["fresh"]


def test_parts_name_what_can_be_replaced(built: Generation) -> None:
    import msgspec

    parts = msgspec.json.decode((built.folder / "parts.json").read_bytes(), type=Parts)
    assert {name.rsplit("/graph/")[1] for name in parts.graphs} == {
        "vocabulary",
        "catalogue",
        "derived",
        "edition/order/1",
        "edition/notice/1",
    }
    assert {"item:coat", "clause:order/1/1", "value:weather/foul"} <= set(parts.documents)
