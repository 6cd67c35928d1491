"""From a writer's plan to a finished draft in one format, or to everything that stands against it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Literal

import msgspec

from kb.errors import InvalidDataError, Problem
from kb.guidance.compose import compose
from kb.guidance.document import Document
from kb.guidance.reading import open_plan, read_file
from kb.guidance.refuse import refusals

Format = Literal["markdown", "html", "word", "pdf"]
FORMATS: tuple[Format, ...] = ("markdown", "html", "word", "pdf")


class Draft(msgspec.Struct, frozen=True):
    """A finished draft: the bytes of a file, the document they were made from, warnings about the plan."""

    data: bytes
    document: Document
    warnings: tuple[Problem, ...]


def make_draft(plan: Path, folder: Path, digest: str, form: Format) -> Draft:
    """The draft of a plan on top of the rule books in a folder, whose digest it carries.

    Raises `UsageError` if the plan cannot be read or the format is not installed, `InvalidDataError` with
    every mistake in the plan, or with every local rule that oversteps what the station may decide.
    """
    render = _renderer(form)
    opened = open_plan(read_file(plan), str(plan), folder)
    refused = refusals(opened)
    if refused:
        raise InvalidDataError(refused)
    document = compose(opened, digest)
    return Draft(render(document), document, opened.warnings)


def _renderer(form: Format) -> Callable[[Document], bytes]:
    """Only the writer that is asked for is loaded: each is a heavy library."""
    if form == "html":
        from kb.guidance.render_html import render_html  # noqa: PLC0415

        return render_html
    if form == "word":
        from kb.guidance.render_word import render_word  # noqa: PLC0415

        return render_word
    if form == "pdf":
        from kb.guidance.render_pdf import pdf_renderer  # noqa: PLC0415

        return pdf_renderer()
    from kb.guidance.render_markdown import render_markdown  # noqa: PLC0415

    return render_markdown
