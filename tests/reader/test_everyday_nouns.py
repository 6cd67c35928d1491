"""Everyday nouns in names: of one kind of shirt that goes with a thing, "V-neck jumper", "my ID"."""

from __future__ import annotations

import datetime
from collections.abc import Callable

import pytest

from kb import Reading
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
Read = Callable[[str, str], Reading]


@pytest.fixture(scope="module")
def read() -> Read:
    return lambda name, text: opened(name).read(text, as_of=DAY)


@pytest.mark.parametrize(
    ("book", "text", "item"),
    [
        ("airferry", "First officer on the flight deck. can I wear my v-neck jumper?", "pullover"),
        ("airferry", "can I wear my navy V-neck sweater?", "pullover"),
        ("airferry", "can I keep my pinny on for landing", "cabin-apron"),
        ("airferry", "Can I wear runners on check-in?", "trainers"),
        ("forest", "Can I wear my wool jumper indoors?", "wool-pullover"),
        ("forest", "Can I wear runners on duty?", "trainers"),
        ("infirmary", "Where do I wear my ID?", "identity-card"),
        ("infirmary", "Can I put my ID on a lanyard on the ward?", "identity-card"),
        ("infirmary", "Porter on the hoist: safety boots needed?", "safety-shoes"),
        ("playhouse", "I'm handling flight cases. Do I need toecap boots?", "toe-capped-boots"),
        ("demo", "Does everybody have to have their dog tags on?", "identity-disc"),  # labelled a card, too
        ("forest", "Fawn breeches with patrol dress, nobody minds that surely?", "breeches"),
    ],
)
def test_what_a_thing_is_called_elsewhere(read: Read, book: str, text: str, item: str) -> None:
    query = read(book, text).query
    assert query is not None
    assert query.items[0] == item


@pytest.mark.parametrize(
    ("text", "item", "beside"),
    [
        ("May a purser wear the scarf with the shirt?", "scarf", "worn:cream-shirt"),
        ("Purser told me the scarf goes with the shirt. Is that right?", "scarf", "worn:cream-shirt"),
        ("Can I wear the black tie with the shirt?", "black-tie", "worn:pilot-shirt"),
        ("Is the fleece ok with the trousers?", "ramp-fleece", "worn:work-trousers"),
    ],
)
def test_what_goes_with_a_thing_is_of_its_outfit(read: Read, text: str, item: str, beside: str) -> None:
    query = read("airferry", text).query
    assert query is not None
    assert query.items == (item,)
    assert beside in dict(query.case.facts)


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("airferry", "Can I wear the name badge with the shirt?"),  # worn with more shirts than one
        ("forest", "May I wear my deerstalker on patrol?"),
        ("infirmary", "May I wear my crocs on the ward?"),
        ("airferry", "May I wear my v-neck blouse?"),
        ("infirmary", "Can I wash my scrubs at home?"),  # a cap brought from home is no home
    ],
)
def test_what_may_be_more_things_or_none_is_not_guessed(read: Read, book: str, text: str) -> None:
    assert read(book, text).query is None
