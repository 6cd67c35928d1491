"""What a talk is on: the clauses that its last lines were answered by, or that speak of what they asked.

A line that nothing else understood may ask further of one of them; that clause is then shown.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from kb.answer.speaking import clauses_that_speak
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.reader.recast.in_focus import clause_in_focus, points_back

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
    if is_settled(answers):
        return None
    return clause_in_focus(reading, focus, spoken, as_of, lookup)


def is_settled(answers: Sequence[Answer]) -> bool:
    """Whether one of the answers tells something, or asks what can be chosen."""
    return any(_settles(one) for one in answers)


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
