"""What each line of the interactive shell makes of the session. Nothing here reads or prints."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.blocks import Cell, Grid, Headline, Said
from shell.chain import chain_blocks
from shell.clauses import asks_what_carried, asks_who_made, carried, clause_blocks, put_plainly
from shell.commands import BY_NAME, Line, looks_like_question, read_line, split_statement
from shell.dates import as_date
from shell.examples import example_of, nothing_yet
from shell.focus import asked_further
from shell.layout import arrange, further_blocks, next_blocks
from shell.look_up import Reply, Result, facts, help_, items, query, quit_
from shell.made_by import of_the_book_named
from shell.missed import (
    choice,
    declines,
    goes_on,
    is_answered,
    is_of_open,
    lists,
    misses,
    names_item,
    names_thing,
    no_value,
    of_asked,
    of_missed,
    only_adds,
    only_goes_on,
    only_measures,
    replies,
    rests_on_missed,
    rests_on_nothing,
    rests_on_open,
    still_missed,
    takes_back,
)
from shell.put_right import kind_told, meant_instead
from shell.saving import saved_form
from shell.session import (
    LOOSE_NO,
    Session,
    change,
    goes_on_from,
    is_loose_no,
    known_in,
    merge,
    replied,
    state,
)
from shell.told_once import as_told, grants_told, who_asks
from shell.words import brief

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase


_OPEN = "What was asked back is still open; answer it, or ask in full."
_DROPPED = "Then that is let be. Ask it in other words, or go on."
_MISSED = "The line before was not understood; say this with what it is of."


def _last(session: Session, base: KnowledgeBase) -> Answer:
    if not session.answers:
        raise kb.UsageError(nothing_yet("answered", base))
    return session.answers[-1]


def _ask(session: Session, base: KnowledgeBase) -> Result:
    """Ask the open question with everything known by now."""
    facts = merge(session.profile, session.replies)
    answers = base.ask(session.question, facts=facts, as_of=session.as_of, previous=session.before)
    read = next((answer for answer in reversed(answers) if answer.outcome != "abstain"), answers[-1])
    asked = msgspec.structs.replace(session, answers=answers, latest=goes_on_from(read), let_be=False)
    return asked, _shown(answers, base, dated=session.as_of is not None)


def _shown(answers: tuple[Answer, ...], base: KnowledgeBase, dated: bool = False) -> Reply:
    blocks = (block for answer in answers for block in arrange(answer, base, dated=dated))
    return Reply(blocks=(*blocks, *further_blocks(answers[-1])))


def _is_understood(session: Session) -> bool:
    return any(answer.outcome != "abstain" for answer in session.answers)


def _question(session: Session, text: str, base: KnowledgeBase) -> Result:
    """A new question, or one further on the clause that the talk is on."""
    asked, reply = _as_it_stands(session, text, base)
    if session.missed is not None and asked.answers is not session.answers and only_goes_on(text):
        reply = _going_on(session, asked, reply)
    asked, told = asked_further(session, asked, text, base)
    return asked, reply if told is None else _shown((told,), base)


def _going_on(session: Session, asked: Session, reply: Reply) -> Reply:
    """The reply with the question that it goes on from, where that is not the line before."""
    latest = session.latest
    if latest is None or not latest.text or asked.before is not latest:
        return reply
    return msgspec.structs.replace(
        reply, blocks=(Said("Goes on from", kb.visible(latest.text)), *reply.blocks)
    )


def _as_it_stands(session: Session, text: str, base: KnowledgeBase) -> Result:
    """A new question; one that is not understood leaves the session as it was."""
    if session.missed is not None and base.begun_anew(text) is not None:
        session = msgspec.structs.replace(session, missed=None)
    text = (session.missed is not None and base.put_right(text, session.missed)) or text
    rested = session.answers[-1] if session.answers else None
    who_made = text if asks_who_made(text, rested) else ""
    text = put_plainly(text, rested)
    opened = msgspec.structs.replace(session, question=text, before=session.latest, replies=(), missed=None)
    asked, reply = _ask(opened, base)
    if rests_on_missed(session, asked, text):
        named = session.missed if asks_what_carried(text) else still_missed(session, asked, text)
        return msgspec.structs.replace(session, missed=named), Reply(complaint=_MISSED)
    if session.answers and len(asked.answers) == 1 and asks_what_carried(text) and is_answered(asked):
        return _what_carried(session, asked, base, who_made)
    asks = session.latest.ask if session.latest is not None else None
    if asks is not None and not replies(asked, text, {value for value, _ in asks.choices}):
        # what was asked back is let be: the line may go on from the question before that
        older = _ask(msgspec.structs.replace(opened, before=session.before), base)
        unsettled = session.before is None and session.latest is not None and session.latest.query is None
        rests = rests_on_open(session, older[0], text)
        adds = only_goes_on(text) or only_measures(text)
        is_open = not is_answered(asked) or (adds and not is_of_open(session, asked))
        if (unsettled and only_goes_on(text) and names_thing(asked)) or (rests and is_open):
            open_ = Reply(blocks=next_blocks(session.answers[-1]), complaint=_OPEN)
            return _let_be(session, opened, base) or (session, open_)
        if not rests and is_answered(older[0]):
            asked, reply = older
    further = only_adds(asked) or misses(asked) or goes_on(asked, session)
    if session.missed is not None and names_item(session.missed) and further:
        # the words may go on from the line that was not understood, not from the question before it
        before = None if only_adds(asked) else of_missed(session, base)  # what it asked is not known
        asked, reply = _ask(msgspec.structs.replace(opened, before=before), base)
        if lists(asked):  # "and in boat rig?" asked of the other line, not for all worn in it
            return session, Reply(complaint=_MISSED)
    if _is_understood(asked):
        return asked, reply
    if rests_on_nothing(session, text):
        raise kb.UsageError(nothing_yet("asked", base))
    return msgspec.structs.replace(session, missed=still_missed(session, asked, text)), reply


def _let_be(session: Session, opened: Session, base: KnowledgeBase) -> Result | None:
    """What was asked back of a word is let be, where a line has another for it: "in natural colour?".

    With another case alone, "in boat rig?", the word would be gone without a trace.
    """
    before = of_asked(session, base)
    asked, reply = _ask(msgspec.structs.replace(opened, before=before), base) if before else (opened, Reply())
    if not before or not is_answered(asked) or not is_of_open(session, asked):
        return None
    readings = (answer.reading.query for answer in asked.answers)
    return (
        (asked, reply) if any(query is not None and query.value is not None for query in readings) else None
    )


def _what_carried(session: Session, asked: Session, base: KnowledgeBase, who_made: str) -> Result:
    """The clauses that the last answer rests on, for "which clause says so?"; and whose each is."""
    before = of_the_book_named(who_made, session.answers[-1], base)
    told = carried(asked.answers[-1], before, base if who_made else None)
    return msgspec.structs.replace(asked, answers=(told,)), _shown((told,), base)


def _answer_back(session: Session, text: str, base: KnowledgeBase) -> Result:
    """The line as a reply to what the last answer asked, else as a question, else as a reply that missed."""
    asks = session.answers[-1].ask
    if asks is not None and asks.fact == "reading" and declines(text):
        latest = of_asked(session, base) or session.before
        dropped = msgspec.structs.replace(session, latest=latest, before=None, missed=None, let_be=True)
        return dropped, Reply(blocks=(Headline("", _DROPPED),))
    instead = meant_instead(session.answers[-1], text, base)
    if instead is not None:
        asked, reply = _question(session, instead, base)
        if asked.answers is not session.answers:
            return asked, reply
    try:
        facts = base.reply(session.answers[-1], choice(text, session.answers[-1]))
    except kb.UsageError as error:
        if is_loose_no(session.answers[-1], text, base):
            return session, Reply(blocks=next_blocks(session.answers[-1]), complaint=LOOSE_NO)
        asked, reply = _question(session, text, base)
        of_fact = asks is not None and asks.fact in base.lookup.facts
        if asked.answers is not session.answers or looks_like_question(text) or not of_fact:
            return asked, reply  # what stopped a question is no value that was asked
        if (again := _told(session, text, base)) is not None:
            return again
        return session, Reply(blocks=next_blocks(session.answers[-1]), complaint=no_value(str(error), asked))
    told = replied(session, facts)
    asked, reply = _ask(told, base)
    return (asked, reply) if _is_understood(asked) else _ask_anew(told, session.answers[-1], base)


def _told(session: Session, text: str, base: KnowledgeBase) -> Result | None:
    from shell.told_again import told_again  # noqa: PLC0415  few lines are no value of what was asked

    known = merge(session.profile, session.replies)
    line = told_again(text, session.answers[-1], known, base) if session.answers else None
    if line is None or session.missed is not None:
        return None
    day = session.answers[-1].reading.query.case.as_of if session.answers[-1].reading.query else None
    anew = msgspec.structs.replace(session, question=line, before=None, as_of=day)
    asked, reply = _ask(anew, base)
    return msgspec.structs.replace(asked, as_of=session.as_of), reply


def _ask_anew(told: Session, answer: Answer, base: KnowledgeBase) -> Result:
    """The last question by its read-back, where its own words go on from one that a reply has changed."""
    query = answer.reading.query
    day = told.as_of if query is None else query.case.as_of
    anew = msgspec.structs.replace(told, question=answer.reading.text, before=None, as_of=day)
    asked, reply = _ask(anew, base)
    return msgspec.structs.replace(asked, as_of=told.as_of), reply


def _is_asked(session: Session) -> bool:
    return bool(session.answers) and not session.let_be and session.answers[-1].ask is not None


def _why(session: Session, _argument: str, base: KnowledgeBase) -> Result:
    answer = _last(session, base)
    if session.missed is not None:  # why that was not answered is not why the answer before it is so
        return session, Reply(complaint=_MISSED)
    headline = Headline("", kb.visible(answer.headline or answer.question))
    chain = chain_blocks(answer, base)
    if not chain:
        return session, Reply(blocks=arrange(answer, base, chain=True, dated=session.as_of is not None))
    return session, Reply(blocks=(headline, *chain))


def _clause(session: Session, argument: str, base: KnowledgeBase) -> Result:
    return session, Reply(blocks=clause_blocks(argument, base))


def _json(session: Session, _argument: str, base: KnowledgeBase) -> Result:
    data = msgspec.json.format(kb.answer_to_json(_last(session, base)), indent=2).decode()
    return session, Reply(text=kb.visible(data))


def _save(session: Session, argument: str, base: KnowledgeBase) -> Result:
    """The last answers, with the whole way to each, in the form that the name of the file tells."""
    _last(session, base)
    path = Path(os.path.expanduser(argument))  # noqa: PTH111  unlike pathlib, never raises
    return session, Reply(file=path, data=saved_form(path, session.answers, base))


def _remember(session: Session, argument: str, base: KnowledgeBase) -> Result:
    return _profile(state(session, argument, base), "", base)


def _stated(session: Session, text: str, base: KnowledgeBase) -> Result:
    """Remember what is said of oneself; the open question is answered anew if its answer rests on it."""
    if session.answers and (kind := kind_told(session.answers[-1], text, base)) is not None:
        return take_line(session, kind, base)
    try:
        remembered = state(session, text, base)
    except kb.UsageError:
        if _is_asked(session):
            return _answer_back(session, text, base)
        gone_on, reply = _question(session, text, base) if session.latest is not None else (session, Reply())
        if gone_on.answers is session.answers:
            if (again := _told(session, text, base)) is not None:
                return again
            raise
        return gone_on, reply  # "it's 40 mm on me", after how wide the belt is
    answer, told = session.answers[-1] if session.answers else None, base.statement(text)
    which = answer is not None and answer.ask is not None and answer.ask.fact == "item"
    if which or takes_back(session, told, base):  # of each thing that may be meant; else of it as told
        before = remembered if which else msgspec.structs.replace(remembered, latest=session.latest)
        told_of, reply = _question(before, text, base)
        if told_of.answers is not remembered.answers:
            return told_of, reply
    asked = answer is not None and answer.ask is not None and answer.ask.fact in dict(told)
    if answer is None or not (asked or base.bears(answer.reading, told)):
        return _profile(remembered, "", base)
    shown, (answered, reply) = _profile(remembered, "", base)[1], _ask(replied(remembered, told), base)
    return answered, msgspec.structs.replace(reply, blocks=(*shown.blocks, *reply.blocks))


def _profile(session: Session, _argument: str, base: KnowledgeBase) -> Result:
    if not session.profile:
        return session, Reply(blocks=(Said("Remembered", 'nothing. Say "I am a ..." to change that.'),))
    rows = tuple(
        (Cell(kb.visible(base.lookup.facts[name].label)), Cell(brief(((name, values),), base)))
        for name, values in session.profile
    )
    return session, Reply(blocks=(Grid("Remembered", ("Fact", "Value"), rows),))


def _forget(session: Session, argument: str, base: KnowledgeBase) -> Result:
    wanted = argument.lower()
    if not wanted:
        return _profile(Session(as_of=session.as_of), "", base)
    names = {
        name for name, _ in session.profile if wanted in (name.lower(), base.lookup.facts[name].label.lower())
    }
    if not names and session.latest is not None:  # "forget the rain": of the question, not of the profile
        asked, reply = _question(session, f"forget {argument}", base)
        if asked.answers is not session.answers:
            return asked, reply
    if not names:
        raise kb.UsageError(f'"{argument}" is not remembered. profile shows what is.')
    less = change(session, lambda facts: tuple(f for f in facts if f[0] not in names), session.as_of)
    return _profile(less, "", base)


def _as_of(session: Session, argument: str, _base: KnowledgeBase) -> Result:
    day = as_date(argument)
    today = argument.lower() == "today"
    changed = change(session, lambda facts: facts, None if today else day)
    return changed, Reply(blocks=(Said("As of", "today" if today else day.isoformat()),))


_RUN: dict[str, Callable[[Session, str, KnowledgeBase], Result]] = {
    "why": _why,
    "clause": _clause,
    "json": _json,
    "save": _save,
    "remember": _remember,
    "profile": _profile,
    "forget": _forget,
    "as of": _as_of,
    "items": items,
    "facts": facts,
    "query": query,
    "help": help_,
    "quit": quit_,
}
_NEEDS_ARGUMENT = {"clause", "save", "remember", "as of", "query"}


def _command(session: Session, line: Line, base: KnowledgeBase) -> Result:
    if line.name in _NEEDS_ARGUMENT and not line.argument:
        raise kb.UsageError(f"Write {BY_NAME[line.name].usage}, as in: {example_of(line.name, base)}")
    return _RUN[line.name](session, line.argument, base)


def _told_and_asked(session: Session, text: str, base: KnowledgeBase) -> Result:
    """A question with a statement before it; one that states nothing of oneself is read with the question."""
    if made := as_told(text, base):
        return _stated(session, made, base)
    statement, question = split_statement(text)
    try:
        told = state(session, statement, base) if statement else session
    except kb.UsageError:
        return _who_asks(_question(session, text, base), text, base)
    return _who_asks(_question(told, question, base), text, base)


def _who_asks(found: Result, text: str, base: KnowledgeBase) -> Result:
    """What a line came to, with who asks remembered where it tells that beside its question."""
    told = who_asks(text, base)
    known = msgspec.structs.replace(found[0], profile=merge(found[0].profile, told))
    return (known, found[1]) if told else found


def take_line(session: Session, text: str, base: KnowledgeBase) -> Result:
    """What a line changes and shows. Errors that the user can mend come back as a complaint."""
    line = read_line(text)
    after, reply = _taken(session, line, base)
    if line.kind == "question" and after.answers is not session.answers:
        told = grants_told(text, known_in(session), known_in(after), base)
        after = msgspec.structs.replace(after, profile=merge(after.profile, told))
    return after, reply


def _taken(session: Session, line: Line, base: KnowledgeBase) -> Result:
    try:
        if line.kind == "command":
            return _command(session, line, base)
        if line.kind == "statement":
            return _stated(session, line.argument, base)
        if _is_asked(session) and not looks_like_question(line.argument):
            return _answer_back(session, line.argument, base)
        return _told_and_asked(session, line.argument, base)
    except kb.ClothboundError as error:
        return session, Reply(complaint=kb.visible(str(error)))
