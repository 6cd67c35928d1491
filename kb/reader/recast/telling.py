"""How surely a clause has a word of a question, and whether it tells what is asked for: a time, a reason."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.records import Clause
from kb.reader.names.spelling import akin
from kb.reader.pieces.pieces import Piece
from kb.reader.recast.folk import names_of_people
from kb.reader.words.forms import NUMBER_WORDS, SPELLINGS, word_set
from kb.reader.words.same_sense import senses_of, with_phrases
from kb.text import Pattern

ASKING = word_set("who whom whose when what which how where why")
LIGHT = word_set("""
    a an the this that these those such some any all each every no not n't i me my mine we us our you
    your he him his she her it its they them their one ones oneself someone somebody anyone anybody
    everyone everybody people member members person man woman is are was were be been being am 's 're
    've 'm do does did doing have has had having hold holds holding both got get gets getting
    can could may might must shall should will would need needs ought and or but if then than so as of
    in on at to for from by with without about into onto over under up down out off through per within
    during until till since before after between against who whom whose when what which how where why
    whether there here now today still yet just only also too even very much many more most long soon
    quickly fast far often big high wide exactly really actually please tell say says said know like
    want wants supposed meant allowed obliged required happen happens happened go goes keep kept make
    makes made use used thing things sort kind kinds way matter matters case book books order orders
    rule rules regulation regulations instruction instructions clause clauses bit bits count counts
    counted side sides held place speak speaks spoke mention mentions cover covers deal deals
    according concerned mm cm m km kg inch inches written wear wears wore worn put , . ? ! ; : -
    ' " ( )
""")
TIME = Pattern(
    r"\b(?:\d+|an?|half|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fourteen|thirty)\s"
    r"(?:minute|hour|day|week|month|year)s?\b|\b(?:twelve|fourteen|ten|three|\d+) (?:months|days|years)\b"
    r"|\bfor (?:good|life)\b|\blasts? (?:for )?as long as\b|\bnot expire\b|\bwithout limit\b"
)
_WHEN = Pattern(
    r"\b(?:when|while|until|before|after|within|each|every|daily|from|at|on|whenever|during|once|then|time"
    r"|\d{4})\b"
)
_REASON = Pattern(
    r"\b(?:because|since|so that|that they|lest|by reason|in order|for they|for it|for the|have been|keep"
    r"|are few|tell|need|where it|which is|draws|belong)"
)
_HOW_LONG = Pattern(
    r"\bhow (?:long|soon|late|early|quickly|fast)\b|\bwithin\b"
    r"|\bhow many (?:minutes|hours|days|weeks|months|years)\b"
)
_NUMBER = Pattern(
    r"(?<![\d./])\d+(?![\d./]|\.\d)(?! ?(?:mm|cm|m|in|inch|inches|km|metres?|°|degrees|%|(?:january|february"
    r"|march|april|may|june|july|august|september|october|november|december))\b)(?! ?[°%])"
)
"""A number of things, and neither a measure, a day nor a clause."""
SOMEBODY = word_set("""
    member owner senior wearer holder tailor cleaner doctor physician officer commander master
    marshal chief superintendent quartermaster leader captain board secretary
    inspector captain everyone everybody nobody anyone others hand hands store authority who whoever
    contractor visitor
