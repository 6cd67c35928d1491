"""Every format says the same and takes no text of a file for markup; opened by independent readers."""

from __future__ import annotations

import datetime
import io
import sys
from html.parser import HTMLParser

import docx
import msgspec
import pytest

from kb import UsageError, demo_folder
from kb.guidance.compose import compose
from kb.guidance.document import Document, Paragraph, Section, Sentence, Table
from kb.guidance.drafting import make_draft
from kb.guidance.reading import open_plan
from kb.guidance.render_html import render_html
from kb.guidance.render_markdown import escape, render_markdown
from kb.guidance.render_pdf import pdf_renderer
from kb.guidance.render_word import NUMBERED, render_word

PLAN = demo_folder() / "plans" / "boat-crews-in-winter.plan"
HOSTILE = (
    "<script>alert(1)</script>", "**bold** _it_ `code` [a](b) ![i](j)", "| a | b |", "# not a heading",
    "1. no list", "- no list", "=1+1", "@SUM(A1)", "&amp; &lt; {{ 7*7 }} {% raw %}", "a\x1b[31mred\x07",
    "left\u202eright", "x\x00y",
    "</w:t><w:t>", "---", "line\nbreak\r\nand\ttab", "\ud800 lone", "~~gone~~ ^up^ $x$", "<!-- hidden -->",
)  # fmt: skip


@pytest.fixture(scope="module")
def document() -> Document:
    return compose(open_plan(PLAN.read_bytes(), PLAN.name, demo_folder()), "ab" * 32)


def hostile() -> Document:
    """A document of which every text is one that markup, terminals or spreadsheets could take for theirs."""
    day = datetime.date(2026, 12, 1)
    sentences = tuple(Sentence(text, "ref. (a), 1") for text in HOSTILE)
    table = Table("x", HOSTILE[:3], (HOSTILE[3:6], HOSTILE[6:9]), ())
    every = " ".join(HOSTILE)
    return Document(
        subject=HOSTILE[0] + HOSTILE[9],
        references=HOSTILE,
        purpose=every,
        applicability=every,
        sections=(Section("1", HOSTILE[3], (Paragraph("1.1", sentences, table),)),),
        effective=day,
        expires=day,
        review=day,
        digest="ab" * 32,
        authority=HOSTILE[1],
    )


class Page(HTMLParser):
    """The text of a page and the elements in it, as the standard library's parser sees them."""

    def __init__(self, page: bytes) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []
        self.text = ""
        self.feed(page.decode())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs

    def handle_data(self, data: str) -> None:
        self.text += data


def spaced(text: str) -> str:
    return " ".join(text.split())


def words_of_word(data: bytes) -> str:
    word = docx.Document(io.BytesIO(data))
    cells = [cell.text for table in word.tables for row in table.rows for cell in row.cells]
    return spaced(" ".join([*(p.text for p in word.paragraphs), *cells]))


def test_every_format_has_every_sentence_and_every_cell(document: Document) -> None:
    page = spaced(Page(render_html(document)).text)
    word = words_of_word(render_word(document))
    mark = spaced(render_markdown(document).decode())
    cells = [
        cell
        for section in document.sections
        for paragraph in section.paragraphs
        if paragraph.table
        for row in paragraph.table.rows
        for cell in row
    ]
    assert len(document.sentences) > 200
    assert len(cells) > 4
    for text in (*(s.whole for s in document.sentences), *cells, *document.references, document.purpose):
        assert spaced(text) in page, text
        assert spaced(text) in word, text
        assert escape(text) in mark, text


LABELS = (
    "Subject", "References", "Purpose", "Applicability", "Effective date", "Expiry", "Review date",
    "Signature", "Grade and appointment",
)  # fmt: skip


@pytest.mark.parametrize("label", LABELS)
def test_every_format_has_the_parts_of_guidance(document: Document, label: str) -> None:
    texts = [
        render_markdown(document).decode(),
        Page(render_html(document)).text,
        words_of_word(render_word(document)),
    ]
    assert all(f"{label}:" in text for text in texts)
    assert all(f"Made from rule books {document.digest}" in text for text in texts)


