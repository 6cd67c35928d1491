"""Text from files and people, made safe and comparable."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from functools import cached_property

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


_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def formula_safe(text: str) -> str:
    """A cell that no spreadsheet takes for a formula: an apostrophe goes before what looks like one."""
    return f"'{text}" if text.startswith(_FORMULA_STARTS) else text


def slug(text: str) -> str:
    """An id made from a text: lower-case letters, digits and single hyphens."""
    folded = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return "-".join("".join(c if c.isalnum() else " " for c in folded).split())


class Pattern:
    """A regular expression that is compiled when first used, so that starting the program stays cheap."""

    def __init__(self, source: str, flags: int = 0) -> None:
        self._source = source
        self._flags = flags

    @cached_property
    def compiled(self) -> re.Pattern[str]:
        return re.compile(self._source, self._flags)

    def match(self, text: str, start: int = 0) -> re.Match[str] | None:
        return self.compiled.match(text, start)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        return self.compiled.fullmatch(text)

    def search(self, text: str, start: int = 0) -> re.Match[str] | None:
        return self.compiled.search(text, start)

    def finditer(self, text: str, start: int = 0) -> Iterator[re.Match[str]]:
        return self.compiled.finditer(text, start)

    def findall(self, text: str) -> list[str]:
        return self.compiled.findall(text)

    def split(self, text: str, most: int = 0) -> list[str]:
        return self.compiled.split(text, most)

    def sub(self, replacement: str | Callable[[re.Match[str]], str], text: str) -> str:
        return self.compiled.sub(replacement, text)
