"""What a question says is never passed over: taking a named thing out, or adding one, changes the reading."""

from __future__ import annotations

import msgspec
import pytest

from kb.model.records import Case
from kb.reader import read_question
from kb.reader.doubts.lost import names_lost, with_nothing_lost
from tests.reader.conftest import HERE, Base
from tests.reader.notation import TODAY, read_cases
from tests.reading.sheets import questions

_TOLD = ("item", "fact", "grade", "measure", "date")
_FILES = ("choir.txt", "demo.txt", "asked-demo.txt", "asked-second.txt", "words-third.txt")
_SAID_TWICE = ("with or without", "whether or not", "or no helmet")


def bases(choir: Base, demo: Base, second: Base, third: Base) -> dict[str, Base]:
    return dict(zip(_FILES, (choir, demo, demo, second, third), strict=True))


@pytest.mark.parametrize("file", _FILES)
def test_what_is_taken_out_is_missed(choir: Base, demo: Base, second: Base, third: Base, file: str) -> None:
    base = bases(choir, demo, second, third)[file]
    same = []
    for question, _ in read_cases(HERE / file):
        reading = base.read(question)
        if reading.query is None or any(words in question for words in _SAID_TWICE):
            continue
        for span in reading.spans:
            if any(span.text in told for told in reading.unused):
                continue  # it is told that it was not used
            if reading.query.kind in ("who", "when") and span.role in ("fact", "grade"):
                continue  # "must I be a K3 to wear it" is answered by who may
            rest = " ".join((question[: span.start] + question[span.end :]).split())
            if span.role in _TOLD and base.read(rest).query == reading.query:
                same.append((question, span.text))
    assert not same


_SHEETS = ("demo", "second", "third")


@pytest.mark.parametrize("books", _SHEETS)
def test_every_name_is_in_what_is_asked(demo: Base, second: Base, third: Base, books: str) -> None:
    base = dict(zip(_SHEETS, (demo, second, third), strict=True))[books]
    lost = []
    for asked in questions(books, "open"):
        found = read_question(
            asked.text, lexicon=base.lexicon, lookup=base.lookup, case=Case(as_of=asked.as_of)
        )
        lost += [(asked.text, span.text) for span in names_lost(found, base.lookup)]
    assert not lost


def test_a_name_that_is_lost_stops_the_question(demo: Base) -> None:
    """Whatever part of the reader passes a name over, the question is not answered."""
    reading = demo.read("May I wear the storm coat with the scarf in boat rig at night?")
    assert reading.query is not None
    for fact in ("rig", "worn:scarf", "daylight"):
        facts = tuple((name, values) for name, values in reading.query.case.facts if name != fact)
        if len(facts) == len(reading.query.case.facts):
            continue
        less = msgspec.structs.replace(reading.query, case=Case(as_of=TODAY, facts=facts))
        stopped = with_nothing_lost(msgspec.structs.replace(reading, query=less), demo.lookup)
        assert stopped.query is None
        assert stopped.abstain is not None
        assert stopped.abstain.words


_MORE = {
    "demo.txt": (
        "2 in wide", "in red", "at 7 degrees", "for 3 days", "when the sea is rough", "with the umbrella",
        "without the goggles", "on 3 May 2024", "but not at night", "after dark", "only", "three",
        "at least 2", "backwards", "granted by the superintendent", "20", "and the kilt",
        "under the station order",
    ),
    "asked-second.txt": (
        "2 in wide", "in red", "at 7 degrees", "for 3 days", "with the radio", "without the goggles",
        "on 3 May 2024", "if joined in 2011", "only", "three", "at least 2", "20", "15 kg", "40 mph",
        "and the kilt",
    ),
}  # fmt: skip


@pytest.mark.parametrize("file", _MORE)
def test_what_is_added_is_not_passed_over(
    choir: Base, demo: Base, second: Base, third: Base, file: str
) -> None:
    base = bases(choir, demo, second, third)[file]
    same = []
    for question, _ in read_cases(HERE / file)[:60]:
        reading = base.read(question)
        if reading.query is None or reading.query.kind == "source":
            continue
        for words in (words for words in _MORE[file] if words not in question):
            if words == "only" and question.rstrip("?.").endswith("granted by the superintendent"):
                continue  # whoever is named has granted it alone
            asked = f"{question.rstrip('?.')} {words}"
            if base.read(asked).query == reading.query:
                same.append(asked)
    assert not same
