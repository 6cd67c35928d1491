"""The clause that a talk is on, where it tells what is asked further: "who countersigns it?", "till when?".

Only for a turn that opens with a question word and that nothing else understood. All words of weight of what
asks must stand in one of the clauses in focus, a sentence with them must tell what is asked for, and no other
of those may do so as well. What names nothing of the clause is of another matter.
"""

from __future__ import annotations

import datetime
from collections.abc import Collection, Sequence

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.recast.asking import Asking, asking_part
from kb.reader.recast.by_most_words import Word, how_surely, is_idle, weighed_words
from kb.reader.recast.folk import FOLK
from kb.reader.recast.telling import LIGHT, analysed, clause_words, word_level
from kb.reader.recast.told_by import is_counted, is_told, kind_asked, sentences_with
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern
from kb.wording import say_query

_POINTING = word_set("it its them they their that those this these he him she her one there")
_IDLE = FOLK | word_set("""
    anyway anyhow then again precisely roughly thanks thank cheers ok okay right good valid son daughter wife
    husband mum dad mate kid colour color side til
""")
_SPOKEN = word_set("tell ask say keep hold wear use need make put")
"""Verbs that weigh nothing else, but say of whom it is asked who does so."""
_TIMES = word_set("time times")
_PAYING = word_set("cost costs price pay pays paid charge charges charged fee owe much")
_BARE = frozenset({"until", "often", "time", "when", "cost"})
"""What a clause may be asked for without another word: "till when exactly?"."""
_AS_ONE = {
    **dict.fromkeys(("wide", "high", "deep", "long", "thick", "far", "warmth"), "measure"),
    "date": "when",
}
"""Kinds that are told more loosely where it is clear which clause is meant."""
_AND = Pattern(r",? and (when|who|where|how (?:long|often))$")
_SHORT, _SURE = 5, 0.9
"""Words of a turn too short to say what it is of."""


def clause_in_focus(
    reading: Reading, focus: Sequence[str], spoken: str, as_of: datetime.date, lookup: Lookup
) -> Reading | None:
    """A reading that shows the one clause of those in focus that tells what is asked; else None.

    `spoken` is the line that these only speak of, which no other clause that tells it may have as well.
    """
    tokens = tokenize(reading.question)
    asking = asking_part(reading.question, tokens)
    if asking is None or asking.doing or not focus:
        return None
    said = " ".join(low for low in asking.lows if low[0].isalnum() or low[0] == "'")
    asked = _kinds(said)
    words = tuple(weighed_words(reading, tokens, asking, lookup))
    needed = [
        word for word in words if (word.asking or word.unit.items) and not _weighs_nothing(word, asked[0])
    ]
    verb = _spoken(asking, tokens) if asked[0] == "who" else ()
    if not _is_asked(asked, needed, verb) or (asked[0] == "when" and not needed and len(focus) > 1):
        return None
    in_force = [clause for clause in lookup.base.clauses if is_in_force(clause, as_of)]
    telling = [one for one in in_force if _tells(one, asked, needed, verb, lookup)]
    near = [one for one in telling if one.id in focus]
    others = [one for one in telling if one.id not in focus]
    if len(near) != 1 or (others and not points_back(said)):
        return None
    sure = [how_surely(word.unit, clause_words(near[0]), near[0], lookup) for word in needed]
    if needed and max(sure) < _SURE and _POINTING.isdisjoint(asking.lows):
        return None  # "who decides?", of which a rule is said to end
    before = frozenset(analysed(f"{spoken} {reading.question}")) - LIGHT if spoken else frozenset()
    if spoken and any(_shared(one, before) >= _shared(near[0], before) for one in others):
        return None
    query = Query(kind="source", clause=near[0].id, case=Case(as_of=as_of))
    held = clause_words(near[0])
    unused = tuple(
        word.text
        for word in words
        if not _weighs_nothing(word, asked[0]) and not how_surely(word.unit, held, near[0], lookup)
    )
    return msgspec.structs.replace(
        reading, query=query, text=say_query(lookup, query), abstain=None, ask=None, unused=unused
    )


def _shared(clause: Clause, words: Collection[str]) -> int:
    held = clause_words(clause)
    return sum(word_level(word, held) > 0 for word in words)


def _kinds(said: str) -> tuple[str, ...]:
    """What is asked for, and what besides it: "who does it, and when?"."""
    also = _AND.search(said)
    first = said[: also.start()] if also is not None else said
    kinds = [_AS_ONE.get(kind, kind) for kind in map(kind_asked, (first, *(also.groups() if also else ())))]
    return tuple(kinds)


def _is_asked(asked: Sequence[str], needed: Sequence[Word], spoken: Sequence[str]) -> bool:
    """Whether enough is said to know what is asked for: of whom a deed, of a number or kind the noun."""
    kind = asked[0]
    if kind in ("noun", "number", "side"):
        core = [word for word in needed if word.core]
        return len(core) == 1 and not core[0].unit.items
    return bool(kind) and (kind in _BARE or bool(needed) or bool(spoken))


def points_back(text: str) -> bool:
    """Whether a turn leaves unsaid what it is of, or points to it."""
    lows = [token.low for token in tokenize(text) if token.low[0].isalnum()]
    return len(lows) < _SHORT or not _POINTING.isdisjoint(lows)


def _weighs_nothing(word: Word, asked: str) -> bool:
    lemmas = word.unit.lemmas
    inside = _PAYING if asked == "cost" else _TIMES if asked == "often" else frozenset()
    return (
        inside.issuperset(lemmas)
        or is_idle(word, asked)
        or (not word.unit.items and _IDLE.issuperset(lemmas))
    )


def _spoken(asking: Asking, tokens: Sequence[Token]) -> tuple[str, ...]:
    """ "Who should she tell?": the lemma of a verb that weighs nothing elsewhere."""
    low = tokens[asking.core].low if asking.core >= 0 else ""
    return analyse(low) if low in _SPOKEN else ()


def _tells(
    clause: Clause, asked: Sequence[str], needed: Sequence[Word], spoken: Sequence[str], lookup: Lookup
) -> bool:
    """Whether a clause has all words of what asks, and a sentence with one of them what is asked for."""
    held = clause_words(clause)
    if not all(how_surely(word.unit, held, clause, lookup) for word in needed):
        return False
    if not all(word_level(lemma, held) for lemma in spoken):
        return False
    lemmas = [*spoken, *(lemma for word in needed for lemma in word.unit.lemmas)]
    core = [lemma for word in needed if word.core for lemma in word.unit.lemmas]
    sentences = list(sentences_with(core or lemmas, clause))
    if asked[0] == "number":
        return any(is_counted(core, one) for one in sentences)
    return all(any(is_told(kind, one, lookup) for one in sentences) for kind in asked)
