"""A draft as Markdown. Text of plans and rule books never becomes markup."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.guidance.document import Document, Paragraph, Section, Table
from kb.text import Pattern, visible
from kb.wording import say_date

SIGNATURE = ("Signature", "Name", "Grade and appointment", "Date")
BLANK = "." * 40
_MARKS = Pattern(r"([\\`*_{}\[\]<>#|~$&])")
_LINE_START = Pattern(r"^(\s*)(\d+)([.)])|^(\s*)([-+=:])")


def escape(text: str) -> str:
    """A text from a file as plain words on one line: nothing in it marks anything up."""
    return _MARKS.sub(r"\\\1", visible(" ".join(text.split())))


def _start(text: str) -> str:
    """A text at the start of a line, which must not begin a list, a rule or a definition."""
    return _LINE_START.sub(lambda m: f"{m[2]}\\{m[3]}" if m[2] else f"\\{m[5]}", escape(text))


def render_markdown(document: Document) -> bytes:
    """UTF-8. Headings for the sections, "2.1" before each paragraph, pipe tables."""
    return ("\n".join(_lines(document)).rstrip("\n") + "\n").encode("utf-8", "backslashreplace")


def _lines(document: Document) -> Iterator[str]:
    yield f"# {_start(document.subject)}"
    yield ""
    yield f"**Subject:** {escape(document.subject)}"
    yield ""
    yield "**References:**"
    yield ""
    yield from (f"{_start(reference)}  " for reference in document.references)
    yield ""
    yield f"**Purpose:** {escape(document.purpose)}"
    yield ""
    yield f"**Applicability:** {escape(document.applicability)}"
    yield ""
    for section in document.sections:
        yield from _section(section)
    yield f"**Effective date:** {say_date(document.effective)}"
    yield ""
    yield f"**Expiry:** {say_date(document.expires)}"
    yield ""
    yield f"**Review date:** {say_date(document.review)}"
    yield ""
    yield f"Made from rule books {document.digest}"
    yield ""
    yield f"**{escape(document.authority)}**"
    yield ""
    for label in SIGNATURE:
        yield f"{label}: {BLANK}  "


def _section(section: Section) -> Iterator[str]:
    yield f"## {section.number}. {escape(section.heading)}"
    yield ""
    for paragraph in section.paragraphs:
        yield from _paragraph(paragraph)


def _paragraph(paragraph: Paragraph) -> Iterator[str]:
    yield f"{paragraph.number} {' '.join(escape(s.whole) for s in paragraph.sentences)}"
    yield ""
    if paragraph.table is not None:
        yield from _table(paragraph.table)
        yield ""


def _table(table: Table) -> Iterator[str]:
    yield _row(table.head)
    yield _row(["---"] * len(table.head), plain=True)
    yield from (_row(row) for row in table.rows)


def _row(cells: Sequence[str], plain: bool = False) -> str:
    return f"| {' | '.join(cell if plain else escape(cell) for cell in cells)} |"
