"""Small words that limit nothing where they stand, and those that do; over several services."""

from __future__ import annotations

import pytest

from kb.reader import split_questions

SIDES = (
    (
        "Must the hands have a band on too, or just the officers?",
        ("Must the hands have a band on?", "And the officers?"),
    ),
    (
        "Do hall staff need to own the parka too, or is it just the cabin branch?",
        ("Do hall staff need to own the parka?", "And the cabin branch?"),
    ),
    (
        "Can you wear a lid instead of the felt hat too, or just instead of the cap?",
        ("Can you wear a lid instead of the felt hat?", "Can you wear a lid instead of the cap?"),
    ),
    (
        "May stores staff wear shorts as well, or is it only us in the workshop?",
        ("May stores staff wear shorts?", "And in the workshop?"),
    ),
    (
        "Is it forbidden when the engine runs, or only when I'm close to it?",
        ("Is it forbidden when the engine runs?", "Is it forbidden when I'm close to it?"),
    ),
    (
        "I'm a K3. May I wear it in town, or only on parade?",
        ("I'm a K3. May I wear it in town?", "And on parade?"),
    ),
    (
        "May I wear it in the boat on watch, or only in town?",
        ("May I wear it in the boat on watch?", "And in town?"),
    ),
    ("Does a deck hand, or only a keeper?", ("Does a deck hand, or only a keeper?",)),
    ("Is the lanyard compulsory or just recommended?", ("Is the lanyard compulsory or just recommended?",)),
    ("Is the lanyard worn for work or just for show?", ("Is the lanyard worn for work or just for show?",)),
    ("May I wear one ring or only two?", ("May I wear one ring or only two?",)),
    ("Is it on both sleeves, or just the left?", ("Is it on both sleeves, or just the left?",)),
)


@pytest.mark.parametrize(("text", "expected"), SIDES, ids=[text for text, _ in SIDES])
def test_each_side_is_a_question(text: str, expected: tuple[str, ...]) -> None:
    assert split_questions(text) == expected
