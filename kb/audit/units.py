"""Measures that a text gives in two units which do not agree.

A converted value is rounded, so the two agree if they differ by no more than half of the last place written.
Of a decimal the last place is its last digit. Inches are written in fractions whose place is coarse (1/2, or
a whole inch), so they count only up to five per cent. Published pairs in two units, good and bad, set that
bound; the tests name them (compare NIST SP 811, appendix B.7, on the rounding of converted values).
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
_SHARE = Fraction(5, 100)


def half_place(measure: Measure, bound: Fraction) -> Fraction:
    """Half of the last place in which a bound is written, in the base unit."""
    decimals = [len(found) for found in _DECIMALS.findall(measure.text)]
    if decimals:
        return difference_to_base(Fraction(1, 2 * 10 ** max(decimals)), measure.unit)
    number = from_base(bound, measure.unit)
    half = difference_to_base(Fraction(1, 2 * number.denominator), measure.unit)
    return min(half, abs(bound) * _SHARE) if measure.unit in _FRACTIONAL else half


def agree(measure: Measure) -> bool:
    """Whether a measure and its twin in a second unit are the same but for rounding; True without a twin."""
    also = measure.also
    if also is None:
        return True
    for one, other in _bounds(measure, also):
        if one is None or other is None:
            if one is not other:
                return False
        elif abs(one - other) > max(half_place(measure, one), half_place(also, other)):
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
