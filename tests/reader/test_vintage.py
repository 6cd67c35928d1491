"""The year that a thing is from, told in passing, is not the day that is asked about."""

from __future__ import annotations

import datetime
import random

import msgspec
import pytest

from kb import KnowledgeBase
from kb.model.months import month_of
from kb.reader.meaning.query import merge_case
from kb.wording import say_query_on_its_day
from tests.opening import opened
from tests.reader.conftest import Base
from tests.reader.made_queries import make_query

TODAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


ASIDE = [
    ("My jersey from 2019 is brown, ok?", "jersey", "from 2019"),
    ("May I wear my 2019 jersey?", "jersey", "2019"),
    ("May I wear the storm coat I bought in 2018?", "storm-coat", "I bought in 2018"),
    ("May I wear a storm coat made in 2018?", "storm-coat", "made in 2018"),
    ("I still have a watch coat from 1998. May I wear it?", "watch-coat", "from 1998"),
    ("May I wear my storm coat, which is from 2012?", "storm-coat", "which is from 2012"),
    ("Is the knit cap dating back to March 2020 allowed?", "knit-cap", "dating back to March 2020"),
]


@pytest.mark.parametrize(("text", "item", "unused"), ASIDE)
def test_a_year_that_no_rule_takes_is_set_aside_and_named(
    base: KnowledgeBase, text: str, item: str, unused: str
) -> None:
    (answer,) = base.ask(text, as_of=TODAY)
    query = answer.reading.query
    assert query is not None
    assert (query.items, query.case.as_of, query.value is None or query.aspect == "colour") == (
        (item,),
        TODAY,
        True,
    )
    assert unused in answer.reading.unused


def test_a_year_that_a_rule_of_the_thing_takes_is_its_date(base: KnowledgeBase) -> None:
    """Clause 5.22: who was awarded it before 1 May 2019 may wear the old pattern."""
    (old,) = base.ask("My pilot has an old badge from 2015, can he still wear it?", as_of=TODAY)
    (new,) = base.ask("My pilot has an old badge from 2021, can he still wear it?", as_of=TODAY)
    assert (old.verdict, new.verdict) == ("permitted", "prohibited")
    assert old.reading.query is not None
    assert old.reading.query.case.as_of == TODAY


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("Were headphones allowed in 2020?", datetime.date(2020, 1, 1)),
        ("May I wear headphones on watch in 2021?", datetime.date(2021, 1, 1)),
        ("May I wear headphones on watch on 1 April 2027?", datetime.date(2027, 4, 1)),
    ],
)
def test_a_day_that_is_asked_about_is_shown(base: KnowledgeBase, text: str, day: datetime.date) -> None:
    (answer,) = base.ask(text, as_of=TODAY)
    assert answer.reading.query is not None
    assert answer.reading.query.case.as_of == day
    assert answer.reading.text.endswith((f" on {day.day} {day:%B %Y}?", f" in {day.year}?"))
    assert "month" not in answer.reading.text
    again = base.ask(answer.reading.text, as_of=TODAY)
    assert [one.reading.query for one in again] == [answer.reading.query]


def test_the_day_of_asking_is_not_shown(base: KnowledgeBase) -> None:
    (answer,) = base.ask("May a K2 wear the keeper's pin in shore rig?", as_of=TODAY)
    assert "2026" not in answer.reading.text


@pytest.mark.parametrize("seed", range(60))
def test_a_read_back_with_its_day_is_read_as_its_query(demo: Base, second: Base, seed: int) -> None:
    for base in (demo, second):
        query = make_query(random.Random(seed), base.lookup)
        day = random.Random(seed).choice([datetime.date(2025, 6, 3), datetime.date(2027, 2, 1)])
        month = month_of(day, base.lookup)
        facts = dict([month]) if month is not None else {}
        query = msgspec.structs.replace(query, case=merge_case(query.case, facts, day, False, base.lookup))
        text = say_query_on_its_day(base.lookup, query)
        assert query.kind == "compare" or base.read(text).query == query, text
