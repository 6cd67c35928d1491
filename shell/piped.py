"""A talk whose lines come through a pipe: the session of a terminal, each line shown above its reply."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

import kb
from shell.commands import needs_more
from shell.lines import take
from shell.output import Output
from shell.repl import show
from shell.run import is_settled
from shell.session import Session

if TYPE_CHECKING:
    from kb import KnowledgeBase


def whole_lines(lines: Iterable[str]) -> Iterator[str]:
    """Lines without empty ones; a query with all the lines that belong to it, which an empty one ends."""
    begun = ""
    for line in lines:
        begun = f"{begun}\n{line}" if begun else line
        if not needs_more(begun):
            yield from filter(None, [begun.strip()])
            begun = ""
    yield from filter(None, [begun.strip()])


def _is_settled(before: Session, after: Session) -> bool:
    if after.missed is not None:
        return False
    return after.answers is before.answers or all(map(is_settled, after.answers))


def converse(lines: Iterable[str], base: KnowledgeBase, output: Output) -> bool:
    """Take each line as somebody's next one; whether every line was settled.

    Nothing is remembered from another day, and nothing kept for one: the same lines give the same talk.
    """
    session, settled = Session(), True
    for line in whole_lines(lines):
        output.write("> " + "\n. ".join(map(kb.visible, line.split("\n"))))
        after, reply = take(session, line, base)
        settled = settled and not reply.complaint and _is_settled(session, after)
        session = after
        if reply.leave:
            break
        sys.stdout.flush()
        show(reply, output)
    return settled
