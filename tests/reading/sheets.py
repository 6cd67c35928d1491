"""The question sets as data: what is asked, with which facts, on which day, and what is expected."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from kb import demo_folder

HERE = Path(__file__).parent
TODAY = datetime.date(2026, 11, 25)
BOOKS = {"demo": demo_folder(), "second": HERE.parent / "second" / "books"}


class Asked(NamedTuple):
    """One question, or one turn of a dialogue, with what is known beforehand."""

    text: str
    kind: str
    traits: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    as_of: datetime.date
    expect: dict[str, Any]


class Dialogue(NamedTuple):
    """Turns that follow each other, over one folder of rule books."""

    books: str
    turns: tuple[Asked, ...]


def _facts(entry: dict[str, Any]) -> tuple[tuple[str, str], ...]:
    named = [(name, str(entry[name])) for name in ("grade", "rig") if name in entry]
    return (*named, *((name, _plain(value)) for name, value in entry.get("facts", {}).items()))


def _plain(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def _asked(entry: dict[str, Any], before: dict[str, Any]) -> Asked:
    as_of = entry.get("as_of", before.get("as_of", TODAY))
    return Asked(
        text=str(entry["q"]),
        kind=entry["kind"],
        traits=tuple(entry["traits"]),
        facts=_facts({**before, **entry}),
        as_of=as_of if isinstance(as_of, datetime.date) else datetime.date.fromisoformat(str(as_of)),
        expect=entry["expect"],
    )


def _load(name: str) -> Any:
    return yaml.safe_load((HERE / name).read_text("utf-8"))


def questions(books: str, half: str) -> Iterator[Asked]:
    """The questions over one folder of rule books, of one half (`open`, `kept`)."""
    for entry in _load(f"questions-{books}.yaml")["questions"]:
        if entry["half"] == half:
            yield _asked(entry, {})


def dialogues(half: str) -> Iterator[Dialogue]:
    """The dialogues of one half."""
    for entry in _load("dialogues.yaml")["dialogues"]:
        if entry["half"] == half:
            yield Dialogue(entry["books"], tuple(_asked(turn, entry) for turn in entry["turns"]))
