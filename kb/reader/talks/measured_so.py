"""A number without its unit that was taken for the temperature, where no rule on the thing asks for that.

"And if it's twenty?", of a jacket that is worn for a stay of some minutes, is of the stay.
"""

from __future__ import annotations

from kb.measures import UNITS
from kb.model.questions import Abstain, Query, Reading
from kb.model.values import Ranges
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.talks.further import put_as
from kb.reader.talks.talked import Talk
from kb.text import Pattern

_DEGREES = "Cel"
_OF_THE_AIR = Pattern(
    r"(?i)degree|\u00b0|celsius|centigrade|\bc\b|temperature|weather|outside|outdoors|\bair\b|minus|freez|zero|"
    r"\b(?:hot|cold|warm|cool|mild|chilly)"
)


def measured_so(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading with the number as a measure of what the rules ask for; asked back where that is open."""
    query, before, lookup = reading.query, previous.frame or previous.query, talk.lookup
    if query is None or before is None or query.items != before.items or _OF_THE_AIR.search(text):
        return reading
    number = _new_degrees(query, before, talk)
    matter = facts_that_matter(query, lookup)
    if number is None or any(lookup.facts[fact].unit == _DEGREES for fact in matter):
        return reading
    units = {lookup.facts[fact].unit for fact in matter if lookup.facts[fact].kind == "quantity"}
    unit = next(iter(units)) if len(units) == 1 else None
    if unit in UNITS:
        again = talk.read(f"and {number} {UNITS[unit].symbol}?", previous)
        if again.query is not None and again.query.items == query.items:
            return put_as(text, again)
    return Reading(question=text, abstain=Abstain(reason=f"It is not said what {number} measures."))


def _new_degrees(query: Query, before: Query, talk: Talk) -> str | None:
    """The one number that a turn told, where it was taken for a temperature and nothing else is new."""
    old = dict(before.case.facts)
    new = [(fact, values) for fact, values in query.case.facts if old.get(fact) != values]
    if len(new) != 1 or talk.lookup.facts[new[0][0]].unit != _DEGREES:
        return None
    values = new[0][1]
    one = values.intervals[0] if isinstance(values, Ranges) and len(values.intervals) == 1 else None
    if one is None or one.low is None or one.low != one.high or one.low.denominator != 1:
        return None
    return str(one.low.numerator)
