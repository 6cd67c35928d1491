"""What became of a rule, and who may let somebody off it: told by the clause that says so, or not at all."""

from __future__ import annotations

import datetime

import pytest

from tests.opening import opened
from tests.reader.conftest import HERE, base_of
from tests.reader.notation import TODAY, read_cases, write_reading

CASES = [case for name in ("happened", "let_off") for case in read_cases(HERE / f"{name}.txt")]


@pytest.mark.parametrize(("asked", "expected"), CASES, ids=[asked for asked, _ in CASES])
def test_the_clause_that_does_it_is_read(asked: str, expected: str) -> None:
    name, _, question = asked.partition(": ")
    assert write_reading(base_of(name).read(question)) == expected


@pytest.mark.parametrize(
    ("name", "first", "further", "clause"),
    [
        ("forest", "May my beard be 18 mm?", "since when? it used to be 25", "dunmere-amendment/2026/1"),
        (
            "airferry",
            "Can I wear a nose stud?",
            "since when is that?",
            "larkfield-notice-1/2026/3",
        ),
        ("infirmary", "Can a porter wear a fob watch?", "since when?", "ashmere-amendment/2026/A1"),
    ],
)
def test_since_when_in_a_talk(name: str, first: str, further: str, clause: str) -> None:
    base = base_of(name)
    query = base.read(further, previous=base.read(first)).query
    assert query is not None
    assert query.clause == clause


def test_a_clause_is_shown_with_what_disables_a_rule_of_it() -> None:
    base = opened("infirmary")
    (answer,) = base.ask("What time can porters wear training shoes?", as_of=TODAY)
    assert [citation.number for citation in answer.citations] == ["6.1", "A2"]
    (before,) = base.ask("What does clause 6.1 say?", as_of=datetime.date(2026, 3, 1))
    assert [citation.number for citation in before.citations] == ["6.1"]
