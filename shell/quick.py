"""A question without options, read without argparse, which costs a third of a bare Python start to load."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from argparse import Namespace

    Arguments = Namespace | SimpleNamespace

# What the parser says of `ask` where no option is given.
WITHOUT_OPTIONS: Mapping[str, Any] = {
    "books": None,
    "cache": None,
    "plain": False,
    "json": False,
    "grade": None,
    "rig": None,
    "fact": (),
    "as_of": None,
    "why": False,
    "svg": None,
}


def bare_question(argv: Sequence[str]) -> SimpleNamespace | None:
    """What the parser makes of `ask WORDS ...`; None for anything with an option, which needs the parser."""
    if len(argv) < 2 or argv[0] != "ask" or any(word.startswith("-") for word in argv):
        return None
    return SimpleNamespace(**WITHOUT_OPTIONS, command="ask", text=list(argv[1:]))
