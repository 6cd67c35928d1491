"""What a talk is on: the clauses that its last lines were answered by, or that speak of what they asked.

A line that nothing else understood may ask further of one of them; that clause is then shown.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence

import msgspec

from kb.answer.speaking import clauses_that_speak
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.reader.recast.by_most_words import clause_by_most_words
from kb.reader.recast.formerly import formerly
from kb.reader.recast.in_focus import clause_in_focus, points_back
from kb.reader.recast.told_by import SURE, kind_of, tells_kind

Tell = Callable[[Reading], Answer]
_MOST = 3


def told_in_focus(
    reading: Reading,
    answers: Sequence[Answer],
    focus: Sequence[str],
    spoken: str,
    as_of: datetime.date,
    lookup: Lookup,
) -> Reading | None:
    """A reading that shows the clause in focus that tells what a line asks, where its answers do not."""
    told = None
    if not any(_tells_of_days(one, as_of) for one in answers):
        told = formerly(reading, focus, as_of, lookup)
    if told is not None or is_settled(answers):
        return told
    return clause_in_focus(reading, focus, spoken, as_of, lookup)


def _tells_of_days(answer: Answer, as_of: datetime.date) -> bool:
    """Whether a question of another day, of two of them or of a clause was answered."""
    query = answer.reading.query
    if query is None or answer.outcome != "answer":
        return False
    return query.kind in ("compare", "source") or query.case.as_of != as_of


def is_settled(answers: Sequence[Answer]) -> bool:
    """Whether one of the answers tells something, or asks what can be chosen."""
    return any(_settles(one) for one in answers)


def told_of_the_line(
    read: Callable[[], Reading],
    answers: Sequence[Answer],
    answer: Tell,
    as_of: datetime.date,
    lookup: Lookup,
) -> tuple[Answer, ...]:
    """The answers to the parts of a line; where one tells nothing, the clause that tells the whole of it.

    Only if that clause tells what the part asks for, too. The whole line is `read` only then.
    """
    open_ = [not _settles(one) or _asks_which(one) for one in answers]
    if not any(open_):
        return tuple(answers)
    found = clause_by_most_words(read(), as_of, lookup)
    clause = found.query.clause if found is not None and found.query is not None else None
    if found is None or clause is None:
        return tuple(answers)
    return tuple(
        answer(msgspec.structs.replace(found, question=one.reading.question, spans=one.reading.spans))
        if is_open and tells_kind(lookup.clauses[clause], kind_of(one.reading.question), lookup)
        else one
        for one, is_open in zip(answers, open_, strict=True)
    )


def _asks_which(answer: Answer) -> bool:
    """Whether it is asked back which thing is meant, where somebody, a measure or a time was asked for."""
    asked = answer.ask is not None and answer.ask.fact == "item" and not answer.cases
    return asked and kind_of(answer.reading.question) in SURE


def _settles(answer: Answer) -> bool:
    choosing = answer.ask is not None and bool(answer.ask.choices)
    return choosing if answer.outcome != "answer" else answer.verdict != "silent"


def left_in_focus(
    reading: Reading, answers: Sequence[Answer], before: tuple[str, ...], as_of: datetime.date, lookup: Lookup
) -> tuple[str, ...]:
    """The clauses in focus after a line, at most three; those before it, where it leaves none of its own."""
    cited = tuple(dict.fromkeys(one.clause for answer in answers for one in answer.citations))
    if 0 < len(cited) <= _MOST:
        return cited
    named = any(span.role == "item" and span.how != "index" for span in reading.spans)
    if not named and (points_back(reading.question) or any(answer.ask is not None for answer in answers)):
        return before
    spoken = tuple(one.clause for one in clauses_that_speak(reading, as_of, lookup))
    return tuple(one for one in spoken if one in cited or not cited) or before
