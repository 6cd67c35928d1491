"""A question that is not answered has the clauses that speak of it; nothing is read from them."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
# Each with the clause that speaks of it first; the words in braces are understood by nobody.
SPOKEN = (
    ("demo", "How {heavy} is the storm coat?", "2.1"),
    ("demo", "May I {juggle} in the quilted liner?", "2.2"),
    ("demo", "Is a {gopro} on the boat helmet allowed when boarding?", "7.9"),
    ("third", "May I {juggle} in the warning vest?", "34"),
    ("fifth", "May I {twirl} the umbrella on parade?", "6.8"),
    # who is dressed how is told by no clause that dresses nobody, whatever words they share
    ("zoo", "What do I wear when I'm {helping} out for the day as a volunteer?", "1.2"),
)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in {name for name, _, _ in SPOKEN}}


@pytest.mark.parametrize(("books", "text", "clause"), SPOKEN)
def test_the_nearest_clause_stands_first(
    bases: dict[str, KnowledgeBase], books: str, text: str, clause: str
) -> None:
    (answer,) = bases[books].ask(text.replace("{", "").replace("}", ""), as_of=DAY)
    assert answer.outcome == "abstain"
    assert answer.verdict is None
    assert not answer.citations
    assert answer.speaking[0].number == clause
    assert len(answer.speaking) <= 3


def test_what_no_clause_speaks_of_has_none(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["demo"].ask("Who won the match last night?", as_of=DAY)
    assert answer.outcome == "abstain"
    assert answer.speaking == ()


def test_a_clause_out_of_force_is_not_shown(bases: dict[str, KnowledgeBase]) -> None:
    for day in (datetime.date(2023, 6, 1), DAY):
        (answer,) = bases["demo"].ask("How heavy is the storm coat?", as_of=day)
        lookup = bases["demo"].lookup
        shown = [lookup.clauses[one.clause] for one in answer.speaking]
        assert shown
        assert all(c.valid_from <= day and (c.valid_until is None or day < c.valid_until) for c in shown)


def test_what_is_answered_has_none(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["demo"].ask("May I wear the storm coat in boat rig?", as_of=DAY)
    assert answer.speaking == ()
