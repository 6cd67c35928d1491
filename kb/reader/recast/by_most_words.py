"""The clause that most words of a question speak of: "what happens if the Master forgets to send his order?"

Only for questions that are no choice, and only where all else understood nothing. What asks must stand in
the clause (the verb after "who", the noun after "how many", all things named), the clause must tell what is
asked for, and every other clause must have clearly less. Of yes-or-no questions only those on what is done
with a clause and not with a thing worn are so shown one ("do I have to renew my waiver?"): no rule can
answer them. Words count by how few clauses have them (inverse document frequency; Sparck Jones, 1972); those
without a part are named.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.doings import place_of_doing
from kb.reader.recast.telling import (
    ASKING,
    LIGHT,
    Unit,
    asked_for,
    british,
    clause_words,
    is_ruled,
    tells,
    word_level,
)
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.same_sense import phrase_at
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token, tokenize
from kb.wording import say_query

_SHARE = 0.6
"""Of the weight of all words, what a clause must have."""
_CLEARLY, _OF_TWO, _OF_DOING = 0.7, 0.5, 0.55
"""Of the score of the nearest, what the next may have; of two words, which the clause both has, even less."""
_WORDS, _SURE = 3, 0.9
_HEADED = 1.15
_BEFORE = word_set("and but so then well ok now in on at by from to for with of up under until till since")
_JOINING = word_set("or versus vs")
_VERBS = word_set("""
    do does did is are am was were may can could must should shall will would might have has had
