"""Claims put as questions, "Is it true that ...?", whose words bind others: read as guidance is.

The verdicts are decided from the clauses of the demonstration books. No source.
"""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("claim", "verdicts"),
    [
        # Dress Order 7.11: neither near running machinery.
        (
            "neither the wool scarf nor the neck cloth may be worn when machinery is running",
            ["prohibited", "prohibited"],
        ),
        # Dress Order 7.10: either circumstance is enough.
        (
            "the goggles must be worn when hot work is being done or the wearer is painting",
            ["required", "required"],
        ),
        # Dress Order 5.20: for others than coxswains.
        (
            "the coxswain's badge must not be worn except by members with the coxswain appointment",
            ["prohibited"],
        ),
        # Dress Order 7.12: not read as if hot work were done.
        ("the leather apron must be worn unless hot work is not being done", ["required"]),
        # Interim Notice 3: the datum is part of the words.
        (
            "the length of any belt must be 2 to 3 in (50.8 to 76.2 mm) from the outer edge of the buckle "
            "to the free end of the belt",
            ["required"],
        ),
    ],
)
def test_a_claim_gets_the_verdict_of_its_words(base: KnowledgeBase, claim: str, verdicts: list[str]) -> None:
    answers = base.ask(f"Is it true that {claim}?", as_of=DAY)
    assert [answer.verdict for answer in answers] == verdicts


def test_a_permission_with_exceptions_is_asked_for_the_cases_outside_them(base: KnowledgeBase) -> None:
    claim = "the finger ring may be worn unless machinery is running or the wearer is hauling lines"
    (answer,) = base.ask(f"Is it true that {claim}?", as_of=DAY)
    assert answer.reading.query is not None
    facts = {fact: sorted(values.members) for fact, values in answer.reading.query.case.facts}  # type: ignore[union-attr]
    assert facts == {"machinery-running": ["no"], "hauling": ["no"]}


def test_a_question_that_claims_nothing_is_read_as_before(base: KnowledgeBase) -> None:
    (answer,) = base.ask("May the umbrella be carried in boat rig?", as_of=DAY)
    assert answer.verdict == "prohibited"
    (answer,) = base.ask("Is it true that the coxswain is always right?", as_of=DAY)
    assert answer.outcome != "answer"
