"""How old somebody is: "I'm 17", "my lad's a cadet, 15", "a 16-year-old", as the books measure an age.

Where nothing that the books say of the things asked about speaks of an age, it is left out: the answer is the
same at any.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kb.measures import same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Named
from kb.model.values import contains
from kb.reader.phrases.leads import COLLEAGUES, KIN
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

Edit = tuple[int, int, str]
_PERSON = rf"(?:i|he|she|(?:my|our|his|her) (?:{'|'.join(sorted(KIN))}))"
_IS = r"(?:['’](?:m|s)| am| is)"
_JUST = r"(?:(?:only|just|now|turned|already|barely|aged) )*"
_AGE = r"(?P<age>[1-9]\d)"
_OLD = r"(?:[- ]?years?[- ]?old|[- ]?yrs?[- ]?old|[- ]?y\.?o\.?|[- ]?years? of age)"
_ENDS = r"(?=\s*(?:[.,;?!]|$)|\s+(?:and|but|so)\b)"
_SINCE = (
    r"(?:yesterday|today|recently|last (?:week|month|year|summer|winter|autumn|spring|\w+day)"
    r"|(?:this|the other) (?:week|month|day|\w+day)"
    r"|(?:(?:a|\d+|a few|two|three) )?(?:days?|weeks?|months?) ago)"
)
_WAYS = (
    rf"(?P<kept>{_PERSON}{_IS} )(?:an? )?{_JUST}{_AGE}{_OLD}?(?P<joint>,? (?:and|but) )(?=(?:an?|the) [a-z])",
    rf"{_PERSON}{_IS} {_JUST}{_AGE}{_OLD}?{_ENDS}",
    rf"{_PERSON}(?:['’](?:ve|s)| have| has)? (?:only |just )*turned {_AGE}(?: {_SINCE})?{_ENDS}",
    rf",? ?\b(?:aged|age) {_AGE}(?:{_OLD})?{_ENDS}",
    rf"{_AGE}[- ]years?[- ]olds?(?= [a-z])",
    rf", {_JUST}{_AGE}{_OLD}?(?=\s*(?:[.,;?!]|$))",
)
"""Ways of saying it; the last is of somebody just named."""
_SPEAKS = Pattern(
    r"(?i)\b(?:aged?|ages|years? old|years of age|minors?|juveniles?|adults?|child(?:ren)?|youths?"
    r"|young(?:er)?|older|infants?|teenagers?|birthday"
    r"|(?:under|over|below|above) (?:1\d|2[0-5]|6\d)s?(?! ?(?:°|%|[a-z])))(?!\w)"
)
"""Words with which a book says that something turns on how old somebody is."""
_FAMILIES = frozenset({"grade", "branch", "appointment"})


def ages(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and what is put for each age told: "15 years old" where the books measure one."""
    told = list(_told(found, lookup))
    if not told:
        return
    measured = [
        fact
        for fact in lookup.base.facts
        if fact.kind == "quantity" and fact.unit and same_dimension(fact.unit, "mo")
        if any(name.casefold() == "age" for name in (fact.label, *fact.other_labels))
    ]
    if not measured and _speaks_of_age(found, lookup):
        return
    for match, kept in told:
        lead = match.group()[: len(match.group()) - len(match.group().lstrip(" ,"))]
        if len(measured) == 1:
            said = f"{match['age']} years old"
            joint = match["joint"] if kept else ""
            yield match.start() + len(kept), match.end(), f"{said}{joint}" if kept else f"{lead}{said}"
        else:
            yield match.start() + len(kept), match.end(), ""


def _told(found: Understood, lookup: Lookup) -> Iterator[tuple[re.Match[str], str]]:
    taken: list[tuple[int, int]] = []
    for way in _WAYS:
        for match in _compiled(way).finditer(found.text):
            start, end = match.span()
            if any(start < last and first < end for first, last in taken):
                continue
            named = match.group().startswith(",") and "age" not in match.group(0).replace(match["age"], "")
            if named and not _after_somebody(found, start, lookup):
                continue
            taken.append((start, end))
            yield match, (match.groupdict().get("kept") or "")


def _after_somebody(found: Understood, start: int, lookup: Lookup) -> bool:
    """Whether the words before a place name somebody: "a cadet, 15", "my son, 12"."""
    before = [piece for piece in found.pieces if found.tokens[piece.last - 1].end <= start]
    if not before:
        return False
    piece, low = before[-1], found.tokens[before[-1].last - 1].low
    standing = piece.tag == "fact" and lookup.facts[piece.fact].family in _FAMILIES
    return standing or low in KIN or low in COLLEAGUES


def _speaks_of_age(found: Understood, lookup: Lookup) -> bool:
    """Whether a clause speaks of an age, or a rule turns on one, that may bear on a thing named.

    A clause without rules bears on anything.
    """
    named = {entry.id for piece in found.pieces for entry in piece.entries if entry.kind == "item"}
    things = {near for item in named for near in (item, *lookup.broader(item), *lookup.narrower(item))}
    aged = {clause.id for clause in lookup.base.clauses if _SPEAKS.search(clause.text)}
    facts = {(fact.id, value.id) for fact in lookup.base.facts for value in fact.values if _says_age(value)}
    whole = {fact.id for fact in lookup.base.facts if _says_age(fact)}
    if any(not lookup.rules_of(clause) for clause in aged):
        return True
    for rule in lookup.base.rules:
        if things and things.isdisjoint(rule.scope.items):
            continue
        if rule.clause in aged:
            return True
        for test in tests(rule.condition):
            if test.fact in whole or any(f == test.fact and contains(test.values, v) for f, v in facts):
                return True
    return False


def _says_age(named: Named) -> bool:
    return any(_SPEAKS.search(name) for name in (named.label, *named.other_labels))


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?:(?<![\w'’-])|(?=[ ,]))(?:{source})", re.IGNORECASE)
