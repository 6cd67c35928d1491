"""What people tell of themselves and of their day, as what the books have of it: "I've done twelve years",
"I'm first violin", "on an ordinary evening", "for two minutes".

Read only for a text that is not understood as it stands; the names are those of the books that are loaded.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kb.measures import same_dimension
from kb.measures.parsing import find_measure
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact, Measure, Rule
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.implied import INSTRUMENTS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

Edit = tuple[int, int, str]
_NUMBER = (
    r"(?:\d+(?:\.5)?|(?:twenty|thirty|forty)(?:[- ]\w+)?|\w+teen|one|two|three|four|five|six|seven|eight|nine"
    r"|ten|eleven|twelve|half a|an?)"
)
_FULL = r"(?:(?P<over>over|more than|at least|well over|just over|a good) |(?P<about>about|around) |a full )?"
_SHORT = r"(?:nearly|almost|not quite|just under|under|less than|close to|coming up to|getting on for)"
_HERE = (
    r"(?:here|in|with (?:the|this|our|your) \w+(?: \w+)?|at (?:the|this|our) \w+|under my belt|behind me"
    r"|on the (?:job|books|staff|crew|team)|in (?:the|this) (?:job|trade|company|service|place|building))"
)
_DONE = r"(?:done|served|put in|clocked up|worked|been working|completed)"
_SPAN = rf"(?:for )?(?P<how>{_SHORT} )?{_FULL}(?P<told>{_NUMBER} (?:years?|months?|weeks?))"
_HAVE = r"(?:(?:i|we)(?:['’]ve| have)(?: now| already)? |^)"
_SERVED = (
    rf"{_HAVE}(?:been|worked|been working) (?:{_HERE},? )?{_SPAN}(?: (?:{_HERE}|now|already|of service))*",
    rf"{_HAVE}{_DONE} {_SPAN}(?: (?:{_HERE}|now|already|of service))*",
    rf"{_HAVE}(?:got|had) {_SPAN}(?: (?:{_HERE}|of service))+",
    rf"(?:i|we) (?:joined|started(?: here)?|came here|signed on) {_SPAN} (?:ago|back)",
    rf"(?:^|(?<=[.,;] ))(?:i have |i['’]ve (?:got )?|with )?{_SPAN}['’]? (?:of )?service",
)
"""Ways of saying how long one has served."""
_OF_SERVICE = word_set(
    "with the a company service of in or more and years year long s ' 's force at least than"
)
_ORDINARY = (
    r"(?P<lead>(?:for|on|at|in|during) )?(?:an?|the|my|our|any) (?:(?:just|perfectly) )?(?:ordinary|normal"
    r"|everyday|regular|usual|routine|standard|run-of-the-mill) (?P<what>evening|night|day|morning|afternoon"
    r"|flight|shift|performance|show|trip|journey|run|crossing|watch|patrol|working day|occasion|duty|service"
    r"|matinee|round|sailing)s?"
)
_SPECIAL = word_set("formal special ceremonial gala festive")
_TIME = (
    r"(?:(?:just|only) )?(?:for|in) (?:only |just |about |around |another )?"
    rf"(?:(?:{_NUMBER}|a few|a couple of|half an)(?: or (?:two|so|three))?"
    r" (?:seconds?|secs?|minutes?|mins?|moments?|hours?)(?: or (?:two|so))?(?:['’]? time)?"
    r"|a (?:bit|while|tick|sec)|half an hour)"
    r"(?=\s*(?:[.,;:?!]|$| (?:and|but|so|at|on|in|while|when)\b))"
)
_CLOCK = word_set("seconds minute minutes hour hours briefly")
_ACTS = frozenset({"wear", "carrying", "use"})
_DESK = r"(?:(?:the )?(?:first|second|third|fourth|principal|lead|solo|deputy|1st|2nd|3rd) )"
_MUSICIAN = word_set("musician bandsman")


def lives(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    for way in (_served, _ordinary, _for_a_moment, _this_morning, _player):
        yield from way(found, lookup)


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?<![\w'’-])(?:{source})(?![\w’-])", re.IGNORECASE)


def _served(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "I've got eight years in": the length of service, or whether it is as long as the books want."""
    for match in (match for way in _SERVED for match in _compiled(way).finditer(found.text)):
        said = match["told"]
        told = find_measure(said)
        if told is None or not same_dimension(told.measure.unit, "mo"):
            continue
        length = [f for f in lookup.base.facts if f.kind == "quantity" and "service" in _words(f)]
        if len(length) == 1 and not match["how"]:
            yield (
                match.start(),
                match.end(),
                f"I have {'at least ' if match['over'] else ''}{said} of service",
            )
        elif (settled := _settled(told.measure, match, lookup)) is not None:
            fact, is_so = settled
            yield match.start(), match.end(), f"I {'have' if is_so else 'do not have'} {fact.label}"


