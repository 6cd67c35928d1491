"""Lines that are no turn of a talk though somebody in one writes them: thanks, and commands miswritten."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.blocks import Headline, Said
from shell.commands import COMMANDS, looks_like_question, read_line
from shell.layout import next_blocks
from shell.look_up import Reply, Result
from shell.session import change, merge
from shell.turns import take_line
from shell.words import brief

if TYPE_CHECKING:
    from kb import KnowledgeBase
    from shell.session import Session

_THANKS = r"(?:many thanks|thanks|thank you|thankyou|thx|cheers|ta|much obliged|much appreciated)"
_MUCH = r"(?: (?:very much|so much|a lot|again|then|mate|sir|chief))*"
_BEFORE = re.compile(rf"(?:ok(?:ay)?[ ,.;!-]+)?{_THANKS}{_MUCH}[ ,.;!-]+(?=\S)", re.IGNORECASE)
_AFTER = re.compile(rf"[ ,.;!-]+{_THANKS}{_MUCH}[ .!]*$", re.IGNORECASE)
_SAYS_THANKS = re.compile(rf"\b{_THANKS}\b", re.IGNORECASE)
_FOR = re.compile(rf"(?:ok(?:ay)?[ ,.;!-]+)?{_THANKS}{_MUCH},? for\b([^.,;?]*)", re.IGNORECASE)
_DECLINED = ("no", "nope", "nah")  # "no thanks" may decline, and need not answer no
_WELCOME = "You are welcome."
_STILL_OPEN = "You are welcome. What was asked is still open."
_MOST_MEANT = 3
_SHORT = 5  # letters of a command of which one may be wrong; of a longer one two


def take(session: Session, text: str, base: KnowledgeBase) -> Result:
    """What a line of somebody at the shell changes and shows; see `shell.turns.take_line`."""
    line = read_line(text)
    if line.kind == "question" and text.lstrip().startswith("/"):
        return session, Reply(complaint=_no_command(text))
    if line.kind == "question" and _SAYS_THANKS.search(text) is not None and "?" not in text:
        plain = _BEFORE.sub("", _AFTER.sub("", text.strip(), count=1), count=1)
        thanked = _FOR.fullmatch(text.strip(" .!"))
        is_for = thanked is not None and not looks_like_question(thanked.group(1))
        if is_for or base.is_thanks(text) or plain.casefold() in _DECLINED:
            return _thanked(session)
        if _answers(session, plain, base):
            text = plain
    after, reply = take_line(session, text, base)
    if line.kind == "question" and _is_refused(after, reply) and (meant := commands_meant(text)):
        return session, Reply(complaint=_no_command(text, meant))
    return _with_what_was_told(after, reply, text, base) if _is_refused(after, reply) else (after, reply)


def _with_what_was_told(after: Session, reply: Reply, text: str, base: KnowledgeBase) -> Result:
    """A refused line with what it surely told of who asks remembered, which is shown as kept."""
    from shell.told_once import surely_told  # noqa: PLC0415  few lines are refused

    told = tuple(one for one in surely_told(text, base) if one not in after.profile)
    if not told:
        return after, reply
    known = change(after, lambda facts: merge(facts, told), after.as_of)
    kept = Said("Remembered all the same", brief(told, base))
    return known, msgspec.structs.replace(reply, blocks=(*reply.blocks, kept))


def _thanked(session: Session) -> Result:
    """Thanks settle nothing and change nothing."""
    last = session.answers[-1] if session.answers else None
    if last is None or last.ask is None:
        return session, Reply(blocks=(Headline("", _WELCOME),))
    return session, Reply(blocks=(Headline("", _STILL_OPEN), *next_blocks(last)))


def _answers(session: Session, text: str, base: KnowledgeBase) -> bool:
    """Whether a text answers what was asked back."""
    if not session.answers or session.answers[-1].ask is None:
        return False
    try:
        base.reply(session.answers[-1], text)
    except kb.UsageError:
        return False
    return True


def is_settled(before: Session, after: Session, reply: Reply) -> bool:
    """Whether a line was answered: not refused, and nothing asked back but what its answer depends on."""
    new = () if after.answers is before.answers else after.answers
    return not _is_refused(after, reply) and all(answer.outcome == "answer" for answer in new)


def _is_refused(after: Session, reply: Reply) -> bool:
    return bool(reply.complaint) or after.missed is not None


def commands_meant(text: str) -> tuple[str, ...]:
    """At most three commands that a line may have been meant for: its first word nearly is one, and what
    follows can follow that one."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415  few lines are refused

    word, _, rest = text.strip(" /?!.").partition(" ")
    near = []
    for command in COMMANDS:
        away = OSA.distance(word.casefold(), command.name)
        line = read_line(f"{command.name} {rest}")
        if (
            away <= (1 if len(command.name) < _SHORT else 2)
            and away < len(word) - 1
            and line.kind == "command"
        ):
            near.append((away, command.name))
    return tuple(name for _, name in sorted(near, key=lambda one: one[0])[:_MOST_MEANT])


def _no_command(text: str, meant: tuple[str, ...] = ()) -> str:
    word = text.strip(" /").partition(" ")[0]
    known = meant or commands_meant(text)
    hint = f"Did you mean {' or '.join(known)}?" if known else "help lists the commands."
    return f'There is no command "{kb.visible(word)}". {hint}'
