"""What the plain meaning needs of sets of values beyond their algebra."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from kb.model.values import Ranges, ValueSet, intersect, is_empty, subtract


def partition(whole: ValueSet, sets: Iterable[ValueSet]) -> list[ValueSet]:
    """The pieces of a set that none of the other sets divides."""
    pieces = [whole]
    for one in sets:
        halves = [half for piece in pieces for half in (intersect(piece, one), subtract(piece, one))]
        pieces = [half for half in halves if not is_empty(half)]
    return pieces


def has_whole_number(values: ValueSet) -> bool:
    """Whether a set of numbers has a whole one."""
    for interval in values.intervals if isinstance(values, Ranges) else ():
        if interval.low is None or interval.high is None:
            return True
        first = interval.low.__floor__()
        if any(interval.contains(Fraction(first + step)) for step in (0, 1)):
            return True
    return False
