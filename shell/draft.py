"""`clothbound draft`: guidance of one station, from a writer's plan to a file."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any

import kb
from shell.output import complain, complain_problems, write_bytes

if TYPE_CHECKING:
    from kb import KnowledgeBase

_BINARY = ("word", "pdf")


def write_draft(arguments: Any, base: KnowledgeBase) -> int:
    """Write the draft to a file or standard output; nothing at all if anything stands against the plan."""
    if arguments.output is None and arguments.format in _BINARY and sys.stdout.isatty():
        raise kb.UsageError(f"A {arguments.format} file is not for a terminal. Name one with -o FILE.")
    draft = base.draft(arguments.plan, arguments.format)
    complain_problems(draft.warnings)
    if arguments.output is None:
        write_bytes(draft.data)
    else:
        kb.write_atomically(arguments.output, draft.data)
        complain(f"{arguments.output}: {len(draft.data)} bytes.")
    return 0
