"""Answers as files: plain text, Markdown, JSON or a picture."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.layout import arrange
from shell.markdown import render_markdown
from shell.output import safe_json
from shell.plain import render_plain

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

FORMS = (".txt", ".md", ".json", ".svg")
_WIDTH = 80


def saved_form(path: Path, answers: tuple[Answer, ...], base: KnowledgeBase) -> bytes:
    """The answers, with the whole way to each, in the form that the ending of the path names.

    JSON is what `clothbound verify` reads: one object for each answer. Raises `UsageError`.
    """
    form = path.suffix.lower()
    if form not in FORMS:
        raise kb.UsageError(f"The name of the file has to end in {', '.join(FORMS[:-1])} or {FORMS[-1]}.")
    if form == ".json":
        indent = 2 if len(answers) == 1 else -1
        objects = [msgspec.json.format(kb.answer_to_json(answer), indent=indent) for answer in answers]
        return "".join(safe_json(found.decode()) + "\n" for found in objects).encode()
    blocks = tuple(
        block for answer in answers for block in arrange(answer, base, chain=True, dated=True, asked=True)
    )
    if form == ".svg":
        from shell.picture import picture  # noqa: PLC0415  rich only where a screen is drawn

        return picture(blocks, " ".join(answer.question for answer in answers)).encode()
    return (render_markdown(blocks) if form == ".md" else render_plain(blocks, _WIDTH)).encode()
