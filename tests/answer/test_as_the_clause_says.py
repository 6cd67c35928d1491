"""The demo's rules keep what their clauses say: by whom, with which rigs, of which part."""

from __future__ import annotations

import pytest

from kb import KnowledgeBase
from tests.opening import opened


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("question", "facts", "verdict", "clause"),
    [
        ("May I shorten my own sleeves?", {}, "conditional", "1.15"),
        ("May I shorten my own sleeves?", {"by-tailor": "yes"}, "permitted", "1.15"),
        ("May the sleeves of my storm coat be shortened?", {"by-tailor": "no"}, "prohibited", "1.15"),
        ("May I wear the scarf in winter?", {"worn:any-coat": "no", "machinery-running": "no",
         "worn:neck-cloth": "no"}, "silent", None),
        ("May the officer of the day wear the cap indoors in shore rig?", {}, "permitted", "4.2"),
        ("May I wear the service cap indoors in shore rig?", {"holds:officer-of-the-day": "no",
         "activity": "leave"}, "prohibited", "4.2"),
        ("May I wear the rescue medal in parade rig?", {}, "conditional", "5.23"),
        ("May I wear the rescue medal in parade rig?", {"holds:rescue": "yes"}, "permitted", "5.23"),
        ("May I wear the rescue medal in parade rig?", {"holds:rescue": "no"}, "prohibited", "1.7"),
        ("How far may the hair reach?", {"hair-gathered": "no"}, "required", "6.16"),
        ("How far may the hair reach?", {"hair-gathered": "no", "worn:hair-fastening": "yes"},
         "required", "6.16"),
        ("How deep is the turn-up of the knit cap?", {}, "required", "4.10"),
        ("Must I wear the day shirt with the light shirt in workshop rig in extreme heat dress?",
         {"worn:jersey": "no", "place": "lamp-room"}, "not_required", "7.15"),
        ("Must I wear the jersey in workshop rig in extreme heat dress?", {"worn:day-shirt": "no"},
         "not_required", "7.15"),
        ("Must I wear the jersey in workshop rig?", {"worn:day-shirt": "no", "place": "lamp-room"},
         "conditional", "3.8"),
    ],
)  # fmt: skip
def test_the_condition_of_the_clause_is_kept(
    demo: KnowledgeBase, question: str, facts: dict[str, str], verdict: str, clause: str | None
) -> None:
    given = tuple(demo.fact(name, value) for name, value in facts.items())
    (answer,) = demo.ask(question, facts=given)
    assert answer.verdict == verdict, answer.headline
    assert clause is None or clause in [citation.number for citation in answer.citations]


def test_the_cap_is_not_as_high_as_its_turn_up(demo: KnowledgeBase) -> None:
    (answer,) = demo.ask("How high is the knit cap?")
    assert answer.verdict is None
    assert "2 1/4 in" not in answer.headline
