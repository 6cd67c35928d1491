"""Damage of every kind: it is noticed, nothing in it is run or believed, and the cache is built again."""

from __future__ import annotations

import contextlib
import os
import pickle
import signal
import subprocess
import sys
import time
from pathlib import Path

import msgspec
import pytest

from kb.cache import Generation, ensure
from kb.cache.generation import Manifest, open_generation
from kb.cache.shelf import is_private, locked, make_private, shelf_path
from kb.errors import ClothboundError, InvalidDataError, StoreUnavailableError
from kb.opening import Opening
from kb.sparql import open_store


class Bomb:
    """A pickle that, if ever loaded, leaves a file behind."""

    def __init__(self, target: Path) -> None:
        self.target = target

    def __reduce__(self) -> tuple[object, ...]:
        return (os.mkdir, (str(self.target),))


def files(generation: Generation) -> list[Path]:
    return sorted(path for path in generation.folder.rglob("*") if path.is_file())


def assert_rebuilt(books: Path, home: Path, before: Generation) -> None:
    again = ensure(books, home)
    assert again.was_rebuilt
    assert again.digest == before.digest
    assert len(open_store(again)) == before.manifest.quads
    assert again.search(("coat",))
    assert not ensure(books, home).was_rebuilt


def every_kind(path: Path) -> list[bytes]:
    """The file cut in half, with one bit flipped, and with one byte more."""
    data = path.read_bytes()
    half = len(data) // 2
    flipped = data[:half] + bytes([data[half] ^ 1]) + data[half + 1 :] if data else b"x"
    return [data[:half] or b"y", flipped, data + b"\0"]


def test_any_changed_byte_of_any_file_is_noticed(built: Generation) -> None:
    """Truncated (the store's MANIFEST too), one bit flipped, one byte more: never opened."""
    tried = 0
    for path in files(built):
        good = path.read_bytes()
        for bad in every_kind(path):
            path.write_bytes(bad)
            assert open_generation(built.folder) is None, path.name
            tried += 1
        path.write_bytes(good)
        path.rename(path.with_name("moved"))
        assert open_generation(built.folder) is None, path.name
        path.with_name("moved").rename(path)
    assert tried > 40
    assert any(path.name.startswith("MANIFEST-") for path in files(built))
    assert open_generation(built.folder) is not None


@pytest.mark.parametrize(
    "name", ["manifest", "base.json", "parts.json", "store/CURRENT", "index/_MAIN_1.toc"]
)
def test_damage_leads_to_a_new_build(built: Generation, books: Path, home: Path, name: str) -> None:
    (built.folder / name).write_bytes(b"")
    assert_rebuilt(books, home, built)


def test_a_truncated_store_manifest_leads_to_a_new_build(built: Generation, books: Path, home: Path) -> None:
    """Alone it would open as an empty store without an error."""
    (path,) = built.store.glob("MANIFEST-*")
    path.write_bytes(path.read_bytes()[:20])
    assert_rebuilt(books, home, built)


@pytest.mark.parametrize("in_store", [True, False])
def test_opening_never_asks_a_store_with_another_byte(
    built: Generation, books: Path, home: Path, in_store: bool
) -> None:
    """The store is compared in a thread, while the modules that ask are loaded."""
    path = max(built.store.iterdir(), key=lambda one: one.stat().st_size) if in_store else built.base_json
    data = path.read_bytes()
    half = len(data) // 2
    path.write_bytes(data[:half] + bytes([data[half] ^ 1]) + data[half + 1 :])
    opening = Opening(books, home)
    assert opening.generation().was_rebuilt
    assert len(opening.store()) == built.manifest.quads


def test_opening_a_sealed_store_builds_nothing(built: Generation, books: Path, home: Path) -> None:
    opening = Opening(books, home)
    assert not opening.generation().was_rebuilt
    assert len(opening.store()) == built.manifest.quads


def test_a_file_too_many_leads_to_a_new_build(built: Generation, books: Path, home: Path) -> None:
    (built.index / "_MAIN_99.toc").write_bytes(b"")
    assert_rebuilt(books, home, built)


def test_a_missing_folder_leads_to_a_new_build(built: Generation, books: Path, home: Path) -> None:
    for path in built.store.iterdir():
        path.unlink()
    built.store.rmdir()
    assert_rebuilt(books, home, built)


def test_a_hostile_pickle_in_the_index_is_not_loaded(
    built: Generation, books: Path, home: Path, tmp_path: Path
) -> None:
    mark = tmp_path / "executed"
    bomb = pickle.dumps(Bomb(mark))
    pickle.loads(bomb)
    assert mark.is_dir(), "the bomb works"
    mark.rmdir()
    for path in built.index.iterdir():
        path.write_bytes(bomb)
    with pytest.raises(StoreUnavailableError, match="changed"):
        built.search(("coat",))
    assert_rebuilt(books, home, built)
    assert not mark.exists()


