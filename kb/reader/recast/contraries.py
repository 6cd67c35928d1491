"""How things stand, in other words: "the radio's dead", "the sun has gone down", "the horses are in the
paddock", "no lorries moving", "along the edge of the water".

Read only for a text that is not understood as it stands, and only where the books have the one thing meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

Edit = tuple[int, int, str]
_THE = r"(?:(?:the|my|our|your|his|her|their|this|that) )?"
_IS = r"(?:['’](?:s|re)|,? (?:is|are|has|have|was|were))(?: (?:now|still|all|just|already|been|gone and))*"
_OVER = (
    r"(?=\s*(?:[.,;:!?–—-]|$"
    r"|(?:and|but|so|in|at|on|for|when|while|as|today|now|this|tonight|may|must|can|do|am)\b))"
)
"""Where it is over how something is: nothing follows that it is so of ("down by the hangar")."""
_DEAD = (
    r"(?:dead|broken|bust|busted|failed|packed (?:up|in)|gone (?:dead|down|wrong|bust)|given (?:up|out)|died"
    r"|conked out|down|out of order|not working|stopped working|kaput|on the blink|broken down|knackered)"
)
_NOT_GOING = (
    r"(?: (?:is|are|has|have|does|do|will)(?:n['’]t| not)|['’]s not| won['’]t) (?:work(?:ing)?|going|on)"
)
_SET = r"(?:gone down|set|sunk|gone|gone in for the (?:day|night)|down)"
_ABOUT = r"(?:about|around|here|nearby|present|walking (?:about|around)|out and about|close by)"
_VEHICLES = r"vehicles?|lorr(?:y|ies)|vans?|cars?|trucks?|wagons?|tractors?|forklifts?|fork-lifts?|traffic"
_ON_THE_MOVE = (
    r"(?:moving|on the move|driving|running|being driven|coming or going|coming in)(?: (?:about|around))?"
)


def contraries(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    for way in (_failed, _present, _sunk, _at_rest, _walked, _along, _long_hair):
        yield from way(found, lookup)


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?<![\w'’-])(?:{source})(?![\w’-])", re.IGNORECASE)


def _matches(source: str, found: Understood) -> Iterator[re.Match[str]]:
    return _compiled(source).finditer(found.text)


@cache
def _named(lookup: Lookup, pattern: str) -> tuple[tuple[Fact, re.Match[str]], ...]:
    """The circumstances that have a name of some form, each with what the first such name has."""
    form, found = _compiled(pattern), []
    for fact in lookup.base.facts:
        if fact.kind != "yes_no" or fact.family not in ("situation", "term"):
            continue
        names = (name.casefold() for name in (fact.label, *fact.other_labels))
        if (match := next((m for name in names if (m := form.fullmatch(name))), None)) is not None:
            found.append((fact, match))
    return tuple(found)


def _failed(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "My radio's dead", "the radio isn't working", where the books have "radio has failed"."""
    for pattern in (
        r"without (?:a )?working (?P<it>[\w -]+)",
        r"(?:the )?(?P<it>[\w -]+?) (?:has )?(?:failed|broken)",
    ):
        for fact, name in _named(lookup, pattern):
            it = rf"{_THE}{re.escape(name['it'])}"
            for match in _matches(rf"{it}(?:{_IS} {_DEAD}|{_NOT_GOING}){_OVER}", found):
                yield match.start(), match.end(), fact.label


