"""A verdict that the clauses do not bear out: what was asked speaks far more of another clause.

Then a fact that the clause turns on may have been missed, or a word taken for another. It is asked back
whether what was read is what was asked, with that clause to read.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable

import msgspec

from kb.answer.common import replaced
from kb.answer.speaking import clauses_that_speak, lemma_level, lemmas_of, ranked_clauses
from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Ask, Query, Reading
from kb.model.records import is_in_force
from kb.wording import clause_reference

Tell = Callable[[Reading], Answer]
_FAR = 0.5
"""Of the score of the clause that is spoken of most, what no clause that carries the verdict reaches.

Of 472 verdicts on questions that nobody had worked on, as they came out first, 26 were wrong; 2 lay below it
with what is required beside, and both were.
"""
_MOST = 0.5
"""Of the words beside the things and days named, from which on the clauses cited are not far."""
_LEAST = 2
"""Words of what was asked that the other clause has, and those cited have not."""


def undoubted(answer: Answer, as_of: datetime.date, tell: Tell, lookup: Lookup) -> Answer:
    """An answer as it is, or what is asked back in its place, with the clauses to read."""
    query = answer.reading.query
    if query is not None and query.kind == "compare" and not answer.differences:
        from kb.reader.recast.both_sides import clause_of_both  # noqa: PLC0415  few questions compare

        both = clause_of_both(answer.reading, as_of, lookup)
        return answer if both is None else tell(both)
    (told,) = heeded((answer,), as_of, tell, lookup)
    doubt = _doubted(answer, lookup) if told is answer else None
    return told if doubt is None else _put(doubt, as_of, tell, lookup)


def heeded(told: tuple[Answer, ...], as_of: datetime.date, tell: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """The one answer, or what is asked back where something told was left out that may turn it."""
    if len(told) != 1 or told[0].verdict != "conditional":
        return told
    reading = told[0].reading
    if not reading.unused and all(span.how != "everyday" for span in reading.spans):
        return told
    from kb.heeded import unheeded  # noqa: PLC0415  of few questions is anything left out

    doubt = unheeded(told[0], tell, lookup)
    return told if doubt is None else (_put(doubt, as_of, tell, lookup),)


def _put(doubt: Reading, as_of: datetime.date, tell: Tell, lookup: Lookup) -> Answer:
    return replaced(tell(doubt), speaking=clauses_that_speak(doubt, as_of, lookup))


def _doubted(answer: Answer, lookup: Lookup) -> Reading | None:
    """The reading of an answer as a question back, if another clause is spoken of far more; else None."""
    reading, query = answer.reading, answer.reading.query
    if query is None or query.kind not in ("may", "must") or query.polarity == "not" or reading.carried:
        return None
    if answer.verdict in (None, "silent") or reading.question == reading.text or not answer.citations:
        return None
    cited = {citation.clause for citation in answer.citations}
    weighed = {step.rule for derivation in answer.derivation for step in derivation.steps}
    other = _spoken_of_more(reading, query, cited, weighed, lookup)
    if other is None:
        return None
    said = reading.text
    prompt = f"Much of it is what {clause_reference(lookup, other)} speaks of. Is this the question?"
    ask = Ask(fact="reading", prompt=prompt, choices=((said, said),))
    return msgspec.structs.replace(reading, query=None, ask=ask)


def _spoken_of_more(
    reading: Reading, query: Query, cited: set[str], weighed: set[str], lookup: Lookup
) -> str | None:
    """The clause that what was asked speaks most of, and far more than of those cited; None without any."""
    named = {span.target for span in reading.spans if span.role == "item"}
    if not named.issubset({one for item in query.items for one in lookup.broader(item)} | set(query.items)):
        return None  # it is asked of several things, one by one
    words = dict.fromkeys(analyse(_without_names(reading)))
    those = [lemmas_of(lookup.clauses[clause]) for clause in cited]
    missing = [lemma for lemma in words if not any(lemma_level(lemma, one) for one in those)]
    if len(missing) <= _MOST * len(words):
        return None  # few clauses are cited, so that this is soon seen
    day = query.case.as_of
    ranked = ranked_clauses(reading, day, lookup)
    best, score = ranked[0] if ranked else ("", 0.0)
    if not best or any(one in cited and found >= _FAR * score for one, found in ranked):
        return None
    rules = [rule for rule in lookup.base.rules if rule.clause == best]
    if any(rule.id in weighed for rule in rules) or (rules and not any(is_in_force(r, day) for r in rules)):
        return None  # it was seen, and does not apply here or gives way, or it comes later
    own = lemmas_of(lookup.clauses[best])
    return best if sum(lemma in own for lemma in missing) >= _LEAST else None


def _without_names(reading: Reading) -> str:
    text = reading.question
    for span in sorted(reading.spans, key=lambda one: -one.start):
        if span.role in ("item", "date"):
            text = f"{text[: span.start]} {text[span.end :]}"
    return text
