"""Measures in two units against published pairs, good and bad.

Sources: the pairs marked L6 stand in the dress notes of a first-aid service (name tag and pocket badge
clauses), two of them wrong by more than rounding; those marked L7 in AR 670-1, 3-4 (earrings) and elsewhere.
The exact inch is that of UCUM 2.1 ([in_i] = 2.54 cm); the rounding of converted values follows the idea of
NIST SP 811, appendix B.7 (from memory). Pairs marked "own" are worked out by hand here.
"""

from __future__ import annotations

import pytest

from kb.audit.units import agree
from kb.measures import parse_measure

GOOD = (
    "13 mm (1/2 in)",  # L6, exactly 12.70
    "20 mm (3/4 in)",  # L6, exactly 19.05
    "8 mm (5/16 in)",  # L6, exactly 7.94
    "127 mm (5 in)",  # L6, exactly 127.0
    "2.5 cm (1 in)",  # L7, exactly 25.4 mm
    "6 mm (1/4 in)",  # L7, exactly 6.35
    "1.3 cm (1/2 in)",  # L7, exactly 12.7 mm
    "1/4 in (6 mm)",  # L7, the other way round
    "30 mm (1 3/16 in)",  # own, exactly 30.16
    "at most 3 in (76 mm)",  # own, exactly 76.2
    "at most 3 in (at most 76 mm)",  # own
    "1/4 to 1/2 in (6 to 13 mm)",  # own
    "about 12 in (300 mm)",  # own, exactly 304.8
    "3 1/2 in (90 mm)",  # own, exactly 88.9
    "100 mm (4 in)",  # own, exactly 101.6
    "about 1 in (25 mm)",  # own, exactly 25.4
    "30 °C (86 °F)",  # own, exact
    "38.1 mm (1 1/2 in)",  # own, exact
    "2 in",  # own: one unit only
)
BAD = (
    "60 mm (2 1/2 in)",  # L6, exactly 63.50
    "90 mm (3 1/4 in)",  # L6, exactly 82.55
    "50 mm (1 1/2 in)",  # own, exactly 38.1
    "10 mm (1/2 in)",  # own, exactly 12.7
    "60 mm (2 in)",  # own, exactly 50.8
    "at most 3 in (78 mm)",  # own, exactly 76.2
    "1 in (30 mm)",  # own, exactly 25.4
    "25 °C (80 °F)",  # own, exactly 77
    "at most 3 in (at least 76 mm)",  # own: bounds on different sides
    "1/4 to 1/2 in (6 to 15 mm)",  # own
    "30 °C (80 °F)",  # own, exactly 86
    "38.2 mm (1.51 in)",  # own, exactly 38.354: half a hundredth of an inch is 0.127 mm
)


@pytest.mark.parametrize("text", GOOD)
def test_a_rounded_pair_agrees(text: str) -> None:
    assert agree(parse_measure(text))


@pytest.mark.parametrize("text", BAD)
def test_a_pair_apart_by_more_than_rounding_disagrees(text: str) -> None:
    assert parse_measure(text).also is not None
    assert not agree(parse_measure(text))
