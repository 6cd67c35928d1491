"""Numbers of pairs: "two pairs of studs" are four studs where the books count studs, else two."""

from __future__ import annotations

from fractions import Fraction

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.records import Rule
from kb.model.values import Interval, Ranges
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import NUMBER_WORDS
from kb.text import Pattern
from kb.wording import say_query
from kb.wording.counts import counts_pairs

_PAIRS = Pattern(r"(?i)\b(\d+|[a-z]+) pairs? of\b")


def in_pairs(reading: Reading, found: Understood, lookup: Lookup) -> Reading:
    """The reading with the number of pairs as the books count; not understood where they do not tell how."""
    query, said = reading.query, _PAIRS.search(found.text)
    if query is None or said is None or _number(said.group(1)) is None or query.aspect not in _counts(lookup):
        return reading
    if not isinstance(query.value, Ranges):
        return reading
    sizes = {_size(rule, lookup) for rule in _counting(query, lookup)}
    if len(sizes) != 1 or None in sizes:
        reason = 'Not understood: "pairs". The books do not say how they count them.'
        return Reading(question=reading.question, spans=reading.spans, abstain=Abstain(reason=reason))
    size = sizes.pop()
    assert size is not None
    value = Ranges(tuple(_times(interval, size) for interval in query.value.intervals))
    asked = msgspec.structs.replace(query, value=value)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def _counts(lookup: Lookup) -> tuple[str, ...]:
    return tuple(name for name in ("count", "kit-count") if name in lookup.aspects)


def _number(word: str) -> int | None:
    return int(word) if word.isdecimal() else NUMBER_WORDS.get(word.casefold())


def _counting(query: Query, lookup: Lookup) -> list[Rule]:
    items = set(query.items)
    return [r for r in lookup.rules_on(items) if r.aspect == query.aspect]


def _size(rule: Rule, lookup: Lookup) -> int | None:
    """How many a pair is in the number of a rule: 2 or 1; None where its clause tells of no pairs."""
    if counts_pairs(lookup, rule):
        return 1
    values = rule.value.values
    ends = (
        [i.low if i.high is None else i.high for i in values.intervals] if isinstance(values, Ranges) else []
    )
    told = [_number(match) for match in _PAIRS.findall(lookup.clauses[rule.clause].text)]
    for size in (2, 1):
        if any(pairs is not None and ends == [Fraction(pairs * size)] for pairs in told):
            return size
    return None


def _times(interval: Interval, size: int) -> Interval:
    low = None if interval.low is None else interval.low * size
    high = None if interval.high is None else interval.high * size
    return msgspec.structs.replace(interval, low=low, high=high)
