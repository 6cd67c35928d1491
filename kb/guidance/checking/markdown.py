"""Markdown to numbered pieces of text: headings, paragraphs, list items, table rows."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from kb.guidance.checking.document import MOST_BLOCKS, Block, BlockKind, Document, refused
from kb.text import Pattern, is_hidden

_HEADING = Pattern(r" {0,3}(#{1,6})\s+(.*?)\s*#*\s*$")
_UNDERLINE = Pattern(r" {0,3}(=+|-{2,})\s*$")
_FENCE = Pattern(r" {0,3}(```+|~~~+)")
_ITEM = Pattern(r"\s*(?:[-*+•]|\d{1,3}\))\s+(?=\S)")
NUMBERED = Pattern(
    r"\s*(?:\*\*)?(?P<number>\d{1,3}(?:\.\d{1,3})+[a-z]?(?=[.\s*])|\d{1,3}(?=\.))\.?(?:\*\*)?(?:\s+|$)(?=\D|$)"
)
_LETTERED = Pattern(r"\s*(?:[-*+•]\s+)?\(?[a-z]\)\s")
_LABEL = Pattern(r"\s*(?:[-*+]\s+)?(?:\*\*|__)?[A-Z][A-Za-z ]{2,30}:(?:\*\*|__)?(?:\s|$)")
_RULER = Pattern(r"\s*\|?\s*:?-{1,}:?\s*(\|\s*:?-{1,}:?\s*)*\|?\s*$")
_BREAK = Pattern(r" {0,3}([-*_])(\s*\1){2,}\s*$")
_EMPHASIS = Pattern(r"(\*\*|__)(?=\S)(.{1,2000}?)(?<=\S)\1")
_ITALIC = Pattern(
    r"(?<![\w*])\*(?=[^\s*])([^*\n]{1,2000}?)(?<=[^\s*])\*(?![\w*])"
    r"|(?<!\w)_(?=[^\s_])([^_\n]{1,2000}?)(?<=[^\s_])_(?!\w)"
)
_LINK = Pattern(r"!?\[([^\]\n]{0,1000}+)\]\([^)\s]{0,2000}+(?:\s+\"[^\"]{0,1000}+\")?\)")
_FOOTNOTE = Pattern(r"\[\^[^\]\s]{1,40}\]:?")
_QUOTE = Pattern(r" {0,3}(?:> ?)+")
_TAG = Pattern(r"</?[A-Za-z][^<>\n]{0,200}>")
_CODE = Pattern(r"`+([^`]*)`+")
_ESCAPED = Pattern(r"\\([\\`*_{}\[\]()#+\-.!|<>])")
_OTHER_KINDS = (
    (b"%PDF", "not-text", "The file is a PDF."),
    (b"\xff\xfe", "not-utf8", "The file is UTF-16 text."),
    (b"\xfe\xff", "not-utf8", "The file is UTF-16 text."),
    (b"{\\rtf", "not-text", "The file is rich text (RTF)."),
    (b"\xd0\xcf\x11\xe0", "not-text", "The file is an old Word document (.doc)."),
)
_SPLIT_CELLS = Pattern(r"(?<!\\)\|")


def read_markdown(data: bytes, name: str) -> Document:
    """The pieces of a Markdown file with their lines; `InvalidDataError` if it is no text."""
    for mark, code, message in _OTHER_KINDS:
        if data.startswith(mark):
            remedy = "Save it as UTF-8 text, or give a Markdown or Word (.docx) file."
            raise refused(name, 1, code, message, remedy)
    if b"\0" in data:
        line = data[: data.index(b"\0")].count(b"\n") + 1
        raise refused(name, line, "not-text", "The file is no text.", "Give a Markdown or Word (.docx) file.")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        message = "The file is not UTF-8 text."
        raise refused(
            name, line, "not-utf8", message, "Save it as UTF-8, or give a Word (.docx) file."
        ) from error
    reader = _Reader(name)
    for number, written in enumerate(_without_comments(re.split(r"\r\n|\r|\n", text)), start=1):
        reader.line(number, written)
    reader.end()
    return Document(name, "line", tuple(reader.blocks))


def _without_comments(lines: list[str]) -> Iterator[str]:
    """The lines without HTML comments, which may go over several of them."""
    inside = False
    for line in lines:
        kept, rest = "", line
        while rest:
            mark = "-->" if inside else "<!--"
            head, found, rest = rest.partition(mark)
            kept += "" if inside else head
            inside = inside is not bool(found)
        yield kept


class _Reader:
    """Gathers lines to blocks."""

    def __init__(self, name: str) -> None:
        self.blocks: list[Block] = []
        self._name = name
        self._kind: BlockKind = "text"
        self._number = ""
        self._parts: list[tuple[int, str]] = []
        self._header: tuple[str, ...] = ()
        self._table = False
        self._fence = ""
        self._lead = ""

    def line(self, number: int, line: str) -> None:
        """Take in one line."""
        quoted = _QUOTE.match(line)
        line = line[quoted.end() :] if quoted else line
        fence = _FENCE.match(line)
        if self._fence or fence:
            self._fenced(fence[1] if fence else "")
            return
        heading = _HEADING.match(line)
        if heading:
            self.end()
            self._add("heading", [(number, heading[2])], level=len(heading[1]))
            self._lead = ""
        elif not line.strip():
            self.end()
            self._table = False
        elif _UNDERLINE.match(line) and self._parts and self._kind == "text" and "|" not in line:
            self._add("heading", self._parts, level=1 if "=" in line else 2)
            self._parts = []
        elif _BREAK.match(line):
            self.end()
        elif "|" in line and (self._table or line.lstrip().startswith("|") or self._parts == []):
            self._row(number, line)
        else:
            self._text(number, line)

    def _fenced(self, mark: str) -> None:
        self.end()
        if not self._fence:
            self._fence = mark
        elif mark.startswith(self._fence[:3]):
            self._fence = ""

    def _row(self, number: int, line: str) -> None:
        self.end()
        if _RULER.match(line):
            return
        bare = line.strip().removeprefix("|").removesuffix("|")
        cells = tuple(plain(cell) for cell in _SPLIT_CELLS.split(bare))
        if len(cells) < 2 and not self._table and not line.lstrip().startswith("|"):
            self._text(number, line)
            return
        first = not self._table
        self._header = cells if first else self._header
        self._table = True
        self._add("row", [(number, " | ".join(cells))], cells=cells, header=() if first else self._header)

    def _text(self, number: int, line: str) -> None:
        self._table = False
        item, numbered = _ITEM.match(line), NUMBERED.match(line)
        starts = item or numbered or _LETTERED.match(line) or _LABEL.match(line) or _FOOTNOTE.match(line)
        if starts:
            self.end()
            listed = numbered and self._lead and "." not in numbered["number"]
            self._kind = "item" if listed or (item and not numbered) else "text"
            self._number = numbered["number"] if numbered else ""
            line = line[(item or numbered).end() :] if item or numbered else line  # type: ignore[union-attr]
        self._parts.append((number, line))
        if line.endswith(("  ", "\\")) and not starts:
            self.end()

    def end(self) -> None:
        """Close the paragraph or item that is open."""
        if self._parts:
            self._add(self._kind, self._parts, number=self._number)
        self._parts, self._kind, self._number = [], "text", ""

    def _add(
        self,
        kind: BlockKind,
        parts: list[tuple[int, str]],
        level: int = 0,
        number: str = "",
        cells: tuple[str, ...] = (),
        header: tuple[str, ...] = (),
    ) -> None:
        text, lines = "", []
        for line, part in parts:
            if text:
                text += " "
            lines.append((len(text), line))
            text += plain(part)
        if not text.strip():
            return
        if len(self.blocks) >= MOST_BLOCKS:
            message = f"The file has more than {MOST_BLOCKS} paragraphs."
            raise refused(self._name, lines[0][1], "too-long", message, "Check it in parts.")
        lead = self._lead if kind == "item" else ""
        hidden = (
            any(is_hidden(c) for _, part in parts for c in part)
            if not text.isascii() or not text.isprintable()
            else False
        )
        self.blocks.append(
            Block(
                kind=kind,
                text=text,
                lines=tuple(lines),
                place=f"line {lines[0][1]}",
                level=level,
                number=number,
                lead=lead,
                cells=cells,
                header=header,
                hidden=hidden,
            )
        )
        if kind != "item":
            self._lead = text.rstrip() if kind == "text" and text.rstrip()[-1:] not in ".!?" else ""


def plain(text: str) -> str:
    """A line without its marks of emphasis, links, tags and escapes."""
    found = _LINK.sub(r"\1", text.rstrip("\\ ").strip())
    found = _FOOTNOTE.sub("", found).strip()
    found = _CODE.sub(r"\1", found)
    found = _EMPHASIS.sub(r"\2", found)
    found = _ITALIC.sub(lambda match: match[1] or match[2] or "", found)
    found = _TAG.sub("", found)
    return html.unescape(_ESCAPED.sub(r"\1", found)).strip()
