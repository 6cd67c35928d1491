"""Measures go through text unchanged, and no text makes the reader fail."""

import contextlib
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from kb.measures import (
    UNITS,
    MeasureError,
    find_measure,
    format_decimal,
    format_measure,
    format_number,
    from_base,
    parse_measure,
    to_base,
)
from kb.model.records import Measure
from kb.model.values import Interval

INCHES = st.builds(Fraction, st.integers(0, 10_000), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
DECIMALS = st.builds(lambda n: Fraction(n, 1000), st.integers(0, 10**7))
NUMBERS = {
    "[in_i]": INCHES,
    "[ft_i]": INCHES,
    "mm": DECIMALS,
    "cm": DECIMALS,
    "m": DECIMALS,
    "Cel": DECIMALS,
    "d": DECIMALS,
    "1": INCHES,
}


@st.composite
def single_measures(draw: st.DrawFn, unit: str) -> Measure:
    one, other = (to_base(draw(NUMBERS[unit]), unit) for _ in range(2))
    low, high = sorted((one, other))
    interval = draw(
        st.sampled_from(
            [
                Interval(one, one),
                Interval(low, high),
                Interval(one, None),
                Interval(None, one),
                Interval(one, None, low_open=True),
                Interval(None, one, high_open=True),
            ]
        )
    )
    measure = Measure(text="", unit=unit, interval=interval, about=draw(st.booleans()))
    return Measure(text=format_measure(measure), unit=unit, interval=interval, about=measure.about)


@st.composite
def measures(draw: st.DrawFn) -> Measure:
    unit = draw(st.sampled_from(sorted(NUMBERS)))
    first = draw(single_measures(unit))
    if unit != "mm" or not draw(st.booleans()):
        return first
    also = draw(single_measures("[in_i]"))
    both = Measure(text="", unit=unit, interval=first.interval, about=first.about, also=also)
    return Measure(
        text=format_measure(both), unit=unit, interval=first.interval, about=first.about, also=also
    )


@given(measures())
def test_a_measure_goes_through_text_unchanged(measure: Measure) -> None:
    assert parse_measure(format_measure(measure)) == measure


@given(measures())
def test_a_measure_is_found_in_a_sentence(measure: Measure) -> None:
    text = f"it is worn {measure.text} so"
    found = find_measure(text, bare=True)
    assert found is not None
    assert found.measure == measure
    assert text[found.start : found.end] == measure.text


@given(st.builds(Fraction, st.integers(-(10**6), 10**6), st.integers(1, 5000)))
def test_numbers_are_written_exactly(number: Fraction) -> None:
    whole, _, part = format_number(abs(number)).rpartition(" ")
    assert Fraction(whole or 0) + Fraction(part) == abs(number)
    if " " not in format_decimal(number):
        assert Fraction(format_decimal(number)) == number


@given(st.fractions(), st.sampled_from(sorted(UNITS)))
def test_units_turn_back(number: Fraction, code: str) -> None:
    assert from_base(to_base(number, code), code) == number


WORDS = st.sampled_from(
    [
        "1",
        "2",
        "1/2",
        "¼",
        "2.5",
        "in",
        "mm",
        "°",
        "°C",
        '"',
        "'",
        "to",
        "and",
        "or",
        "about",
        "at",
        "most",
        "less",
        "than",
        "(",
        ")",
        "-",
        "–",
        "half",
        "a",
        "an",
        "of",
        "inch",
        "İ",
        "ß",
        "1/0",
        "minus",
        "from",
    ]
)


@given(st.lists(WORDS | st.text(max_size=4), max_size=8))
def test_no_text_makes_the_reader_fail(words: list[str]) -> None:
    for glue in (" ", ""):
        text = glue.join(words)
        found = find_measure(text, bare=True)
        if found is not None:
            assert 0 <= found.start < found.end <= len(text)
        with contextlib.suppress(MeasureError):
            parse_measure(text)
