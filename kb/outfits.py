"""What is asked of an outfit as such: "when is parade rig worn?", "do I have to wear saw dress for that?".

Rules speak of what is worn in an outfit; that it is ordered for an occasion stands in the text of a clause.
So no verdict is given: the one clause is shown that says when, by whom or for what the outfit is worn.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator

from kb.answer.speaking import ranked_clauses
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading, Span
from kb.model.records import Case, Clause, Fact, is_in_force
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.wording import say_query

_RIG = "rig"
_BEFORE = word_set("a an the my our his her their your full whole proper complete entire any that this")
"""Words between a verb and the outfit that it is said of."""
_WITHIN = word_set("in with under for on at of as over into aboard")
"""Words after which an outfit is only the case in which a thing is worn."""
_DRESSED = word_set("be is are am dressed dress turn turned come go get change changed into")
"""What somebody does in an outfit to wear it: "turn out in parade dress"."""
_SAID = r"(?:is|are|shall be|must be|may be|for|when|on|at|consists?|comprises?)"
_CLEARLY = 1.1
"""By how much a clause must speak more of the question than the next, to be the one that is shown."""


def asked_of_outfit(reading: Reading, as_of: datetime.date, lookup: Lookup) -> Reading | None:
    """The reading that shows the clause on the outfit asked about; None where it is of anything else."""
    rig = lookup.facts.get(_RIG)
    if rig is None or any(span.role == "item" for span in reading.spans):
        return None
    spans = [span for span in reading.spans if span.role == "fact" and span.target == _RIG]
    if len(spans) != 1 or not _is_the_thing(reading, spans[0]):
        return None
    names = tuple(_names_meant(spans[0], rig))
    told = [
        clause.id for clause in lookup.base.clauses if is_in_force(clause, as_of) and _tells(clause, names)
    ]
    ranked = [(one, score) for one, score in ranked_clauses(reading, as_of, lookup) if one in told]
    if not ranked or (len(ranked) > 1 and ranked[0][1] < ranked[1][1] * _CLEARLY):
        return None
    query = Query(kind="source", clause=ranked[0][0], case=Case(as_of=as_of))
    return Reading(question=reading.question, query=query, text=say_query(lookup, query), spans=reading.spans)


def _is_the_thing(reading: Reading, span: Span) -> bool:
    """Whether an outfit is what is worn, not the case in which something is."""
    lows = [token.low for token in tokenize(reading.question) if token.end <= span.start]
    while lows and lows[-1] in _BEFORE:
        lows.pop()
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


def _tells(clause: Clause, names: tuple[str, ...]) -> bool:
    """Whether a clause says of an outfit when, for what or by whom it is worn, or has its name as heading."""
    text = " ".join(clause.text.casefold().split())
    heading = (clause.heading or "").casefold()
    return heading in names or any(re.search(rf"\b{re.escape(name)},? {_SAID}\b", text) for name in names)