""")
_AUXILIARY = _VERBS | word_set("i we you he she they to be allowed the one that gets get")
_BEING, _MANY = word_set("is are was were 's"), word_set("many much often")
_DETERMINERS = word_set("the a an my our your his her their")
_LIGHTER = LIGHT | word_set("come comes coming came told yes else")
_SIDES = word_set("now if when because since as while though although after before once until where")
_SUBJECTS = word_set("i we you he she they it the my our his her their a an somebody someone")
_OWN_NAMES, _BOOKS = word_set("dress uniform clothing kit"), word_set("rule rules regulations code regs")
_KINDS = word_set("another new other extra further special additional different exact same first next")
"""What may stand before the noun that is asked for: "what new things", "how many further stars"."""
_LASTING = _KINDS | word_set("last stay remain take run endure good")
_DAYS = word_set("day date time")
"""What is asked for by these is a time, which a clause tells without the word."""


class Asking(msgspec.Struct, frozen=True):
    """The sentence that asks: its places, its words, and the place of what is asked for (-1 if none is).

    What a yes-or-no question asks for is something done (`doing`).
    """

    first: int
    last: int
    lows: tuple[str, ...]
    core: int
    doing: bool = False


class Word(msgspec.Struct, frozen=True):
    """A unit, how it is written, and whether it stands in what asks, or is a thing or word asked for."""

    unit: Unit
    text: str
    asking: bool
    core: bool


class _Near(msgspec.Struct, frozen=True):
    """A clause, and how surely it has each of the words."""

    clause: Clause
    score: float
    share: float
    has: tuple[float, ...]


def clause_by_most_words(reading: Reading, as_of: datetime.date, lookup: Lookup) -> Reading | None:
    """A reading that shows the one clause in force that is clearly nearest; None where there is none."""
    tokens = tokenize(reading.question)
    asking = asking_part(reading.question, tokens)
    if asking is None:
        return None
    words = tuple(weighed_words(reading, tokens, asking, lookup))
    asked = asked_for(asking.lows[:6]) if not asking.doing else ""
    if asking.doing and not any(word.core and not word.unit.items for word in words):
        return None
    counted = [word for word in words if not is_idle(word, asked)]
    ranked = sorted(_near(counted, as_of, lookup), key=lambda one: -one.score)
    if len(ranked) < 2 - asking.doing or not _is_clear(ranked, counted, asking):
        return None
    clause = ranked[0].clause
    if not tells(clause, asked, lookup) or (asked == "who" and not any(word.core for word in counted)):
        return None
    if len(counted) < _WORDS and not (asked or asking.doing) and not any(word.unit.items for word in counted):
        return None  # "how do I get from the station to the town"
    query = Query(kind="source", clause=clause.id, case=Case(as_of=as_of))
    said = clause_words(clause)
    unused = tuple(word.text for word in words if not how_surely(word.unit, said, clause, lookup))
    return msgspec.structs.replace(
        reading, query=query, text=say_query(lookup, query), abstain=None, ask=None, unused=unused
    )


def _is_clear(ranked: Sequence[_Near], words: Sequence[Word], asking: Asking) -> bool:
    """Whether a clause has what is asked for and most of the rest, and no other has nearly as much.

    One word of the sentence that asks may be missing, if it says what is asked for or what happens.
    """
    happens, doing = "happens" in asking.lows[:4], asking.doing
    best, second = ranked[0], ranked[1].score if ranked[1:] else 0.0
    missed = [word for word, has in zip(words, best.has, strict=True) if not has]
    if any(word.core for word in missed) or best.share < _SHARE:
        return False
    if sum(word.asking for word in missed) > (happens or any(word.core for word in words)):
        return False
    many = sum(has > 0 for has in best.has)
    if many >= _WORDS:
        return second <= best.score * _CLEARLY
    if many < _WORDS - 1 or any(word.asking or not doing for word in missed):
        return False
    if doing and any(0 < has < _SURE and not word.core for word, has in zip(words, best.has, strict=True)):
        return False  # "can a doctor grant leave", where a doctor gives his word
    return second <= best.score * (_OF_DOING if doing else _OF_TWO)


def asking_part(text: str, tokens: Sequence[Token]) -> Asking | None:
    """The last sentence or part of one that opens with a question word, else the last that asks of a doing.

    None if it is a choice, or there is none.
    """
    starts = (*sentence_starts(text, tuple(tokens)), len(tokens))
    doing: Asking | None = None
    for start, last in reversed(tuple(pairwise(starts))):
        lows = [token.low for token in tokens[start:last]]
        for first in (0, *(place + 1 for place, low in enumerate(lows) if low == ",")):
            told = lows[first:]
            lead = next((i for i, low in enumerate(told[:4]) if low.split("'")[0] in ASKING), None)
            if lead is None or not _BEFORE.issuperset(told[:lead]):
                done = place_of_doing(told) if doing is None and _JOINING.isdisjoint(told) else None
                if done is not None:
                    doing = _of_doing(start + first, told, done)
                continue
            if not _JOINING.isdisjoint(told) or told[lead + 1 : lead + 2] in (["about"], ["if"]):
                return None
            if _is_beside(told, lead):
                continue
            core = _core(told, lead)
            whole = -1 if core is None else start + first + core
            return Asking(start + first, last, tuple(told), whole)
    return doing


def _of_doing(start: int, told: Sequence[str], done: int) -> Asking:
    """What asks of a doing: from its verb to where a side sentence begins, "now I have changed units"."""
    sides = (i for i in range(done + 1, len(told) - 1) if told[i] in _SIDES and told[i + 1] in _SUBJECTS)
    last = next(sides, len(told))
    return Asking(start + done, start + last, tuple(told), start + done, doing=True)


def _is_beside(told: Sequence[str], lead: int) -> bool:
    """ "Where rigs are mixed, does he ...?", which asks what comes after."""
    return told[lead] in ("where", "when") and any(
        low == "," and not _VERBS.isdisjoint(told[i + 1 : i + 2]) for i, low in enumerate(told)
    )


def _core(told: Sequence[str], lead: int) -> int | None:
    """The place of the word that says what is asked for: "how many years", "which end", "who decides"."""
    word, place = told[lead].split("'")[0], lead + 1
    if word in ("who", "whom"):
        place = _past(_AUXILIARY, told, place)
    elif word == "how":
        place = _past(_MANY, told, place)
        if place == lead + 1:
            return None
    elif word in ("what", "which", "whose"):
        place = _past(_DETERMINERS, told, _past(_BEING, told, place))
    else:
        return None
    place = _past(_KINDS, told, place)
    return place if place < len(told) and told[place] not in _DAYS else None


def _past(words: frozenset[str], told: Sequence[str], place: int) -> int:
    while place < len(told) and told[place] in words:
        place += 1
    return place


def weighed_words(
    reading: Reading, tokens: Sequence[Token], asking: Asking, lookup: Lookup
) -> Iterator[Word]:
    """The things named and the words of weight of a text, in their order."""
    text, own = reading.question, {word.casefold() for word in lookup.base.service.label.split()}
    spans = {
        span.start: span for span in reading.spans if span.role == "item" and span.target in lookup.items
    }
    told = ("date", "measure", "grade") if asking.doing else ("date", "measure")
    dates = [span for span in reading.spans if span.role in told]
    taken = set[int]()
    for place, token in enumerate(tokens):
        inside = asking.first <= place < asking.last
        if place in taken or any(span.start <= token.start < span.end for span in dates):
            continue
        if (span := spans.get(token.start)) is not None and (lemmas := analyse(span.text)):
            places = {i for i, other in enumerate(tokens) if span.start <= other.start < span.end}
            taken |= places
            item = lookup.items[span.target or ""]
            names = tuple(analyse(label) for label in (item.label, *item.other_labels))
            unit = Unit(tuple(lemmas), names, (item.id,))
            yield Word(unit, text[span.start : span.end], inside, inside)
        elif (phrase := phrase_at(tuple(tokens), place)) is not None and taken.isdisjoint(phrase[1]):
            taken.update(phrase[1])
            yield Word(Unit(analyse(phrase[0])), phrase[0], inside, place == asking.core)
        elif token.low in _OWN_NAMES and any(after.low in _BOOKS for after in tokens[place + 1 : place + 2]):
            continue  # "your dress rules" are the books
        elif _LIGHTER.isdisjoint((token.low, token.low.split("'")[0])) and token.low not in own:
            lemmas = analyse(british(token.low))
            yield from [Word(Unit(lemmas), token.text, inside, place == asking.core)] if lemmas else ()


def is_idle(word: Word, asked: str) -> bool:
    """Whether a word counts for nothing: a number, which of a kind it is, that "how long" is to last."""
    return not word.unit.items and all(
        lemma[:1].isdigit() or lemma in NUMBER_WORDS or lemma in (_LASTING if asked == "time" else _KINDS)
        for lemma in word.unit.lemmas
    )


def _near(words: Sequence[Word], day: datetime.date, lookup: Lookup) -> Iterator[_Near]:
    """For each clause in force how much of the words it has; a word of the story that none has counts not."""
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, day)]
    said = [clause_words(clause) for clause in clauses]
    table = [
        [how_surely(word.unit, these, clause, lookup) for these, clause in zip(said, clauses, strict=True)]
        for word in words
    ]
    counts = [sum(level > 0 for level in row) for row in table]
    weights = [
        math.log((len(clauses) + 1) / (count or 1)) if count or word.asking else 0.0
        for word, count in zip(words, counts, strict=True)
    ]
    whole = sum(weights)
    for place, clause in enumerate(clauses):
        levels = [row[place] for row in table]
        score = sum(level * weight for level, weight in zip(levels, weights, strict=True))
        if not score:
            continue
        heading = analyse(clause.heading or "")
        headed = any(word_level(lemma, heading) for word in words for lemma in word.unit.lemmas)
        yield _Near(clause, score * (_HEADED if headed else 1), score / whole, tuple(levels))


def how_surely(unit: Unit, said: Sequence[str], clause: Clause, lookup: Lookup) -> float:
    """How surely a clause has a word or speaks of a thing: by its words, or by a rule on it."""
    level = min(word_level(lemma, said) for lemma in unit.lemmas)
    if level < 1 and unit.names:
        text = f" {' '.join(said)} "
        if any(name and f" {' '.join(name)} " in text for name in unit.names):
            return 1.0
    return max(level, 0.9) if unit.items and is_ruled(unit.items, clause, lookup) else level