def _settled(told: Measure, match: re.Match[str], lookup: Lookup) -> tuple[Fact, bool] | None:
    """The one fact that is so many years of service, and whether they are reached, if that is sure."""
    short, over, about = bool(match["how"]), bool(match["over"]), bool(match["about"])
    found: list[tuple[Fact, bool]] = []
    for fact in lookup.base.facts:
        stated = find_measure(fact.label) if fact.kind == "yes_no" else None
        if (
            stated is None
            or not same_dimension(stated.measure.unit, "mo")
            or not same_dimension(told.unit, "mo")
        ):
            continue
        rest = fact.label[: stated.start] + fact.label[stated.end :]
        if not {token.low for token in tokenize(rest)} <= _OF_SERVICE:
            continue
        low = stated.measure.interval.low
        if low is None or told.interval.low is None or told.interval.high is None:
            return None
        if (told.interval.low > low and not short) or (told.interval.low == low and not (short or about)):
            found.append((fact, True))
        elif not over and (told.interval.high < low or (short and told.interval.high == low)):
            found.append((fact, False))
    return found[0] if len(found) == 1 else None


def _words(fact: Fact) -> set[str]:
    return {word for name in (fact.label, *fact.other_labels) for word in name.casefold().split()}


def _tested(found: Understood, lookup: Lookup) -> set[str]:
    """The facts that rules on the things named turn on."""
    return {test.fact for rule in _rules(found, lookup) for test in tests(rule.condition)}


def _rules(found: Understood, lookup: Lookup) -> tuple[Rule, ...]:
    named = {entry.id for piece in found.pieces for entry in piece.entries if entry.kind == "item"}
    wider = {broad for item in named for broad in lookup.broader(item)}
    return lookup.rules_on(wider)


def _ordinary(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "On an ordinary evening" is an evening, and none of those that the books tell from others."""
    for match in _compiled(_ORDINARY).finditer(found.text):
        special = list(_special(_tested(found, lookup), lookup))
        start = match.start("what")
        known = any(
            piece.tag != "unknown" and found.tokens[piece.first].start == start and piece.entries
            for piece in found.pieces
        )
        lead = match["lead"] or ""
        kept = f"{lead}the {found.text[start : match.end()]}" if known else ""
        yield match.start(), match.end(), "".join([kept, *(f", not on a {label}" for label in special)])


def _special(facts: set[str], lookup: Lookup) -> Iterator[str]:
    for fact in sorted(facts):
        record = lookup.facts[fact]
        if record.family != "situation":
            continue
        for named in (record,) if record.kind == "yes_no" else record.values:
            if not _SPECIAL.isdisjoint(named.label.casefold().split()):
                yield named.label


def _for_a_moment(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "For two minutes", where no circumstance of the books tells how long or how soon."""
    times = list(_compiled(_TIME).finditer(found.text))
    if not times:
        return
    clauses = {rule.clause for rule in _rules(found, lookup) if rule.aspect in _ACTS}
    names = (n for f in lookup.base.facts for one in (f, *f.values) for n in (one.label, *one.other_labels))
    said = (*names, *(lookup.clauses[clause].text for clause in clauses))
    if any(not _CLOCK.isdisjoint(re.findall(r"[a-z]+", text.casefold())) for text in said):
        return
    if any(f.unit and same_dimension(f.unit, "min") for f in lookup.base.facts if f.kind == "quantity"):
        return
    if re.search(r"(?i)\bhow (?:long|soon)\b", found.text) is None:
        for match in times:
            yield match.start(), match.end(), ""


def _this_morning(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Coming round this morning", where no name of the books is of that part of the day."""
    said = _compiled(r"(?:later )?this (morning|afternoon|week)(?=\s*(?:[.,;:?!]|$))")
    if said.search(found.text) is None:
        return
    facts = [one for f in lookup.base.facts for one in (f, *f.values)]
    known = " ".join(name for one in facts for name in (one.label, *one.other_labels)).casefold()
    for match in said.finditer(found.text):
        if match[1].casefold() not in known:
            yield match.start(), match.end(), ""


TIMES = (_for_a_moment, _this_morning)
"""Ways of telling a time of which the books know nothing."""


def _player(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "I play the drums", "I'm first violin": a drummer, a musician, where the books have one."""
    people = [v.label for f in lookup.base.facts if f.family in ("grade", "branch") for v in f.values]
    musician = [label for label in people if label.casefold() in _MUSICIAN]
    if len(musician) > 1:
        return
    facts = [
        f for f in lookup.base.facts if f.kind == "yes_no" and f.family in ("qualification", "appointment")
    ]
    named = {name.casefold() for fact in facts for name in (fact.label, *fact.other_labels)}
    for instrument, players in INSTRUMENTS.items():
        them = [name for name in (*players, f"{instrument} player") if name in named]
        if not them and not musician:
            continue
        who = " and ".join([*musician, *them[:1]])
        plain = "|".join(re.escape(word) for word in (f"{instrument} player", *players))
        ways = [
            rf"(?:i|we) plays? (?:the |my |our |his |her |an? )?{instrument}",
            rf"i(?:['’]m| am) (?:on (?:the )?|{_DESK}(?:on )?){instrument}",
        ]
        if not them:
            ways.append(rf"i(?:['’]m| am) (?:an? |the |{_DESK})(?:{plain})")
        for match in (match for way in ways for match in _compiled(way).finditer(found.text)):
            yield match.start(), match.end(), f"I am a {who}"
