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

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading, Span
from kb.model.records import Case, Clause, is_in_force
from kb.reader.recast.asking import WHICH_OF, Asking, asking_part
from kb.reader.recast.telling import (
    ASKING,
    LIGHT,
    Unit,
    asked_for,
    british,
    clause_words,
    dresses,
    is_ruled,
    tells,
    word_level,
    words_in,
)
from kb.reader.recast.told_by import (
    SAID,
    SURE,
    amended,
    is_called,
    is_counted,
    is_told,
    kind_asked,
    with_its_subject,
)
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.same_sense import phrase_at
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern
from kb.wording import say_query

_SHARE = 0.6
"""Of the weight of all words, what a clause must have."""
_CLEARLY, _OF_TWO, _OF_DOING, _OF_ALL = 0.7, 0.5, 0.55, 0.6
"""Of the score of the nearest, what the next may have; of two words, which the clause both has, even less.

Somewhat more, where that has but one of them."""
_WORDS, _SURE = 3, 0.9
_HEADED, _AROUND = 1.15, 0.5
_LIGHTER = LIGHT | word_set("come comes coming came told yes else while")
_SAYING = word_set("say says said")
_COUNTABLE = word_set("clauses people persons members orders rules books sides instructions")
"""Words of no weight, unless it is asked how many there are."""
_AROUND_LED = word_set("in on at with during under aboard near by for")
_OWN_NAMES, _BOOKS = word_set("dress uniform clothing kit"), word_set("rule rules regulations code regs")
_KEEPING, _SIDES = word_set("keep retain"), word_set("when if once after on at upon then , for")
_WHOSE = word_set("my our your his her its their one's")
_OPENING = 5
"""How many words of what asks say what it asks for."""
_GRANTING = word_set("sign grant approve authorise authorize sanction okay excuse exempt let allow permit")
_LASTING = WHICH_OF | word_set("last stay remain take run endure good")


class Word(msgspec.Struct, frozen=True):
    """A unit, how it is written, and whether it stands in what asks, or is a thing or word asked for.

    What is `around` tells of whom or where it is asked, which a clause for all need not say.
    """

    unit: Unit
    text: str
    asking: bool
    core: bool
    around: bool = False


class _Near(msgspec.Struct, frozen=True):
    """A clause, and how surely it has each of the words."""

    clause: Clause
    score: float
    share: float
    has: tuple[float, ...]


def clause_by_most_words(
    reading: Reading, as_of: datetime.date, lookup: Lookup, surely: bool = False
) -> Reading | None:
    """A reading that shows the one clause in force that is clearly nearest; None where there is none.

    Where it must be told `surely`, only one that tells a measure or a time and has three of the words.
    """
    tokens = tokenize(reading.question)
    asking = asking_part(reading.question, tokens)
    if asking is None:
        return None
    words = tuple(weighed_words(reading, tokens, asking, lookup))
    asked = asked_for(asking.lows[:6]) if not asking.doing else ""
    if asking.doing and not any(word.core and not word.unit.items for word in words):
        return None
    kind = "" if asking.doing else kind_asked(" ".join(asking.lows[: _OPENING + 1]))
    counted = [word for word in words if not is_idle(word, kind if kind in SAID else asked)]
    if kind == "time" and len(counted) == 1:  # "how long does a waiver last?"
        counted = [word for word in words if word in counted or not _LASTING.isdisjoint(word.unit.lemmas)]
    ranked = sorted(_near(counted, as_of, lookup, kind in SURE), key=lambda one: -one.score)
    clause = _that_tells(ranked, counted, kind, lookup) if kind in SURE else None
    if clause is None and (kind not in SURE or asked in (kind, "amount")):
        clear = len(ranked) >= 2 - asking.doing and _is_clear(ranked, counted, asking)
        clause = ranked[0].clause if clear and tells(ranked[0].clause, asked, lookup) else None
    if clause is None or (surely and (kind not in SURE - {"who", "name", "number"} or len(counted) < _WORDS)):
        return None
    if asked == "who" and not any(word.core for word in counted):
        return None
    if not dresses(reading.question, clause, lookup):
        return None
    if (
        len(counted) < _WORDS
        and not (kind in SURE or asked or asking.doing)
        and not any(word.unit.items for word in counted)
    ):
        return None  # "how do I get from the station to the town"
    query = Query(kind="source", clause=clause.id, case=Case(as_of=as_of))
    said = clause_words(clause)
    told = SAID.get(kind, frozenset())
    unused = tuple(
        word.text
        for word in words
        if not (told.issuperset(word.unit.lemmas) or how_surely(word.unit, said, clause, lookup))
    )
    return msgspec.structs.replace(
        reading, query=query, text=say_query(lookup, query), abstain=None, ask=None, unused=unused
    )


