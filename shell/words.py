"""What the screens call the verdicts, and in which tone."""

from __future__ import annotations

from shell.blocks import Cell, Tone

# In the order of the groups of a list.
VERDICTS: dict[str, tuple[str, Tone]] = {
    "required": ("required", "must"),
    "permitted": ("permitted", "yes"),
    "not_required": ("not required", "yes"),
    "prohibited": ("prohibited", "no"),
    "conditional": ("it depends", "open"),
    "conflict": ("conflict", "clash"),
    "silent": ("not addressed", "quiet"),
}


def verdict_cell(verdict: str) -> Cell:
    word, tone = VERDICTS[verdict]
    return Cell(word, tone)
