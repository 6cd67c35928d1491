"""Words of time that limit nothing are left away, and what asks from when to when asks when."""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base

SAME = [
    ("demo", "Must I wear the jersey in watch rig all year round?", "Must I wear the jersey in watch rig?"),
    ("demo", "May I wear sunglasses all day?", "May I wear sunglasses?"),
    ("demo", "It's my first week aboard. Must I wear the name strip?", "Must I wear the name strip?"),
    ("demo", "In what hours may I wear sunglasses?", "When may I wear sunglasses?"),
    ("third", "Must the peaked cap be worn every day?", "Must the peaked cap be worn?"),
]


@pytest.mark.parametrize(("books", "text", "plain"), SAME)
def test_words_of_time_that_limit_nothing_are_left_away(
    books: str, text: str, plain: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    said, meant = base.read(text).query, base.read(plain).query
    assert meant is not None
    assert said is not None
    assert (said.kind, said.items, said.aspect, said.case) == (
        meant.kind,
        meant.items,
        meant.aspect,
        meant.case,
    )


@pytest.mark.parametrize("text", ["It is day. May I wear sunglasses?", "May I wear sunglasses by day?"])
def test_a_day_that_is_not_counted_is_the_light_of_it(demo: Base, text: str) -> None:
    query = demo.read(text).query
    assert query is not None
    assert "light" in dict(query.case.facts)


@pytest.mark.parametrize(
    "text",
    [
        "May I wear sunglasses on my first day off?",
        "May I wear sunglasses on the last day?",
        "May I wear sunglasses all day in town?",
        "Was the old limit 50?",
    ],
)
def test_a_day_that_is_counted_is_no_light(demo: Base, text: str) -> None:
    query = demo.read(text).query
    assert query is None or "light" not in dict(query.case.facts)