def test_a_hostile_pickle_among_the_trees_is_not_loaded(
    built: Generation, books: Path, home: Path, tmp_path: Path
) -> None:
    mark = tmp_path / "executed"
    for path in (built.folder.parent / "trees").iterdir():
        path.write_bytes(pickle.dumps(Bomb(mark)))
    (books / "second.yaml").write_text((books / "second.yaml").read_text() + "\n# more\n")
    ensure(books, home)
    assert not mark.exists()


def test_a_generation_under_another_name_is_not_believed(built: Generation, books: Path, home: Path) -> None:
    (books / "second.yaml").write_text((books / "second.yaml").read_text() + "\n# more\n")
    changed = ensure(books, home)
    import shutil

    shutil.rmtree(changed.folder)
    shutil.copytree(built.folder, changed.folder)
    assert_rebuilt(books, home, changed)


def test_a_wrong_quad_count_is_not_sealed(built: Generation) -> None:
    from kb.cache.build import _finish_store

    with pytest.raises(StoreUnavailableError, match="instead of"):
        _finish_store(built.store, built.manifest.quads + 1)


def test_a_manifest_of_another_kind_is_not_believed(built: Generation) -> None:
    from kb.digests import digest_name

    data = msgspec.json.encode({"digest": built.digest})
    (built.folder / "manifest").write_bytes(digest_name(data).encode() + b"\n" + data)
    assert open_generation(built.folder) is None
    assert msgspec.json.decode(msgspec.json.encode(built.manifest), type=Manifest) == built.manifest


# -- other people's folders ------------------------------------------------------------------------------


def test_the_shelf_is_private(built: Generation, books: Path, home: Path) -> None:
    shelf = built.folder.parent
    assert shelf.stat().st_mode & 0o777 == 0o700
    assert home.stat().st_mode & 0o777 == 0o700
    shelf.chmod(0o755)
    assert not is_private(shelf)
    assert not ensure(books, home).was_rebuilt, "what others may only have read is kept once it is checked"
    assert shelf.stat().st_mode & 0o777 == 0o700


def test_a_link_in_place_of_the_shelf_is_refused(books: Path, home: Path, tmp_path: Path) -> None:
    home.mkdir()
    (tmp_path / "trap").mkdir()
    shelf_path(home, books).symlink_to(tmp_path / "trap")
    with pytest.raises(StoreUnavailableError, match="somebody else"):
        ensure(books, home)
    assert list((tmp_path / "trap").iterdir()) == []


