"""What people say of weather, light, places and themselves reads as what the books have of it."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.test_denials import written


@pytest.mark.parametrize(("books", "line"), written(HERE / "circumstances.txt"))
def test_a_circumstance_in_everyday_words_is_the_one_of_the_books(
    books: str, line: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    said, plain = (base.read(text).query for text in line.split(" | "))
    assert plain is not None
    assert said is not None
    assert (said.items, said.case, said.polarity) == (plain.items, plain.case, plain.polarity)


@pytest.mark.parametrize(
    ("books", "text", "fact"),
    [
        ("demo", "At half past six in the evening, must I wear the high-visibility vest in town?", "light"),
        ("demo", "May I wear the sun hat on watch?", "weather"),
        ("demo", "I'm painting the railings. Must I wear goggles?", "weather"),
        ("demo", "I'm not going to weld. Must I wear the gauntlets?", "hot-work"),
        ("demo", "I used to weld. Must I wear the gauntlets?", "hot-work"),
        ("demo", "I have to paint my boots. Must I wear goggles?", "activity"),
        ("demo", "At the height of summer, must I wear the service jersey in watch rig?", "activity"),
        ("third", "May the hood be down in the wind?", "weather"),
        ("third", "A foot of rope on the ground. May I wear gaiters with tower dress?", "snow-lying"),
        ("fourth", "In the street, are earrings allowed?", "station"),
        ("fourth", "Must a cadet wear the hi-vis tabard in Kiln Street?", "place"),
    ],
)
def test_no_more_is_taken_from_it_than_is_said(
    books: str, text: str, fact: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    query = base.read(text).query
    assert query is None or fact not in dict(query.case.facts)
