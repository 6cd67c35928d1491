"""The files that guidance comes in: Markdown and Word, whole, broken, huge and hostile."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import docx
import pytest

from kb.errors import InvalidDataError, UsageError
from kb.guidance.checking import CheckReport, check_document, read_document
from kb.guidance.checking.markdown import read_markdown
from kb.guidance.checking.sentences import split_sentences
from tests.guidance.check_desk import TODAY, check, desk_of, good

TRUE = "The storm coat must be worn in storm rig (Dress Order 2024, clause 3.6)."
FALSE = "The storm coat must be black (Dress Order 2024, clause 2.1)."


def check_file(path: Path) -> CheckReport:
    return check_document(read_document(path), desk_of(), TODAY)


def word(path: Path, *paragraphs: str) -> Path:
    document = docx.Document()
    for paragraph in paragraphs:
        document.add_paragraph(paragraph)
    document.save(str(path))
    return path


def repacked(path: Path, xml: bytes) -> Path:
    """A Word file with another main part."""
    whole = io.BytesIO(word(path, TRUE).read_bytes())
    with zipfile.ZipFile(whole) as old, zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for part in old.infolist():
            new.writestr(part, xml if part.filename == "word/document.xml" else old.read(part))
    return path


BODY = b'<w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"><w:body>%s</w:body></w:document>'


def test_word_counts_paragraphs_and_rows(tmp_path: Path) -> None:
    document = docx.Document()
    document.add_heading("Storm rig", 1)
    document.add_paragraph(TRUE)
    table = document.add_table(rows=2, cols=3)
    cells = ("Grade", "May wear", "Clause", "Deck hands", "the keeper's pin in watch rig", "Dress Order 5.10")
    for cell, text in zip((c for row in table.rows for c in row.cells), cells, strict=True):
        cell.text = text
    document.add_paragraph(FALSE)
    document.save(str(tmp_path / "guidance.docx"))
    report = check_file(tmp_path / "guidance.docx")
    assert report.unit == "paragraph"
    places = [(f.place, f.code) for f in report.errors]
    assert places == [("table 1, row 2", "contradicts"), ("paragraph 5", "wrong-value")]
    assert FALSE.rstrip(".") in report.errors[1].text


def test_word_says_the_same_as_markdown(tmp_path: Path) -> None:
    blocks = [b for b in read_markdown(good().encode(), "good.md").blocks if b.kind != "row"]
    path = word(tmp_path / "good.docx", *(f"{block.number} {block.text}".strip() for block in blocks))
    report = check_file(path)
    assert report.findings == ()
    assert report.unread == ()
    assert report.confirmed > 60


def test_a_tracked_insertion_counts_and_a_deletion_does_not(tmp_path: Path) -> None:
    run = b"<w:r><w:t xml:space='preserve'>%s</w:t></w:r>"
    gone = b"<w:del><w:r><w:delText>navy blue</w:delText></w:r></w:del>"
    put = b"<w:ins>" + run % b"black" + b"</w:ins>"
    start, end = run % b"The storm coat must be ", run % b" (Dress Order 2.1)."
    path = repacked(tmp_path / "tracked.docx", BODY % (b"<w:p>" + start + gone + put + end + b"</w:p>"))
    assert [finding.code for finding in check_file(path).errors] == ["wrong-value"]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"hello",
        b"PK\x03\x04" + bytes(range(256)),
        b"\x00\x01\x02",
    ],
)
def test_what_is_no_word_document_is_refused(tmp_path: Path, data: bytes) -> None:
    (tmp_path / "x.docx").write_bytes(data)
    with pytest.raises(InvalidDataError, match="no Word document"):
        read_document(tmp_path / "x.docx")


def test_archives_that_are_no_document_or_grow_without_bound_are_refused(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "other.docx", "w") as archive:
        archive.writestr("a.txt", "x")
    with zipfile.ZipFile(tmp_path / "bomb.docx", "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("word/document.xml", b"0" * 100_000_000)
    with pytest.raises(InvalidDataError, match="no Word document"):
        read_document(tmp_path / "other.docx")
    with pytest.raises(InvalidDataError, match="too large once unpacked"):
        read_document(tmp_path / "bomb.docx")


@pytest.mark.parametrize(
    "xml",
    [
        b"<w:doc",
        BODY % (b"<w:sdt><w:sdtContent>" * 100 + b"<w:p/>" + b"</w:sdtContent></w:sdt>" * 100),
        b'<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">'
        + b"".join(b'<!ENTITY %c "%s">' % (98 + i, b"&%c;" % (97 + i) * 10) for i in range(9))
        + b"]>"
        + BODY % b"<w:p><w:r><w:t>&j;</w:t></w:r></w:p>",
    ],
    ids=["cut off", "nested", "entities"],
)
def test_broken_parts_of_a_word_document_are_refused(tmp_path: Path, xml: bytes) -> None:
    with pytest.raises(InvalidDataError, match="no Word document"):
        read_document(repacked(tmp_path / "x.docx", xml))


@pytest.mark.parametrize(
    ("data", "line", "says"),
    [
        (b"one\ntwo\0\n", 2, "no text"),
        (b"one\n\ncaf\xe9\n", 3, "not UTF-8"),
        (bytes(range(255, 0, -1)), 1, "UTF-8"),
        (TRUE.encode("utf-16"), 1, "UTF-16"),
        (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", 1, "is a PDF"),
        (b"{\\rtf1\\ansi }", 1, "rich text"),
    ],
)
def test_what_is_no_text_is_refused_at_its_line(tmp_path: Path, data: bytes, line: int, says: str) -> None:
    (tmp_path / "x.md").write_bytes(data)
    with pytest.raises(InvalidDataError, match=says) as caught:
        read_document(tmp_path / "x.md")
    assert caught.value.problems[0].at.line == line


def test_files_that_are_not_there_or_too_large_are_refused(tmp_path: Path) -> None:
    for path in (tmp_path / "none.md", tmp_path):
        with pytest.raises(UsageError, match="cannot be read"):
            read_document(path)
    (tmp_path / "large.md").write_bytes(b"a" * 9_000_000)
    with pytest.raises(InvalidDataError, match="larger than"):
        read_document(tmp_path / "large.md")


def test_characters_that_do_not_show_are_told_and_hide_nothing() -> None:
    report = check("The storm\u200b coat\x1b[0m must be bl\u00adack (Dress Order 2.1).\n\n\u202eThe coat.\n")
    assert [(f.line, f.code) for f in report.findings if f.code == "hidden-characters"] == [
        (1, "hidden-characters"),
        (3, "hidden-characters"),
    ]
    assert not any("\x1b" in finding.text or "\u202e" in finding.text for finding in report.findings)


def test_comments_and_code_are_no_guidance() -> None:
    text = f"{TRUE}\n\n<!-- {FALSE}\n{FALSE} -->\n\n```\n{FALSE}\n```\n"
    report = check(text)
    assert (report.findings, report.confirmed) == ((), 1)


def test_guidance_without_a_citation_or_without_anything_is_no_error() -> None:
    for text in ("", "\n\n", "# A heading\n", "Nothing is said here.\n"):
        report = check(text)
        assert (report.findings, report.unread, report.citations) == ((), (), 0)


def test_a_huge_table_is_read_to_its_end() -> None:
    rows = "| K2 | the keeper's pin in watch rig | Dress Order 5.10 |\n" * 3000
    wrong = "| H2 | the keeper's pin in watch rig | Dress Order 5.10 |\n"
    report = check(f"| Grade | May wear | Clause |\n|---|---|---|\n{rows}{wrong}")
    assert report.confirmed == 3000
    assert [(f.line, f.code) for f in report.errors] == [(3003, "contradicts")]


@pytest.mark.parametrize(
    "text",
    [
        "(" * 20_000 + ")" * 20_000,
        '"' * 20_001,
        "|" * 20_000,
        "The cap must be worn " + "unless in town or on watch and in the mess " * 100 + "(3.2).",
        ", ".join(["in watch rig"] * 150) + ", the cap must be worn (Dress Order 3.2).",
        "must " * 500,
        "**" * 10_000 + "`" * 10_001 + "[" * 10_000,
        "(a) " * 5_000 + "must be worn",
        "[a](" * 30_000,
        "> " * 5_000 + "the cap must be worn",
        "a" * 1_000_000 + " must be worn.",
        "It ends. " * 9_000,
    ],
    ids=lambda text: text[:9],
)
def test_texts_that_mean_harm_come_to_an_end(text: str) -> None:
    assert check(f"{text}\n").errors in ((), check(f"{text}\n").errors)


def test_more_sentences_than_can_be_looked_at_are_refused_where_they_begin() -> None:
    with pytest.raises(InvalidDataError, match="more than 10000 sentences") as caught:
        check(f"{TRUE}\n\n" * 10_001)
    assert caught.value.problems[0].at.line == 20_001


def test_a_date_that_is_none_is_told() -> None:
    report = check(f"Effective date: 31 February 2026\n\nExpiry: 99.99.2026\n\n{TRUE}\n")
    assert [(unread.line, unread.reason) for unread in report.unread] == [
        (1, "it gives no date that there is"),
        (3, "it gives no date that there is"),
    ]


def test_a_block_quote_is_guidance_too() -> None:
    report = check(f"> {TRUE}\n>\n> {FALSE}\n")
    assert [(finding.line, finding.code) for finding in report.errors] == [(3, "wrong-value")]
    assert report.confirmed == 1


def test_a_sentence_has_the_line_that_it_begins_on() -> None:
    text = f"{TRUE} It goes\non. By ref. (a), no. 3,\nit ends. {FALSE}\n"
    (block,) = read_markdown(text.encode(), "x.md").blocks
    found = [(sentence.line, sentence.text[:9]) for sentence in split_sentences(block)]
    assert found == [(1, "The storm"), (1, "It goes o"), (2, "By ref. ("), (3, "The storm")]
    assert [finding.line for finding in check(text).errors] == [3]
