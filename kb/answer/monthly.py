"""A month named without a year: where its rules have days of their own, the month to come is meant."""

from __future__ import annotations

import datetime
from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import month_of, months_of
from kb.model.questions import Answer, Reading
from kb.model.values import Choices
from kb.wording import say_query

Tell = Callable[[Reading], Answer]


def in_the_month_to_come(answer: Answer, tell: Tell, lookup: Lookup) -> Answer:
    """The answer as of the first of the month named, if it is another then, and the same on its last day.

    Who asks in November about July asks of the July to come, though this day's law knows nothing of it. If
    the rules change within that month the answer is that of the law of today.
    """
    query = answer.reading.query
    own = month_of(query.case.as_of, lookup) if query is not None else None
    if query is None or own is None or answer.outcome != "answer":
        return answer
    first = _to_come(own[0], dict(query.case.facts).get(own[0]), query.case.as_of, lookup)
    if first is None:
        return answer
    last = (first.replace(day=1) + datetime.timedelta(days=31)).replace(day=1) - datetime.timedelta(days=1)

    def on(day: datetime.date) -> Answer:
        asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, as_of=day))
        said = msgspec.structs.replace(answer.reading, query=asked, text=say_query(lookup, asked))
        return tell(said)

    starts, ends = on(first), on(last)
    if _said(starts) == _said(answer) and _said(ends) == _said(answer):
        return answer
    return starts if _said(starts) == _said(ends) else answer


def _said(answer: Answer) -> tuple[object, ...]:
    return answer.verdict, answer.headline, tuple(entry.label for entry in answer.entries)


def _to_come(fact: str, said: object, today: datetime.date, lookup: Lookup) -> datetime.date | None:
    """The first day of the one month that was said, this year or next; None if it is the month of the day."""
    months = months_of(lookup.facts[fact])
    if not isinstance(said, Choices) or said.complement or len(said.members) != 1:
        return None
    (month,) = said.members
    number = months.index(month) + 1 if month in months else today.month
    if number == today.month:
        return None
    return datetime.date(today.year + (number < today.month), number, 1)
