"""Word documents to numbered pieces of text.

Every run of text counts, also what a tracked change inserts; what one deletes does not. Files are measured
before they are unpacked, so that a small file cannot grow without bound.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from typing import Any

import msgspec

from kb.guidance.checking.document import MOST_BLOCKS, Block, BlockKind, Document, refused
from kb.guidance.checking.markdown import NUMBERED
from kb.text import is_hidden

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_MOST_UNPACKED = 80_000_000
_MOST_PARTS = 2_000
_SKIPPED = frozenset({f"{_W}del", f"{_W}moveFrom", f"{_W}instrText", f"{_W}fldData"})
_NOTES = {"footnotes": "footnotes", "endnotes": "endnotes"}
_DEEPEST = 60


def read_word(data: bytes, name: str) -> Document:
    """The paragraphs and table rows of a Word document; `InvalidDataError` if it is none."""
    _measure(data, name)
    import docx  # noqa: PLC0415  slow to load, and only Word needs it

    try:
        document = docx.Document(io.BytesIO(data))
        walk = _Walk(name)
        blocks = (*walk.blocks(document.element.body), *walk.notes(document.part))
    except RecursionError as error:
        raise _broken(name, "its parts are nested too deeply") from error
    except Exception as error:
        from kb.errors import InvalidDataError  # noqa: PLC0415

        if isinstance(error, InvalidDataError):
            raise
        raise _broken(name, "it cannot be opened") from error
    return Document(name, "paragraph", blocks)


def _broken(name: str, why: str) -> Exception:
    return refused(name, 1, "not-word", f"The file is no Word document: {why}.", "Save it again as .docx.")


def _measure(data: bytes, name: str) -> None:
    """Refuse what is no archive, or would be too large once unpacked."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            parts = archive.infolist()
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError) as error:
        raise _broken(name, "it is broken or something else") from error
    if len(parts) > _MOST_PARTS or sum(part.file_size for part in parts) > _MOST_UNPACKED:
        message = "The document would be too large once unpacked."
        raise refused(name, 1, "too-large", message, "Save it again without pictures, or check it in parts.")


class _Walk:
    """Goes through the body in order and counts paragraphs; a table row counts as one."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._count = 0
        self._tables = 0
        self._lead = ""

    def blocks(self, element: Any, depth: int = 0) -> Iterator[Block]:
        """The blocks below an element."""
        if depth > _DEEPEST:
            raise RecursionError
        for child in element:
            if child.tag == f"{_W}p":
                yield from self._paragraph(child)
            elif child.tag == f"{_W}tbl":
                yield from self._table(child)
            elif child.tag not in _SKIPPED and isinstance(child.tag, str):
                yield from self.blocks(child, depth + 1)

    def notes(self, part: Any) -> Iterator[Block]:
        """What stands in footnotes and endnotes, behind the text that they belong to."""
        from docx.oxml import parse_xml  # noqa: PLC0415

        for relation in part.rels.values():
            kind = relation.reltype.rpartition("/")[2]
            if kind in _NOTES and not relation.is_external:
                for note in parse_xml(relation.target_part.blob):
                    for block in self.blocks(note):
                        yield msgspec.structs.replace(block, place=f"{_NOTES[kind]}, {block.place}")

    def _next(self) -> int:
        self._count += 1
        if self._count > MOST_BLOCKS:
            message = f"The document has more than {MOST_BLOCKS} paragraphs."
            raise refused(self._name, self._count, "too-long", message, "Check it in parts.")
        return self._count

    def _paragraph(self, element: Any) -> Iterator[Block]:
        number = self._next()
        text = _text(element).strip()
        if not text:
            return
        style = _style(element)
        level = _heading_level(style)
        kind: BlockKind = "heading" if level else "item" if "list" in style else "text"
        found = NUMBERED.match(text) if not level else None
        own = found["number"] if found else ""
        yield Block(
            kind=kind,
            text=text[found.end() :] if found else text,
            lines=((0, number),),
            place=f"paragraph {number}",
            level=level,
            number=own,
            lead=self._lead if kind == "item" else "",
            hidden=any(is_hidden(c) for c in text),
        )
        if kind != "item":
            self._lead = text if text.endswith(":") else ""

    def _table(self, element: Any) -> Iterator[Block]:
        self._tables += 1
        header: tuple[str, ...] = ()
        for row, line in enumerate(element.iterchildren(f"{_W}tr"), start=1):
            number = self._next()
            cells = tuple(" ".join(_text(cell).split()) for cell in line.iterchildren(f"{_W}tc"))
            place = f"table {self._tables}, row {row}"
            text = " | ".join(cells)
            if text.strip(" |"):
                hidden = any(is_hidden(c) for c in text)
                yield Block(
                    kind="row",
                    text=text,
                    lines=((0, number),),
                    place=place,
                    cells=cells,
                    header=header,
                    hidden=hidden,
                )
            header = header or cells


def _text(element: Any) -> str:
    """All text below an element that a reader sees; line breaks and tabs as spaces."""
    found: list[str] = []
    waiting = [element]
    while waiting:
        node = waiting.pop()
        if node.tag in _SKIPPED:
            continue
        if node.tag == f"{_W}t":
            found.append(node.text or "")
        elif node.tag in (f"{_W}br", f"{_W}tab", f"{_W}cr"):
            found.append(" ")
        elif node.tag == f"{_W}noBreakHyphen":
            found.append("-")
        elif node.tag == f"{_W}p" and found:
            found.append(" ")
        waiting.extend(reversed(list(node)))
    return "".join(found)


def _style(element: Any) -> str:
    """The id of a paragraph's style, in lower case."""
    node = element.find(f"{_W}pPr/{_W}pStyle")
    return "" if node is None else str(node.get(f"{_W}val") or "").lower()


def _heading_level(style: str) -> int:
    if style in ("title", "subtitle"):
        return 1
    if style.startswith("heading"):
        digits = "".join(c for c in style if c.isdecimal())
        return int(digits[:2] or 1)
    return 0
