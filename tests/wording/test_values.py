# ruff: noqa: E501  tables read better on one line
"""Sets of values and single tests in words, and that no two sets share their words."""

from __future__ import annotations

import datetime
import itertools
from fractions import Fraction

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.values import Interval, Ranges, choices, unite
from kb.wording import say_condition, say_fact, say_test, say_values
from kb.wording.labels import value_name
from tests.wording.bases import no, span, words, yes

LOOKUP = words()

GRADES = [
    ("H1", "H1", "the wearer is an H1"),
    ("H1 H2", "H1 and H2", "the wearer's grade is H1 or H2"),
    ("H1 H2 H3", "deck hands", "the wearer is a deck hand"),
    ("K3 K4 K5", "petty keepers", "the wearer is a petty keeper"),
    ("K5 K6 K7 W1 W2 W3 W4", "K5 and above", "the wearer's grade is K5 or above"),
    ("H1 H2 H3 K1 K2 K3 K4 K5 K6 K7", "below W1", "the wearer is not an officer"),
    ("H1 H2 H3 K1", "K1 and below", "the wearer's grade is K1 or below"),
    ("K5 K7", "K5 and K7", "the wearer's grade is K5 or K7"),
    ("H1 K2 W1 W2 W3", "H1, K2 and W1 to W3", "the wearer's grade is H1, K2 or W1 to W3"),
    ("H1 H2 H3 W1 W2 W3 W4", "deck hands and officers", "the wearer is not a keeper"),
    ("K1 K2 K4 K5 K6 K7", "keepers except K3", "the wearer is one of the keepers except K3"),
    ("K2 K3 K4 K6 K7", "K2 to K7 except K5", "the wearer's grade is K2 to K4, K6 or K7"),
    ("H1 K1 W3 W4", "H1, K1, and W3 and above", "the wearer's grade is H1, K1, or W3 or above"),
    ("H1 H2 H3 K1 K2 K3 K4 K6 K7 W1 W2 W3 W4", "everyone except K5", "the wearer is not a K5"),
]
OTHERS = [
    ("place", "ashore town pier", "ashore", "the wearer is ashore"),
    ("place", "ashore pier", "ashore but not in town", "the wearer is ashore but not in town"),
    ("place", "skiff cutter", "in an open boat", "the wearer is in an open boat"),
    (
        "place",
        "ashore town pier afloat",
        "neither in a skiff nor on the cutter",
        "the wearer is neither in a skiff nor on the cutter",
    ),
    ("place", "afloat skiff cutter town", "in town or afloat", "the wearer is in town or afloat"),
    ("weather", "foul", "foul weather", "the weather is foul"),
    ("weather", "fair foul", "any weather", "any weather will do"),
    ("sky", "clear cloudy", "not overcast", "the sky is not overcast"),
    ("sleeves", "down", "sleeves down", "the sleeves are down"),
    ("sea", "rough high", "rough sea and above", "the sea state is rough or above"),
    ("activity", "boarding", "boarding a vessel", "the wearer is boarding a vessel"),
    ("rig", "boat parade", "not shore rig", "the wearer is in boat or parade rig"),
    ("rig", "boat", "boat rig", "the wearer is in boat rig"),
    ("branch", "stores", "stores", "the wearer is of the stores branch"),
    (
        "granted:heat",
        "superintendent board",
        "granted by the District Superintendent or higher",
        "extreme heat dress has been granted by the District Superintendent or a higher authority",
    ),
    ("granted:heat", "none", "not granted", "extreme heat dress has not been granted"),
    (
        "granted:heat",
        "none station pilots",
        "not granted by the District Superintendent or higher",
        "extreme heat dress has not been granted by the District Superintendent or a higher authority",
    ),
    ("granted:heat", "station pilots superintendent board", "granted", "extreme heat dress has been granted"),
    (
        "granted:heat",
        "board",
        "granted by the Board of Lights",
        "extreme heat dress has been granted by the Board of Lights",
    ),
]
TABLE = [("grade", *row) for row in GRADES] + OTHERS


@pytest.mark.parametrize(("fact", "values", "said", "clause"), TABLE)
def test_values_and_tests_in_words(fact: str, values: str, said: str, clause: str) -> None:
    chosen = choices(*values.split())
    assert say_values(LOOKUP, fact, chosen) == said
    assert say_test(LOOKUP, Test(fact, chosen)) == clause


