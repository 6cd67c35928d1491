"""A draft as one HTML file: nothing is fetched, nothing runs, every text from a file is escaped."""

from __future__ import annotations

from pathlib import Path

from jinja2.sandbox import SandboxedEnvironment

from kb.guidance.document import Document
from kb.guidance.render_markdown import SIGNATURE
from kb.text import visible
from kb.wording import say_date

_PAGE = Path(__file__).with_name("page.html")


def _line(text: str) -> str:
    return visible(" ".join(text.split()))


def render_html(document: Document) -> bytes:
    """UTF-8; the texts of the document are values of the template, never a part of it."""
    environment = SandboxedEnvironment(autoescape=True)
    environment.filters["line"] = _line
    environment.filters["day"] = say_date
    page = environment.from_string(_PAGE.read_text(encoding="utf-8")).render(d=document, signature=SIGNATURE)
    return page.encode("utf-8", "xmlcharrefreplace")
