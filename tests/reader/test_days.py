"""Days in every spelling, stretches of days, and the month in which something was awarded."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from kb.reader.pieces.days import days_of
from kb.reader.pieces.spelled import days_of_months
from tests.opening import opened
from tests.reader.conftest import Base

TODAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("November 3rd, watch rig.", (3, 11, 0)),
        ("on Nov 3?", (3, 11, 0)),
        ("Nov. 3, watch rig", (3, 11, 0)),
        ("the 3rd of Nov.", (3, 11, 0)),
        ("on November the 3rd", (3, 11, 0)),
        ("on May 3 in rain", (3, 5, 0)),
        ("the twenty-first of December 2026", (21, 12, 2026)),
        ("watch rig on 25/12/2026", (25, 12, 2026)),
        ("12/25/2026", (25, 12, 2026)),
        ("3.11.2026 in rain", (3, 11, 2026)),
    ],
)
def test_a_day_is_read_as_it_is_written(text: str, day: tuple[int, int, int]) -> None:
    assert [(said.day, said.month, said.year) for said in days_of_months(text)] == [day]


@pytest.mark.parametrize(
    "text",
    [
        "May 3 badges be worn?",
        "May 3rd Hands wear it?",
        "In November 3 badges are worn",
        "November 31st",
        "3/11/2026",  # one day here, another there
        "a 3/4 in strip",
        "clause 5.12.1",
        "the marching 3",
    ],
)
def test_what_is_no_day_for_certain_is_not_read_as_one(text: str) -> None:
    assert list(days_of_months(text)) == []


@pytest.mark.parametrize(
    ("said", "first", "last"),
    [
        ("first week of october 2026", (2026, 10, 1), (2026, 10, 7)),
        ("the last week of february 2028", (2028, 2, 23), (2028, 2, 29)),
        ("second half of november 2026", (2026, 11, 16), (2026, 11, 30)),
        ("whole of september 2026", (2026, 9, 1), (2026, 9, 30)),
        ("end of the year", (2026, 12, 31), (2026, 12, 31)),
        ("late nov 2026", (2026, 11, 30), (2026, 11, 30)),
    ],
)
def test_a_part_of_a_month_is_its_days(said: str, first: tuple[int, ...], last: tuple[int, ...]) -> None:
    assert days_of(said.split(), TODAY) == (datetime.date(*first), datetime.date(*last))


@pytest.mark.parametrize(
    "said", ["last badge of october 2026", "first week of the month", "half of november"]
)
def test_other_words_are_no_part_of_a_month(said: str) -> None:
    assert days_of(said.split(), TODAY) is None or said.startswith("first week of the month")


@pytest.mark.parametrize(
    ("books", "text", "month"),
    [
        ("demo", "Must I wear the jersey in watch rig in late November?", "november"),
        ("demo", "Must I wear the jersey in watch rig in the first week of May?", "may"),
        ("demo", "Must I wear the jersey in watch rig in all of January?", "january"),
        ("fourth", "May the tie be left off in station dress in early July?", "july"),
    ],
)
def test_a_part_of_a_month_without_a_year_is_in_that_month(
    books: str, text: str, month: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    query = base.read(text).query
    assert query is not None
    assert month in str(dict(query.case.facts)["month"])


DAYS = [
    ("Tarred smock in boat rig in the last week of October 2026?", (2026, 10, 25)),
    ("November 3rd, boat rig. May I wear the tarred smock?", (2026, 11, 3)),
    ("May I wear the tarred smock in late August 2026?", (2026, 8, 31)),
    ("May I wear the tarred smock on 25/12/2026?", (2026, 12, 25)),
]


@pytest.mark.parametrize(("text", "day"), DAYS)
def test_a_question_is_answered_on_its_day(base: KnowledgeBase, text: str, day: tuple[int, int, int]) -> None:
    (answer,) = base.ask(text, as_of=TODAY)
    assert answer.reading.query is not None
    assert answer.reading.query.case.as_of == datetime.date(*day)


@pytest.mark.parametrize(
    "text", ["May I wear the tarred smock from June 2026 on?", "The tarred smock from June 2026 onwards?"]
)
def test_a_stretch_in_which_the_rules_change_is_asked_about(base: KnowledgeBase, text: str) -> None:
    """Clause 2.7: the tarred smock is worn until 30 September 2026."""
    (answer,) = base.ask(text, as_of=TODAY)
    assert answer.ask is not None
    assert [day for _, day in answer.ask.choices] == ["1 June 2026", "1 October 2026"]


AWARDED = [
    ("Is the old pilot's badge ok if awarded before May 2019?", "before 1 May 2019", None),
    ("Is the old pilot's badge ok if awarded in May 2019?", "from 1 May 2019 to 31 May 2019", "prohibited"),
    ("Is the old pilot's badge ok if awarded after April 2019?", "on or after 1 May 2019", "prohibited"),
    ("Is the old pilot's badge ok if awarded in Apr 2018?", "from 1 April 2018 to 30 April 2018", None),
    (
        "My badge was awarded in april 2018. old pattern still fine?",
        "from 1 April 2018 to 30 April 2018",
        None,
    ),
    ("Badge awarded April 2019. Old pattern fine?", "from 1 April 2019 to 30 April 2019", None),
]


@pytest.mark.parametrize(("text", "date", "verdict"), AWARDED)
def test_the_month_of_an_award_is_no_year_and_no_day_asked_about(
    base: KnowledgeBase, text: str, date: str, verdict: str | None
) -> None:
    """Clause 5.22: who was awarded it before 1 May 2019 may wear the old pattern."""
    (answer,) = base.ask(text, as_of=TODAY)
    query = answer.reading.query
    assert query is not None
    assert (query.items, query.case.as_of) == (("old-pilot-badge",), TODAY)
    assert f"date of award {date}" in answer.reading.text
    assert (answer.verdict == "prohibited") == (verdict == "prohibited")


@pytest.mark.parametrize(
    ("said", "day"),
    [
        # the Easters of 2024, 2026 and 2027 as in published almanacs, from memory
        ("boxing day", (2026, 12, 26)),
        ("new year's day", (2027, 1, 1)),
        ("new year's eve", (2026, 12, 31)),
        ("remembrance sunday", (2027, 11, 14)),
        ("last remembrance sunday", (2026, 11, 8)),
        ("remembrance sunday 2020", (2020, 11, 8)),
        ("advent sunday", (2026, 11, 29)),
        ("good friday", (2027, 3, 26)),
        ("easter monday", (2027, 3, 29)),
        ("next easter", (2027, 3, 28)),
        ("easter of 2024", (2024, 3, 31)),
        ("whit sunday", (2027, 5, 16)),
        ("ash wednesday", (2027, 2, 10)),
        ("st andrew's day", (2026, 11, 30)),
        ("christmas last year", (2025, 12, 25)),
        ("this summer", (2026, 7, 15)),
        ("this winter", (2027, 1, 15)),
        ("two days before christmas", (2026, 12, 23)),
        ("the week after easter", (2027, 4, 4)),
        ("the second monday of december", (2026, 12, 14)),
        ("last friday in january", (2027, 1, 29)),
        ("last sunday of december 2026", (2026, 12, 27)),
    ],
)
def test_a_named_day_is_the_next_one(said: str, day: tuple[int, int, int]) -> None:
    assert days_of(said.split(), TODAY) == (datetime.date(*day), datetime.date(*day))


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("boxing day", (2025, 12, 26)),
        ("easter", (2026, 4, 5)),
        ("this spring", (2026, 4, 15)),
        ("friday", (2026, 11, 20)),
        ("next easter", (2027, 3, 28)),
    ],
)
def test_a_day_of_what_is_over_is_the_last_one(said: str, day: tuple[int, int, int]) -> None:
    assert days_of(said.split(), TODAY, past=True) == (datetime.date(*day), datetime.date(*day))


@pytest.mark.parametrize(
    "said", ["mother's day", "sunday best", "good", "boxing", "the new year", "fifth monday of may", "eve"]
)
def test_other_words_are_no_named_day(said: str) -> None:
    assert days_of(said.split(), TODAY) is None


@pytest.mark.parametrize(
    ("text", "day", "verdict"),
    [
        # clause 2.7: the tarred smock until 30 September 2026
        ("This spring, was the tarred smock still worn in boat rig?", (2026, 4, 15), "conditional"),
        ("Was the tarred smock worn in boat rig at Easter?", (2026, 4, 5), "conditional"),
        ("May I wear the tarred smock in boat rig at Easter?", (2027, 3, 28), "prohibited"),
        # clause 6.14, and the Notice from 15 January 2027
        ("Are headphones allowed when travelling on duty on Easter Monday?", (2027, 3, 29), "prohibited"),
        ("Inspection on 9 January. Must the name strip be worn in boat rig?", (2027, 1, 9), "required"),
        # the second edition is in force from 1 March 2024
        ("Before the order of 2024, could I wear three qualification devices?", (2024, 2, 29), "permitted"),
        ("Before the second edition, was the neck cloth worn in parade rig?", (2024, 2, 29), "required"),
        (
            "Under the old order in autumn 2022, could I wear three qualification devices?",
            (2022, 10, 15),
            "permitted",
        ),
        ("In summer 2023 could I wear three qualification devices?", (2023, 7, 15), "permitted"),
    ],
)
def test_a_question_is_asked_on_the_named_day(
    base: KnowledgeBase, text: str, day: tuple[int, int, int], verdict: str
) -> None:
    (answer,) = base.ask(text, as_of=TODAY)
    assert answer.reading.query is not None
    assert (answer.reading.query.case.as_of, answer.verdict) == (datetime.date(*day), verdict)


def test_a_year_counts_nothing(base: KnowledgeBase) -> None:
    """Clause 5.12 of the first edition: not more than three qualification devices at a time."""
    (answer,) = base.ask("In summer 2023 how many qualification devices could I wear?", as_of=TODAY)
    assert answer.reading.query is not None
    assert (answer.reading.query.kind, answer.reading.query.value) == ("how_many", None)


def test_a_season_that_may_be_either_is_not_taken_for_one(base: KnowledgeBase) -> None:
    text = "They were saying this spring the tarred smock is done for. May I wear it in boat rig?"
    (answer,) = base.ask(text, as_of=TODAY)
    assert answer.reading.query is None or answer.reading.query.case.as_of == TODAY
