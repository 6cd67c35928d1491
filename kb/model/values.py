"""Sets of values: what a rule speaks about, and what a fact may be.

Two kinds cover every fact and every aspect: `Choices`, a finite set of names or the
complement of one, and `Ranges`, a union of disjoint intervals of exact numbers. All
operations are exact; the sets form a Boolean algebra within each kind.
"""

from collections.abc import Iterable
from fractions import Fraction

import msgspec


class Interval(msgspec.Struct, frozen=True, omit_defaults=True):
    """An interval of exact numbers; a missing bound is unbounded. Lengths are in mm, dates in days."""

    low: Fraction | None = None
    high: Fraction | None = None
    low_open: bool = False
    high_open: bool = False

    def is_empty(self) -> bool:
        if self.low is None or self.high is None:
            return False
        if self.low == self.high:
            return self.low_open or self.high_open
        return self.low > self.high

    def contains(self, number: Fraction) -> bool:
        if self.low is not None and (number < self.low or (number == self.low and self.low_open)):
            return False
        return self.high is None or not (number > self.high or (number == self.high and self.high_open))


class Choices(msgspec.Struct, frozen=True, omit_defaults=True, tag="choices"):
    """A finite set of names, or everything but those names (`complement`)."""

    members: frozenset[str]
    complement: bool = False


class Ranges(msgspec.Struct, frozen=True, omit_defaults=True, tag="ranges"):
    """A union of intervals, kept sorted, disjoint and not adjoining (see `ranges`)."""

    intervals: tuple[Interval, ...]


ValueSet = Choices | Ranges

EVERYTHING = Choices(frozenset(), complement=True)
NOTHING = Choices(frozenset())
OTHER = "other:"  # leads a value that a question names and no book does ("other:dark-green"); no id has it
YES = Choices(frozenset({"yes"}))
NO = Choices(frozenset({"no"}))
ALL_NUMBERS = Ranges((Interval(),))


def choices(*members: str) -> Choices:
    return Choices(frozenset(members))


def others_in(values: ValueSet | None) -> frozenset[str]:
    """The values of a set that no book names: each is one more in the domain where it is asked about."""
    if not isinstance(values, Choices):
        return frozenset()
    return frozenset(member for member in values.members if member.startswith(OTHER))


def point(number: Fraction | int) -> Ranges:
    exact = Fraction(number)
    return Ranges((Interval(exact, exact),))


def _low_key(interval: Interval) -> tuple[int, Fraction, bool]:
    if interval.low is None:
        return (0, Fraction(0), False)
    return (1, interval.low, interval.low_open)


def _joins(left: Interval, right: Interval) -> bool:
    """Whether two intervals, `left` starting first, overlap or adjoin without a hole."""
    if left.high is None or right.low is None:
        return True
    return left.high > right.low or (left.high == right.low and not (left.high_open and right.low_open))


def _later_high(left: Interval, right: Interval) -> tuple[Fraction | None, bool]:
    if left.high is None or right.high is None:
        return None, False
    if left.high == right.high:
        return left.high, left.high_open and right.high_open
    winner = left if left.high > right.high else right
    return winner.high, winner.high_open


def ranges(intervals: Iterable[Interval]) -> Ranges:
    """The canonical union of intervals."""
    merged: list[Interval] = []
    for interval in sorted((i for i in intervals if not i.is_empty()), key=_low_key):
        if merged and _joins(merged[-1], interval):
            first = merged.pop()
            high, high_open = _later_high(first, interval)
            interval = Interval(first.low, high, first.low_open, high_open)
        merged.append(interval)
    return Ranges(tuple(merged))


def _intersect_intervals(left: Interval, right: Interval) -> Interval:
    low, low_open = left.low, left.low_open
    if right.low is not None and (low is None or right.low > low):
        low, low_open = right.low, right.low_open
    elif right.low is not None and right.low == low:
        low_open = low_open or right.low_open
    high, high_open = left.high, left.high_open
    if right.high is not None and (high is None or right.high < high):
        high, high_open = right.high, right.high_open
    elif right.high is not None and right.high == high:
        high_open = high_open or right.high_open
    return Interval(low, high, low_open, high_open)


def complement(values: ValueSet) -> ValueSet:
    """Everything of the same kind that is not in `values`."""
    if isinstance(values, Choices):
        return Choices(values.members, not values.complement)
    gaps: list[Interval] = []
    low: Fraction | None = None
    low_open = False
    for interval in values.intervals:
        if interval.low is not None:
            gaps.append(Interval(low, interval.low, low_open, not interval.low_open))
        if interval.high is None:
            return ranges(gaps)
        low, low_open = interval.high, not interval.high_open
    return ranges([*gaps, Interval(low, None, low_open, False)])


def intersect(left: ValueSet, right: ValueSet) -> ValueSet:
    """Values in both; both sets must be of one kind (`TypeError` otherwise)."""
    if isinstance(left, Choices) and isinstance(right, Choices):
        if left.complement and right.complement:
            return Choices(left.members | right.members, complement=True)
        if left.complement:
            return Choices(right.members - left.members)
        if right.complement:
            return Choices(left.members - right.members)
        return Choices(left.members & right.members)
    if isinstance(left, Ranges) and isinstance(right, Ranges):
        return ranges(_intersect_intervals(a, b) for a in left.intervals for b in right.intervals)
    raise TypeError("choices and ranges do not mix")


def unite(left: ValueSet, right: ValueSet) -> ValueSet:
    return complement(intersect(complement(left), complement(right)))


def subtract(left: ValueSet, right: ValueSet) -> ValueSet:
    return intersect(left, complement(right))


def is_empty(values: ValueSet) -> bool:
    if isinstance(values, Choices):
        return not values.members and not values.complement
    return not values.intervals


def is_subset(left: ValueSet, right: ValueSet) -> bool:
    return is_empty(subtract(left, right))


def contains(values: ValueSet, value: str | Fraction) -> bool:
    if isinstance(values, Choices):
        return (value in values.members) != values.complement
    if isinstance(value, str):
        raise TypeError("a range holds numbers, not names")
    return any(interval.contains(value) for interval in values.intervals)
