"""A draft as PDF: the HTML page set on paper. An extra, since its library needs fonts and Pango."""

from __future__ import annotations

from collections.abc import Callable

from kb.errors import UsageError
from kb.guidance.document import Document
from kb.guidance.render_html import render_html


def pdf_renderer() -> Callable[[Document], bytes]:
    """What makes PDF; `UsageError` if it is not installed."""
    try:
        from weasyprint import HTML  # noqa: PLC0415  an extra
    except (ImportError, OSError) as error:
        raise UsageError(
            f"PDF is an extra that is not installed ({error}). "
            'Install it with: pip install "clothbound[pdf]", or take --format word or html.'
        ) from error

    def refuse(url: str, *_: object) -> dict[str, object]:
        raise ValueError(f"nothing is fetched: {url}")

    def render(document: Document) -> bytes:
        return bytes(HTML(string=render_html(document).decode(), url_fetcher=refuse).write_pdf())

    return render