def _present(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The horses are in the paddock", "no children about", where the books have "horses present"."""
    for fact, name in _named(lookup, r"(?:a |an |the |with )?(?P<who>[\w'’ -]+?) (?:present|about)"):
        who = name["who"].removesuffix("s")
        people = rf"{re.escape(who)}(?:s|es)?"
        some = r"(?:(?:the|a|an|some|any|still|lots of|many|few|several|two|three|other) )*"
        there = rf"there(?: (?:is|are)|['’](?:s|re)) (?:still )?{some}{people}(?: {_ABOUT})?"
        leads = r"(?= (?:out |back |over |down )?(?:in|at|on) (?:the|a|our)\b)"
        being = rf"{some}{people}{_IS}(?: {_ABOUT}|{leads})"
        bare = rf"{people}{leads}"
        none = rf"(?:there(?: (?:is|are)|['’](?:s|re)) )?(?:no|without any) {people}(?:{_IS})?(?: {_ABOUT})?"
        for match in _matches(none, found):
            yield match.start(), match.end(), f"no {fact.label}"
        told = [*_matches(there, found), *_matches(being, found)]
        told += [match for match in _matches(bare, found) if match.start() == 0]
        for match in told:
            if not re.search(r"(?i)\b(?:no|not|any|unless)\W*$", found.text[: match.start()]):
                yield match.start(), match.end(), fact.label


def _sunk(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The sun's gone down", where the books speak of sunset or of the dark."""
    names = [name.casefold() for name in _names_of(lookup)]
    put = "after sunset" if any("sunset" in name for name in names) else ""
    put = put or next((name for name in names if name in ("after dark", "in the dark")), "")
    if put:
        for match in _matches(rf"(?:the )?sun{_IS} {_SET}{_OVER}", found):
            yield match.start(), match.end(), put


def _names_of(lookup: Lookup) -> Iterable[str]:
    for fact in lookup.base.facts:
        if fact.family in ("situation", "term"):
            yield from (fact.label, *fact.other_labels)
            for value in fact.values:
                yield from (value.label, *value.other_labels)


def _at_rest(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "No lorries are moving", "nothing's moving", where the books have "vehicles moving"."""
    named = _named(
        lookup, rf"(?:near )?(?:an? )?(?:moving (?:{_VEHICLES})|(?:{_VEHICLES}) (?:is |are )?moving)"
    )
    if len(named) != 1:
        return
    label = named[0][0].label.casefold()
    put = f"not {label}" if label.startswith("near ") else f"no {label}"
    there = r"(?:there(?: (?:is|are)|['’](?:s|re)) )?"
    none = rf"{there}(?:no|not any|none of the) (?:other )?(?:{_VEHICLES})(?:{_IS})? {_ON_THE_MOVE}"
    nothing = rf"{there}nothing(?:{_IS})? (?:moving|on the move)"
    for match in (*_matches(none, found), *_matches(nothing, found)):
        yield match.start(), match.end(), put


def _walked(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "When they walk through the yard", where the books have "walking" or "on foot"."""
    if _named(lookup, r"on foot|walking"):
        for match in _matches(r"(?P<who>i|we|you|he|she|they|people|guests|visitors) walks?(?= \w)", found):
            yield match.end("who"), match.end(), " are walking"


def _along(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Fitted along the edge of the open water", where the books have "beside open water"."""
    besides = {m[1] for name in _names_of(lookup) if (m := _BESIDE.search(name.casefold())) is not None}
    for what in besides:
        by = r"(?:(?:right )?(?:along|at|on|by) (?:the |its )?(?:very )?edge of|alongside|right next to)"
        for match in _matches(rf"{by}(?= (?:the |some )?{re.escape(what)})", found):
            yield match.start(), match.end(), "beside"


_BESIDE = Pattern(r"\bbeside (?:the |a |an )?([\w -]+)$")


def _long_hair(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "It's past my collar", where the books have "hair longer than the collar"."""
    past = (
        r"(?:past|below|beneath|over|beyond|longer than|down to|as far as|to|on|at|touch(?:es|ing)|"
        r"reach(?:es|ing))"
    )
    long = r"(?:reaches|reaching|below|longer than|past|over|touching|falling below)"
    named = _named(
        lookup, rf"(?:with |wearing )?hair (?:that )?{long} (?:below )?(?:the )?(?P<to>collar|shoulder)s?"
    )
    if len(named) != 1:
        return
    fact, name = named[0]
    hangs = r"(?:['’]s|['’]ll be| is| goes| comes| hangs| falls| grows| gets| has grown| hangs down)?"
    how = r"(?: (?:well|just|way|right|down|only|quite|all the way|long enough to))*"
    to = rf"{past} (?:my|the|his|her|their|our) {name['to']}s?"
    for match in _matches(
        rf"(?:it|mine|my (?:own )?hair|(?:his|her|their) hair){hangs}{how} {to}{_OVER}", found
    ):
        yield match.start(), match.end(), f"i have {re.sub('^(?:with|wearing) ', '', fact.label.casefold())}"
