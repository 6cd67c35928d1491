"""A draft as a Word file with real headings, styles, a numbered outline and tables."""

from __future__ import annotations

import datetime
import io
import zipfile
from typing import Any

import docx
from docx.document import Document as Word
from docx.enum.style import WD_STYLE_TYPE
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls, qn
from docx.shared import Cm, Pt

from kb.guidance.document import Document, Paragraph, Table
from kb.guidance.render_markdown import SIGNATURE
from kb.text import visible
from kb.wording import say_date

NUMBERED, FIELD, CITED_TABLE = "Numbered Paragraph", "Header Field", "Table Grid"
_OUTLINE = 77
_ABSTRACT = f"""
<w:abstractNum {nsdecls("w")} w:abstractNumId="{_OUTLINE}">
  <w:multiLevelType w:val="multilevel"/>
  <w:lvl w:ilvl="0"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:pStyle w:val="Heading1"/>
    <w:lvlText w:val="%1."/><w:lvlJc w:val="left"/>
    <w:pPr><w:ind w:left="567" w:hanging="567"/></w:pPr></w:lvl>
  <w:lvl w:ilvl="1"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:pStyle w:val="NumberedParagraph"/>
    <w:lvlText w:val="%1.%2"/><w:lvlJc w:val="left"/>
    <w:pPr><w:ind w:left="794" w:hanging="794"/></w:pPr></w:lvl>
</w:abstractNum>"""
_NUM = f'<w:num {nsdecls("w")} w:numId="{_OUTLINE}"><w:abstractNumId w:val="{_OUTLINE}"/></w:num>'


def render_word(document: Document) -> bytes:
    """The bytes of a .docx file, the same for the same document."""
    word = docx.Document()
    _set_properties(word, document)
    _set_styles(word)
    word.add_paragraph(_line(document.subject), style="Title")
    _field(word, "Subject", document.subject)
    _field(word, "References", "")
    for reference in document.references:
        word.add_paragraph(_line(reference), style="List")
    _field(word, "Purpose", document.purpose)
    _field(word, "Applicability", document.applicability)
    for section in document.sections:
        word.add_heading(_line(section.heading), level=1)
        for paragraph in section.paragraphs:
            _paragraph(word, paragraph)
    _field(word, "Effective date", say_date(document.effective))
    _field(word, "Expiry", say_date(document.expires))
    _field(word, "Review date", say_date(document.review))
    word.add_paragraph(f"Made from rule books {_line(document.digest)}")
    _signature(word, document)
    return _packed(word)


def _line(text: str) -> str:
    return visible(" ".join(text.split()))


def _set_properties(word: Word, document: Document) -> None:
    """No name of a person and no hour: the same draft makes the same file."""
    properties = word.core_properties
    day = datetime.datetime.combine(document.effective, datetime.time())
    properties.title = _line(document.subject)[:255]
    properties.author = _line(document.authority)[:255]
    properties.last_modified_by = ""
    properties.comments = ""
    properties.created = properties.modified = day


def _set_styles(word: Word) -> None:
    """The outline numbers belong to the styles, so that Word numbers what a person adds."""
    styles = word.styles
    styles["Normal"].font.name = "Times New Roman"
    styles["Normal"].font.size = Pt(11)
    numbered = styles.add_style(NUMBERED, WD_STYLE_TYPE.PARAGRAPH)
    numbered.base_style = styles["Normal"]
    numbered.paragraph_format.space_after = Pt(6)
    field = styles.add_style(FIELD, WD_STYLE_TYPE.PARAGRAPH)
    field.base_style = styles["Normal"]
    field.paragraph_format.space_after = Pt(4)
    numbering = word.part.numbering_part.element
    first = numbering.find(qn("w:num"))
    abstract = parse_xml(_ABSTRACT)
    if first is None:
        numbering.append(abstract)
    else:
        first.addprevious(abstract)
    numbering.append(parse_xml(_NUM))
    for name, level in (("Heading 1", 0), (NUMBERED, 1)):
        _number(styles[name], level)
    heading = styles["Heading 1"]
    heading.paragraph_format.keep_with_next = True


def _number(style: Any, level: int) -> None:
    properties = style.element.get_or_add_pPr()
    numbering = properties.get_or_add_numPr()
    numbering.get_or_add_ilvl().val = level
    numbering.get_or_add_numId().val = _OUTLINE


def _field(word: Word, label: str, text: str) -> None:
    paragraph = word.add_paragraph(style=FIELD)
    paragraph.add_run(f"{label}:").bold = True
    if text:
        paragraph.add_run(f" {_line(text)}")


def _paragraph(word: Word, paragraph: Paragraph) -> None:
    made = word.add_paragraph(style=NUMBERED)
    for index, sentence in enumerate(paragraph.sentences):
        run = made.add_run(f"{' ' if index else ''}{_line(sentence.whole)}")
        run.bold = True if sentence.kind == "caution" else None
    if paragraph.table is not None:
        _table(word, paragraph.table)


def _table(word: Word, table: Table) -> None:
    made = word.add_table(rows=1, cols=len(table.head), style=CITED_TABLE)
    _row(made.rows[0], table.head, bold=True)
    made.rows[0]._tr.get_or_add_trPr().append(parse_xml(f"<w:tblHeader {nsdecls('w')}/>"))
    for row in table.rows:
        _row(made.add_row(), row)
    word.add_paragraph()


def _row(row: Any, cells: tuple[str, ...], bold: bool = False) -> None:
    for cell, text in zip(row.cells, cells, strict=True):
        cell.paragraphs[0].add_run(_line(text)).bold = bold or None


def _signature(word: Word, document: Document) -> None:
    word.add_paragraph(_line(document.authority)).runs[0].bold = True
    table = word.add_table(rows=0, cols=2)
    for label in SIGNATURE:
        cells = table.add_row().cells
        cells[0].paragraphs[0].add_run(f"{label}:")
        cells[1].paragraphs[0].add_run("." * 40)
    for column, width in zip(table.columns, (Cm(5), Cm(9)), strict=True):
        column.width = width


def _packed(word: Word) -> bytes:
    """The file without the hour at which it was packed."""
    packed = io.BytesIO()
    word.save(packed)
    made = io.BytesIO()
    with zipfile.ZipFile(packed) as old, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as new:
        for entry in old.infolist():
            new.writestr(zipfile.ZipInfo(entry.filename), old.read(entry), zipfile.ZIP_DEFLATED)
    return made.getvalue()