""")
_ENDINGS = word_set(
    "e s es d ed er ers or ors ing y ies ly en ion al ant ent ance ence age ful ive ure ial nt"
) | {""}
_BRITISH = {american: british for british, american in SPELLINGS.items()}
_METER = Pattern(r"(?<=milli|centi)meter|(?<=kilo)meter")
_FEW = 8
"""More things than that are a wide class, of none of which its rules speak."""


class Unit(msgspec.Struct, frozen=True):
    """A word of weight, or a name with all that stands for it in a clause."""

    lemmas: tuple[str, ...]
    names: tuple[tuple[str, ...], ...] = ()
    items: tuple[str, ...] = ()
    piece: Piece | None = None


def british(low: str) -> str:
    """A word as the books spell it: clauses are not read in American spelling, as names are."""
    return _BRITISH.get(low) or _METER.sub("metre", low)


def asked_for(opening: Sequence[str]) -> str:
    """What the question word asks for: somebody, a time, a number, an amount, a reason, or anything."""
    said = " ".join(opening)
    if not {"who", "whom", "whose"}.isdisjoint(opening):
        return "who"
    if _HOW_LONG.search(said):
        return "time"
    if Pattern(r"\bhow much\b|\bhow many (?:mm|cm|m|metres|meters|inches|degrees|percent)\b").search(said):
        return "amount"
    if Pattern(r"\bhow many\b").search(said):
        return "number"
    if Pattern(r"\bwhen\b|\bhow often\b|\bwhat (?:day|date|time)\b").search(said):
        return "when"
    return "why" if "why" in opening else ""


def tells(clause: Clause, asked: str, lookup: Lookup) -> bool:
    """Whether a clause tells somebody, a time, a number or a reason, as it is asked for."""
    text = clause.text.casefold()
    if asked == "time":
        return TIME.search(text) is not None
    if asked == "amount":
        return any(c.isdigit() for c in text) or not NUMBER_WORDS.keys().isdisjoint(text.split())
    if asked == "number":
        return not NUMBER_WORDS.keys().isdisjoint(text.split()) or _NUMBER.search(text) is not None
    if asked in ("when", "why"):
        telling = _WHEN if asked == "when" else _REASON
        return telling.search(text) is not None or (asked == "why" and clause.kind == "purpose")
    if asked == "who":
        names = {word for name in names_of_people(lookup) for word in analyse(name)}
        return not (SOMEBODY | names).isdisjoint(analysed(text))
    return True


@lru_cache(maxsize=4096)
def analysed(text: str) -> tuple[str, ...]:
    return analyse(text)


def clause_words(clause: Clause) -> tuple[str, ...]:
    """The words of weight of a clause, its heading and its part, with those that phrases in it stand for."""
    return words_in(f"{clause.heading or ''}. {clause.part or ''}. {clause.text}")


@lru_cache(maxsize=4096)
def words_in(text: str) -> tuple[str, ...]:
    """The words of weight of a text, with those that phrases in it stand for."""
    return analysed(with_phrases(text))


def _is_form(word: str, other: str) -> bool:
    """Whether two words are one but for how they end: "inspect", "inspection", not "rope" and "ropeway"."""
    if not akin(word, other):
        return False
    stem = next((i for i, pair in enumerate(zip(word, other, strict=False)) if len(set(pair)) > 1), None)
    stem = min(len(word), len(other)) if stem is None else stem
    return {word[stem:], other[stem:]} <= _ENDINGS


@lru_cache(maxsize=65536)
def word_level(word: str, words: tuple[str, ...]) -> float:
    """How surely a word is among others: 1 as it is, less in another form or in one of its sense, else 0."""
    if word in words:
        return 1.0
    starts, senses = _looked_up(words)
    if any(_is_form(word, other) for other in starts.get(word[:_STEM], ())):
        return 0.9
    number = NUMBER_WORDS.get(word)
    if number is not None and str(number) in words:
        return 0.9
    return 0.0 if senses.isdisjoint(senses_of(word)) else 0.7


_STEM = 4  # letters that forms of one word share at least


@lru_cache(maxsize=4096)
def _looked_up(words: tuple[str, ...]) -> tuple[Mapping[str, Sequence[str]], frozenset[int]]:
    """Words by the letters that they begin with, and the senses of all of them."""
    starts: dict[str, list[str]] = {}
    for word in words:
        starts.setdefault(word[:_STEM], []).append(word)
    return starts, frozenset().union(*map(senses_of, words))


def is_ruled(items: Sequence[str], clause: Clause, lookup: Lookup) -> bool:
    """Whether a rule of a clause is on one of some things, and not on a wide class of them."""
    ruled = {
        i for rule in lookup.rules_of(clause.id) for i in rule.scope.items if len(lookup.narrower(i)) <= _FEW
    }
    return any(not ruled.isdisjoint(lookup.broader(item)) for item in items)


def can_tell(text: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause is of the sort that is asked for: of leave, of what is worn."""
    return frees_whom_asked(text, clause) and dresses(text, clause, lookup)


def dresses(text: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause says that something is worn or carried, where it is asked what somebody wears."""
    if _WHAT_IS_WORN.search(text) is None or _OF_WEAR.search(clause.text) is not None:
        return True
    return any(rule.aspect in ("wear", "carrying") for rule in lookup.rules_of(clause.id))


_OF_WEAR = Pattern(r"(?i)\b(?:wear|wears|worn(?! out)|wearing|put on|dressed|dresses)\b")
_WHAT_IS_WORN = Pattern(
    r"(?i)\bwhat(?:['\u2019]?s)?(?: \w+){0,7}? (?:(?:wear|wears|wearing|dress in|kit|outfit)\b"
    r"|(?:put|puts|have|has|goes|go) on(?= (?:to|for|when|in|at|if|while)\b|[?.,]|$))"
)


def frees_whom_asked(text: str, clause: Clause) -> bool:
    """Whether a clause is on leave, where it is asked who is let off something: not the duty itself."""
    return _LET_OFF.search(text) is None or _FREES.search(clause.text) is not None


_LET_OFF = Pattern(
    r"(?i)\b(?:let(?:s|ting)? (?:\w+ )?off|excus(?:e|es|ing) (?:me|us|him|her|them|any\w+|some\w+|a|the|my)\b"
    r"|exempt \w+ from|be excused from)"
)
_FREES = Pattern(
    r"(?i)\b(?:excus|waiv|exempt|dispens|permit|permission|allow|leave (?:off|from)|let off|granted?\b"
    r"|left off|accept|admits? no|depart|relax)"
)
