"""Of several garments on which a thing has a place, the place on the one that was named is told."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "seventh")}


@pytest.mark.parametrize(
    ("books", "question", "told", "not_told"),
    [
        ("demo", "Where does the name strip go on the jersey?", "on the service jersey", "storm coat"),
        ("demo", "Where does the name strip go on the storm coat?", "on the storm coat", "service jersey"),
        ("seventh", "Where do I put my grade slide on the glide suit?", "glide suit", "deck jacket"),
    ],
)
def test_the_place_on_the_garment_named_is_told(
    bases: dict[str, KnowledgeBase], books: str, question: str, told: str, not_told: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert told in answer.headline
    assert "must be worn" in answer.headline
    assert not_told not in answer.headline


def test_where_no_garment_is_named_all_places_are_told(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["seventh"].ask("Where do I put my grade slide?", as_of=DAY)
    assert "glide suit" in answer.headline
    assert "deck jacket" in answer.headline
