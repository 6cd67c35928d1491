"""`clothbound verify`: saved answers, each checked against the rule books."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import msgspec

import kb
from shell.output import complain

if TYPE_CHECKING:
    from kb import KnowledgeBase

_LARGEST = 50_000_000


def _read(name: str) -> bytes:
    try:
        if name == "-":
            return sys.stdin.buffer.read(_LARGEST + 1)
        with Path(name).open("rb") as stream:
            return stream.read(_LARGEST + 1)
    except OSError as error:
        raise kb.UsageError(f"{name} cannot be read: {error.strerror}.") from error


def _decode(data: bytes) -> Any:
    try:
        return msgspec.json.decode(data)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        return ValueError(f"this is no JSON: {error}")


def _answers(data: bytes) -> Iterator[tuple[int, Any]]:
    """Each answer with the line it starts on: one object over many lines, or one a line."""
    whole = _decode(data)
    if not isinstance(whole, ValueError):
        yield 1, whole
        return
    lines = [(n, line) for n, line in enumerate(data.split(b"\n"), start=1) if line.strip()]
    if not lines:
        raise kb.UsageError(
            'There is no answer to check. Save one: clothbound ask "..." --json > answer.json'
        )
    for number, line in lines:
        yield number, _decode(line)


def _refusal(base: KnowledgeBase, answer: Any) -> tuple[str, str] | None:
    if isinstance(answer, ValueError):
        return "the answer", str(answer)
    return base.verify(answer)


def verify_answers(name: str, base: KnowledgeBase) -> int:
    """Check every answer in a file (- is standard input); 0 if all are verified, 3 if one is refused."""
    data = _read(name)
    if len(data) > _LARGEST:
        raise kb.UsageError(f"{name} is larger than {_LARGEST // 1_000_000} MB.")
    shown = "standard input" if name == "-" else name
    code = 0
    for line, answer in _answers(data):
        refused = _refusal(base, answer)
        if refused is None:
            verdict = answer["verdict"] or answer["outcome"]
            print(kb.visible(f"verified: {answer['question']} ({verdict.replace('_', ' ')})"))
        else:
            where, what = refused
            complain(f"{shown}:{line}: refused: {where}: {what}.")
            code = kb.InvalidDataError.exit_code
    return code
