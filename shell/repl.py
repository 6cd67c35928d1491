"""The interactive shell: reads lines, shows replies, and never loses the session."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

import kb
from shell.blocks import Said
from shell.commands import needs_more, split_lines
from shell.lines import is_settled, take
from shell.look_up import Reply
from shell.output import Output, complain, resized
from shell.plain import wrap
from shell.session import Session
from shell.state import keep_profile, with_profile
from shell.words import brief, whole

if TYPE_CHECKING:
    from kb import KnowledgeBase

_PROMPT = "> "
_MORE = ". "

Read = Callable[[Session], str]
Keep = Callable[[str], None]  # told of every line that was answered


def _print(reply: Reply, output: Output) -> None:
    if reply.complaint:
        complain("\n".join(wrap(reply.complaint, output.width)))
    if reply.blocks:
        output.show(reply.blocks, paged=True)
    if reply.text:
        output.write(reply.text)


def _save(reply: Reply, output: Output) -> None:
    """Write the file that a reply holds; one that is there already is left alone."""
    if reply.file is None:
        return
    if os.path.lexists(reply.file):
        raise kb.UsageError(f"{reply.file} is there already. Choose another name.")
    kb.write_atomically(reply.file, reply.data)
    output.show((Said("Saved", kb.visible(str(reply.file))),))


def show(reply: Reply, output: Output) -> None:
    """Everything that a reply says and does outside the session."""
    try:
        _print(reply, output)
        _save(reply, output)
    except kb.ClothboundError as error:
        complain(str(error))
    output.write("")
    sys.stdout.flush()


def _forget(_line: str) -> None:
    """Keeps nothing, where no line is proposed again."""


def _one_line(
    session: Session, line: str, base: KnowledgeBase, output: Output, keep: Keep
) -> tuple[Session, bool]:
    """The session after a line, and whether to leave; whatever goes wrong, the session stays."""
    before = session
    try:
        session, reply = take(session, line, base)
        if is_settled(before, session, reply):
            keep(line)
        if session.profile != before.profile:
            complaint = keep_profile(session, base)
            if complaint:
                complain(complaint)
        if not reply.leave:
            show(reply, resized(output))
        return session, reply.leave
    except KeyboardInterrupt:
        complain("Stopped.")
    except BrokenPipeError:
        raise
    except Exception as error:  # a fault in one answer must not end the session
        if os.environ.get("CLOTHBOUND_DEBUG") == "1":
            raise
        complain(f"internal error: {type(error).__name__}: {str(error)[:200]}; please report it.")
    return session, False


def loop(
    read: Read, base: KnowledgeBase, output: Output, session: Session | None = None, keep: Keep = _forget
) -> int:
    """Lines from `read` until it raises `EOFError` or a command leaves; `keep` gets what is answered."""
    session = session or Session()
    while True:
        try:
            for line in split_lines(whole(read(session))):
                session, leave = _one_line(session, line, base, output, keep)
                if leave:
                    return 0
        except KeyboardInterrupt:
            continue
        except EOFError:
            return 0


def _plainly(_session: Session) -> str:
    """A line; of a query as many as it needs. Ctrl-C and Ctrl-D end the line on the screen too."""
    try:
        text = input(_PROMPT)
        while needs_more(text):
            text += "\n" + input(_MORE)
        return text
    except (KeyboardInterrupt, EOFError):
        sys.stdout.write("\n")
        raise


def _greet(session: Session, gone: tuple[str, ...], base: KnowledgeBase, output: Output) -> None:
    service = kb.visible(base.lookup.base.service.label)
    output.write(f"{service}. Ask a question, or write help. Ctrl-D leaves.")
    if session.profile:
        output.show((Said("Remembered", f"{brief(session.profile, base)} (forget ends that)"),))
    if gone:
        complain(f"Not remembered any more, since the books have changed: {', '.join(gone)}.")


def run_repl(base: KnowledgeBase, output: Output) -> int:
    """Run until the user leaves; the exit code is 0."""
    session, gone = with_profile(Session(), base)
    _greet(session, gone, base, output)
    if not output.drawn:
        return loop(_plainly, base, output, session)
    from shell.editor import make_reader  # noqa: PLC0415  prompt_toolkit only where a screen is drawn

    read, keep = make_reader(base)
    return loop(read, base, output, session, keep)
