"""How, where and how many of a thing that may not be worn: the answer is that it may not."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb import KnowledgeBase, demo_folder


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    folder: Path = tmp_path_factory.mktemp("banned")
    return KnowledgeBase.open(demo_folder(), folder)


@pytest.mark.parametrize(
    ("question", "clause"),
    [
        ("May an H2 wear two earrings?", "6.5"),
        ("How many earrings may I wear?", "6.5"),
        ("Where does an H1 wear the cap device?", "5.2"),
        ("What colour is the tarred smock?", "2.7"),
    ],
)
def test_what_may_not_be_worn_is_said_to_be_so(demo: KnowledgeBase, question: str, clause: str) -> None:
    (answer,) = demo.ask(question)
    assert answer.verdict == "prohibited"
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("How many rings may I wear?", "required"),  # at most two
        ("Where does an H2 wear the cap device?", "required"),
        ("How do I wash the storm coat?", "required"),
        ("How many qualification devices may I wear?", "required"),
    ],
)
def test_what_may_be_worn_is_answered_as_asked(demo: KnowledgeBase, question: str, verdict: str) -> None:
    (answer,) = demo.ask(question)
    assert answer.verdict == verdict
    assert answer.reading.query is not None
    assert answer.reading.query.aspect != "wear"
