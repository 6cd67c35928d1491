"""A time of the day reads as the hours that the books have, and as none where it may lie in them or not."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, base_of
from tests.reader.test_denials import written


@pytest.mark.parametrize(("books", "line"), written(HERE / "clocked.txt"))
def test_a_time_of_the_day_is_in_the_hours_of_the_books(books: str, line: str) -> None:
    base = base_of(books)
    said, plain = (base.read(text).query for text in line.split(" | "))
    assert plain is not None
    assert said is not None
    assert (said.items, said.case, said.polarity) == (plain.items, plain.case, plain.polarity)


@pytest.mark.parametrize(
    ("books", "text", "fact"),
    [
        ("tramway", "Inspector on the cars at 9:30: body camera?", "after-eight"),
        ("tramway", "Inspector on the cars in the evening. Body camera?", "after-eight"),
        ("tramway", "Inspector on the cars at nine: body camera?", "after-eight"),
        ("cadets", "Must a cadet wear the sun hat afloat at 15:00 in July?", "hour"),
        ("cadets", "Must a cadet wear the sun hat afloat at 14 degrees in July?", "hour"),
    ],
)
def test_on_the_edge_or_in_part_it_is_in_none(books: str, text: str, fact: str) -> None:
    query = base_of(books).read(text).query
    assert query is None or fact not in dict(query.case.facts)
