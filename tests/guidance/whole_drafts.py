"""Whole drafts over two services, and edits of them that make them false or leave them as true as they are.

The files beside this one hold the drafts, as the program made them, and the edits: a line that names the
draft, the edit and what has to come of it, what stands there (-), what is put there (+, \\n is a new line).
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import NamedTuple

from kb.guidance.checking import CheckReport
from tests.guidance.check_desk import DIGEST, SECOND, check, desk_of

HERE = Path(__file__).parent
BOOKS = {"crews": None, "hut": SECOND, "winter": None}


class Edit(NamedTuple):
    """One edit; `outcome` is a code, "unread" or "true"."""

    draft: str
    name: str
    outcome: str
    before: str
    after: str


def read_edits(kind: str) -> list[Edit]:
    """The edits of `hostile-edits-whole.txt` or `harmless-edits-whole.txt`."""
    text = (HERE / f"{kind}-edits-whole.txt").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    found = []
    for head, before, after in zip(lines[::3], lines[1::3], lines[2::3], strict=True):
        draft, name, outcome = (part.strip() for part in head.split("|"))
        assert (before[:2], after[:2]) == ("- ", "+ "), head
        found.append(Edit(draft, name, outcome, before[2:], after[2:].replace("\\n", "\n")))
    return found


@cache
def draft(name: str) -> str:
    """A whole draft, made from the books of `desk_of`."""
    return (HERE / f"whole-draft-{name}.txt").read_text(encoding="utf-8").replace("DIGEST", DIGEST)


def part_with(text: str, words: str) -> str:
    """The head and the end of a draft, and the section that has certain words; the first if none has."""
    head, *sections = text.split("\n## ")
    last, end = sections[-1].split("\n**Effective date", 1)
    sections[-1] = last
    chosen = next((section for section in sections if words in section), sections[0])
    return f"{head}\n## {chosen}\n\n**Effective date{end}"


def report_on(edit: Edit) -> tuple[CheckReport, range]:
    """The report on a draft with an edit, and the lines of the edit."""
    text = part_with(draft(edit.draft), edit.before)
    assert text.count(edit.before) == 1 or edit.before in text, edit
    line = text[: text.index(edit.before)].count("\n") + 1
    report = check(text.replace(edit.before, edit.after, 1), desk_of(BOOKS[edit.draft]))
    return report, range(line, line + edit.after.count("\n") + 1)
