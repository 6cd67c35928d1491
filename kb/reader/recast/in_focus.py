"""The clause that a talk is on, where it tells what is asked further: "who countersigns it?", "till when?".

Only for a turn that opens with a question word and that nothing else understood. All words of weight of what
asks must stand in one of the clauses in focus, a sentence with them must tell what is asked for, and no other
of those may do so as well. What names nothing of the clause is of another matter.
"""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterator, Sequence

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.recast.by_most_words import Asking, Word, asking_part, how_surely, is_idle, weighed_words
from kb.reader.recast.folk import FOLK, names_of_people
from kb.reader.recast.telling import LIGHT, SOMEBODY, TIME, analysed, clause_words, word_level
from kb.reader.words.colours import HEADS
from kb.reader.words.forms import NUMBER_WORDS, word_set
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
_PART = r"(?:side|arm|hand|hip|shoulder|sleeve|breast|pocket|wrist|ear|finger|leg|foot|lapel|collar|cuff|eye)"
_DAY = r"(?:mon|tues|wednes|thurs|fri|satur|sun)days?"
_MONTH = (
    r"(?:january|february|march|april|may|june|july|august|september|october|november|december)(?= \d|\b[^ ])"
)
_KINDS = (
    ("who", Pattern(r"\b(?:who|whom|whose)\b")),
    ("cost", Pattern(
        r"\bwhat\b.*\b(?:cost|price|fee|charge)\b|\bhow much\b(?:.*\b(?:cost|pay|owe|charge)\b|(?: is it)?$)"
    )),
    ("until", Pattern(r"\b(?:till|until|til|up to) (?:when|what (?:day|date|time))\b")),
    ("often", Pattern(r"\bhow (?:often|frequently|many times)\b")),
    ("", Pattern(r"\bhow long (?:(?:is|are|was) (?:it|they|that)|.*\bbe)$|\b(?:since|from) when\b")),
    ("time", Pattern(r"\bhow (?:long|soon|late|early|quickly|fast)\b|\bwithin what\b")),
    ("number", Pattern(r"\bhow (?:many|much)\b")),
    ("when", Pattern(r"\bwhen\b|\b(?:what|which) (?:days?|date|time)\b")),
    ("measure", Pattern(
        r"\bhow (?:far|big|wide|high|deep|tall|thick|large|broad)\b|\bwhat (?:size|width|height)\b"
    )),
    ("colour", Pattern(r"\b(?:what|which) colou?rs?\b")),
    ("side", Pattern(rf"\b(?:what|which) {_PART}\b")),
    ("where", Pattern(r"\bwhere\b")),
)  # fmt: skip
_TOLD_BY = {
    "cost": Pattern(
        r"\b(?:free|costs?|pays?|paid|charged|price|expense|buys?|bought|crowns?|pounds?|fees?)\b"
    ),
    "until": Pattern(
        r"\b(?:until|till|lapses?|expires?|not after|no later than|at the latest|to the (?:last|end))\b"
    ),
    "often": Pattern(
        r"\b(?:each|every|whenever|between(?! \S+(?: \S+)? and\b)|daily|weekly|monthly|yearly|quarterly|once|"
        r"twice)\b"
        rf"|\b{_DAY}\b|\bat the (?:start|end) of\b"
    ),
    "time": TIME,
    "when": Pattern(
        rf"\b(?:when|while|until|before|after|within|each|every|whenever|during|at once)\b|\b{_DAY}\b"
        rf"|\b{_MONTH}|\b\d\d?[:.]\d\d\b|\b(?:sunrise|sunset|noon|midday|midnight|dark|dusk|dawn)\b"
        r"|\bat the (?:start|end|beginning)\b|\bonce\b"
    ),
    "measure": Pattern(
        r"\b\d+(?:\.\d+)? ?(?:mm|cm|m|km|metres?|in|inch(?:es)?|ft|feet|degrees)\b|\d ?(?:in|mm)\b"
    ),
    "side": Pattern(r"\b(?:left|right|both|either)\b"),
    "where": Pattern(r"\b(?:at|to|in|on|across|from|inside|behind|by) (?:the|an?) "),
}
_BARE = frozenset({"until", "often", "time", "when", "cost"})
"""What a clause may be asked for without another word: "till when exactly?"."""
_AND = Pattern(r",? and (when|who|where|how (?:long|often))$")
_TITLE = Pattern(r"\b[Tt]he (?:[A-Z]\w+ )+(?:of (?:the )?)?[A-Z]\w+")
_SENTENCE = Pattern(r"(?<=[.;:]) ")
_SHORT, _COUNTED, _SURE = 5, 5, 0.9
"""Words of a turn too short to say what it is of; how many after a number what it counts may stand."""


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
    kinds = [next((kind for kind, pattern in _KINDS if pattern.search(one)), "noun") for one in
             (first, *(also.groups() if also is not None else ()))]  # fmt: skip
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
    sentences = list(_with_one_of(core or lemmas, clause))
    if asked[0] == "number":
        return any(_is_counted(core, one) for one in sentences)
    return all(any(_is_told(kind, one, lookup) for one in sentences) for kind in asked)


def _with_one_of(lemmas: Sequence[str], clause: Clause) -> Iterator[str]:
    """The sentences of a clause that have one of some words; all of them where there are none."""
    for sentence in _SENTENCE.split(clause.text):
        words = analysed(sentence)
        if not lemmas or any(word_level(lemma, words) for lemma in lemmas):
            yield sentence


def _is_counted(core: Sequence[str], sentence: str) -> bool:
    """Whether a number stands before what is counted: "not more than four plain grips"."""
    words = [word.strip(".,;:()") for word in sentence.casefold().split()]
    return any(
        word_level(lemma, analysed(after))
        for place, word in enumerate(words)
        if word[:1].isdigit() or word in NUMBER_WORDS
        for after in words[place + 1 : place + _COUNTED]
        for lemma in core
    )


def _is_told(kind: str, sentence: str, lookup: Lookup) -> bool:
    if kind == "who":
        said = analysed(sentence)
        text = f" {' '.join(said)} "
        names = (" ".join(analysed(name)) for name in names_of_people(lookup))
        titled = not SOMEBODY.isdisjoint(said) or _TITLE.search(sentence) is not None
        return titled or any(name and f" {name} " in text for name in names)
    low = sentence.casefold()
    if kind == "colour":
        return not HEADS.isdisjoint(word.strip(".,;:()") for word in low.split())
    return kind == "noun" or (kind in _TOLD_BY and _TOLD_BY[kind].search(low) is not None)
