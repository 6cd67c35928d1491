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


def blanked(text: str) -> str:
    """The text with hidden characters, and whatever is meant for a terminal, as spaces; places stay.

    The signs of a control sequence (ECMA-48) such as ESC [ 3 1 m are no more part of the text than its ESC.
    """
    if text.isascii() and text.isprintable():
        return text
    plain = _SEQUENCE.sub(lambda found: " " * len(found[0]), text)
    return "".join(" " if is_hidden(c) else c for c in plain)


_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def formula_safe(text: str) -> str:
    """A cell that no spreadsheet takes for a formula: an apostrophe goes before what looks like one."""
    return f"'{text}" if text.startswith(_FORMULA_STARTS) else text


def slug(text: str) -> str:
    """An id made from a text: lower-case letters, digits and single hyphens."""
    folded = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return "-".join("".join(c if c.isalnum() else " " for c in folded).split())


def needed_words(source: str) -> tuple[tuple[tuple[str, ...], ...], ...]:
    """What every text has that a regular expression matches, in lower case; nothing if that is unsure.

    Of each of its alternatives: groups of words, one of each group must be there.

    Looks at what stands in no group, and at groups of plain alternatives that must be there.
    """
    ways, start, place = [], 0, 0
    while place < len(source):
        if source[place] == "|":
            ways.append(source[start:place])
            start = place + 1
        place = _end_of(source, place)
    needs = tuple(_needed(way) for way in (*ways, source[start:]))
    return needs if all(needs) else ()


def _needed(source: str) -> tuple[tuple[str, ...], ...]:
    """The groups of `needed_words`, of an expression without alternatives outside groups."""
    found: list[tuple[str, ...]] = []
    run, place = "", 0
    while place < len(source):
        sign = source[place]
        after = _end_of(source, place)
        optional = source[after : after + 1] in ("?", "*", "{")
        if sign.isalpha() or sign in " '-,":
            run += "" if optional else sign.lower()
        if not (sign.isalpha() or sign in " '-,") or optional:
            found.append((run,))
            run = ""
        if sign == "(" and not optional:
            inside = source[place + 1 : after - 1].removeprefix("?:").split("|")
            found.append(tuple(word.lower() if _is_plain(word) else "" for word in inside))
        place = source.find("}", after) + 1 if source[after : after + 1] == "{" else after + optional
    found.append((run,))
    return tuple(words for words in found if min(len(word.strip()) for word in words) >= _SHORTEST_NEED)


_SHORTEST_NEED = 3


def _is_plain(word: str) -> bool:
    return all(sign.isalpha() or sign in " '-" for sign in word)


def _end_of(source: str, place: int) -> int:
    """Where what begins at a place of a regular expression ends: a sign, an escape, a set or a group."""
    sign = source[place]
    if sign == "\\":
        return place + 2
    if sign == "[":
        place += 2 if source[place + 1 : place + 2] in ("]", "^") else 1
        while place < len(source) and source[place] != "]":
            place += 2 if source[place] == "\\" else 1
        return place + 1
    if sign == "(":
        place += 1
        while place < len(source) and source[place] != ")":
            place = _end_of(source, place)
        return place + 1
    return place + 1


def lacks(text: str, needs: tuple[tuple[tuple[str, ...], ...], ...]) -> bool:
    """Whether a text in lower case has, for none of the alternatives, all that is needed."""
    for groups in needs:  # plain loops: this is asked some thousand times of a question
        for words in groups:
            for word in words:
                if word in text:
                    break
            else:
                break
        else:
            return False
    return True


class Pattern:
    """A regular expression that is compiled when first needed, so that starting the program stays cheap.

    It is not needed for a text without a word that every match has.
    """

    def __init__(self, source: str, flags: int = 0) -> None:
        self._source = source
        self._flags = flags

    @cached_property
    def compiled(self) -> re.Pattern[str]:
        return re.compile(self._source, self._flags)

    @cached_property
    def _needs(self) -> tuple[tuple[tuple[str, ...], ...], ...]:
        return () if self._flags & re.VERBOSE else needed_words(self._source)

    def _is_out(self, text: str) -> bool:
        """Whether the text cannot match, as far as that can be told without compiling."""
        return self.is_out(text.lower())

    def is_out(self, low: str) -> bool:
        """Whether a text, here in lower case, lacks what every match has: sooner told than matched."""
        needs = self._needs
        return bool(needs) and lacks(low, needs)

    def match(self, text: str, start: int = 0) -> re.Match[str] | None:
        return None if self._is_out(text) else self.compiled.match(text, start)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        return None if self._is_out(text) else self.compiled.fullmatch(text)

    def search(self, text: str, start: int = 0) -> re.Match[str] | None:
        return None if self._is_out(text) else self.compiled.search(text, start)

    def finditer(self, text: str, start: int = 0) -> Iterator[re.Match[str]]:
        return iter(()) if self._is_out(text) else self.compiled.finditer(text, start)

    def findall(self, text: str) -> list[str]:
        return [] if self._is_out(text) else self.compiled.findall(text)

    def split(self, text: str, most: int = 0) -> list[str]:
        return [text] if self._is_out(text) else self.compiled.split(text, most)

    def sub(self, replacement: str | Callable[[re.Match[str]], str], text: str) -> str:
        return text if self._is_out(text) else self.compiled.sub(replacement, text)


_SEQUENCE = Pattern(
    r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]"
    r"|(?:\x1b[\]PX^_]|[\x90\x98\x9d-\x9f])[^\x07\x1b\x9c]*(?:\x07|\x1b\\|\x9c)"
    r"|\x1b[ -/]*[0-~]"
)


def yes_or_no(text: str) -> str:
    """ "Yes" or "No" where a text begins with that; empty for "No clause says so"."""
    words = (word for word in ("Yes", "No") if text.startswith((f"{word}.", f"{word}:", f"{word},")))
    return next(words, "")
