"""`clothbound decide`: a table of cases in, the same table with verdict, clause and rules out."""

from __future__ import annotations

import csv
import datetime
import io
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

import kb
from shell.output import columns, complain

if TYPE_CHECKING:
    from kb import CaseTable, CellProblem, KnowledgeBase

_LONGEST_CELL = 100_000
_LONGEST_LINE = 1_000_000
_MOST_SHOWN = 1000
_ADDED = ("verdict", "clause", "rules")
_BAD = ("error", "", "")


def _open_table(name: str) -> BinaryIO:
    """The table as bytes; `-` is standard input."""
    if name == "-":
        return sys.stdin.buffer
    try:
        return Path(name).open("rb")
    except OSError as error:
        raise kb.UsageError(f"{name} cannot be read: {error.strerror}.") from error


class _Progress:
    """A bar on standard error, if that is a terminal: how much of the file is read, and how many rows."""

    def __init__(self, stream: BinaryIO) -> None:
        self._shown = sys.stderr.isatty()
        self._stream = stream
        self._next = 0.0
        try:
            self._size = os.fstat(stream.fileno()).st_size if stream.seekable() else 0
        except (OSError, ValueError):
            self._size = 0

    def show(self, rows: int) -> None:
        now = time.monotonic()
        if not self._shown or now < self._next:
            return
        self._next = now + 0.1
        text = f"{rows:,} rows"
        if self._size:
            share = min(self._stream.tell() / self._size, 1.0)
            width = max(min(columns() - 30, 40), 10)
            bar = ("#" * round(share * width)).ljust(width)
            text = f"[{bar}] {share:4.0%}  {text}"
        sys.stderr.write(f"\r{text}")
        sys.stderr.flush()

    def clear(self) -> None:
        """Take the bar away before something else is said."""
        if self._shown:
            sys.stderr.write("\r\x1b[K")
            sys.stderr.flush()
            self._next = 0.0


class _Report:
    """Bad rows, told as they come, up to a thousand."""

    def __init__(self, name: str, header: list[str], progress: _Progress) -> None:
        self._name = "standard input" if name == "-" else name
        self._header, self._progress = header, progress
        self.bad = 0

    def tell(self, line: int, column: int, message: str) -> None:
        self.bad += 1
        if self.bad > _MOST_SHOWN:
            return
        named = f' (column "{self._header[column - 1]}")' if column else ""
        self._progress.clear()
        complain(f"{self._name}:{line}:{column or 1}: {message}{named}.")
        if self.bad == _MOST_SHOWN:
            complain(f"Only the first {_MOST_SHOWN} bad rows are shown.")


class _LineTooLongError(Exception):
    """Not CSV at all, such as a device or a film; reading on would fill the memory."""


def _lines(text: io.TextIOBase) -> Iterator[str]:
    while line := text.readline(_LONGEST_LINE):
        if len(line) == _LONGEST_LINE and not line.endswith("\n"):
            raise _LineTooLongError
        yield line


def _rows(text: io.TextIOBase) -> Iterator[tuple[int, list[str] | str]]:
    """Each row with the line it begins on; a text instead where it is no CSV."""
    reader = csv.reader(_lines(text), strict=True)
    while True:
        line = reader.line_num + 1
        try:
            row = next(reader)
        except StopIteration:
            return
        except _LineTooLongError:
            yield (
                line,
                f"the line has more than {_LONGEST_LINE:,} characters; it and what follows is not read",
            )
            return
        except csv.Error as error:
            yield line, f"this is not a row of CSV: {error}"
            continue
        if row:
            yield line, row


def _writable(cells: list[str], on_screen: bool) -> list[str]:
    guarded = [kb.CaseTable.written(cell) for cell in cells]
    return [kb.visible(cell) for cell in guarded] if on_screen else guarded


def _is_utf8(cells: list[str]) -> bool:
    return not any("\udc80" <= c <= "\udcff" for cell in cells if not cell.isascii() for c in cell)


def _decided(table: CaseTable, row: list[str] | str) -> tuple[str, str, str] | CellProblem:
    """What is written beside a row, or what is wrong with it."""
    if isinstance(row, str):
        return kb.CellProblem(0, row)
    if not _is_utf8(row):
        return kb.CellProblem(0, "the row is not UTF-8 text")
    found = table.decide(row)
    return found if isinstance(found, kb.CellProblem) else table.texts(found)


def decide_table(name: str, base: KnowledgeBase, as_of: datetime.date) -> int:
    """Decide every row of a CSV file (- is standard input), one after the other; 3 if a row is bad."""
    csv.field_size_limit(_LONGEST_CELL)
    with _open_table(name) as stream:
        text = io.TextIOWrapper(stream, encoding="utf-8-sig", errors="surrogateescape", newline="")
        rows = _rows(text)
        header = next((row for _, row in rows), None)
        if not isinstance(header, list):
            raise kb.UsageError("There is no line that names the columns, as in: item,grade,rig,weather")
        table = base.case_table(header, as_of)
        report = _Report(name, header, progress := _Progress(stream))
        on_screen = sys.stdout.isatty()
        writer = csv.writer(sys.stdout)
        writer.writerow(_writable([*header, *_ADDED], on_screen))
        for number, (line, row) in enumerate(rows, start=1):
            found = _decided(table, row)
            if isinstance(found, kb.CellProblem):
                report.tell(line, found.column, found.message)
                found = _BAD
            cells = row[: len(header)] if isinstance(row, list) else []
            padded = [*cells, *[""] * (len(header) - len(cells))]
            writer.writerow(_writable([*padded, *found], on_screen))
            progress.show(number)
        progress.clear()
    return kb.InvalidDataError.exit_code if report.bad else 0
