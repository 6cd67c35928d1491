"""Each of many ways to ask is read as the plain question is, of things of three services in turn."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import write_reading

_VERBS = {"is": "are", "does": "do", "has": "have"}


class Way(NamedTuple):
    """A way to ask, the plain questions that it may be read as, and of what it is tried."""

    text: str
    plain: tuple[str, ...]
    book: str
    thing: str
    rig: str


def ways() -> Iterator[Way]:
    rows: list[list[str]] = []
    plain: tuple[str, ...] = ()
    count = 0
    for line in (HERE / "ways.txt").read_text("utf-8").splitlines():
        if line.startswith("@ "):
            rows = [[*row.split("|"), ""] for row in line.removeprefix("@ ").split(";")]
        elif line.startswith("= "):
            plain = tuple(line.removeprefix("= ").split(" // "))
        elif line and not line.startswith("#"):
            book, thing, rig = rows[count % len(rows)][:3]
            count += 1
            yield Way(line, plain, book, thing, rig)


def filled(text: str, thing: str, rig: str) -> str:
    """The text with its things named, and its verbs in their number."""
    several = thing.endswith("s")
    for slot, word in (("{aX}", thing if several else f"a {thing}"), ("{R}", rig), ("{X}", thing)):
        text = text.replace(slot, word)
    for one, more in _VERBS.items():
        verb = more if several else one
        text = text.replace(f"{{{one}}}", verb).replace(f"{{{one.title()}}}", verb.title())
        if several:
            text = re.sub(rf"\b{one} the {thing}", f"{more} the {thing}", text)
            text = re.sub(rf"\b{one.title()} the {thing}", f"{more.title()} the {thing}", text)
    text = text.replace("{it}", "they" if several else "it")
    return text[0].upper() + text[1:]


WAYS = list(ways())


@pytest.fixture(scope="session")
def bases(demo: Base, second: Base, third: Base) -> dict[str, Base]:
    return {"demo": demo, "second": second, "third": third}


@pytest.mark.parametrize("way", WAYS, ids=[f"{way.text} {way.thing}" for way in WAYS])
def test_is_read_as_the_plain_question(bases: dict[str, Base], way: Way) -> None:
    reading = bases[way.book].read(filled(way.text, way.thing, way.rig))
    assert reading.query is not None, (reading.ask, reading.abstain)
    wanted = {_plainly(bases[way.book], filled(plain, way.thing, way.rig)) for plain in way.plain}
    assert _of_act(write_reading(reading)) in wanted


def _of_act(reading: str) -> str:
    """The reading whatever is asked of the act: "is it forbidden" is read of the same as "may I"."""
    return reading.removesuffix(" verdicts:prohibited").removesuffix(" verdicts:permitted")


@cache
def _plainly(base: Base, text: str) -> str:
    return _of_act(write_reading(base.read(text)))


def test_there_are_enough_ways() -> None:
    assert len({way.text for way in WAYS}) > 1000
    assert {way.book for way in WAYS} == {"demo", "second", "third"}


def said() -> Iterator[tuple[str, str, str]]:
    for line in (HERE / "said.txt").read_text("utf-8").splitlines():
        if line and not line.startswith("#"):
            book, _, rest = line.partition(": ")
            question, _, expected = rest.rpartition(" | ")
            yield book, question, expected


@pytest.mark.parametrize(("book", "question", "expected"), list(said()))
def test_is_read_as_said(bases: dict[str, Base], book: str, question: str, expected: str) -> None:
    assert write_reading(bases[book].read(question)) == expected