def test_a_word_file_has_real_styles_numbers_and_tables(document: Document) -> None:
    word = docx.Document(io.BytesIO(render_word(document)))
    styles = [paragraph.style.name for paragraph in word.paragraphs]
    assert styles.count("Heading 1") == len(document.sections)
    assert styles.count(NUMBERED) == sum(len(section.paragraphs) for section in document.sections)
    assert styles[0] == "Title"
    for name, level in (("Heading 1", 0), (NUMBERED, 1)):
        number = word.styles[name].element.pPr.numPr
        assert (number.ilvl.val, number.numId.val > 0) == (level, True)
    tables = [table for table in word.tables if table.style.name == "Table Grid"]
    assert len(tables) == sum(1 for s in document.sections for p in s.paragraphs if p.table)
    assert word.core_properties.title == document.subject


def test_numbers_run_on_within_sections(document: Document) -> None:
    for place, section in enumerate(document.sections, 1):
        assert section.number == str(place)
        assert [p.number for p in section.paragraphs] == [
            f"{place}.{i}" for i in range(1, len(section.paragraphs) + 1)
        ]


def test_the_same_draft_is_the_same_file(document: Document) -> None:
    for render in (render_markdown, render_html, render_word):
        assert render(document) == render(document)


# -- hostile texts ------------------------------------------------------------------------------------------


def test_html_takes_no_text_for_markup_and_fetches_nothing() -> None:
    page = Page(render_html(hostile()))
    clean = Page(render_html(msgspec.structs.replace(hostile(), sections=())))
    assert "script" not in page.tags
    assert set(page.tags) <= {
        "html", "head", "meta", "title", "style", "body", "h1", "h2", "dl", "dt", "dd", "ol", "li", "p",
        "span", "table", "thead", "tbody", "tr", "th", "td", "div",
    }  # fmt: skip
    assert not [value for name, value in page.attributes if name in ("src", "href", "onclick", "onload")]
    assert "<script>alert(1)</script>" in page.text
    assert "{{ 7*7 }}" in page.text
    assert not set(page.text + clean.text) & {"\x1b", "\x07", "\x00", "\u202e"}


def test_markdown_takes_no_text_for_markup() -> None:
    text = render_markdown(hostile()).decode()
    assert not set(text) & {"\x1b", "\x07", "\x00", "\u202e"}
    lines = text.splitlines()
    assert [line for line in lines if line.startswith("#")] == [
        lines[0],
        next(li for li in lines if li[:3] == "## "),
    ]
    assert "<script" not in text.replace("\\<", "")
    assert not [line for line in lines if line.startswith(("- ", "=1", "---", "1. "))]
    rows = [line for line in lines if line.startswith("| ")]
    assert len({line.replace("\\|", "").count("|") for line in rows}) == 1


def test_word_takes_no_text_for_markup() -> None:
    text = words_of_word(render_word(hostile()))
    assert "</w:t><w:t>" in text
    assert "<script>alert(1)</script>" in text
    assert not set(text) & {"\x1b", "\x07", "\x00", "\u202e"}


# -- PDF, an extra ------------------------------------------------------------------------------------------


def test_pdf_says_how_to_get_it_where_it_is_not_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    with pytest.raises(UsageError, match=r"clothbound\[pdf\]"):
        pdf_renderer()
    with pytest.raises(UsageError, match="extra"):
        make_draft(PLAN, demo_folder(), "0" * 64, "pdf")


@pytest.mark.slow
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_pdf_is_a_pdf_where_it_is_installed(document: Document) -> None:
    pytest.importorskip("weasyprint", exc_type=ImportError)
    data = pdf_renderer()(document)
    assert data.startswith(b"%PDF-")
    assert data.rstrip().endswith(b"%%EOF")
