"""Dates as exact ranges of days."""

import datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.measures import MeasureError, day_number, day_values, find_date, format_days, parse_date, parse_dates
from kb.model.values import ALL_NUMBERS, Ranges, complement, contains, intersect, is_empty, point, unite

DATES = st.dates()


def test_days_are_counted_in_the_proleptic_gregorian_calendar() -> None:
    """ISO 8601-1, 4.2.1 (from memory) counts leap years so; 1582-10-15 minus one is 1582-10-14."""
    assert day_number(datetime.date(1, 1, 1)) == 1
    assert day_number(datetime.date(1582, 10, 15)) - day_number(datetime.date(1582, 10, 14)) == 1
    assert day_number(datetime.date(2001, 3, 1)) - day_number(datetime.date(2001, 2, 28)) == 1
    assert day_number(datetime.date(2000, 3, 1)) - day_number(datetime.date(2000, 2, 28)) == 2
    assert day_number(datetime.date(1970, 1, 1)) == 719163  # the day number of the Unix epoch


@pytest.mark.parametrize(
    ("text", "inside", "outside"),
    [
        ("2019-04-01", ["2019-04-01"], ["2019-03-31", "2019-04-02"]),
        ("on 2019-04-01", ["2019-04-01"], ["2019-03-31", "2019-04-02"]),
        ("before 2019-04-01", ["2019-03-31", "0001-01-01"], ["2019-04-01"]),
        ("on or before 2019-04-01", ["2019-04-01", "2019-03-31"], ["2019-04-02"]),
        ("after 2019-04-01", ["2019-04-02"], ["2019-04-01"]),
        ("on or after 2019-04-01", ["2019-04-01", "9999-12-31"], ["2019-03-31"]),
        ("since 2019-04-01", ["2019-04-01"], ["2019-03-31"]),
        ("not before 2019-04-01", ["2019-04-01"], ["2019-03-31"]),
        ("from 2019-01-01 to 2019-06-30", ["2019-01-01", "2019-06-30"], ["2018-12-31", "2019-07-01"]),
        ("2019-01-01 to 2019-06-30", ["2019-06-30"], ["2019-07-01"]),
        ("2019-01-01/2019-06-30", ["2019-06-30"], ["2019-07-01"]),  # ISO 8601-1 interval, start/end
        ("between 1 January 2019 and 30 June 2019", ["2019-01-01"], ["2019-07-01"]),
    ],
)
def test_forms(text: str, inside: list[str], outside: list[str]) -> None:
    values = parse_dates(text)
    assert all(contains(values, day_number(parse_date(day))) for day in inside)
    assert not any(contains(values, day_number(parse_date(day))) for day in outside)
    assert parse_dates(format_days(values)) == values


@pytest.mark.parametrize(
    "text",
    ["", "soon", "2019-02-29", "before", "before 1 April", "2019-06-30 to 2019-01-01",
    "2019-04-01 or so", "20190401", "2019-4-1" ],
)  # fmt: skip
def test_what_is_no_date_says_what_to_write(text: str) -> None:
    with pytest.raises(MeasureError) as raised:
        parse_dates(text)
    assert raised.value.remedy


@pytest.mark.parametrize("text", ["2019-02-29", "1 April 2019", "19-04-01", "٢٠١٩-٠٤-٠١"])
def test_a_date_of_a_book_is_written_one_way(text: str) -> None:
    assert parse_date(" 2019-04-01 ") == datetime.date(2019, 4, 1)
    with pytest.raises(MeasureError):
        parse_date(text)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("was it so on 1 May 2019?", "1 May 2019"),
        ("as of May 1, 2019 please", "May 1, 2019"),
        ("on 2019-05-01 and later", "2019-05-01"),
        ("the 1st September 2019", "1st September 2019"),
        ("3 Sept. 2020", "3 Sept. 2020"),
    ],
)
def test_a_date_in_a_question(text: str, found: str) -> None:
    match = find_date(text)
    assert match is not None
    assert text[match.start : match.end] == found


@pytest.mark.parametrize(
    "text", ["may I wear it", "in May", "may 2 in be enough", "31 June 2019", "clause 2019-1"]
)
def test_no_date_in_a_question(text: str) -> None:
    assert find_date(text) is None


@given(DATES, DATES)
def test_before_and_on_or_after_leave_no_hole(one: datetime.date, other: datetime.date) -> None:
    before, after = parse_dates(f"before {one}"), parse_dates(f"on or after {one}")
    assert complement(before) == after
    assert unite(before, after) == ALL_NUMBERS
    assert is_empty(intersect(before, after))
    assert contains(before, day_number(other)) == (other < one)


@given(DATES, DATES)
def test_days_go_through_text_unchanged(one: datetime.date, other: datetime.date) -> None:
    first, last = sorted((one, other))
    for values in (day_values(first, last), day_values(first, None), day_values(None, last)):
        assert parse_dates(format_days(values)) == values


def test_points_and_no_bounds_have_words() -> None:
    assert format_days(point(Fraction(719163))) == "on 1970-01-01"
    assert format_days(ALL_NUMBERS) == "any date"
    assert format_days(Ranges(())) == "no date"
