"""The clause that has in a sentence what is claimed, or asked with yes or no: "waivers are for life, right?".

Only where all else understood nothing, and no question word opens what is asked. Who claims it, and how it is
put in doubt, is left aside; a number is not looked for, since the clause may well say another, but the
sentence must have one. All words of weight must stand in one clause, most of them in one sentence of it; of
a clause that no rule carries one may be missing. Whether it is so is not judged: the clause is shown.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence
from itertools import pairwise

import msgspec

from kb.keywords import lemma
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.phrases.manners import without_manners
from kb.reader.recast.asking import Asking, asking_part
from kb.reader.recast.by_most_words import Word, how_surely, weighed_words
from kb.reader.recast.telling import TIME, clause_words, words_in
from kb.reader.recast.told_by import amended, with_its_subject
from kb.reader.stories.hearsay import claims_in, doubts
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern
from kb.wording import say_query

_IDLE = word_set("""
    right yes yeah ok okay correct true so surely really still always ever wrong sure whole stay remain well
""")
_KIN = word_set("son daughter wife husband mum dad mate kid brother sister friend cousin nephew niece")
_LASTING = word_set("minute hour day week month year")
_STAYING = word_set("last stay remain run good valid")
"""What need not stand in a clause beside a time."""
_BREAKS = frozenset({",", "-", "–", "—"})
_DIVISIONS = word_set("part parts clause clauses section sections chapter")
_TAIL = Pattern(
    r"(?i)[,;–—-] *(?:right|yes|yeah|no|nope|correct|true|ok|okay|eh|huh|innit|surely|or not)\s*\?+\s*$"
)
_ALL, _MOST, _RIVAL = 0.8, 0.7, 0.75
_OUTSIDE = 0.8
"""What a word counts that stands in the clause but not in the sentence."""
_FEW, _MANY = 2, 3


class _Near(msgspec.Struct, frozen=True):
    """A clause, and how surely its best sentence has each of the words; whether it measures the like."""

    clause: Clause
    score: float
    has: tuple[float, ...]
    measured: bool = False


def clause_provided(reading: Reading, as_of: datetime.date, lookup: Lookup) -> Reading | None:
    """A reading that shows the one clause that provides for what is claimed or asked; else None."""
    text, tokens = reading.question, tokenize(reading.question)
    asking = asking_part(text, tokens) if tokens else None
    if not tokens or (asking is not None and not asking.doing):
        return None
    first, last, gone = _asked(text, tokens)
    whole = Asking(first, last, tuple(token.low for token in tokens[first:last]), -1)
    timed = any(lemma(low) in _LASTING for low in _told(whole.lows))
    asked = [word for word in weighed_words(reading, tokens, whole, lookup) if word.asking]
    words = tuple(word for word in asked if not _weighs_nothing(word, timed))
    if timed and len(words) < _FEW:  # "waivers last two years"
        words = tuple(word for word in asked if not _weighs_nothing(word, False))
    best = _nearest(words, whole.lows, as_of, lookup) if len(words) >= _FEW else None
    if best is None:
        return None
    clause = _or_as_it_was(best, words, lookup)
    query = Query(kind="source", clause=clause.id, case=Case(as_of=as_of))
    missed = tuple(word.text for word, has in zip(words, best.has, strict=True) if not has)
    return msgspec.structs.replace(
        reading, query=query, text=say_query(lookup, query), abstain=None, ask=None, unused=(*gone, *missed)
    )


def _asked(text: str, tokens: Sequence[Token]) -> tuple[int, int, tuple[str, ...]]:
    """Where what is claimed or asked begins and ends, and what beside it says whose claim it is."""
    claim = next(claims_in(text, tuple(tokens)), None)
    around = claim.around if claim is not None else ()
    if (tail := _TAIL.search(text)) is not None:
        around = (*around, (tail.start(), len(text)))
    parts = [*pairwise((*sentence_starts(text, tuple(tokens)), len(tokens)))]
    while len(parts) > 1 and doubts([token.low for token in tokens[slice(*parts[-1])]]):
        around = (*around, (tokens[parts[-1][0]].start, len(text)))
        parts.pop()
    first, last = parts[-1]
    for place in range(last - 2, first + 1, -1):  # "..., that's fine, isn't it?"
        if tokens[place].low in _BREAKS and doubts([token.low for token in tokens[place + 1 : last]]):
            around, last = (*around, (tokens[place].start, len(text))), place
    _, places = without_manners(text)  # "excuse me, ..."
    kept = [
        place
        for place in range(first, last)
        if not (places and tokens[place].start < places[0])
        and not any(start <= tokens[place].start < end for start, end in around)
    ]
    gone = tuple(dict.fromkeys(text[start:end].strip(" ,;.–—-") for start, end in around))
    return (kept[0], kept[-1] + 1, gone) if kept else (first, last, gone)


def _weighs_nothing(word: Word, timed: bool) -> bool:
    """Whether a word need not stand in the clause: a number, and where a time is told, that it lasts."""
    return not word.unit.items and all(
        one[:1].isdigit()
        or one in _IDLE
        or one in _KIN
        or one in NUMBER_WORDS
        or one in _LASTING
        or (timed and one in _STAYING)
        for one in word.unit.lemmas
    )


def _told(lows: Sequence[str]) -> list[str]:
    """What stands after each number: "crowns", "degrees", "weeks"."""
    return [
        after
        for low, after in pairwise((*lows, ""))
        if low[:1].isdigit() or (low in NUMBER_WORDS and low not in ("one", "a", "an"))
    ]


def _has_the_like(sentence: str, lows: Sequence[str]) -> bool:
    """Whether a sentence has a number, a time or the same part of the book, where one is told."""
    told, words = _told(lows), _parts(sentence)
    others = [after for after in told if lemma(after) not in _LASTING]
    if len(others) < len(told) and TIME.search(sentence.casefold()) is None:
        return False
    named = [pair for pair in pairwise(lows) if pair[0] in _DIVISIONS and pair[1][:1].isdigit()]
    if any(number not in words for _, number in named):
        return False
    return not others or any(word[:1].isdigit() or word in NUMBER_WORDS for word in words)


def _measures_the_like(sentence: str, lows: Sequence[str]) -> bool:
    """Whether what is counted or measured in what is told is so in a sentence, too: "24 degrees"."""
    units = {lemma(after) for after in _told(lows) if after.isalpha()}
    if not units.isdisjoint(_LASTING):
        return True  # it has a time: no other sentence is looked at
    told = {lemma(after) for after in _told(_parts(sentence))}
    return not units.isdisjoint(told)


def _parts(sentence: str) -> list[str]:
    return [word.strip('.,;:()"“”') for word in sentence.casefold().split()]


def _nearest(
    words: Sequence[Word], lows: Sequence[str], as_of: datetime.date, lookup: Lookup
) -> _Near | None:
    """The clause that has the words, if no other has nearly as much of them; one that amends it before it."""
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, as_of)]
    held = {
        one.id: [how_surely(word.unit, _words_of(one, lookup), one, lookup) for word in words]
        for one in clauses
    }
    often = [sum(levels[place] > 0 for levels in held.values()) for place in range(len(words))]
    weights = [math.log((len(clauses) + 1) / (count or 1)) for count in often]
    near = sorted(
        (
            _of(clause, held[clause.id], words, weights, lows, lookup)
            for clause in clauses
            if sum(level > 0 for level in held[clause.id]) >= _FEW
        ),
        key=lambda one: (-one.score, not one.measured),
    )
    if not near or not _is_enough(near[0], words, weights, lookup):
        return None
    best, rivals = near[0], near[1:]
    related = {one.id for one in amended(best.clause, lookup)}
    others = [one for one in rivals if one.clause.id not in related and one.measured >= best.measured]
    return best if not (others and others[0].score > best.score * _RIVAL) else None


def _words_of(clause: Clause, lookup: Lookup) -> tuple[str, ...]:
    return (*clause_words(clause), *(w for one in amended(clause, lookup) for w in clause_words(one)))


def _of(
    clause: Clause, held: Sequence[float], words: Sequence[Word], weights: Sequence[float],
    lows: Sequence[str], lookup: Lookup,
) -> _Near:  # fmt: skip
    """How surely the best sentence of a clause has the words; what stands elsewhere in it counts less."""
    best = _Near(clause, 0.0, tuple(0.0 for _ in words))
    heading = words_in(clause.heading or "")
    for one in (clause, *amended(clause, lookup)):
        for sentence in with_its_subject(one):
            if not _has_the_like(sentence, lows):
                continue
            said = (*words_in(sentence), *heading)
            levels = tuple(
                max(how_surely(word.unit, said, clause, lookup), level * _OUTSIDE)
                for word, level in zip(words, held, strict=True)
            )
            whole = sum(level * weight for level, weight in zip(levels, weights, strict=True))
            if whole > best.score:
                best = _Near(clause, whole, levels, _measures_the_like(sentence, lows))
    return best


def _or_as_it_was(near: _Near, words: Sequence[Word], lookup: Lookup) -> Clause:
    """The clause; the one that it amends in part, where most of the words stand in that alone."""
    own = sum(how_surely(word.unit, clause_words(near.clause), near.clause, lookup) > 0 for word in words)
    former = amended(near.clause, lookup)
    return former[0] if len(former) == 1 and own * 2 <= sum(has > 0 for has in near.has) else near.clause


def _is_enough(near: _Near, words: Sequence[Word], weights: Sequence[float], lookup: Lookup) -> bool:
    """Whether a clause has all of the words, or all but one where no rule rests on it."""
    missed = [word for word, has in zip(words, near.has, strict=True) if not has]
    many = len(words) - len(missed) + near.measured
    ruled = any(lookup.rules_of(near.clause.id))
    most = many if near.clause.kind == "procedure" else 0  # "may he relax the rule on beards by local order"
    if (any(word.unit.items for word in missed) and most <= _MANY) or all(word.unit.items for word in words):
        return False
    if ruled:
        own = any(not (word.unit.items or word.around) for word in words)
        return own and not missed and many >= _MANY and near.score >= _ALL * sum(weights)
    share = near.score / sum(weights)
    return share >= _MOST and (not missed or (len(missed) == 1 and many >= _MANY))
