"""A measure or a number told and then judged: "4 1/2 in below the knot. Too long?", "must I trim it?".

What passes judgement says no more than that it is asked whether the measure may be so. It is taken out, and
that question is put in its place; what the measure is of is left to be read as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kb.measures import find_measure
from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

TRIGGERS = word_set("""

    wrong bad amiss sloppy pushing stretching chancing will too over overly enough excessive oversize
    oversized undersize undersized overlong bit tad touch side limit tolerance tolerances spec standard
    regulation scratch compliant good passable satisfactory pass do serve comply conform must should need
    have trim shave cut clip crop file shorten lengthen move shift raise lower replace change redo limits
    bounds acceptable measure mark maximum top snuff inspection fault faulty fail mistake reject send issue
    hand allowance allowances leeway margin
""")
"""Of these a text must have one."""
_SIZE = "long|short|wide|broad|narrow|high|tall|low|big|large|small|deep|thick|thin|far|close|near|heavy|tiny"
_DEGREE = (
    r"(?:(?:far|much|way|slightly|rather|somewhat|just|quite|still|simply|perhaps|maybe|only|a|bit|little|tad"
    r"|touch|shade|fraction|hair|or|well|really|already|now|actually)\ )*"
)
_WHO = "(?:i|he|she|we|they|you|one)"
_JUDGEMENT = rf"""{_DEGREE}(?:
    (?:a\ )?bit\ much|(?:pushing|stretching|chancing)\ it
    |(?:too|overly)\ (?:{_SIZE}|much|many|few)(?:\ (?:up|down|out|apart|off|in))?
    |(?:a\ )?(?:bit|little|tad|touch)\ (?:on\ the\ )?(?:{_SIZE})(?:\ side)?|on\ the\ (?:{_SIZE})\ side
    |(?:(?:{_SIZE}|good|tidy|neat)\ )?enough|over-?(?:long|wide|high|sized?|large|big)|oversized?|undersized?
    |excessive|over\ the\ (?:top|limit|mark|maximum|max|odds|line)
    |out(?:side)?(?:\ of)?\ (?:the\ )?(?:tolerance|allowance|bounds|spec)
    |(?:with)?in(?:side)?\ (?:(?:the|its|our|their)\ )?(?:tolerances?|allowances?|leeway|margins?|limits?
    |bounds|rules?|regulations?|spec|law|what(?:'s|\ is)\ (?:allowed|permitted))
    |(?:the\ )?regulation(?:\ (?:length|size|height|width))?|to\ (?:regulations?|spec|standard)
    |up\ to\ (?:scratch|standard|spec|snuff|the\ mark)|any\ good|good|compliant|passable|satisfactory
    |(?:one|two|three|some|several|a\ few|a\ couple)\ too\ (?:many|few)|wrong|bad|amiss|sloppy
    |(?:an?\ )(?:fault|mistake|error|breach|offence)|faulty|(?:(?:a\ )?pass\ or\ (?:a\ )?fail)
    |(?:(?:can|may|could|do|should)\ {_WHO}\ )?(?:hand|issue|give)\ (?:it|them|that|those)\ (?:out|to\ \w+)
    |(?:(?:will|would|does|do|should|can|could|might)\ )?(?:it|that|this|they|those|these|which)?\ ?
     (?:still\ )?(?:pass|do|serve|comply|conform)(?:es)?(?:\ (?:muster|(?:the\ |an\ )?inspection))?
)"""
_SUBJECT = r"(?:i|he|she|we|they|you|one|it|that|this|those|these|which)"
_MENDING = rf"""(?:(?:so|and|then|now)\ )*
    (?:(?:must|should|shall|do|does|need|ought|has|have|will|would)\ {_SUBJECT}[ ]
     (?:(?:to|have\ to|need\ to|got\ to|need)\ )?)?(?:be\ )?
    (?:trim|shave|cut|clip|crop|shorten|lengthen|file|hem|take|let|move|shift|raise|lower|re-?sew|re-?pin
    |re-?do|unpick|replace|change|swap|return|adjust|reject|send)
    (?:med|d|ped|ed|ming|ting|ping|ing)?(?:\ (?:it|them|that|this|mine))?
    (?:\ (?:back|down|up|off|in|out|again|over|shorter|away))*"""
_LED = rf"""(?:(?:so|and|but|or|now|well)\ )*(?:(?:ok|okay|fine|right|all\ right)\ or\ )?
    (?:(?:{_SUBJECT}|(?:the|my|our)\ [\w'-]+)\ (?:says?|said|reckons?|thinks?|claims?|swears?|insists?
     |tells?\ me)(?:\ that)?\ )?
    (?:(?:is|are|was|were|would|will|does|do|looks?|seems?|sounds?|am|isn't|aren't|not)\ )?
    (?:{_SUBJECT}(?:'s|'re)?\ (?:be\ |is\ |are\ |not\ )?)?(?:not\ )?(?:be\ |count\ as\ )?"""
_TAG = r"""(?:,?\ (?:i\ hope|i\ trust|i\ take\ it|surely|right|then|or\ what|or\ not|for\ (?:you|him|her|them)
    |would\ you\ say|do\ you\ think|all\ right|at\ all|though|please|is\ that|no|yes
    |or\ is\ (?:it|that)\ (?:ok|okay|fine)
    |(?:is|are|does|do|will|would|was)(?:n't)?\ (?:it|they|that|this|he|she)(?:\ not)?))*"""
_BREAK = r"(?:\s*[,;:.!?]+\s+|\s+[-–—]+\s+)"
_CIRCUMSTANCE = r"(?P<rest>\ (?:in|on|at|with|for|when|while|if|under|during|to|by)\ [^.;!?]+)?"


@cache
def _shapes() -> tuple[re.Pattern[str], ...]:
    """Told and judged; told and to be mended; judged, or to be mended, in the question that tells it."""
    sources = (
        rf"(?P<told>.+?){_BREAK}{_LED}{_JUDGEMENT}{_CIRCUMSTANCE}{_TAG}\W*",
        rf"(?P<told>.+?){_BREAK}{_MENDING}{_CIRCUMSTANCE}{_TAG}\W*",
        r"(?:(?:is|are|was|were|would|will|does|do)\ )(?P<told>.+?)\ (?:be\ |look\ |count\ as\ |seem\ )?"
        rf"{_JUDGEMENT}{_CIRCUMSTANCE}{_TAG}\W*",
        rf"(?P<told>.+?)(?:\ (?:is|are|was|would\ be|will\ be)|'s|'re)\ {_JUDGEMENT}{_CIRCUMSTANCE}{_TAG}\W*",
        r"(?:(?:must|should|does|do|has|have|will)\ )(?P<told>.+?)\ (?:(?:have\ to|need\ to|got\ to|to)\ )?"
        rf"(?:be\ |need\ )(?:trimm|shav|cutt?|clipp|cropp|shorten|lengthen|fil)(?:ed|ing)?"
        rf"(?:\ (?:back|down|off))?{_CIRCUMSTANCE}{_TAG}\W*",
    )
    return tuple(re.compile(source, re.IGNORECASE | re.VERBOSE) for source in sources)


_TOO_AT = re.compile(
    rf"\b((?:far |much |a bit )?too (?:{_SIZE})) (?:at|with) ((?:an?|one|two|half|\d)[^,;.?!]*)",
    re.IGNORECASE,
)
"""What is judged before it is told: "too high at 4 cm"."""
_COUNTED = (
    r"(?i)\b(?:two|three|four|five|six|seven|eight|nine|ten|\d{1,2}|a couple(?: of)?|a pair of|pairs)\s+\w+"
)
_CALLED = Pattern(r"(?i)^to (\w+)\b")


def judged(text: str) -> Iterator[str]:
    """The text as the question whether the one measure or number in it may be so."""
    plain = _TOO_AT.sub(r"\2, \1", " ".join(text.replace("’", "'").split()))
    yield from _told_and_judged(plain)
    led = _ASKED_LAST.fullmatch(plain)
    if led is not None and not _amounts(led["led"]):
        yield from (f"{led['led']} {asked}" for asked in _told_and_judged(led["asked"]))


_ASKED_LAST = Pattern(
    r"(?i)(?P<led>[^.,;:?]+[.,;:]) "
    r"(?P<asked>(?:is|are|was|were|would|will|does|do) (?:an?|the|my|our|his|her) .+)"
)
"""What stands before the question: "Rescue Man here. Would ... be too long?"."""


def _told_and_judged(plain: str) -> Iterator[str]:
    for shape in _shapes():
        found = shape.fullmatch(plain)
        if found is None:
            continue
        told = _FULL.sub(r"\1 ", found["told"])
        told, rest = _plainly(told.strip(" ,;:-–—")), (found["rest"] or "").strip()
        rest = re.sub(r"(?i)^for (?:one|an?|any|each) (?:man|woman|person|hand|body|wearer)$", "", rest)
        if not _amounts(told) or _amounts(rest) or _TWICE.search(rest):
            continue
        side = _TOO.search(plain, found.end("told"))
        measure = find_measure(told)
        if side is not None and measure is not None and measure.end == len(told):
            yield from _asked(f"{told} {_SIDES[side[1].casefold()]}", rest)
        yield from _asked(told, rest)


_SIDES = word_pairs("""
    long=long short=long wide=wide broad=wide narrow=wide high=high tall=high low=high thick=thick thin=thick
    deep=deep
""")
_TWICE = Pattern(r"(?i)\band (?:now|today|then|before|after)\b")
_TOO = Pattern(rf"(?i)\btoo ({'|'.join(_SIDES)})\b")
"""Which side of a thing a measure is of, by what it is said to be too much of."""
_ORIGIN = Pattern(
    r"(?i),? (?:(?:that|which) )?(?:(?:they|he|she|i|we|someone|the [a-z]+|my [a-z]+)"
    r"(?:'ve|'d| have| had| was| were)? |(?:is|was|has|have|had) )?(?:just )?(?:been )?"
    r"(?:sent|made|given|gave|issued|bought|sold|got|chosen|chose|picked|found|ordered|cut"
    r"|printed|engraved|delivered|handed|come|came|arrived)(?: (?:me|us|him|her))?"
    r"(?: (?:back|up|out))?(?: (?:from|at|by|off) (?:the|my|an?|our) [a-z]+(?: shop)?)?$"
)
_SPAN = Pattern(
    r"(?i),? (?:(?:that|which) )?(?:runs?|comes?|came|stretch(?:es)?|goes|extends?|reach(?:es)?|measures?"
    r"|stands?|has|(?:is|are|was|has been|have been|'s been)(?: (?:cut|let|taken|\w+ed))?)"
    r"(?: (?:out|up|down|in|on))?(?: (?:to|at|of))?$"
)
_FULL = Pattern(r"(?i)\b(an?|one|two|three|\d+) (?:full|whole|good|clear|bare|mere) (?=[a-z])")
_GAVE = Pattern(
    r"(?i)^(?:they|he|she|someone|(?:the|my|our) [a-z]+)(?:'ve|'s| have| has)? (?:cut|made|sewed|sewn|printed"
    r"|engraved|gave|given|sent|issued|sold)(?: (?:me|us|him|her))? (?=(?:an?|my|the|his|her)\b)"
)
_DATUM = Pattern(
    r"(?i)^ (?:too|above|over|below|under|beneath|past|beyond|from|off|up|down|short|clear|between|inside"
    r"|outside)\b"
)


def _plainly(told: str) -> str:
    """What is told, without where the thing comes from, and with "is" for how far it runs."""
    told = re.sub(r"(?i)\ba couple(?: of)?\b", "two", told)
    told = re.sub(r"(?i),? (?:just )?(?:like|as with) (?:the|my|our) old (?:ones?|patterns?)\b", "", told)
    told = re.sub(r"(?i) (?:on )?(?:each|either|both) sides?$", "", told)
    told = re.sub(r"(?i)\b(is|are) (?:quite |rather )?an? \w+ ones?, (?=an?\b|half|\d)", r"\1 ", told)
    told = _GAVE.sub("", told)
    told = re.sub(r"(?i)^((?:my|the|his|her|our) )(?:brand[ -]?)?new ", r"\1", told)
    measure = find_measure(told)
    if measure is None or _DATUM.match(told[measure.end :]):
        return told
    before, after = told[: measure.start].rstrip(), told[measure.start :]
    spans = _SPAN.search(before)
    bare = before[: spans.start()] if spans is not None else before
    rest = _ORIGIN.sub("", bare)
    verb = " is" if spans is not None or rest != bare else ""
    return f"{rest}{verb} {after}" if rest else told


def _asked(told: str, rest: str) -> Iterator[str]:
    called = _CALLED.match(rest)
    if called is not None:
        yield f"may I {rest[3:].replace(called[1], f'{called[1]} {told}', 1)}?"
        return
    measure = find_measure(told)
    if measure is not None and not measure.start and told[measure.end :].strip() in {"", *_SIDES}:
        if rest.startswith("for "):
            yield f"may {rest[4:]} be {told}?"  # "is 25 mm too long for a beard"
        return
    yield f"{told}{f', {rest}' if rest else ''}. Is that OK?"
    yield f"is {told}{f' {rest}' if rest else ''} OK?"


def _amounts(text: str) -> bool:
    return find_measure(text) is not None or re.search(_COUNTED, text) is not None


def may_judge(tokens: tuple[Token, ...]) -> bool:
    """Whether a text has a word that passes judgement, or of what is done where it is bad."""
    return any(token.low in TRIGGERS or token.key in TRIGGERS for token in tokens)
