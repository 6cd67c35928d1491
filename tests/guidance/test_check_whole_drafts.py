"""Edits of whole drafts over two services: false ones are found on their line, true ones never called false.

The edits are invented: slips, bad faith, and what an editor does to prose. From memory, no source.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import docx
import pytest
from docx.opc.constants import RELATIONSHIP_TYPE
from docx.opc.packuri import PackURI
from docx.opc.part import Part

from kb.guidance.checking import check_document, read_document
from kb.guidance.checking.document import Document
from kb.guidance.checking.markdown import read_markdown
from tests.guidance.check_desk import TODAY, check, desk_of
from tests.guidance.whole_drafts import BOOKS, Edit, draft, part_with, read_edits, report_on

HOSTILE = read_edits("hostile")
HARMLESS = read_edits("harmless")


@pytest.mark.parametrize("name", list(BOOKS))
def test_the_whole_draft_is_in_order(name: str) -> None:
    report = check(draft(name), desk_of(BOOKS[name]))
    assert (report.findings, report.unread) == ((), ())
    assert report.confirmed > 90


@pytest.mark.parametrize("edit", HOSTILE, ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_hostile_edit_is_found_on_its_line(edit: Edit) -> None:
    report, lines = report_on(edit)
    here = {finding.code for finding in report.errors if finding.line in lines}
    if edit.outcome == "unread":
        assert not here
        assert any(unread.line in lines for unread in report.unread)
        return
    assert edit.outcome in here
    elsewhere = {finding.code for finding in report.errors if finding.line not in lines}
    assert elsewhere <= ({"stale-date"} if "after expiry" in edit.name else set())


@pytest.mark.parametrize("edit", HARMLESS, ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_harmless_edit_is_not_called_false(edit: Edit) -> None:
    report, _ = report_on(edit)
    assert [(finding.code, finding.text, finding.message) for finding in report.findings] == []
    assert bool(report.unread) is (edit.outcome == "unread"), report.unread


def as_word(text: str, path: Path) -> Document:
    """A piece of guidance as a Word file, read again."""
    document = docx.Document()
    table: Any = None
    for block in read_markdown(text.encode(), "draft.md").blocks:
        if block.kind == "row":
            table = table or document.add_table(rows=0, cols=len(block.cells))
            for cell, written in zip(table.add_row().cells, block.cells, strict=True):
                cell.text = written
            continue
        table = None
        if block.kind == "heading":
            document.add_heading(block.text, min(block.level, 3))
        else:
            style = "List Bullet" if block.kind == "item" else None
            document.add_paragraph(f"{block.number} {block.text}".strip(), style)
    document.save(str(path))
    return read_document(path)


@pytest.mark.parametrize("edit", HOSTILE[::4], ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_hostile_edit_is_found_in_word_in_its_paragraph(edit: Edit, tmp_path: Path) -> None:
    text = part_with(draft(edit.draft), edit.before)
    before = {block.text for block in as_word(text, tmp_path / "good.docx").blocks}
    document = as_word(text.replace(edit.before, edit.after, 1), tmp_path / "edited.docx")
    report = check_document(document, desk_of(BOOKS[edit.draft]), TODAY)
    changed = {block.lines[0][1] for block in document.blocks if block.text not in before}
    codes = {finding.code for finding in report.errors if finding.line in changed}
    codes |= {"unread" for unread in report.unread if unread.line in changed}
    assert edit.outcome in codes


@pytest.mark.parametrize("edit", HARMLESS[::4], ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_harmless_edit_is_not_called_false_in_word(edit: Edit, tmp_path: Path) -> None:
    text = part_with(draft(edit.draft), edit.before).replace(edit.before, edit.after, 1)
    report = check_document(as_word(text, tmp_path / "edited.docx"), desk_of(BOOKS[edit.draft]), TODAY)
    assert [(finding.code, finding.text) for finding in report.findings] == []


def test_nearly_every_edit_is_understood() -> None:
    """What is only listed is honest, but a writer has to look at it: that it is found counts."""
    assert len(HOSTILE) > 80
    assert sum(edit.outcome == "unread" for edit in HOSTILE) * 8 <= len(HOSTILE)
    assert len(HARMLESS) > 60
    assert sum(edit.outcome == "unread" for edit in HARMLESS) * 20 <= len(HARMLESS)


@pytest.mark.parametrize(
    ("before", "after", "sentence"),
    [
        ("K5 and below of the boat branch", "K5 and below", "The branch flash must be navy blue"),
        ("in boat or storm rig", "in boat, storm or workshop rig", "The undershirt and the service jersey"),
        ("on deck when it is winter", "on deck", "The wool scarf may be worn with a topcoat"),
    ],
)
def test_a_wider_audience_makes_sentences_false_where_they_stand(
    before: str, after: str, sentence: str
) -> None:
    applies = "**Applicability:** This guidance applies to "
    text = draft("winter")
    start = text.index(applies)
    head, tail = text[:start], text[start:].replace(before, after, 1)
    report = check(head + tail, desk_of())
    assert "dropped-condition" in {f.code for f in report.errors if f.text.startswith(sentence)}


def test_the_caution_of_a_rule_that_was_taken_out_is_told_beside_its_sentence() -> None:
    caution = "Caution: Protects against falls; the safety authority of the place goes before this Order"
    text = draft("winter").replace(f" {caution} (ref. (a), 7.13).", "", 1)
    (finding,) = check(text, desk_of()).findings
    assert (finding.code, finding.severity) == ("no-caution", "warning")
    assert finding.text.startswith("The climbing harness must be worn when working aloft")
    assert finding.suggestion == f"{caution} (ref. (a), 7.13)."


@pytest.mark.parametrize(
    ("who", "right"),
    [
        ("Only the Board of Lights can settle it.", True),
        ("The Board of Lights alone decides this.", True),
        ("Only the Master of the Station can settle it.", False),
        ("The Master of the Station settles it.", False),
    ],
)
def test_who_settles_what_is_open_is_the_authority_of_the_clauses(who: str, right: bool) -> None:
    text = draft("winter").replace("Only the Board of Lights can settle it.", who, 1)
    report = check(text, desk_of())
    assert [(f.code, f.suggestion) for f in report.findings] == (
        [] if right else [("contradicts", "Only the Board of Lights can settle it.")]
    )
    assert report.unread == ()


def test_a_rule_in_a_footnote_of_a_word_file_is_read(tmp_path: Path) -> None:
    """A note is in a part of its own, in the form of ECMA-376 part 1, 17.11."""
    document = docx.Document()
    document.add_paragraph("The knit cap must be worn in boat rig (Dress Order, 2024 edition, 3.4).")
    said = "The knit cap need not be worn in boat rig."
    space = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
    note = f'<w:footnote w:id="1"><w:p><w:r><w:t>{said}</w:t></w:r></w:p></w:footnote>'
    blob = f'<w:footnotes xmlns:w="{space}">{note}</w:footnotes>'.encode()
    kind = "application/vnd.openxmlformats-officedocument.wordprocessingml.footnotes+xml"
    part = Part(PackURI("/word/footnotes.xml"), kind, blob, document.part.package)
    document.part.relate_to(part, RELATIONSHIP_TYPE.FOOTNOTES)
    document.save(str(tmp_path / "noted.docx"))
    (finding,) = check_document(read_document(tmp_path / "noted.docx"), desk_of(), TODAY).errors
    assert (finding.text, finding.place) == (said, "footnotes, paragraph 2")
    assert "must be worn in boat rig" in finding.suggestion


@pytest.mark.parametrize(
    ("heading", "code"),
    [
        ("## 4. Body: the storm coat may be pierced", "contradicts"),
        ("## 4. The white gloves must be worn (ref. (a), 3.12)", "contradicts"),
        ("## 4. What covers the body", ""),
        ("## 4. Body: what must be worn and what may be", ""),
    ],
)
def test_a_rule_in_a_heading_is_read_there(heading: str, code: str) -> None:
    text = draft("winter").replace("## 4. Body", heading, 1)
    line = text[: text.index(heading)].count("\n") + 1
    report = check(text, desk_of())
    assert {(f.line, f.code) for f in report.findings} == ({(line, code)} if code else set())


def test_a_title_of_a_table_changes_what_its_cells_say() -> None:
    text = draft("winter").replace(
        "| The number of keeper's bars worn |", "| The height of the keeper's bars |"
    )
    report = check(text, desk_of())
    assert [unread.text.partition(" |")[0] for unread in report.unread] == ["K1", "K2", "Petty keepers"]
