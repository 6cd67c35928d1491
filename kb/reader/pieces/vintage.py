"""The year that a thing is from, told in passing: "my jersey from 2019", "the coat I bought in 2018".

It is not the day that is asked about. Where a rule of the thing tests a date (an award, an issue) it is that
date; elsewhere no rule takes it, and it is set aside and named.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Sequence

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.questions import Reading
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.naming import is_pattern_of
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

_YEAR = r"(?P<year>(?:19|20)\d\d)\b"
_WHEN = rf"(?:early |late |about |around |the year )?(?:(?:{'|'.join(MONTHS)}) (?:of )?)?{_YEAR}"
_WHO = r"(?:(?:i|he|she|we|they|you|that|which)(?:['’](?:ve|d|s))? )"
_DATING = "(?:(?:dates?|dating|dated|comes?|coming)(?: back)? )?"
_GOT = "(?:bought|purchased|acquired|made|issued|knitted|sewn|got|gotten|received|given|obtained|ordered)"
_GETTING = rf"(?:(?:was|were|have|had|has|been) )*{_GOT}(?: (?:it|them|new|back))*"
_ON = rf"(?!,?\s+(?:on(?=\W*$|,)|onwards?|forwards?|(?:to|until|till)\s+(?:\d|{'|'.join(MONTHS)})))"
"""What makes a stretch of days of it: "from 2026 on"."""
_FROM = Pattern(rf",?\s+(?:{_WHO}(?:(?:is|are) )?)?{_DATING}(?:from|of|to)\s+{_WHEN}{_ON}", re.IGNORECASE)
_BROUGHT = Pattern(rf",?\s+{_WHO}*{_GETTING}\s+(?:back )?in\s+{_WHEN}", re.IGNORECASE)
_STOOD = Pattern(
    r",?\s+(?:(?P<led>since|from|back in|in|on)\s+(?:the )?)?(?:\d\d?(?:st|nd|rd|th)?\s+(?:of )?)?"
    rf"{_WHEN}{_ON}",
    re.IGNORECASE,
)
"""Since when somebody is something: "pilot since 2015", "qualified in May 2021"."""
_MODEL = Pattern(rf"\s+{_YEAR}(?=\s)")
_THEN = word_set("was were did had been then")
_ATTAINED = word_set("qualified certified passed promoted appointed made became become earned trained")
_THINGS = word_set("item items name")


def of_a_year(
    found: Understood, today: datetime.date, lookup: Lookup, read: Callable[[str], Reading]
) -> Reading | None:
    """The reading without the year of a thing, or with it as the date that rules of the thing test."""
    stood = _STOOD.search(found.text)
    if stood is not None and is_of_standing(
        found.pieces, found.tokens, stood.start(), stood["led"] or "", lookup
    ):
        again = read(" ".join(f"{found.text[: stood.start()]} {found.text[stood.end() :].lstrip()}".split()))
        if again.query is not None:
            unused = (stood.group().strip(" ,"), *again.unused)
            return msgspec.structs.replace(again, question=found.text, unused=unused)
    for pattern in (_FROM, _BROUGHT, _MODEL):
        match = pattern.search(found.text)
        if match is None:
            continue
        items = _model_of(found, match) if pattern is _MODEL else _told_of(found, match, pattern is _FROM)
        if not items or int(match["year"]) > today.year:
            continue
        date = _date_of((*items, *_patterns_of(found, items, match.end(), lookup)), lookup)
        instead = f", {date} in {match['year']}," if date else " "
        first, last = found.text[: match.start()], found.text[match.end() :].lstrip(" ,")
        if date and pattern is _MODEL:  # "his 2015 badge": the date stands behind the thing
            first, instead, last = f"{first} {last.rstrip('?. ')}", f", {date} in {match['year']}", "?"
        text = " ".join(f"{first}{instead}{last}".split())
        again = read(text.replace(" ?", "?").replace(",?", "?"))
        if again.query is not None:
            unused = again.unused if date else (match.group().strip(" ,"), *again.unused)
            return msgspec.structs.replace(again, question=found.text, unused=unused)
    return None


def is_of_standing(
    pieces: Sequence[Piece], tokens: tuple[Token, ...], place: int, led: str, lookup: Lookup
) -> bool:
    """Whether what stands right before a place in the text is that somebody became something."""
    before = [piece for piece in pieces if tokens[piece.last - 1].end <= place]
    if not before or before[-1].tag != "fact" or lookup.facts[before[-1].fact].family not in PERSONAL:
        return False
    if any(token.low in _THEN for token in tokens if token.start >= place):
        return False  # "made K2 in 2021. Was it allowed then?"
    first = before[-1].first
    named = first and tokens[first - 1].low in ("a", "an", "the", "any")  # "a qualified pilot in 2027"
    words = () if named else tokens[max(first - 2, 0) : before[-1].last]
    return led.lower() == "since" or not _ATTAINED.isdisjoint(token.low for token in words)


def _told_of(found: Understood, match: re.Match[str], next_to: bool) -> tuple[str, ...]:
    """What the last name before may mean; nothing where the question is of a day gone by."""
    tokens = found.tokens
    if any(token.low in _THEN and token.end <= match.start() for token in tokens):
        return ()
    before = [piece for piece in found.pieces if tokens[piece.last - 1].end <= match.start()]
    named = [piece for piece in before if piece.tag in _THINGS]
    if not named or (next_to and named[-1] is not before[-1]):
        return ()
    return _things(named[-1])


def _model_of(found: Understood, match: re.Match[str]) -> tuple[str, ...]:
    """What the name after may mean: "my 2019 jersey"."""
    tokens, pieces = found.tokens, found.pieces
    places = [i for i, piece in enumerate(pieces) if tokens[piece.first].start >= match.end()]
    if not places or places[0] < 2 or pieces[places[0] - 2].tag not in ("det", "poss"):
        return ()
    return _things(pieces[places[0]]) if pieces[places[0]].tag in _THINGS else ()


def _things(piece: Piece) -> tuple[str, ...]:
    return tuple(entry.id for entry in piece.entries if entry.kind == "item") or (piece.arg,)


def _patterns_of(found: Understood, items: tuple[str, ...], place: int, lookup: Lookup) -> tuple[str, ...]:
    """What is asked about behind the year, where it is the thing's old or new pattern."""
    after = (p.arg for p in found.pieces if p.tag == "item" and found.tokens[p.first].start >= place)
    return tuple(later for later in after if any(is_pattern_of(later, item, lookup) for item in items))


def _date_of(items: tuple[str, ...], lookup: Lookup) -> str:
    """What the one date is called that rules of the things test; empty where there is none or more."""
    near = {one for item in items if item in lookup.items for one in lookup.narrower(item)}
    tested = {
        test.fact
        for rule in lookup.rules_on(near)
        for test in tests(rule.condition)
        if lookup.facts[test.fact].kind == "date"
    }
    return lookup.facts[tested.pop()].label if len(tested) == 1 else ""
