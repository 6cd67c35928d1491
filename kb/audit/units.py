"""Measures that a text gives in two units which do not agree."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from kb.audit.findings import Finding
from kb.measures import UNITS, difference_to_base, format_quantity, from_base
from kb.measures.twins import agree
from kb.model.lookup import Lookup
from kb.model.records import Measure, Rule
from kb.wording import clause_reference

_FRACTIONAL = frozenset({"[in_i]", "[ft_i]", "[yd_i]"})


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
