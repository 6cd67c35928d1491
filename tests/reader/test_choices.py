"""Questions which of several things is meant, what all is worn, and on one side or both."""

from __future__ import annotations

import pytest

from kb.reader.phrases.choosing import as_list
from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

BASES = ("demo", "second", "third", "fourth")
CASES = [(name, *case) for name in BASES for case in read_cases(HERE / f"choices-{name}.txt")]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[question for _, question, _ in CASES])
def test_choice(request: pytest.FixtureRequest, name: str, question: str, expected: str) -> None:
    base: Base = request.getfixturevalue(name)
    assert write_reading(base.read(question)) == expected


@pytest.mark.parametrize(
    ("question", "expected"),
    [
        ("Footwear for hall rig?", "Which Footwear do I wear in hall rig?"),
        ("Which smock is worn now?", "Which smock do I wear now?"),
        ("Cadet dress: which boots, which belt, which shirt?", "What do I wear in Cadet dress?"),
        ("May I wear boots for hall rig?", None),
        ("Boots must be black for parade?", None),
        ("Cadet dress: which boots?", "Which boots do I wear in Cadet dress?"),
        ("From 1 May 2026, which belt?", "Which belt do I wear From 1 May 2026?"),
        ("What sort of gloves do we need for hauling?", "Which gloves do I wear for hauling?"),
        ("Which gloves are forbidden for rope work?", "Which gloves must I not wear for rope work?"),
        ("Cadet dress: which colour?", None),
        ("The medal: which side?", None),
        ("Which smock may I wear?", None),
    ],
)
def test_what_may_be_told_as_a_list(question: str, expected: str | None) -> None:
    assert as_list(question) == expected
