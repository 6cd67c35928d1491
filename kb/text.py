"""Text from files and people, made safe and comparable."""

from __future__ import annotations

import unicodedata

_KEEP = {"\n", "\t"}
_HIDDEN_CATEGORIES = {"Cc", "Cf", "Co", "Cs", "Cn", "Zl", "Zp"}


def is_hidden(character: str) -> bool:
    """Whether a character controls the terminal or the layout instead of showing itself."""
    return character not in _KEEP and unicodedata.category(character) in _HIDDEN_CATEGORIES


def visible(text: str) -> str:
    """The text with every control and format character shown as `\\u{..}`; safe for a terminal."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(f"\\u{{{ord(c):x}}}" if is_hidden(c) else c for c in text)


def slug(text: str) -> str:
    """An id made from a text: lower-case letters, digits and single hyphens."""
    folded = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return "-".join("".join(c if c.isalnum() else " " for c in folded).split())
