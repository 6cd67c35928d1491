"""Edits of the good draft that make it false, read from `hostile-edits.txt`."""

from __future__ import annotations

from pathlib import Path

Edit = tuple[str, str, str, str]


def read_edits() -> list[Edit]:
    """`(name, what stands there, what is put there, code)` of each edit."""
    text = Path(__file__).with_name("hostile-edits.txt").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    found: list[Edit] = []
    for head, before, after in zip(lines[::3], lines[1::3], lines[2::3], strict=True):
        name, _, code = head.partition(" | ")
        assert (before[:2], after[:1]) == ("- ", "+"), head
        found.append((name, before[2:], after[2:], code))
    return found


EDITS = read_edits()
