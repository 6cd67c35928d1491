"""A number that takes the place of the one said before: "sorry, 18", after "I have 8 years of service"."""

from __future__ import annotations

from fractions import Fraction

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.values import Interval, Ranges, ValueSet, ranges
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.quantities import in_unit_of
from kb.text import Pattern

_NUMBER = Pattern(
    r"(?i)(?:(?:no|sorry|oh|oops|well|wait|i mean|i meant|i said|make (?:that|it)|actually|rather|it is)"
    r"[ ,.]+)+(?P<sign>minus |-)?(?P<number>\d{1,4}(?:\.\d+)?)(?:,? (?:i mean|i meant|rather|then))?[ .!?]*"
)


def renumbered(text: str, asked: str, before: Query, lookup: Lookup) -> Query | None:
    """The question before (in the words `asked`) with the number in the place of the only one it had."""
    match = _NUMBER.fullmatch(text.strip())
    if match is None:
        return None
    number = Fraction(match["number"]) * (-1 if match["sign"] else 1)
    known = {f: v for f, v in before.case.facts if lookup.facts[f].kind == "quantity" and _is_one(v)}
    said = [fact for fact, values in known.items() if _was_said(fact, values, asked, lookup)]
    meant = said or list(known)  # it may have been said in answer to what was asked back
    if len(meant) != 1:
        return None
    (fact,) = meant
    value = ranges([in_unit_of(lookup.facts[fact], Interval(number, number), "1")])
    return msgspec.structs.replace(before, case=merge_case(before.case, {fact: value}, None, False, lookup))


def _is_one(values: ValueSet) -> bool:
    if not isinstance(values, Ranges) or len(values.intervals) != 1:
        return False
    (interval,) = values.intervals
    return interval.low is not None and interval.low == interval.high


def _was_said(fact: str, values: ValueSet, asked: str, lookup: Lookup) -> bool:
    """Whether a number in the words before is the one that is known."""
    said = [Fraction(found.group()) for found in _DIGITS.finditer(asked)]
    record = lookup.facts[fact]
    return any(
        ranges([in_unit_of(record, Interval(sign * n, sign * n), "1")]) == values
        for n in said
        for sign in (1, -1)
    )


_DIGITS = Pattern(r"\d{1,4}(?:\.\d+)?")
