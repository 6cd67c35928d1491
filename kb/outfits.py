"""What is asked of an outfit as such: "when is parade rig worn?", "do I have to wear saw dress for that?".

Rules speak of what is worn in an outfit; that it is ordered for an occasion stands in the text of a clause.
So no verdict is given: the one clause is shown that says when, by whom or for what the outfit is worn.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterator, Sequence

from kb.answer.speaking import ranked_clauses
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading, Span
from kb.model.records import Case, Clause, Fact
from kb.model.values import Choices, ValueSet
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.wording import say_query
from kb.wording.labels import GRADE

_RIG = "rig"
_BEFORE = word_set("a an the my our his her their your full whole proper complete entire any that this")
"""Words between a verb and the outfit that it is said of."""
_WITHIN = word_set("in with under for on at of as over into aboard")
"""Words after which an outfit is only the case in which a thing is worn."""
_APART = frozenset(",;:-–—")
_DRESSED = word_set("be is are am dressed dress turn turned come go get change changed into")
"""What somebody does in an outfit to wear it: "turn out in parade dress"."""
_IS = r"\b{name}(?:\b[^.;:]{{0,60}}:| (?:is the|are the|consists?|comprises?)\b)"
_SAYS = r"\bwears? (?:the )?{name}\b|\b{name},? (?:is|are|shall be|must be|may be|for|when|on|at)\b"
_HARDLY = 1
"""So few things to put on are no outfit."""
_CLEARLY = 1.1
"""By how much a clause must speak more of the question than the next, to be the one that is shown."""


def told_by_clause(answer: Answer, tell: Callable[[Reading], Answer], lookup: Lookup) -> Answer:
    """The clause on an outfit, where a list of what is worn in it names nothing to put on; else the list."""
    query = answer.reading.query
    if query is None or query.kind != "list" or query.items or query.aspect != "wear":
        return answer
    named = sum("required" in (entry.verdict, entry.usual) for entry in answer.entries)
    if not named:
        found = asked_of_outfit(answer.reading, query.case.as_of, lookup, listed=True)
    elif named <= _HARDLY and _RIG not in dict(query.case.facts):
        found = None
    else:
        return answer
    found = found or _of_their_outfit(answer.reading, query, lookup)
    return tell(found) if found is not None else answer


def asked_of_outfit(
    reading: Reading, as_of: datetime.date, lookup: Lookup, *, listed: bool = False
) -> Reading | None:
    """The reading that shows the clause on the outfit asked about; None where it is of anything else.

    With `listed` it is asked what is worn in it.
    """
    rig = lookup.facts.get(_RIG)
    if rig is None or any(span.role == "item" for span in reading.spans):
        return None
    spans = [span for span in reading.spans if span.role == "fact" and span.target == _RIG]
    if len(spans) != 1 or not (listed or _is_the_thing(reading, spans[0])):
        return None
    odd = [word.casefold() for word in reading.abstain.words] if reading.abstain is not None else []
    before = tokenize(reading.question[: spans[0].start])
    if before and before[-1].low in odd:
        return None  # "river rig"
    names = tuple(_names_meant(spans[0], rig))
    ranked = ranked_clauses(reading, as_of, lookup)
    levels = {one: _tells(lookup.clauses[one], names) for one, _ in ranked}
    best = max(levels.values(), default=0)
    return _shown(
        reading, [(one, score) for one, score in ranked if best and levels[one] == best], as_of, lookup
    )


def _of_their_outfit(reading: Reading, query: Query, lookup: Lookup) -> Reading | None:
    """The clause on the outfit of who is asked about, or of what they do: "it is worn by porters"."""
    rig, facts = lookup.facts.get(_RIG), dict(query.case.facts)
    if rig is None or _RIG in facts:
        return None
    words = [
        re.escape(name.casefold())
        for fact, values in facts.items()
        for name in _said_of(fact, values, lookup)
    ]
    if not words:
        return None
    spoken = re.compile(rf"\b(?:{'|'.join(words)})s?\b")
    names = tuple(name.casefold() for value in rig.values for name in (value.label, *value.other_labels))
    day = query.case.as_of
    told = [
        (one, score)
        for one, score in ranked_clauses(reading, day, lookup)
        if _tells(lookup.clauses[one], names) > 1
        and spoken.search(" ".join(lookup.clauses[one].text.casefold().split()))
    ]
    return _shown(reading, told, day, lookup)


def _said_of(fact: str, values: ValueSet, lookup: Lookup) -> Iterator[str]:
    """The names of what is told of a grade, a place or an activity, and of a ladder with the grade."""
    record = lookup.facts[fact]
    if record.kind == "yes_no" or not isinstance(values, Choices) or values.complement:
        return
    for value in record.values:
        if value.id in values.members:
            yield from (value.label, *value.other_labels)
    for group in lookup.base.groups:
        if fact == GRADE and group.fact == GRADE and values.members <= set(group.members):
            yield from (group.label, *group.other_labels)


def _shown(
    reading: Reading, told: Sequence[tuple[str, float]], day: datetime.date, lookup: Lookup
) -> Reading | None:
    """The first of some clauses, if it speaks clearly more of the question than the next."""
    if not told or (len(told) > 1 and told[0][1] < told[1][1] * _CLEARLY):
        return None
    query = Query(kind="source", clause=told[0][0], case=Case(as_of=day))
    return Reading(question=reading.question, query=query, text=say_query(lookup, query), spans=reading.spans)


def _is_the_thing(reading: Reading, span: Span) -> bool:
    """Whether an outfit is what is worn, not the case in which something is."""
    tokens = tokenize(reading.question)
    inside = [token.low for token in tokens if span.start <= token.start < span.end]
    lows = [token.low for token in tokens if token.end <= span.start]
    lows += inside[:1] if inside[:1] and inside[0] in _WITHIN else []  # "in workshop rig"
    while lows and lows[-1] in _BEFORE:
        lows.pop()
    if lows and lows[-1] in _APART:
        return False  # "tie on the platform, cabin dress?"
    if not lows or lows[-1] not in _WITHIN:
        return True
    return lows[-1] in ("in", "into") and len(lows) > 1 and lows[-2] in (*_DRESSED, "out", "up")


def _names_meant(span: Span, rig: Fact) -> Iterator[str]:
    """The names of the outfit that is meant, or those of all where only "which rig" was said."""
    said = " ".join(span.text.casefold().split())
    named = [
        names
        for value in rig.values
        if said in (names := [n.casefold() for n in (value.label, *value.other_labels)])
    ]
    for names in named or ([n.casefold() for n in (v.label, *v.other_labels)] for v in rig.values):
        yield from names


def _tells(clause: Clause, names: tuple[str, ...]) -> int:
    """How a clause speaks of an outfit: 2 if it says what it is, 1 if when or by whom it is worn, else 0."""
    text = " ".join(clause.text.casefold().split())
    said = [re.escape(name) for name in names]
    if (clause.heading or "").casefold() in names or any(
        re.search(_IS.format(name=one), text) for one in said
    ):
        return 2
    return int(any(re.search(_SAYS.format(name=one), text) for one in said))
