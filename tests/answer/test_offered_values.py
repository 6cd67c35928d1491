"""Of many values of a fact those are offered that change the answer; none of them is a reply, too."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from kb.model.values import Choices
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def sixth() -> KnowledgeBase:
    return opened("sixth")


def test_only_what_the_table_tells_apart_is_offered(sixth: KnowledgeBase) -> None:
    """Book of Dress 7.4 as changed: aboard the ferry no ring is worn by anyone handling rope."""
    (answer,) = sixth.ask("May an HL wear a plain ring with Floor?", as_of=DAY)
    assert answer.ask is not None
    assert answer.ask.others
    assert [label for _, label in answer.ask.choices] == [
        "aboard the ferry",
        "on the covered deck",
        "on the open deck",
    ]


@pytest.mark.parametrize("said", ["none of these", "elsewhere", "another one", "at the bar"])
def test_none_of_them_and_any_other_is_a_reply(sixth: KnowledgeBase, said: str) -> None:
    (answer,) = sixth.ask("May an HL wear a plain ring with Floor?", as_of=DAY)
    ((fact, values),) = sixth.reply(answer, said)
    assert fact == "place"
    assert isinstance(values, Choices)
    assert values.members.isdisjoint({"ferry", "covered-deck", "open-deck"})
    (again,) = sixth.ask("May an HL wear a plain ring with Floor?", facts=((fact, values),), as_of=DAY)
    assert again.verdict == "permitted"


def test_all_are_offered_where_the_table_tells_them_all_apart(sixth: KnowledgeBase) -> None:
    (answer,) = sixth.ask("May an HL wear the long coat?", as_of=DAY)
    assert answer.ask is not None
    assert answer.ask.fact == "rig"
    assert not answer.ask.others
    assert {value for value, _ in answer.ask.choices} == {v.id for v in sixth.lookup.facts["rig"].values}
