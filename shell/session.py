"""One interactive session as a value, and how its profile and its day change."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.words import Facts

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase, Reading


class Session(msgspec.Struct, frozen=True):
    """What the shell remembers: the profile, the day, the last answers, and the question still open.

    `latest` is the reading that a further question goes on from ("and in boat rig?"); `before` the one
    that the open question went on from; `replies` the facts given since; `missed` the reading of the line
    before, if it was not understood; `focus` the clauses that the talk is on, and `spoken` the line before
    that they only speak of. `let_be`: what the last answer asked back was declined.
    """

    profile: Facts = ()
    as_of: datetime.date | None = None
    answers: tuple[Answer, ...] = ()
    question: str = ""
    latest: Reading | None = None
    before: Reading | None = None
    replies: Facts = ()
    missed: Reading | None = None
    focus: tuple[str, ...] = ()
    spoken: str = ""
    let_be: bool = False


_FEW = 3


def goes_on_from(answer: Answer) -> Reading:
    """What the next line goes on from; the one thing that a list has as required is named by it."""
    required = [entry.item for entry in answer.entries if entry.verdict == "required"]
    query = answer.reading.query
    if query is None or query.kind != "list" or len(required) != 1:
        return _naming_two(answer)
    if not query.items and len(answer.entries) > _FEW:
        return answer.reading  # of all that is worn "it" is not the first
    frame = msgspec.structs.replace(query, kind="may", items=(required[0],), modalities=())
    return msgspec.structs.replace(answer.reading, frame=frame)


def _naming_two(answer: Answer) -> Reading:
    """The reading of an answer; of a list of two things, or of two that ordinarily must be, naming both."""
    reading, query = answer.reading, answer.reading.query
    worn = [entry for entry in answer.entries if entry.verdict != "prohibited"]
    usual = [entry for entry in worn if "required" in (entry.verdict, entry.usual)]
    two = next((each for each in (worn, usual) if len(each) == 2), None)
    if two is None or query is None or query.kind != "list" or not query.items:
        return reading
    named = dict.fromkeys((*(entry.item for entry in two), *reading.recent))
    return msgspec.structs.replace(reading, recent=tuple(named))


def merge(old: Facts, new: Facts) -> Facts:
    """Facts with the newer ones in place of older ones of the same name."""
    return tuple({**dict(old), **dict(new)}.items())


def known_in(session: Session) -> Facts:
    """What the question that a further line goes on from is asked under."""
    query = session.latest.query if session.latest is not None else None
    return query.case.facts if query is not None else ()


def _recast(reading: Reading | None, edit: Callable[[Facts], Facts], day: datetime.date) -> Reading | None:
    """A reading as if it had been about other facts and another day."""
    if reading is None or reading.query is None:
        return reading
    frame = reading.frame
    if frame is not None:
        known = msgspec.structs.replace(frame.case, facts=edit(frame.case.facts), as_of=day)
        frame = msgspec.structs.replace(frame, case=known)
    case = msgspec.structs.replace(reading.query.case, facts=edit(reading.query.case.facts), as_of=day)
    return msgspec.structs.replace(
        reading, query=msgspec.structs.replace(reading.query, case=case), frame=frame
    )


def replied(session: Session, facts: Facts) -> Session:
    """The session with the facts of a reply, which a question that goes on from another one keeps as well."""
    before = session.before
    if before is not None and before.query is not None:
        before = _recast(before, lambda known: merge(known, facts), before.query.case.as_of)
    return msgspec.structs.replace(session, replies=merge(session.replies, facts), before=before)


def change(session: Session, edit: Callable[[Facts], Facts], as_of: datetime.date | None) -> Session:
    """The session with another profile or day; a further question goes on from the changed facts."""
    day = as_of or datetime.date.today()
    return msgspec.structs.replace(
        session,
        profile=edit(session.profile),
        as_of=as_of,
        latest=_recast(session.latest, edit, day),
        before=_recast(session.before, edit, day),
    )


def state(session: Session, text: str, base: KnowledgeBase) -> Session:
    """The session with the facts that a statement gives; raises `UsageError` where it is not understood."""
    stated = base.statement(text)
    known = change(session, lambda facts: merge(facts, stated), session.as_of)
    return msgspec.structs.replace(known, missed=None)


LOOSE_NO = 'It is not clear what is denied. Write "no" alone, "no, ...", or "not ...".'


def is_loose_no(answer: Answer, text: str, base: KnowledgeBase) -> bool:
    """ "No sleeves up", asked something else: a no to that, or not with sleeves up."""
    first, _, rest = text.strip(" .!").partition(" ")
    fact = base.lookup.facts.get(answer.ask.fact) if answer.ask is not None else None
    if fact is None or fact.kind != "yes_no" or first.lower() not in ("no", "nope", "nah") or not rest:
        return False
    try:
        told = base.statement(rest)
    except kb.UsageError:
        return False
    return all(base.lookup.facts[name].family in ("situation", "rig") for name, _ in told)
