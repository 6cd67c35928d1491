"""Writing down what was decided on words: further entries at the end of a file of their own.

Only lines are added, so that whatever a writer changed in that file stays as it is; no other file is opened
for writing. What the books would be with the new lines is read before anything is written.
"""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import msgspec

from kb.errors import InvalidDataError, Location, Problem, StoreUnavailableError
from kb.files import write_atomically
from kb.model.records import Item, RuleBase
from kb.sources.events import parse_file
from kb.sources.loading import load_trees, read_trees
from kb.sources.report import Report
from kb.sources.sections import gather_sections
from kb.sources.suggested import SECTION, Decision, key, read_decisions
from kb.sources.tree import Entry, Mapping, Node, Scalar, Sequence, Tree
from kb.text import Pattern, visible

FILE = "suggested-words.yaml"
_HEAD = (
    "# Words that were proposed for items, and what was decided; `clothbound suggest-words` adds to it.",
    "# The last entry on a word counts. Meanings are quoted from WordNet 3.0, copyright 2006 by Princeton",
    "# University, which is free to use under its own licence.",
)
_PLAIN = Pattern(r"[A-Za-z](?:[A-Za-z0-9' ./-]*[A-Za-z0-9])?|\d{4}-\d{2}-\d{2}")


class Prepared(msgspec.Struct, frozen=True):
    """What the file would be with the new decisions, and the books with it."""

    path: Path
    data: bytes
    base: RuleBase
    decisions: tuple[Decision, ...]


@contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Keep others who add words to the same books waiting."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError as error:
        raise StoreUnavailableError(f"{folder} cannot be read: {error.strerror}.") from error
    try:
        with suppress(OSError):  # a file system without locks
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def kept_decisions(folder: Path, items: dict[str, Item]) -> tuple[Decision, ...]:
    """All that was decided before, in whichever file of the books it stands."""
    trees, _ = read_trees(folder)
    return _decisions(trees, items)


def prepare(folder: Path, new: tuple[Decision, ...]) -> Prepared:
    """The file with the new decisions behind the old ones, written nowhere yet.

    Raises `InvalidDataError` if the books have errors, if nothing can be added behind the last line of the
    file, or if an entry in a later file would go before a new one.
    """
    trees, problems = read_trees(folder)
    _raise([*problems, *(problem for tree in trees for problem in tree.problems)])
    path = folder / FILE
    before = next((tree for tree in trees if tree.file == FILE), None)
    data = _appended(path.read_bytes() if before else b"", before, new)
    after = parse_file(data, FILE)
    _check_added(before, after, new)
    every = sorted([*(tree for tree in trees if tree.file != FILE), after], key=lambda tree: tree.file)
    base, found = load_trees(every)
    _raise(found)
    assert base is not None
    decisions = _decisions(every, {item.id: item for item in base.items})
    _check_last(decisions, new)
    return Prepared(path, data, base, decisions)


def write(prepared: Prepared) -> None:
    write_atomically(prepared.path, prepared.data)


def _decisions(trees: Iterable[Tree], items: dict[str, Item]) -> tuple[Decision, ...]:
    quiet = Report()
    return read_decisions(gather_sections(list(trees), quiet).entries[SECTION], items, quiet)


def _raise(problems: Iterable[Problem]) -> None:
    errors = tuple(problem for problem in problems if problem.severity == "error")
    if errors:
        raise InvalidDataError(errors)


# -- the text ---------------------------------------------------------------------------------------------


def _appended(data: bytes, before: Tree | None, new: tuple[Decision, ...]) -> bytes:
    """The bytes of the file with an entry for each decision; the old bytes stand unchanged before them."""
    lines: list[str] = [] if data else list(_HEAD)
    section = before.root.get(SECTION) if before is not None and before.root is not None else None
    if section is None:
        lines.append(f"{SECTION}:")
    indent = " " * (section.at.column - 1 if isinstance(section, Sequence) else 2)
    for decision in new:
        pairs = _pairs(decision)
        lines += [
            f"{indent}{'- ' if number == 0 else '  '}{name}: {_scalar(name, text)}"
            for number, (name, text) in enumerate(pairs)
        ]
    end = "\r\n" if b"\r\n" in data else "\n"
    gap = end if data and not data.endswith(b"\n") else ""
    return data + (gap + "".join(line + end for line in lines)).encode()


def _pairs(decision: Decision) -> list[tuple[str, str]]:
    word = decision.word
    pairs = [
        ("word", word.word),
        ("item", word.item),
        ("accepted" if decision.accepted else "refused", word.on.isoformat()),
    ]
    if word.origin is not None:
        pairs += [(name, getattr(word.origin, name)) for name in ("thesaurus", "version", "sense")]
    if word.meaning is not None:
        pairs.append(("meaning", word.meaning))
    return [(name, " ".join(visible(text).split())) for name, text in pairs]


def _scalar(name: str, text: str) -> str:
    if name == "version":
        return f'"{text}"' if not set(text) & set('"\\') else _quoted(text)
    return text if _PLAIN.fullmatch(text) else _quoted(text)


def _quoted(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


# -- what came of it --------------------------------------------------------------------------------------


def _check_added(before: Tree | None, after: Tree, new: tuple[Decision, ...]) -> None:
    """The file must say what it said, and then the new entries: nothing may have been swallowed."""
    old = before.root.entries if before is not None and before.root is not None else ()
    now = after.root.entries if after.root is not None else ()
    others = [entry for entry in old if entry.key.text != SECTION]
    entries = _entries(now)
    added = [
        [(e.key.text, e.value.text) for e in _lines(node) if isinstance(e.value, Scalar)] for node in entries
    ]
    whole = (
        after.readable
        and not after.problems
        and [entry for entry in now if entry.key.text != SECTION] == others
        and entries[: len(entries) - len(new)] == _entries(old)
        and added[len(added) - len(new) :] == [_pairs(decision) for decision in new]
    )
    if not whole:
        at = next((entry.key.at for entry in old if entry.key.text == SECTION), Location(FILE))
        message = "No word can be added behind the last line of this file."
        remedy = (
            f'Let "{SECTION}" be its last section, each entry on lines of its own that begin with a hyphen.'
        )
        raise InvalidDataError((Problem(at, "nothing-added", message, remedy),))


def _entries(root: Iterable[Entry]) -> tuple[Node, ...]:
    section = next((entry.value for entry in root if entry.key.text == SECTION), None)
    return section.nodes if isinstance(section, Sequence) else ()


def _lines(node: Node) -> tuple[Entry, ...]:
    return node.entries if isinstance(node, Mapping) else ()


def _check_last(decisions: Iterable[Decision], new: Iterable[Decision]) -> None:
    now = {key(decision.word.item, decision.word.word): decision for decision in decisions}
    for decision in new:
        last = now[key(decision.word.item, decision.word.word)]
        if last.word.at.file != FILE:
            message = f'The entry on "{visible(decision.word.word)}" here is read after those in {FILE}.'
            remedy = f"Move it to {FILE}, or change it here."
            raise InvalidDataError((Problem(last.word.at, "later-entry", message, remedy),))
