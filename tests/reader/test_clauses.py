"""Questions that are answered by showing the one clause that speaks of them, and those that none does."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases, write_reading

BASES = ("demo", "second", "third", "fourth")
CASES = [(name, *case) for name in BASES for case in read_cases(HERE / f"clauses-{name}.txt")]


@pytest.mark.parametrize(("name", "question", "expected"), CASES, ids=[question for _, question, _ in CASES])
def test_clause(request: pytest.FixtureRequest, name: str, question: str, expected: str) -> None:
    base: Base = request.getfixturevalue(name)
    assert write_reading(base.read(question)) == expected


@pytest.mark.parametrize(
    ("question", "kind"),
    [
        ("Is the cap worn in winter?", "ask"),  # of the cap, not of what winter is
        ("Do I salute a Junior Warden?", "abstain"),  # no question of who is a warden
        ("May I wear the neck chain in the dark hours?", "may"),
        ("What do officers wear in winter?", "list"),
    ],
)
def test_a_term_that_is_only_named_is_not_asked_about(demo: Base, question: str, kind: str) -> None:
    reading = demo.read(question)
    told = (
        reading.query.kind if reading.query is not None else "ask" if reading.ask is not None else "abstain"
    )
    assert told == kind


def test_somebody_is_told_where_it_is_asked_who(demo: Base) -> None:
    """A clause that has the words but names nobody is no answer: clause 8.10 has the vest hung up."""
    assert demo.read("Who hangs up the flotation vest?").query is None
