"""Measures that a text gives in two units which do not agree.

The second is a conversion of the first and is rounded, so the two agree if they differ by no more than half
of the last place of the second as written. A decimal's last place is its last digit, and either side may be
the one that was rounded there. Fractions of an inch, whole inches and round numbers (300 mm) are written more
coarsely than they are meant, so their place counts only up to a share of the measure. Published pairs in two
units, good and bad, set these shares; the tests name them (compare NIST SP 811, appendix B.7, on the
rounding of converted values).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from kb.audit.findings import Finding
from kb.measures import UNITS, difference_to_base, format_quantity, from_base
from kb.model.lookup import Lookup
from kb.model.records import Measure, Rule
from kb.text import Pattern
from kb.wording import clause_reference

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
    for one, other in _bounds(measure, also):
        if one is None or other is None:
            if one is not other:
                return False
        elif abs(one - other) > max(last_digit(measure), last_place(also, other)):
            return False
    return True


def _bounds(measure: Measure, also: Measure) -> tuple[tuple[Fraction | None, Fraction | None], ...]:
    """The bounds to compare; "at most 3 in (76 mm)" leaves out the words before the second unit."""
    low, high = also.interval.low, also.interval.high
    if low == high:
        low = None if measure.interval.low is None else low
        high = None if measure.interval.high is None else high
    return (measure.interval.low, low), (measure.interval.high, high)


def measure_findings(lookup: Lookup, rules: Iterator[Rule]) -> Iterator[Finding]:
    """One error for each place in a rule whose two units disagree."""
    seen: set[tuple[object, str]] = set()
    for rule in rules:
        for measure in _measures(rule):
            if agree(measure) or (rule.at, measure.text) in seen:
                continue
            seen.add((rule.at, measure.text))
            yield _finding(lookup, rule, measure)


def _measures(rule: Rule) -> list[Measure]:
    found = [rule.value.measure, *(position.offset for position in rule.value.positions)]
    return [measure for measure in found if measure is not None]


def _finding(lookup: Lookup, rule: Rule, measure: Measure) -> Finding:
    reference = clause_reference(lookup, rule.clause)
    assert measure.also is not None, "a measure without a twin agrees with itself"
    other = measure.also
    exact = [
        format_quantity(_rounded(bound, other.unit), other.unit)
        for bound in dict.fromkeys((measure.interval.low, measure.interval.high))
        if bound is not None
    ]
    said = measure.text.partition("(")[0].strip()
    return Finding(
        at=rule.at,
        code="units-disagree",
        severity="error",
        clause=rule.clause,
        reference=reference,
        rules=(rule.id,),
        message=f"{reference} gives one measure as {said} and as {other.text}: more than rounding apart.",
        suggestion=f"Write {' to '.join(exact)} in the brackets, or correct the first measure.",
    )


def _rounded(bound: Fraction, unit: str) -> Fraction:
    """A bound to the nearest sixteenth of an inch, or to two digits after the point of another unit."""
    steps = 16 if UNITS[unit].code in _FRACTIONAL else 100
    number = from_base(bound, unit)
    near = Fraction(round(number * steps), steps)
    return bound + difference_to_base(near - number, unit)
