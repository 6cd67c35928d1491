"""Small words of closed classes: those that say nothing are passed over, those that say something never."""

from __future__ import annotations

import pytest

from kb.model.questions import Query
from tests.reader.conftest import HERE, Base
from tests.reader.test_denials import written

# What must be named where it is left out, by books: words left out | question.
NAMED = {
    "demo": """
        new | May I wear my new deck shoes in the machinery spaces?
        before going out in the boats | May I wear nail varnish in boat rig before going out in the boats?
        after training | May I wear headphones in town after training?
        small | May I carry a small umbrella in the boat rig?
        pretty | May I wear my pretty earrings in shore rig?
        thin | May I wear a thin neck chain in watch rig?
        cheap | Are cheap sunglasses allowed in town by day?
    """,
    "second": """
        After shift | After shift, may I wear earrings in fell rig?
        tiny | May I wear tiny earrings in fell rig?
        on top | May a novice with a load of 18 kg carry the rope bag on top in fell rig?
    """,
    "third": """
        thin | May I wear a thin bracelet in hall dress?
        plain | May I wear a plain ring in the winding room?
        spare | Must I wear the spare helmet on the glacier?
    """,
    "fourth": """
        big | May I wear a big watch in band dress?
        brand new | Is a brand new wristwatch allowed in band dress?
        issued | Must I wear the issued fire helmet on the incident ground in fire kit?
    """,
    "fifth": """
        old | Is my old bracelet allowed with Order B?
        till then | May I wear a bracelet with Order B till then?
    """,
}
NAMED_LINES = [
    (books, *line.strip().split(" | ")) for books, text in NAMED.items() for line in text.strip().splitlines()
]


def asked(query: Query | None) -> tuple[object, ...] | None:
    """What a query asks, apart from whether it may or must be so; how it is worn is another question."""
    if query is None:
        return None
    return query.kind == "how", query.items, query.aspect, query.value, query.case, query.polarity


@pytest.mark.parametrize(("books", "line"), written(HERE / "closed.txt"))
def test_a_word_that_says_nothing_is_passed_over(
    books: str, line: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    said, plain = (base.read(text).query for text in line.split(" | "))
    assert plain is not None
    assert asked(said) == asked(plain)


@pytest.mark.parametrize(("books", "line"), written(HERE / "closed-matters.txt"))
def test_a_word_that_says_something_is_not(books: str, line: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(books)
    said, plain = (base.read(text).query for text in line.split(" | "))
    assert plain is not None
    assert asked(said) != asked(plain)


@pytest.mark.parametrize(("books", "words", "text"), NAMED_LINES)
def test_what_is_left_out_is_named(books: str, words: str, text: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(books)
    reading = base.read(text)
    assert reading.query is not None
    assert words in [word.strip() for word in reading.unused]


def test_every_class_is_tried_over_all_books() -> None:
    assert {books for books, _ in written(HERE / "closed.txt")} == {
        "demo",
        "second",
        "third",
        "fourth",
        "fifth",
    }
    assert len(written(HERE / "closed.txt")) > 150