def _that_tells(ranked: Sequence[_Near], words: Sequence[Word], kind: str, lookup: Lookup) -> Clause | None:
    """The one clause that tells what is asked in a sentence on it, and has what asks and most of the rest.

    Only those that tell it are its rivals; but none has more of the words.
    """
    fit = [
        (one, told)
        for one in ranked
        if _has_what_asks(one, words) and (told := _told_by(one.clause, words, kind, lookup)) is not None
    ]
    if not fit or ranked[0].score > fit[0][0].score:
        return None
    best, told = fit[0]
    rivals = [one for one, _ in fit[1:]] if not any(_missing(best, words)) else ranked[1:]
    many = sum(has > 0 for has in best.has)
    near = _CLEARLY if many >= _WORDS else _OF_TWO
    if many > 1 and rivals and rivals[0].score > best.score * near and kind == "who":
        done = [(one, clause) for one, clause in fit if _is_done_to(one.clause, words)]
        return done[0][1] if len(done) == 1 and done[0][0] is best else None
    return told if many > 1 and not (rivals and rivals[0].score > best.score * near) else None


def _is_done_to(clause: Clause, words: Sequence[Word]) -> bool:
    """Whether a clause says by whom it is done to what is asked of: "the Keeper is named by the Board"."""
    core = [lemma for word in words if word.core for lemma in word.unit.lemmas]
    asked = {lemma for word in words if word.asking and not word.core for lemma in word.unit.lemmas}
    return any(
        not asked.isdisjoint(analyse(whom)) and all(word_level(one, analyse(done)) for one in core)
        for whom, done in (match.groups() for match in _PASSIVE.finditer(clause.text))
    )


_PASSIVE = Pattern(r"([\w-]+) (?:is|are|may be) (\w+(?:ed|en|wn|de|nt|ht)) by\b")


def _missing(near: _Near, words: Sequence[Word]) -> Iterator[Word]:
    """The words that ask, but for those around, that a clause does not have."""
    return (
        word for word, has in zip(words, near.has, strict=True) if not has and word.asking and not word.around
    )


def _has_what_asks(near: _Near, words: Sequence[Word]) -> bool:
    """Whether a clause has what is asked for, most of the rest, and of what asks all words or all but one."""
    missed = list(_missing(near, words))
    return (
        near.share >= _SHARE
        and all(has or not word.core for word, has in zip(words, near.has, strict=True))
        and len(missed) <= any(word.core for word in words)
    )


def _told_by(clause: Clause, words: Sequence[Word], kind: str, lookup: Lookup) -> Clause | None:
    """The clause, if a sentence tells it that has what is asked for, or else two of the words that ask.

    One that it amends in part, if that is where it stands, and the clause itself tells such a thing.
    """
    core = [lemma for word in words if word.core and not word.unit.items for lemma in word.unit.lemmas]
    asking = [word.unit for word in words if word.asking]
    counted = next((word.unit.lemmas[-1:] for word in words if word.core), ())

    def tells_it(sentence: str) -> bool:
        if kind == "number":
            return is_counted(counted, sentence)
        if kind == "name":
            return any(is_called(word.unit.lemmas, sentence) for word in words if not word.core)
        return _is_on(asking, core, sentence) and is_told(kind, sentence, lookup)

    if any(map(tells_it, with_its_subject(clause))):
        return clause
    former = (one for one in amended(clause, lookup) if any(map(tells_it, with_its_subject(one))))
    return next(former, None) if is_told(kind, clause.text, lookup) else None


def _is_on(asking: Sequence[Unit], core: Sequence[str], sentence: str) -> bool:
    said = words_in(sentence)
    text = f" {' '.join(said)} "
    held = [
        unit
        for unit in asking
        if any(word_level(lemma, said) for lemma in unit.lemmas)
        or any(name and f" {' '.join(name)} " in text for name in unit.names)
    ]
    return len(held) >= min(2, len(asking)) and all(word_level(lemma, said) for lemma in core)


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
    near = _OF_DOING if doing else _OF_TWO
    if not missed and not doing and not all(ranked[1].has if ranked[1:] else ()):
        near = _OF_ALL
    return second <= best.score * near


