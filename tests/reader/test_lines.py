"""Several questions in one line: each is answered, and goes on from the one before it."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase, demo_folder

LINES = [
    ("May I wear the scarf? Where does the name strip go? How wide is the belt?",
     ["May anyone wear the wool scarf?", "Where must the name strip be worn?",
      "What must the width of the belt be?"]),
    ("May I wear the scarf and must I wear the service cap outdoors?",
     ["May anyone wear the wool scarf?", "Must anyone wear the service cap, not indoors?"]),
    ("May I wear the scarf at night? And in town?",
     ["May anyone wear the wool scarf, at night?", "May anyone wear the wool scarf, in town, at night?"]),
    ("May an H2 wear a beard? How long may it be?",
     ["May an H2 wear the beard?", "What must the length of the beard be, for an H2?"]),
    ("I am a W2. May I carry an umbrella in town? And in boat rig?",
     ["May a W2 carry the umbrella, in town?", "May a W2 carry the umbrella, in boat rig, in town?"]),
    ("May I wear a sombrero? May I wear the scarf?", ["", "May anyone wear the wool scarf?"]),
]  # fmt: skip


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    return KnowledgeBase.open(demo_folder(), tmp_path_factory.mktemp("lines"))


@pytest.mark.parametrize(("line", "expected"), LINES)
def test_each_question_of_a_line_is_answered(base: KnowledgeBase, line: str, expected: list[str]) -> None:
    answers = base.ask(line, as_of=datetime.date(2026, 11, 25))
    assert [answer.reading.text for answer in answers] == expected