def test_a_shelf_of_somebody_else_is_refused(
    books: Path, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    make_private(shelf_path(home, books))
    monkeypatch.setattr("kb.cache.shelf.os.geteuid", lambda: 12345)
    with pytest.raises(StoreUnavailableError, match="somebody else"):
        ensure(books, home)


# -- where nothing can be written ------------------------------------------------------------------------


def test_a_chosen_folder_that_cannot_be_made_is_a_clear_error(books: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(StoreUnavailableError, match="CLOTHBOUND_CACHE"):
        ensure(books, tmp_path / "file" / "cache")


WITHOUT = """
import sys
from pathlib import Path
from kb.cache import ensure
from kb.sparql import open_store
generation = ensure(Path(sys.argv[1]))
assert len(open_store(generation)) == generation.manifest.quads
assert generation.search(("coat",))
print(generation.folder)
print(generation.note)
"""


def test_the_usual_folder_that_cannot_be_made_is_done_without(books: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    environment = {name: text for name, text in os.environ.items() if name != "CLOTHBOUND_CACHE"}
    environment |= {"XDG_CACHE_HOME": str(tmp_path / "file"), "TMPDIR": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT, str(books)],
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    folder, note = done.stdout.splitlines()
    assert Path(folder).is_relative_to(tmp_path)
    assert note.endswith("It is built anew each time.")
    assert not list(tmp_path.glob("clothbound-*")), "it goes with the process"


def test_without_any_folder_there_is_a_clear_error(
    books: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.delenv("CLOTHBOUND_CACHE", raising=False)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "file"))
    with pytest.raises(StoreUnavailableError, match="cannot be written"):
        ensure(books)


@pytest.mark.skipif(os.geteuid() == 0, reason="no folder is read-only for root")
def test_a_read_only_folder(built: Generation, books: Path, home: Path) -> None:
    home.chmod(0o500)
    built.folder.parent.chmod(0o500)
    try:
        assert not ensure(books, home).was_rebuilt
        (books / "second.yaml").write_text((books / "second.yaml").read_text() + "\n# more\n")
        with pytest.raises(StoreUnavailableError, match="cannot be written"):
            ensure(books, home)
    finally:
        built.folder.parent.chmod(0o700)
        home.chmod(0o700)


@pytest.mark.parametrize(
    "part", ["shutil.copytree", "pathlib.Path.write_bytes", "os.fsync", "pathlib.Path.rename"]
)
def test_a_full_disk_is_a_clear_error_and_the_old_generation_stays(
    built: Generation, books: Path, home: Path, monkeypatch: pytest.MonkeyPatch, part: str
) -> None:
    """Simulated: each step that writes fails with ENOSPC."""
    import errno

    def full(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    second = books / "second.yaml"
    text = second.read_text()
    second.write_text(text + "\n# more\n")
    with monkeypatch.context() as patched:
        patched.setattr(part, full)
        with pytest.raises(StoreUnavailableError, match="No space left on device"):
            ensure(books, home)
    assert [path.name for path in built.folder.parent.iterdir() if path.name.startswith(".tmp")] == []
    second.write_text(text)
    assert not ensure(books, home).was_rebuilt


# -- several processes, and killed ones ------------------------------------------------------------------

BUILDER = """
import sys
from pathlib import Path
from kb.cache import ensure
generation = ensure(Path(sys.argv[1]), Path(sys.argv[2]))
print(generation.digest, generation.was_rebuilt)
"""


def start_builder(books: Path, home: Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", BUILDER, str(books), str(home)], stdout=subprocess.PIPE, text=True
    )


def test_two_builders_at_once_build_once(books: Path, home: Path) -> None:
    builders = [start_builder(books, home) for _ in range(3)]
    said = [builder.communicate(timeout=60)[0].split() for builder in builders]
    assert len({digest for digest, _ in said}) == 1
    assert sorted(rebuilt for _, rebuilt in said) == ["False", "False", "True"]


def test_without_locks_builders_still_leave_one_good_generation(
    books: Path, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import threading

    monkeypatch.setattr("kb.cache.opening.locked", lambda _: contextlib.nullcontext(False))
    found: list[str] = []
    failed: list[BaseException] = []

    def build() -> None:
        try:
            found.append(ensure(books, home).digest)
        except BaseException as error:
            failed.append(error)

    threads = [threading.Thread(target=build) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failed == []
    assert len(found) == 3
    assert len(set(found)) == 1
    again = ensure(books, home)
    assert open_generation(again.folder) is not None
    assert len(open_store(again)) == again.manifest.quads


def test_a_builder_that_takes_too_long_is_not_waited_for(
    books: Path, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kb.cache.shelf._LOCK_WAIT_S", 0.1)
    shelf = shelf_path(home, books)
    make_private(shelf)
    with locked(shelf), pytest.raises(StoreUnavailableError, match="Another process"):
        ensure(books, home)
    assert ensure(books, home).was_rebuilt


@pytest.mark.slow
def test_a_builder_killed_at_any_moment_does_no_harm(built: Generation, books: Path, home: Path) -> None:
    """kill -9 at moments spread over a whole build: what has a name stays whole, the next build works."""
    second = books / "second.yaml"
    original = second.read_text()
    started = time.monotonic()
    second.write_text(original + "\n# once\n")
    start_builder(books, home).communicate(timeout=60)
    whole = time.monotonic() - started
    killed = 0
    for step in range(9):
        second.write_text(original + f"\n# change {step}\n")
        builder = start_builder(books, home)
        time.sleep(whole * (0.3 + 0.085 * step))
        builder.send_signal(signal.SIGKILL)
        builder.communicate()
        killed += builder.returncode == -signal.SIGKILL
        assert open_generation(built.folder) is not None
        for path in built.folder.parent.iterdir():
            if len(path.name) == 64:
                assert open_generation(path) is not None, "a generation with a name is always whole"
    assert killed > 2
    # The last builder may have been killed after it named its generation: so change the books once more.
    second.write_text(original + "\n# after all\n")
    again = ensure(books, home)
    assert again.was_rebuilt
    assert len(open_store(again)) == again.manifest.quads
    assert [path.name for path in built.folder.parent.iterdir() if path.name.startswith(".")] == []


@pytest.mark.usefixtures("built")
def test_sources_that_cannot_be_read_are_a_problem_of_the_sources(books: Path, home: Path) -> None:
    (books / "gone.yaml").symlink_to(books / "nowhere")
    assert not ensure(books, home).was_rebuilt, "the loader does not see it either"
    (books / "not-text.yaml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(InvalidDataError):
        ensure(books, home)


def test_all_errors_have_one_root() -> None:
    assert issubclass(StoreUnavailableError, ClothboundError)
    assert StoreUnavailableError.exit_code == 5