SITUATIONS = [
    ("hauling", "when hauling lines", "when not hauling lines", "whether the wearer is hauling lines"),
    ("machinery", "when machinery is running", "when machinery is not running", "whether machinery is running"),
    ("hot-work", "when hot work is being done", "when hot work is not being done", "whether hot work is being done"),
    ("deck-wet", "when the deck is wet", "when the deck is not wet", "whether the deck is wet"),
    ("guard", "when a member of the guard", "when not a member of the guard", "whether the wearer is a member of the guard"),
    ("drill", "in the case of fire drill", "when the case is not one of fire drill", "whether the case is one of fire drill"),
    ("winter", "when it is winter", "when it is not winter", "whether it is winter"),
    ("dark", "when in the dark hours", "when not in the dark hours", "whether it is in the dark hours"),
    ("holds:diver", "with the diver qualification", "without the diver qualification", "whether the wearer holds the diver qualification"),
    ("holds:coxswain", "with the coxswain appointment", "without the coxswain appointment", "whether the wearer holds the coxswain appointment"),
    ("worn:gloves", "when wearing the deck gloves", "when not wearing the deck gloves", "whether the wearer wears the deck gloves"),
    ("worn:outer-garment", "when wearing an outer garment", "when not wearing any outer garment", "whether the wearer wears an outer garment"),
    ("worn:the-sash", "when wearing the Sash", "when not wearing the Sash", "whether the wearer wears the Sash"),
]  # fmt: skip


@pytest.mark.parametrize(("fact", "positive", "negative", "depends"), SITUATIONS)
def test_yes_or_no_facts_in_words(fact: str, positive: str, negative: str, depends: str) -> None:
    assert say_condition(LOOKUP, yes(fact)) == positive.replace("with the", "when holding the")
    assert say_condition(LOOKUP, no(fact)) == negative.replace("without the", "when not holding the")
    assert say_fact(LOOKUP, fact) == depends


@pytest.mark.parametrize(
    ("fact", "said"),
    [
        ("weather", "the weather"),
        ("sleeves", "whether the sleeves are down or up"),
        ("grade", "the wearer's grade"),
        ("rig", "the rig"),
        ("granted:heat", "who, if anyone, has granted extreme heat dress"),
        ("temperature", "the air temperature"),
    ],
)
def test_what_an_answer_depends_on(fact: str, said: str) -> None:
    assert say_fact(LOOKUP, fact) == said


def _day(year: int, month: int, day: int) -> Fraction:
    return Fraction(datetime.date(year, month, day).toordinal())


def test_quantities_and_dates_in_words() -> None:
    assert say_test(LOOKUP, span("temperature", 30, None, "l")) == "the air temperature is above 30 °C"
    assert say_test(LOOKUP, span("temperature", None, 8, "h")) == "the air temperature is below 8 °C"
    assert say_test(LOOKUP, span("winds", 0, None)) == "the winds aloft are at least 0 kn"
    before = Ranges((Interval(None, _day(2019, 4, 1), False, True),))
    assert say_values(LOOKUP, "awarded", before) == "before 1 April 2019"
    after = Ranges((Interval(_day(2019, 4, 1), None),))
    assert say_values(LOOKUP, "awarded", after) == "on or after 1 April 2019"
    one = Ranges((Interval(_day(2019, 4, 1), _day(2019, 4, 2), False, True),))
    assert say_values(LOOKUP, "awarded", one) == "on 1 April 2019"
    span_of_days = Ranges((Interval(_day(2019, 1, 1), _day(2019, 7, 1), False, True),))
    assert say_values(LOOKUP, "awarded", span_of_days) == "from 1 January 2019 to 30 June 2019"
    assert say_values(LOOKUP, "awarded", unite(one, Ranges((Interval(_day(2020, 1, 1), None),)))) == (
        "on 1 April 2019, or on or after 1 January 2020"
    )


def test_no_two_ranges_of_grades_share_their_words() -> None:
    order = LOOKUP.order("grade")
    pairs = itertools.combinations(range(len(order) + 1), 2)
    spans = [order[low:high] for low, high in pairs]
    assert len({say_values(LOOKUP, "grade", choices(*run)) for run in spans}) == len(spans)
    assert len({say_test(LOOKUP, Test("grade", choices(*run))) for run in spans}) == len(spans)


@pytest.mark.parametrize(
    "fact", ["place", "sea", "weather", "sky", "sleeves", "rig", "branch", "room", "activity", "granted:heat"]
)
def test_no_two_sets_of_a_small_fact_share_their_words(fact: str) -> None:
    order = LOOKUP.order(fact)
    sets = [choices(*s) for n in range(len(order) + 1) for s in itertools.combinations(order, n)]
    assert len({say_values(LOOKUP, fact, values) for values in sets}) == len(sets)


_SUBSET = st.frozensets(st.sampled_from(LOOKUP.order("grade")))


@given(_SUBSET, _SUBSET)
def test_different_sets_of_grades_have_different_words(left: frozenset[str], right: frozenset[str]) -> None:
    same = say_values(LOOKUP, "grade", choices(*left)) == say_values(LOOKUP, "grade", choices(*right))
    assert same == (left == right)


def test_a_grade_is_said_as_the_clauses_say_it() -> None:
    """By its code where a clause has one, and by its name where codes are the encoder's alone."""
    coded = LOOKUP.base
    clauses = tuple(msgspec.structs.replace(clause, text="Keepers wear it.") for clause in coded.clauses)
    plain = Lookup(msgspec.structs.replace(coded, clauses=clauses))
    assert value_name(LOOKUP, "grade", "K5") == "K5"
    assert value_name(plain, "grade", "K5") == plain.value_label("grade", "K5") != "K5"
