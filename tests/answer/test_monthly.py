"""Who names a month without a year is told of that month to come, where the law of today is another."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "fifth", "playhouse")}


# Depot order 7, clause 1 (written for each summer); Dress Order 3.5 (which smock from which day on).
ASKED = (
    ("fifth", "2026-12-01", "May I wear Order E at Ostrel in July in a vehicle crew?", "Yes", "2027-07-01"),
    ("fifth", "2026-12-01", "May I wear Order E at Ostrel in May in a vehicle crew?", "No", "2026-12-01"),
    ("demo", "2026-02-01", "May I wear the lined smock in boat rig in November?", "Yes", "2026-11-01"),
    ("demo", "2026-02-01", "May I wear the lined smock in boat rig in February?", "No", "2026-02-01"),
    ("demo", "2026-02-01", "May I wear the tarred smock in boat rig in December?", "No", "2026-12-01"),
)


@pytest.mark.parametrize(("books", "today", "text", "lead", "day"), ASKED)
def test_the_month_to_come(
    bases: dict[str, KnowledgeBase], books: str, today: str, text: str, lead: str, day: str
) -> None:
    (answer,) = bases[books].ask(text, as_of=datetime.date.fromisoformat(today))
    assert answer.headline.startswith(lead)
    assert answer.as_of == day
    assert answer.reading.query is not None
    assert answer.reading.query.case.as_of.isoformat() == day


# Company Dress Book 3.4: "except a remembrance poppy from 1 to 11 November"; the part lies within the month.
@pytest.mark.parametrize(
    ("text", "lead"),
    [
        ("Can an usher wear a poppy on 1 November?", "Yes."),
        ("Can an usher wear a poppy on 11 November?", "Yes."),
        ("Can an usher wear a poppy on 12 November?", "No."),
        ("Can an usher wear a poppy on 5 October?", "No."),
    ],
)
def test_a_day_is_in_the_part_of_its_month_that_has_it(
    bases: dict[str, KnowledgeBase], text: str, lead: str
) -> None:
    (answer,) = bases["playhouse"].ask(text, as_of=datetime.date(2026, 6, 1))
    assert answer.headline.startswith(lead)
