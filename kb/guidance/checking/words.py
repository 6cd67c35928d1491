"""Texts of guidance in one form, so that typography and line breaks make no difference."""

from __future__ import annotations

from kb.text import Pattern, is_hidden

_SAME = {
    "‘": "'", "’": "'", "‚": "'", "‛": "'", "ʼ": "'", "′": "'", "`": "'", "´": "'",
    "“": '"', "”": '"', "„": '"', "‟": '"', "«": '"', "»": '"', "″": '"',
    "‐": "-", "‑": "-", "‒": "-", "–": "-", "—": "-", "−": "-",
    "\u00a0": " ", "\u2007": " ", "\u2009": " ", "\u202f": " ", "\u00ad": "", "…": "...",
    "\u200b": "", "\u2060": "", "\ufeff": "", "ﬁ": "fi", "ﬂ": "fl", "⁄": "/",
    "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    "⅓": " 1/3", "⅔": " 2/3",
}  # fmt: skip
KEPT = 4096
"""How many sentences, or what was made of them, are kept for a document that is checked again."""
_SPACE = Pattern(r"\s+")
_MARKS = str.maketrans(_SAME)


def level(text: str) -> str:
    """The text with plain quotation marks, hyphens and single spaces; hidden characters become spaces."""
    plain = text.translate(_MARKS)
    if not (plain.isascii() and plain.isprintable()):
        plain = "".join(" " if is_hidden(c) else c for c in plain)
    return _SPACE.sub(" ", plain).strip()


def fold(text: str) -> str:
    """`level`, in lower case: two texts that fold alike say the same."""
    return level(text).casefold()
