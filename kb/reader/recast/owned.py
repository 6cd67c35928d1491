"""Whose insignia are asked about: who says "I have the medal" has what it is awarded for.

Where a badge is worn by those alone who hold a qualification or an appointment, it is taken as held, and the
reading says so ("for anyone with the rescue award").
"""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading, Span
from kb.model.values import YES
from kb.text import Pattern
from kb.wording import say_query
from kb.wording.presumed import place_of

_KINDS = frozenset({"may", "must", "where", "how", "how_many", "when"})
_HELD = frozenset({"qualification", "appointment"})
_HAVE = Pattern(
    r"(?:^|[.,;:!?–-]\s*|\b(?:and|but|so|as|because|since|if|that|when|though|now) )(?:i|we|he|she)"
    r"(?:['’]ve|['’]s| have| has| hold| holds| earned| won| received| was awarded| were awarded)"
    r"(?: got| earned| won| just got| been awarded)?(?: (?:an?|the|my|his|her|some))?\s*$"
)
_MINE = Pattern(r"\b(?:my|our)\s*$")
_ON = Pattern(r"\s+(?:on|off)\b")
_AWARDED = Pattern(r"\s*(?:was|were) (?:awarded|won|earned|given|presented)\b")
"""What says that somebody has been awarded a thing; who only asks of "my medal" may have it from a father."""


def _is_own(text: str, span: Span) -> bool:
    before, after = text[: span.start], text[span.end :]
    if _ON.match(after):
        return False  # "I've got the brassard on"
    return bool(_HAVE.search(before) or (_MINE.search(before) and _AWARDED.match(after)))


def of_its_owner(reading: Reading, lookup: Lookup) -> Reading:
    """The reading with what its wearer holds, where the question says that insignia are the wearer's own."""
    query = reading.query
    if query is None or query.kind not in _KINDS or not query.items:
        return reading
    own = [
        span.target
        for span in reading.spans
        if span.role == "item" and span.target and _is_own(reading.question.casefold(), span)
    ]
    known = dict(query.case.facts)
    held = [
        fact
        for item in own
        if "insignia" in lookup.broader(item)
        for fact, values in place_of(lookup, (item,), query.case.as_of).items()
        if lookup.facts[fact].family in _HELD and values == YES and fact not in known
    ]
    if not held:
        return reading
    facts = (*query.case.facts, *((fact, YES) for fact in dict.fromkeys(held)))
    asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))
