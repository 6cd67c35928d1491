"""A word that may mean several things, where the books leave no need to ask which: they fare alike, or rules
speak of one of them alone.

"Are smocks forbidden in the watch rig?" is answered for each smock. Nothing is left out of the others:
where one of them leads, it is said beside it how they fare.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.answer.common import replaced
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, QuestionKind, Reading, Verdict
from kb.wording.unless import ordinary, usually_in

_PLAIN: frozenset[QuestionKind] = frozenset({"may", "must", "why"})
_VALUED: frozenset[QuestionKind] = frozenset({"how", "where", "how_many"})


def told_alike(readings: Sequence[Reading], answers: Sequence[Answer], lookup: Lookup) -> tuple[Answer, ...]:
    """The answers to give in place of asking which thing is meant; empty where it has to be asked.

    `answers[n]` is the answer to `readings[n]`, the question with the n-th of the things that may be meant.
    """
    queries = [reading.query for reading in readings if reading.query is not None]
    kinds = {query.kind for query in queries}
    if any(answer.outcome != "answer" for answer in answers) or not kinds <= _PLAIN | _VALUED | {"source"}:
        return ()
    if kinds == {"source"}:
        return _each(answers, queries)
    spoken = [a for a, query in zip(answers, queries, strict=True) if _speaks(a, query, lookup)]
    if len(spoken) == 1:
        sure = all(answer.verdict == "silent" for answer in answers if answer is not spoken[0])
        plain = sure or kinds <= _VALUED or _usual(spoken[0], lookup) is not None
        return _led_by(spoken[0], answers) if plain else ()
    if len(spoken) < len(answers) or len(kinds) > 1:
        return ()
    if kinds <= _VALUED:
        said = {_matter(answer, lookup) for answer in answers}
        bearing = [a for a, reading in zip(answers, readings, strict=True) if _rests_on_said(a, reading)]
        if len(said) == 1:
            return _each(answers, queries)
        return _led_by(bearing[0], answers) if len(bearing) == 1 else ()
    leads = {_lead(answer) for answer in answers}
    must = kinds == {"must"}
    required = [a for a in answers if (_usual(a, lookup) if must else a.verdict) == "required"]
    if len(required) == 1:
        return _led_by(required[0], answers)
    if len(leads) != 1 or "" in leads:
        return ()
    worn = [a for a in answers if queries[0].polarity != "not" or _usual(a, lookup) != "prohibited"]
    return _led_by(worn[0], answers) if len(worn) == 1 else _each(answers, queries)


def _speaks(answer: Answer, query: Query, lookup: Lookup) -> bool:
    """Whether rules answer what was asked, and not another question in its place.

    A rule that holds out of the ordinary alone ("not in town") does not tell which thing is meant.
    """
    told = answer.reading.query
    usual = _usual(answer, lookup) if query.kind in _PLAIN else answer.verdict
    return usual != "silent" and told is not None and told.kind == query.kind


def _matter(answer: Answer, lookup: Lookup) -> str:
    """What an answer says, apart from the thing that it says it of."""
    query = answer.reading.query
    label = lookup.items[query.items[0]].label if query is not None else ""
    return answer.headline.replace(label, "")


def _rests_on_said(answer: Answer, reading: Reading) -> bool:
    """Whether a rule that still speaks does so for what the question itself states."""
    query = reading.query
    said = {fact for fact, _ in query.case.facts} - set(reading.carried) if query is not None else set()
    return any(
        fact in said
        for derivation in answer.derivation
        for step in derivation.steps
        if step.alive
        for fact, _ in step.facts
    )


def _usual(answer: Answer, lookup: Lookup) -> Verdict | None:
    """The verdict where nothing is out of the ordinary: what must not be worn is not what one takes off."""
    if answer.verdict != "conditional":
        return answer.verdict
    query = answer.reading.query
    said = usually_in(lookup, query) if query is not None else {}
    usual = ordinary(lookup, [(case.when, case.verdict) for case in answer.cases], said)
    return answer.cases[usual].verdict if usual is not None else None


def _lead(answer: Answer) -> str:
    """ "Yes" or "No", as the answer begins; the verdict where it was asked why; empty where it is neither."""
    query = answer.reading.query
    if query is not None and query.kind == "why":
        return answer.verdict if answer.verdict in ("required", "prohibited") else ""
    word = answer.headline.partition(" ")[0].rstrip(".,:;")
    return word if word in ("Yes", "No") else ""


def _each(answers: Sequence[Answer], queries: Sequence[Query]) -> tuple[Answer, ...]:
    items = tuple(dict.fromkeys(item for query in queries for item in query.items[:1]))
    whole = msgspec.structs.replace(queries[0], items=items)
    return tuple(
        replaced(answer, reading=msgspec.structs.replace(answer.reading, frame=whole)) for answer in answers
    )


def _led_by(leading: Answer, answers: Sequence[Answer]) -> tuple[Answer, ...]:
    others = [answer for answer in answers if answer is not leading]
    return (with_beside(leading, [f"{other.reading.text} {other.headline}" for other in others]),)


def with_beside(answer: Answer, said: Sequence[str]) -> Answer:
    """The answer with what else its question may ask, said beside its reading."""
    reading = msgspec.structs.replace(answer.reading, beside=(*answer.reading.beside, *said))
    return replaced(answer, reading=reading)
