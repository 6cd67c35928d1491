"""The question sets as data: what is asked, with which facts, on which day, and what is expected."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from kb import demo_folder

HERE = Path(__file__).parent
TODAY = datetime.date(2026, 11, 25)
SMALL = (
    "infirmary",
    "airferry",
    "forest",
    "playhouse",
    "tramway",
    "creamery",
    "cadets",
    "hotel",
    "zoo",
    "racecourse",
    "shipyard",
    "ambulance",
    "museum",
    "quarry",
    "patrol",
    "undertakers",
    "cathedral",
    "school",
    "firebrigade",
    "pool",
)
"""Small rule books, each of another trade."""
BOOKS = {
    "demo": demo_folder(),
    "second": HERE.parent / "second" / "books",
    "third": HERE.parent / "third" / "books",
    "fourth": HERE.parent / "fourth" / "books",
    "fifth": HERE.parent / "fifth" / "books",
    "sixth": HERE.parent / "sixth" / "books",
    "seventh": HERE.parent / "seventh" / "books",
    "eighth": HERE.parent / "eighth" / "books",
    **{name: HERE.parent / "small" / name / "books" for name in SMALL},
}
SHEETS = {
    "demo": "demo",
    "second": "second",
    "third": "third",
    "demo-further": "demo",
    "second-further": "second",
    "third-further": "third",
    "fourth": "fourth",
    "demo-daily": "demo",
    "demo-weekly": "demo",
    "demo-monthly": "demo",
    "demo-quarterly": "demo",
    "demo-yearly": "demo",
    "demo-autumn": "demo",
    "second-daily": "second",
    "third-daily": "third",
    "fifth": "fifth",
    "sixth": "sixth",
    "seventh": "seventh",
    "eighth": "eighth",
    **{name: name for name in SMALL},
    **{f"{name}-further": name for name in SMALL},
}
"""The sets of questions, and the books of each."""
TALKS = (
    "dialogues",
    "dialogues-third",
    "dialogues-further",
    "dialogues-third-further",
    "dialogues-fourth",
    "dialogues-last",
    "dialogues-daily",
    "dialogues-weekly",
    "dialogues-monthly",
    "dialogues-quarterly",
    "dialogues-yearly",
    "dialogues-autumn",
    "dialogues-third-daily",
    "dialogues-fifth",
    "dialogues-sixth",
    "dialogues-sixth-further",
    "dialogues-seventh",
    "dialogues-eighth",
    *(f"dialogues-{name}" for name in SMALL),
    *(f"dialogues-{name}-further" for name in SMALL),
)


class Asked(NamedTuple):
    """One question, or one turn of a dialogue, with what is known beforehand."""

    text: str
    kind: str
    traits: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    as_of: datetime.date
    expect: dict[str, Any]

    @property
    def outcomes(self) -> tuple[str, ...]:
        """What is right to do: the first before all, where several things are."""
        return tuple(_outcomes(self.expect))


def _outcomes(expect: dict[str, Any]) -> Iterator[str]:
    parts = expect.get("any_of") or expect.get("each")
    for part in parts or ():
        yield from _outcomes(part)
    if parts is None:
        yield expect["outcome"]


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


@cache
def _load(name: str) -> Any:
    return yaml.load((HERE / name).read_text("utf-8"), Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))


def questions(name: str, half: str) -> Iterator[Asked]:
    """The questions of one of `SHEETS`, of one half (`open`, `kept`)."""
    sheet = _load(f"questions-{name}.yaml")
    for entry in sheet["questions"]:
        if entry["half"] == half:
            yield _asked(entry, _day(sheet))


def dialogues(half: str, name: str = "dialogues") -> Iterator[Dialogue]:
    """The dialogues of one half, from one of the sheets `TALKS`."""
    sheet = _load(f"{name}.yaml")
    for entry in sheet["dialogues"]:
        if entry["half"] == half:
            turns = tuple(_asked(turn, {**_day(sheet), **entry}) for turn in entry["turns"])
            yield Dialogue(entry["books"], turns)


def _day(sheet: dict[str, Any]) -> dict[str, Any]:
    """The day of all entries of a sheet, where it has one."""
    return {"as_of": sheet["as_of"]} if "as_of" in sheet else {}
