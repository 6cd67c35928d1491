"""The question on the day that some of its words say, or which day is meant where the rules change."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Reading, Span
from kb.model.records import Case
from kb.reader.pieces.days import (
    Period,
    ask_day,
    days_that_differ,
    on_day,
    said_period,
    say_day,
    without_month,
)
from kb.reader.pieces.editions import in_edition
from kb.reader.pieces.pieces import Understood
from kb.reader.words.sentences import sentence_starts
from kb.text import Pattern
from kb.wording import say_query

Read = Callable[[str], Reading]


def on_a_day(
    reading: Reading, found: Understood, left: tuple[int, ...], case: Case, lookup: Lookup, read: Read,
    follows: bool,
) -> Reading | None:  # fmt: skip
    """The reading on the day that the words left over say; None where they say none.

    `follows`: the question goes on from another, so that days offered are put as questions in full.
    """
    edition, said = in_edition(found, case.as_of, lookup), said_period(found, left, case.as_of)
    if edition is not None and said is not None and said.last <= edition.first and _apart(edition, said):
        rest = f"{found.text[: edition.start].rstrip()} {found.text[edition.end :].lstrip(' ,')}".strip()
        again = read(rest)  # "under the old order in autumn 2022": the day says more
        return again if again.query is None else _as_asked(again, reading)
    period = edition or said
    if period is None and any(token.low in ("before", "prior") for token in found.tokens):
        from kb.reader.meaning.windows import before_that  # noqa: PLC0415  few questions have the word

        period = before_that(found.text, case.as_of, lookup)
    from kb.reader.pieces.vintage import of_a_year  # noqa: PLC0415  only where words are left

    told = of_a_year(found, case.as_of, lookup, read)
    if told is not None:
        return told
    if period is None or say_day(period.first) in found.text or _tells(found, period):
        return None  # the day stands there already, and did not help
    since = _come_about(found, period, reading, lookup, read)
    if since is not None:
        return since
    again = read(on_day(found, period, period.first))
    if again.query is not None:
        query = without_month(again.query, found, period, lookup)
        again = msgspec.structs.replace(again, query=query, text=say_query(lookup, query))
        days = days_that_differ(period, query, lookup)
        if len(days) > 1:
            ask = ask_day(found, period, days)
            return msgspec.structs.replace(reading, ask=_in_full(ask, read) if follows else ask)
    if again.abstain is not None:
        return None
    return msgspec.structs.replace(
        again, question=reading.question, spans=_without_a_month(reading, again, period)
    )


def _come_about(
    found: Understood, period: Period, reading: Reading, lookup: Lookup, read: Read
) -> Reading | None:
    """ "My certificate ran out last month": it has run out, and it is asked of today."""
    from kb.reader.recast.scattered import scattered  # noqa: PLC0415  few texts tell such a day

    if not any(start < period.start < end for start, end, _ in scattered(found, lookup)):
        return None
    from kb.reader.recast.stand_ins import put_names, spans_put  # noqa: PLC0415  as above

    text = put_names(found, lookup)
    again = read(text) if text is not None else None
    if again is None or again.query is None:
        return None
    spans = spans_put(found, reading.spans, again, lookup)
    return msgspec.structs.replace(again, question=reading.question, spans=spans)


def besides_the_day(found: Understood, left: tuple[int, ...], today: datetime.date) -> tuple[int, ...]:
    """The places left over that say no day which is understood: "2025" of "June 2025" is not among them."""
    said = said_period(found, left, today)
    if said is None or found.text[: said.start].rstrip()[-1:].isdigit():  # "30 February 2025"
        return left
    starts = {index: found.tokens[found.pieces[index].first].start for index in left}
    return tuple(index for index in left if not said.start <= starts[index] < said.end) or left


def _apart(one: Period, other: Period) -> bool:
    return one.end <= other.start or other.end <= one.start


def _as_asked(again: Reading, reading: Reading) -> Reading:
    return msgspec.structs.replace(again, question=reading.question, spans=reading.spans)


def _without_a_month(reading: Reading, again: Reading, period: Period) -> tuple[Span, ...]:
    """The spans, with a month that says no more than how long: "until March 2027"."""
    known = {fact for fact, _ in again.query.case.facts} if again.query is not None else set()
    return tuple(
        msgspec.structs.replace(span, role="filler", target=None)
        if period.start <= span.start < period.end and span.role == "fact" and span.target not in known
        else span
        for span in reading.spans
    )


def _tells(found: Understood, period: Period) -> bool:
    """ "Is it banned? Last year it was.": whether it is said beside how it was on another day."""
    starts = [found.tokens[start].start for start in sentence_starts(found.text, found.tokens)]
    begun = max((start for start in starts if start <= period.start), default=0)
    end = min((start for start in starts if start > period.start), default=len(found.text))
    said = found.text[begun:end]
    asked = "?" in found.text[:begun]
    return asked and "?" not in said and _PAST.search(said) is not None


_PAST = Pattern(r"\b(?:was|were|did|had|could|used to)(?:n['’]t)?\b", re.IGNORECASE)


def _in_full(ask: Ask, read: Read) -> Ask:
    """Choices of a day, each as a question that can be read without the one before."""
    choices = []
    for text, day in ask.choices:
        again = read(text)
        choices.append((f"{again.text.rstrip('?')}, on {day}?" if again.query is not None else text, day))
    return msgspec.structs.replace(ask, choices=tuple(choices))


def shown_on_its_day(
    reading: Reading, found: Understood, case: Case, lookup: Lookup, read: Callable[[Case], Reading]
) -> Reading:
    """The clause as it was in the year or edition that the question says, else that named as not used."""
    if any(token.key == "clause" for token in found.tokens):
        return reading  # its name may have a year: "clause 3 of the notice of 2026"
    period = in_edition(found, case.as_of, lookup)
    if period is None:
        period = said_period(found, tuple(range(len(found.pieces))), case.as_of)
        if period is None or _YEAR.search(found.text[period.start : period.end]) is None:
            return reading
    if period.first <= case.as_of <= period.last:
        return reading
    then = read(msgspec.structs.replace(case, as_of=period.first))
    if then.query is not None and then.query.clause is not None:
        return then
    return msgspec.structs.replace(reading, unused=(*reading.unused, found.text[period.start : period.end]))


_YEAR = Pattern(r"\b(?:19|20)\d\d\b")
