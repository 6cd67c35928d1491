"""What protects the same, and is a duty in the case told, stands beside an answer about another thing."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
GAUNTLETS = "But the heat gauntlets must be worn here (Dress Order (2024) 7.12)."


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("Do I need gloves for welding?", True),
        ("Can I weld without gloves?", True),
        ("Do I need gloves?", False),  # nothing is told of the case
        ("Do I need goggles for hot work?", False),  # they protect the eyes, and must be worn themselves
        ("May I wear the knit cap when hot work is being done?", False),  # it protects no hands
    ],
)
def test_what_protects_the_same_is_told_where_it_is_a_duty(
    demo: KnowledgeBase, question: str, told: bool
) -> None:
    (answer,) = demo.ask(question, as_of=DAY)
    assert answer.outcome == "answer"
    assert (GAUNTLETS in answer.headline) == told
