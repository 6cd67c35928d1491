"""What a question says is never passed over: taking a named thing out, or adding one, changes the reading."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases

_TOLD = ("item", "fact", "grade", "measure", "date")
_FILES = ("choir.txt", "demo.txt", "asked-demo.txt", "asked-second.txt")
_SAID_TWICE = ("with or without", "whether or not")


def bases(choir: Base, demo: Base, second: Base) -> dict[str, Base]:
    return dict(zip(_FILES, (choir, demo, demo, second), strict=True))


@pytest.mark.parametrize("file", _FILES)
def test_what_is_taken_out_is_missed(choir: Base, demo: Base, second: Base, file: str) -> None:
    base = bases(choir, demo, second)[file]
    same = []
    for question, _ in read_cases(HERE / file):
        reading = base.read(question)
        if reading.query is None or any(words in question for words in _SAID_TWICE):
            continue
        for span in reading.spans:
            rest = " ".join((question[: span.start] + question[span.end :]).split())
            if span.role in _TOLD and base.read(rest).query == reading.query:
                same.append((question, span.text))
    assert not same


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
def test_what_is_added_is_not_passed_over(choir: Base, demo: Base, second: Base, file: str) -> None:
    base = bases(choir, demo, second)[file]
    same = []
    for question, _ in read_cases(HERE / file)[:60]:
        reading = base.read(question)
        if reading.query is None or reading.query.kind == "source":
            continue
        for words in (words for words in _MORE[file] if words not in question):
            asked = f"{question.rstrip('?.')} {words}"
            if base.read(asked).query == reading.query:
                same.append(asked)
    assert not same
