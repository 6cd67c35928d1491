"""Facts that are kept for another day: the same when they come back, or named as gone."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.answer.kept import lasting, pack_facts, unpack_facts
from kb.model.values import Choices, Interval, Ranges, choices
from tests.shell.fake_books import little_lookup

LOOKUP = little_lookup()
FACTS = (("grade", choices("K4", "K5")), ("rig", choices("boat-rig")), ("hauling", choices("yes")))


def test_facts_come_back_as_they_were() -> None:
    assert unpack_facts(pack_facts(FACTS), LOOKUP) == (FACTS, ())
    assert unpack_facts(pack_facts(()), LOOKUP) == ((), ())


def test_what_passes_with_the_day_is_not_kept() -> None:
    assert lasting(FACTS, LOOKUP) == FACTS[:2]


def test_all_but_some_is_written_out() -> None:
    data = pack_facts((("grade", Choices(frozenset({"K4"}), complement=True)),))
    assert unpack_facts(data, LOOKUP) == ((("grade", choices("K5")),), ())


@pytest.mark.parametrize(
    "written",
    [
        b'{"grade": ["K9"]}',
        b'{"grade": []}',
        b'{"grade": ["K4", "K9"]}',
        b'{"grade": {"not": ["K4", "K5"]}}',
        b'{"grade": [{"from": "1"}]}',
        b'{"grade": 5}',
        b'{"grade": "K4"}',
        b'{"grade": null}',
        b'{"rank": ["K4"]}',
    ],
)
def test_what_the_books_do_not_know_any_more_is_named(written: bytes) -> None:
    known, gone = unpack_facts(written, LOOKUP)
    assert known == ()
    assert len(gone) == 1


def test_numbers_stay_exact() -> None:
    facts = (("temperature", Ranges((Interval(low=Fraction(1, 3), high_open=True, high=Fraction(7, 2)),))),)
    assert unpack_facts(pack_facts(facts), LOOKUP) == ((), ("temperature",)), "these books have no such fact"
    assert b'"1/3"' in pack_facts(facts)


@given(st.binary(max_size=60))
def test_bytes_that_are_none_of_ours_are_no_facts(data: bytes) -> None:
    assert unpack_facts(data, LOOKUP)[0] == ()
