"""Whose insignia are asked about: who says "I have the medal" has what it is awarded for.

Where a badge is worn by those alone who hold a qualification or an appointment, it is taken as held, and the
reading says so ("for anyone with the rescue award").
"""

from __future__ import annotations

import datetime

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading, Span
from kb.model.values import NO, YES
from kb.reader.phrases.leads import KIN
from kb.reader.words.street import RELATIVES
from kb.reader.words.tokens import Token, tokenize
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


_OWN_KINDS = frozenset({"jewellery", "carried"})
_OWN = Pattern(r"(?i)\b(?:award\w*|own|personal|earned|holder)\b")


def is_of_kin(token: Token) -> bool:
    """ "My grandad's", "my nan's"."""
    low = token.low.replace("’", "'")
    return low.endswith(("'s", "s'")) and low.removesuffix("'s").removesuffix("'") in KIN | RELATIVES


def is_award(item: str, lookup: Lookup) -> bool:
    return "insignia" in lookup.broader(item)


def is_anybodys(item: str, lookup: Lookup) -> bool:
    """Whether it does not matter whose a thing is, or is known when it does: no part of a uniform."""
    kinds = lookup.broader(item)
    return ("insignia" in kinds and bool(held_by(item, lookup))) or not _OWN_KINDS.isdisjoint(kinds)


def held_by(item: str, lookup: Lookup, day: datetime.date | None = None) -> tuple[str, ...]:
    """The facts by which alone it is worn by whom it was awarded to."""
    return tuple(
        fact
        for fact, values in place_of(lookup, (item,), day).items()
        if values == YES and (lookup.facts[fact].family in _HELD or _OWN.search(lookup.facts[fact].label))
    )


def _is_own(text: str, span: Span) -> bool:
    before, after = text[: span.start], text[span.end :]
    if _ON.match(after):
        return False  # "I've got the brassard on"
    return bool(_HAVE.search(before) or (_MINE.search(before) and _AWARDED.match(after)))


def _is_of_kin(reading: Reading, span: Span) -> bool:
    before = tokenize(reading.question[: span.start])
    return bool(before) and is_of_kin(before[-1])


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
    of_kin = {span.target: NO for span in reading.spans if span.role == "item" and _is_of_kin(reading, span)}
    held = {
        fact: of_kin.get(item, YES)
        for item in (*own, *of_kin)
        if item and is_award(item, lookup)
        for fact in held_by(item, lookup, query.case.as_of)
        if fact not in dict(query.case.facts) and (item in of_kin or lookup.facts[fact].family in _HELD)
    }
    if not held:
        return reading
    facts = (*query.case.facts, *held.items())
    asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))
