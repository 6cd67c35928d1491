"""Sample points of facts and aspects, and membership, written without the model's own set operations."""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from fractions import Fraction

from kb.model.values import Choices, Ranges, ValueSet

Point = str | Fraction
OTHER = "(another)"


def member(point: Point, values: ValueSet) -> bool:
    """Whether a value lies in a set."""
    if isinstance(values, Choices):
        return values.complement ^ (point in values.members)
    assert isinstance(point, Fraction)
    for interval in values.intervals:
        above = interval.low is None or point > interval.low
        below = interval.high is None or point < interval.high
        at_low = point == interval.low and not interval.low_open
        at_high = point == interval.high and not interval.high_open
        if (above or at_low) and (below or at_high):
            return True
    return False


def numbers(sets: Iterable[ValueSet], whole: bool = False) -> list[Point]:
    """Every bound, a number between each two neighbours, and one on either side; whole numbers if asked."""
    bounds = sorted(
        {
            bound
            for values in sets
            if isinstance(values, Ranges)
            for interval in values.intervals
            for bound in (interval.low, interval.high)
            if bound is not None
        }
    )
    if not bounds:
        return [Fraction(1)]
    between = [(low + high) / 2 for low, high in itertools.pairwise(bounds)]
    found = {bounds[0] - 1, *bounds, *between, bounds[-1] + 1}
    if whole:
        found = {Fraction(n // 1 + step) for n in found for step in (-1, 0, 1)}
    return sorted(found)


def names(sets: Iterable[ValueSet]) -> list[Point]:
    """Every name in the sets, and one that none of them has."""
    found = {member for values in sets if isinstance(values, Choices) for member in values.members}
    return [*sorted(found), OTHER]
