"""A circumstance whose words are said in another order or form is the one of the books, and no other is."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base
from tests.reader.test_denials import written


@pytest.mark.parametrize(("books", "line"), written(HERE / "scattered.txt"))
def test_its_words_in_another_order_or_form_tell_it(
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
        (
            "eighth",
            "The passengers have left the train. Must a guard wear the green jacket?",
            "passengers-aboard",
        ),
        ("eighth", "The train is full. Passengers wait outside. Must I wear it?", "passengers-aboard"),
        ("eighth", "My certificate will run out soon. May I wear the white cross?", "certificate-out"),
        ("eighth", "My sister is pregnant. May I leave off the black belt?", "expecting"),
        ("eighth", "My sister is 20 weeks pregnant. May I leave off the black belt?", "expecting"),
        ("eighth", "Someone is working above me. Must I wear the safety helmet?", "track-work"),
        ("eighth", "We travel home. Must I wear the green jacket?", "duty"),
        ("eighth", "I'm 2 metres away from the rails. May I leave off the canvas jacket?", "place"),
        ("seventh", "I'm the second of a marching squad. Must I wear the yellow tabard?", "squad-end"),
        ("seventh", "I'm going to leave the squadron. May I wear the blue anchor?", "left-squadron"),
        ("seventh", "We march along the road. Must I wear the yellow tabard?", "month"),
        ("seventh", "May I wear a sun hat with a button on top in the cockpit?", "grade"),
        ("sixth", "The first guest has gone. May I open the banquet jacket?", "meal-stage"),
        ("sixth", "The last guest has not gone yet. May I open the banquet jacket?", "meal-stage"),
        ("fifth", "Two plain rings, both on my left hand. May I wear them?", "left-handed"),
        ("fifth", "A colleague is guarding a prisoner on a ward. Must I wear Order F?", "activity"),
        ("fifth", "I'm talking to a member of the public. May I wear sunglasses?", "place"),
    ],
)
def test_nothing_is_taken_that_was_not_said(
    books: str, text: str, fact: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    query = base.read(text).query
    assert query is None or all(name != fact for name, _ in query.case.facts)
