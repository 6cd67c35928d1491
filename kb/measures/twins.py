"""A measure that a text gives in two units: whether the two agree, and what the second stands for.

The second is a conversion of the first and is rounded, so the two agree if they differ by no more than half
of the last place of the second as written. A decimal's last place is its last digit, and either side may be
the one that was rounded there. Fractions of an inch, whole inches and round numbers (300 mm) are written more
coarsely than they are meant, so their place counts only up to a share of the measure. Published pairs in two
units, good and bad, set these shares; the tests name them (compare NIST SP 811, appendix B.7, on the
rounding of converted values).
"""

from __future__ import annotations

from fractions import Fraction

from kb.measures.units import difference_to_base, from_base
from kb.model.records import Measure
from kb.model.values import Interval
from kb.text import Pattern

_DECIMALS = Pattern(r"\d*\.(\d+)")
_FRACTIONAL = frozenset({"[in_i]", "[ft_i]", "[yd_i]"})
_FRACTION_SHARE = Fraction(5, 100)
_ROUND_SHARE = Fraction(25, 1000)


def last_digit(measure: Measure) -> Fraction:
    """Half of the last digit of a decimal, in the base unit; 0 for a measure in fractions."""
    decimals = [len(found) for found in _DECIMALS.findall(measure.text)]
    fraction = measure.unit in _FRACTIONAL or "/" in measure.text.partition("(")[0]
    if fraction and not decimals:
        return Fraction(0)
    return difference_to_base(Fraction(1, 2 * 10 ** max(decimals, default=0)), measure.unit)


def last_place(measure: Measure, bound: Fraction) -> Fraction:
    """Half of the last place in which a bound is meant, in the base unit."""
    digit, number = last_digit(measure), from_base(bound, measure.unit)
    if not digit:
        half = difference_to_base(Fraction(1, 2 * number.denominator), measure.unit)
        return min(half, abs(bound) * _FRACTION_SHARE)
    place = digit
    while number and number.denominator == 1 and number % 10 == 0:
        number, place = number / 10, place * 10
    return max(digit, min(place, abs(bound) * _ROUND_SHARE))


def agree(measure: Measure) -> bool:
    """Whether a measure and its twin in a second unit are the same but for rounding; True without a twin."""
    also = measure.also
    if also is None:
        return True
    for one, other in bounds_in_two(measure):
        if one is None or other is None:
            if one is not other:
                return False
        elif abs(one - other) > max(last_digit(measure), last_place(also, other)):
            return False
    return True


def bounds_in_two(measure: Measure) -> tuple[tuple[Fraction | None, Fraction | None], ...]:
    """The bounds, each in both units; "at most 3 in (76 mm)" leaves out the words before the second unit."""
    also = measure.also
    if also is None:
        return ()
    low, high = also.interval.low, also.interval.high
    if low == high:
        low = None if measure.interval.low is None else low
        high = None if measure.interval.high is None else high
    return (measure.interval.low, low), (measure.interval.high, high)


def as_first(claimed: Interval, unit: str, measure: Measure) -> Interval:
    """One length, said in `unit` as the second unit of a text has it, as the first unit has it.

    The first unit counts. "51 mm" is 2 in where a text says "2 in (51 mm)", since that is only rounded; where
    the two disagree, or the length is said in another unit than the second, it is what it is.
    """
    also = measure.also
    if also is None or claimed.low != claimed.high or claimed.low is None or not agree(measure):
        return claimed
    if (unit in _FRACTIONAL) != (also.unit in _FRACTIONAL):
        return claimed
    low, high = measure.interval.low, measure.interval.high
    if (low is None or low <= claimed.low) and (high is None or claimed.low <= high):
        return claimed  # it is within the first as it was said
    for first, second in bounds_in_two(measure):
        if second == claimed.low and first is not None:
            return Interval(first, first)
    return claimed