def weighed_words(
    reading: Reading, tokens: Sequence[Token], asking: Asking, lookup: Lookup
) -> Iterator[Word]:
    """The things named and the words of weight of a text, in their order."""
    text, own = reading.question, {word.casefold() for word in lookup.base.service.label.split()}
    spans = {
        span.start: span for span in reading.spans if span.role == "item" and span.target in lookup.items
    }
    of_anyone = asking.doing and _GRANTING.isdisjoint(asking.lows)  # else it is asked who may grant it
    told = ("date", "measure", "grade") if of_anyone else ("date", "measure")
    dates = [span for span in reading.spans if span.role in told]
    around = [span for span in reading.spans if _is_around(span, text)]
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
        elif place == asking.core and token.low in _SAYING and tokens[place + 1 : place + 2]:
            if "who" in asking.lows and tokens[place + 1].low in ASKING:  # "who says what is worn"
                yield Word(Unit(("decide",)), token.text, inside, True)
        elif _weighs_here(tokens, place, asking):
            core = place == asking.core or token.low in _KEEPING
            yield Word(Unit(analyse(token.low)), token.text, inside, core)
        elif token.low == "own" and tokens[place - 1 : place] and tokens[place - 1].low in _WHOSE:
            continue
        elif _LIGHTER.isdisjoint((token.low, token.low.split("'")[0])) and token.low not in own:
            lemmas = analyse(british(token.low))
            where = any(span.start <= token.start < span.end for span in around)
            yield from [Word(Unit(lemmas), token.text, inside, place == asking.core, where)] if lemmas else ()


def _weighs_here(tokens: Sequence[Token], place: int, asking: Asking) -> bool:
    """Whether a word of no weight has some where it stands: what is counted, and that something is kept."""
    if tokens[place].low in _COUNTABLE:
        return place == asking.core or _is_number(tokens, place - 1)
    return tokens[place].low in _KEEPING and _is_last(tokens, place, asking)


def _is_number(tokens: Sequence[Token], place: int) -> bool:
    low = tokens[place].low if place >= 0 else ""
    return low.isdigit() or (low in NUMBER_WORDS and low != "one")


def _is_last(tokens: Sequence[Token], place: int, asking: Asking) -> bool:
    """Whether what is kept was said before, as in "what may I keep when I leave?"."""
    after = tokens[place + 1].low if place + 1 < asking.last else ""
    return asking.first <= place and (not after or after in _SIDES)


def _is_around(span: Span, text: str) -> bool:
    """Whether a name tells where or when it is asked, or whose the thing is: "on the horn's tab"."""
    if span.role == "grade":
        return span.text.endswith(("'s", "’s"))
    return span.role == "fact" and not _AROUND_LED.isdisjoint(
        (span.text.split()[0].casefold(), *text[: span.start].casefold().split()[-1:])
    )


def is_idle(word: Word, asked: str) -> bool:
    """Whether a word counts for nothing: a number, which of a kind it is, what says what is asked for."""
    idle = SAID.get(asked, frozenset()) | (_LASTING if asked == "time" else WHICH_OF)
    return not word.unit.items and all(
        lemma[:1].isdigit() or lemma in NUMBER_WORDS or lemma in idle for lemma in word.unit.lemmas
    )


def _near(words: Sequence[Word], day: datetime.date, lookup: Lookup, sure: bool = False) -> Iterator[_Near]:
    """For each clause in force how much of the words it has; a word of the story that none has counts not.

    Where it is `sure` what tells an answer, a clause has the words of those that it amends in part, and what
    is around counts half.
    """
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, day)]
    said = [clause_words(clause) for clause in clauses]
    if sure:
        former = (amended(clause, lookup) for clause in clauses)
        said = [
            (*own, *(w for one in ones for w in clause_words(one)))
            for own, ones in zip(said, former, strict=True)
        ]
    table = [
        [how_surely(word.unit, these, clause, lookup) for these, clause in zip(said, clauses, strict=True)]
        for word in words
    ]
    counts = [sum(level > 0 for level in row) for row in table]
    weights = [
        math.log((len(clauses) + 1) / (count or 1)) * (_AROUND if sure and word.around else 1)
        if count or (word.asking and not (sure and word.around))
        else 0.0
        for word, count in zip(words, counts, strict=True)
    ]
    for place, clause in enumerate(clauses):
        levels = [row[place] for row in table]
        score = sum(level * weight for level, weight in zip(levels, weights, strict=True))
        if not score:
            continue
        whole = sum(
            weight
            for word, level, weight in zip(words, levels, weights, strict=True)
            if level or not (sure and word.around)
        )
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
