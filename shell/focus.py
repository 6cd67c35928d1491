"""What a line asks further of the clause that the talk is on, where nothing else understood it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from shell.session import Session

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase


def asked_further(
    session: Session, asked: Session, text: str, base: KnowledgeBase
) -> tuple[Session, Answer | None]:
    """The session after a line, and the clause in focus that tells what it asks, if no answer of it does.

    `session` is the one before the line, `asked` what was made of it.
    """
    answers = asked.answers if asked.answers is not session.answers else ()
    told, focus = base.in_focus(text, answers, session.focus, session.spoken, session.as_of)
    if told is None:
        cited = {one.clause for answer in answers for one in answer.citations}
        only = session.spoken if focus == session.focus else text
        spoken = "" if cited.intersection(focus) else only
        return msgspec.structs.replace(asked, focus=focus, spoken=spoken), None
    latest = session.latest if session.missed is None else None
    frame = (latest.frame or latest.query) if latest is not None else None
    reading = msgspec.structs.replace(
        told.reading, frame=frame, recent=latest.recent if latest is not None else ()
    )
    shown = Session(
        profile=session.profile, as_of=session.as_of, answers=(told,), question=text, latest=reading,
        before=session.latest, focus=focus,
    )  # fmt: skip
    return shown, told
