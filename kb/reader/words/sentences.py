"""Where the sentences of a text begin."""

from __future__ import annotations

from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

_ENDS = ".!?;:"
_SHORT = word_set("cl para sec art no approx max min ca in ft st dr mr mrs ms")


def sentence_starts(text: str, tokens: tuple[Token, ...]) -> tuple[int, ...]:
    """The places of the words with which sentences begin; a colon ends one, too."""
    starts = [0]
    for index in range(1, len(tokens)):
        gap = text[tokens[index - 1].end : tokens[index].start]
        mark = gap.strip()[:1]
        if mark == "." and (not gap[-1:].isspace() or tokens[index - 1].low in _SHORT):
            continue
        if mark and mark in _ENDS:
            starts.append(index)
    return tuple(starts)


_PART = Pattern(r"[^.!?;:,]+")
_LED = Pattern(r"(?i)\b(?=(?:because|cos|coz|cuz|since|although|though|if|while|but) )")


def as_written(told: tuple[str, ...], text: str) -> tuple[str, ...]:
    """Stretches of a text as it was written, where they were read in other words."""
    return tuple(dict.fromkeys(_nearest(one, text) for one in told))


def _nearest(told: str, text: str) -> str:
    if told.casefold() in text.casefold():
        return told
    words = set(told.casefold().split())
    parts = [one.strip() for part in _PART.findall(text) for one in _LED.split(part)]
    return max(parts, key=lambda part: len(words & set(part.casefold().split())), default=told)
