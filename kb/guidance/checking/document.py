"""Guidance as numbered pieces of text, whatever file it came from."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Literal

import msgspec

from kb.errors import InvalidDataError, Location, Problem, UsageError

BlockKind = Literal["heading", "text", "item", "row"]
LARGEST_FILE = 8_000_000
MOST_BLOCKS = 50_000


class Block(msgspec.Struct, frozen=True, kw_only=True):
    """A paragraph, heading, list item or table row. `lines` says at which character which line begins.

    `level` is that of a heading, `number` the paragraph's own ("2.1"), `lead` the sentence that a list goes
    on from, `cells` and `header` the columns of a row. `hidden` says that characters in it do not show.
    """

    kind: BlockKind
    text: str
    lines: tuple[tuple[int, int], ...]
    place: str
    level: int = 0
    number: str = ""
    lead: str = ""
    cells: tuple[str, ...] = ()
    header: tuple[str, ...] = ()
    hidden: bool = False

    def line_at(self, offset: int) -> int:
        """The line (or paragraph) in which a character of the text stands."""
        found = self.lines[0][1]
        for start, line in self.lines:
            if start <= offset:
                found = line
        return found


class Document(msgspec.Struct, frozen=True):
    """Guidance that was read from a file; `unit` is what its numbers count: lines or paragraphs."""

    name: str
    unit: Literal["line", "paragraph"]
    blocks: tuple[Block, ...]


def refused(name: str, line: int, code: str, message: str, remedy: str) -> InvalidDataError:
    """The error for a file that cannot be read as guidance."""
    return InvalidDataError((Problem(Location(name, line), code, message, remedy),))


_HTML = re.compile(rb"\s*(?:<!doctype html|<html|<\?xml)", re.IGNORECASE)
_OTHER_KINDS = {
    **dict.fromkeys((".html", ".htm", ".xhtml"), "HTML"),
    **dict.fromkeys((".yaml", ".yml", ".plan"), "YAML"),
    **dict.fromkeys((".odt", ".ott"), "an OpenDocument text"),
    ".json": "JSON", ".xml": "XML", ".csv": "a table", ".tex": "LaTeX",
}  # fmt: skip


def read_document(path: Path) -> Document:
    """The guidance in a Markdown or Word file.

    Raises `UsageError` if there is no such file, `InvalidDataError` if it is no such document or too large.
    """
    try:
        with path.open("rb") as stream:  # no more than may be read: a device has no end
            data = stream.read(LARGEST_FILE + 1)
    except (OSError, ValueError) as error:
        raise UsageError(f"{path} cannot be read: {getattr(error, 'strerror', None) or error}.") from error
    other = _OTHER_KINDS.get(path.suffix.lower()) or ("HTML" if _HTML.match(data) else None)
    if other is not None:
        remedy = "Give guidance as Markdown or Word (.docx)."
        raise refused(str(path), 1, "not-guidance", f"The file is {other}, which is not read here.", remedy)
    if len(data) > LARGEST_FILE:
        limit = LARGEST_FILE // 1_000_000
        raise refused(str(path), 1, "too-large", f"The file is larger than {limit} MB.", "Check it in parts.")
    if data[:4] == b"PK\x03\x04" or path.suffix.lower() in (".docx", ".docm"):
        from kb.guidance.checking.word import read_word  # noqa: PLC0415  python-docx only for Word

        return read_word(data, str(path))
    from kb.guidance.checking.markdown import read_markdown  # noqa: PLC0415

    return read_markdown(data, str(path))
