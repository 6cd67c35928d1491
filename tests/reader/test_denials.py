"""What is said not to be so, and who has not granted it, in people's own words, reads as the plain denial."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.model.values import NO
from tests.reader.conftest import HERE, Base

# What looks like it and says something else, with what must not be read.
UNLIKE = {
    "demo": """
        Has the Superintendent granted extreme heat dress?
        The engine isn't off. Must I wear ear defenders?
        Are the engines off in the engine room?
        Nobody told me shirt order was granted. May I roll the sleeves of my day shirt?
        The engine's on the slipway. Must I wear ear defenders?
        The Master has ordered nothing but shirt order. May I roll the sleeves of my day shirt?
    """,
    "third": """
        Nobody has ordered mourning except the Section Master. May I wear the mourning band?
        I have a doctor's note. May I wear sports shoes with cabin dress?
    """,
    "fourth": """
        My doctor told me to rest. May I wear sunglasses?
        The bandmaster never said we couldn't. May I leave off the band tunic?
    """,
}


def written(path: Path) -> list[tuple[str, ...]]:
    """The lines of a file of questions that read alike, each with the books that it is asked of."""
    lines = path.read_text("utf-8").splitlines()
    return [tuple(line.split(": ", 1)) for line in lines if line and not line.startswith("#")]


UNLIKE_LINES = [(books, line.strip()) for books, text in UNLIKE.items() for line in text.strip().splitlines()]


@pytest.mark.parametrize(("books", "line"), written(HERE / "denied.txt"))
def test_a_denial_in_other_words_is_the_plain_one(
    books: str, line: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    said, plain = (base.read(text).query for text in line.split(" | "))
    assert plain is not None
    assert said is not None
    assert (said.items, said.case, said.polarity) == (plain.items, plain.case, plain.polarity)


def test_nothing_is_at_rest_where_it_is_only_asked_or_said_until_when(demo: Base) -> None:
    for text in (
        "Until nobody's hauling lines, must I wear the deck gloves?",
        "The generator isn't switched off. Must I wear ear defenders?",
    ):
        query = demo.read(text).query
        assert query is None or NO not in dict(query.case.facts).values(), text


@pytest.mark.parametrize(("books", "text"), UNLIKE_LINES)
def test_what_denies_something_else_is_not_taken_for_it(
    books: str, text: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    query = base.read(text).query
    facts = dict(query.case.facts) if query is not None else {}
    families = {base.lookup.facts[fact].family for fact in facts}
    assert "authorisation" not in families
    assert facts.keys().isdisjoint(("machinery-running", "order", "medical-waiver", "medical-advice"))
