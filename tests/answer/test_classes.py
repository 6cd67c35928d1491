"""A class of things is answered by its rule where no kind of it is left to be asked about."""

from __future__ import annotations

import json

import pytest

from kb import answer_to_json
from tests.answer.conftest import Ask
from tests.opening import opened


@pytest.mark.parametrize(
    ("book", "text", "headline", "beside"),
    [
        # "No other pins are worn."
        ("airferry", "May I wear a lapel pin?", "No. Any pin other than the charity pin must", "charity pin"),
        ("airferry", "Are pins allowed?", "No. Any pin other than the charity pin must", "charity pin"),
        ("airferry", "Can I wear a Christmas pin?", "No. Any pin other than the charity pin", "charity pin"),
        ("playhouse", "May I wear a union pin?", "No. Any other pin of another body must not", "poppy"),
        # "Rings, watches, bracelets and necklaces must be taken off for work with a chainsaw"
        ("forest", "Can I wear jewellery while I'm using the chainsaw?", "No. The ring must not", "earrings"),
        # "No ring may be worn in clinical areas except one plain wedding band."
        ("infirmary", "May I wear a ring on the ward?", "No. Any ring other than the plain wedding", "band"),
        ("infirmary", "Can a nurse wear rings in clinical areas?", "No. Any ring other than the", "stone"),
        ("infirmary", "Are rings banned on the ward?", "Yes. Any ring other than the plain", "band"),
        ("infirmary", "Can I wear a signet ring on the ward?", "No. Any ring other than the plain", "band"),
        # what goes by none of the names of the class is none of its kinds, however many there are
        (
            "pool",
            "Is my nose ring all right on reception?",
            "No. Any jewellery other than the plain",
            "plain ring",
        ),
        ("school", "Can I wear a nose stud in day dress?", "No. Any jewellery other than", "signet ring"),
        ("demo", "nose stud ok?", "No. Any jewellery other than the finger ring or the neck", "finger ring"),
        (
            "demo",
            "may I wear an anklet?",
            "No. Any jewellery other than the finger ring or the neck",
            "finger ring",
        ),
    ],
)
def test_a_class_that_is_closed_is_answered_with_its_exceptions(
    ask: Ask, book: str, text: str, headline: str, beside: str
) -> None:
    answer = ask(book, text)
    assert answer.headline.startswith(headline)
    assert any(beside in said for said in answer.reading.beside)


@pytest.mark.parametrize(
    ("book", "text", "item"),
    [
        ("airferry", "Pilot, just going through the terminal, can I take the jacket off?", "navy-jacket"),
        ("airferry", "Purser. May I take my jacket off?", "teal-jacket"),
        ("airferry", "captain on the apron at noon. Do I need a hi-vis?", "waistcoat"),
    ],
)
def test_of_what_somebody_wears_the_kind_is_meant_that_is_theirs(
    ask: Ask, book: str, text: str, item: str
) -> None:
    query = ask(book, text).reading.query
    assert query is not None
    assert query.items == (item,)


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("third", "Can I wear the gloves?"),  # each of them has its use
        ("forest", "May I wear jewellery?"),
        ("forest", "May I carry a bag?"),
        ("playhouse", "May I wear a pin?"),
        ("airferry", "Can I take my jacket off?"),  # nobody says whose
        ("demo", "may I wear jewellery?"),
    ],
)
def test_kinds_of_which_more_may_be_worn_are_asked_about(ask: Ask, book: str, text: str) -> None:
    assert ask(book, text).outcome == "ask"


def test_what_is_said_of_a_class_as_such_is_verified(ask: Ask) -> None:
    answer = ask("airferry", "May I wear a lapel pin?")
    saved = json.loads(answer_to_json(answer))
    assert opened("airferry").verify(saved) is None
    saved["reading"]["as_such"] = False  # of the charity pin itself nothing of the kind is said
    assert opened("airferry").verify(saved) is not None


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        ("infirmary", "Plain wedding ring on the ward ok?", "Yes. The plain wedding band may be worn."),
        (
            "infirmary",
            "May I wear a plain wedding ring on the ward?",
            "Yes. The plain wedding band may be worn.",
        ),
        ("infirmary", "May I wear plain studs at work?", "Yes. The plain stud earrings may be worn"),
        (
            "airferry",
            "I'm on check-in. Can I wear plain black leather trainers?",
            "Yes. The black trainers may",
        ),
        ("forest", "Can I wear a plain wedding ring on patrol?", "Yes. The ring may be worn."),
        # no rule is on the colour of what may not be had at all
        ("forest", "Can I carry a red knife at a ceremony?", "No. The knife must not be carried."),
        ("infirmary", "Is a pink hair ribbon allowed?", "No. The hair ribbon must not be worn"),
        (
            "infirmary",
            "Staff nurse on duty. Can I wear scarlet nail polish?",
            "No. The nail varnish must not be",
        ),
    ],
)
def test_what_a_thing_is_anyway_changes_nothing(ask: Ask, book: str, text: str, headline: str) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("infirmary", "A jewelled wedding ring on the ward?"),
        ("infirmary", "May I wear a broad wedding ring on the ward?"),
        ("airferry", "Check-in agent. Canvas trainers?"),
    ],
)
def test_what_else_is_told_of_a_thing_is_not_passed_over(ask: Ask, book: str, text: str) -> None:
    assert not ask(book, text).headline.startswith("Yes")


@pytest.mark.parametrize(
    ("book", "text", "item"),
    [
        ("hotel", "Can I wear a nose stud?", "facial-piercing"),
        ("fifth", "nose ring on duty?", "facial-piercing"),
        ("hotel", "Bangle?", "jewellery"),
        ("quarry", "nose ring?", "jewellery"),  # which has no piercing of its own
    ],
)
def test_a_stud_in_the_nose_is_a_piercing_where_the_books_have_it(
    ask: Ask, book: str, text: str, item: str
) -> None:
    answer = ask(book, text)
    assert answer.reading.query is not None
    assert answer.reading.query.items == (item,)
    assert answer.headline.startswith("No. ")


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        # "not more than two qualification devices": the one class of badges that is counted
        ("demo", "May I wear all three badges at once?", "No. The number of qualification devices worn must"),
        ("demo", "How many badges can I have on together?", "The number of qualification devices worn must"),
        ("forest", "Can I have all four badges on my sleeve?", "No. The number of badges of skill worn must"),
    ],
)
def test_of_badges_those_are_counted_of_which_a_rule_says_how_many(
    ask: Ask, book: str, text: str, headline: str
) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize(
    ("book", "text"),
    [
        ("demo", "May I wear a badge?"),
        ("school", "how many badges on the jacket?"),
        ("demo", "baseball cap?"),
    ],
)
def test_it_is_asked_which_where_no_count_or_rule_settles_it(ask: Ask, book: str, text: str) -> None:
    assert ask(book, text).outcome == "ask"
