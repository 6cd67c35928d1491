"""What sets a sentence apart from the sentence of a rule that it was plainly made from."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from difflib import SequenceMatcher
from fractions import Fraction
from functools import lru_cache

import msgspec

from kb.guidance.checking.words import fold

_TOKEN = re.compile(r"\d+(?:[./]\d+)*|[a-z0-9'°-]+|\"")
_NUMBER = re.compile(r"\d+(?:[./]\d+)*")
_NEAR = 0.72
_SIDES = frozenset({"left", "right", "both", "upper", "lower"})
_PLACES = frozenset({"above", "below", "centred", "beside", "around", "along", "between"})
_UNITS = frozenset({"in", "mm", "cm", "m", "ft", "°c", "°f"})
_POLARITY = frozenset({"not", "no", "never", "must", "may", "need", "without", "unless", "except"})
_MIXED = re.compile(r"(?<![\d/.])(\d+) (\d+)/(\d+)(?![\d/])")
_ALIKE = (
    (re.compile(r"\b(?:shall|may|is to|are to) not\b|\b(?:is|are) not to\b|\bcannot\b"), "must not"),
    (re.compile(r"\b(?:shall|is to|are to|has to|have to)\b"), "must"),
    (re.compile(r"\binch(?:es)?\b"), "in"),
    (re.compile(r"\bmillimetres?\b"), "mm"),
    (re.compile(r"\bcentimetres?\b"), "cm"),
)
_LIGHT = frozenset(
    {"the", "a", "an", "is", "are", "be", "of", "that", "which", "and", "also", "always", "all", "any"}
)


class Difference(msgspec.Struct, frozen=True):
    """The words of the rule's sentence that the draft's lacks (`lost`), and the other way round (`added`)."""

    lost: tuple[str, ...]
    added: tuple[str, ...]
    ratio: float


@lru_cache(maxsize=4096)
def tokens(text: str) -> list[str]:
    """The words and numbers of a text, those that mean the same written alike."""
    plain = _MIXED.sub(lambda m: str(int(m[1]) + Fraction(int(m[2]), int(m[3]) or 1)), fold(text))
    for pattern, same in _ALIKE:
        plain = pattern.sub(same, plain)
    return [_plain_number(token) for token in _TOKEN.findall(plain)]


def _plain_number(token: str) -> str:
    """A number as a fraction in lowest terms, so that 0.5 is 1/2; any other word as it is."""
    try:
        return str(Fraction(token)) if token[0].isdecimal() and len(token) < 12 else token
    except (ValueError, ZeroDivisionError):
        return token


def difference(draft: str, rule: str) -> Difference:
    """How a sentence of a draft differs from that of a rule, word by word."""
    ours, theirs = tokens(draft), tokens(rule)
    matcher = SequenceMatcher(None, theirs, ours, autojunk=False)
    lost: list[str] = []
    added: list[str] = []
    for tag, a, b, c, d in matcher.get_opcodes():
        if tag != "equal":
            lost += theirs[a:b]
            added += ours[c:d]
    return Difference(tuple(lost), tuple(added), matcher.ratio())


def nearest(draft: str, sentences: Iterable[tuple[str, str]]) -> tuple[str, str, Difference] | None:
    """Of pairs of a name and a sentence the one that is most like a draft's; None if none is near."""
    best: tuple[str, str, Difference] | None = None
    for name, sentence in sentences:
        found = difference(draft, sentence)
        if best is None or found.ratio > best[2].ratio:
            best = (name, sentence, found)
    return best if best is not None and best[2].ratio >= _NEAR else None


def is_reordered(draft: str, rule: str) -> bool:
    """Whether two sentences of the same words say them of other ends, or in another order of things.

    "From the upper edge to the lower hem" is not "from the lower edge to the upper hem".
    """
    ours, theirs = tokens(draft), tokens(rule)
    if Counter(ours) != Counter(theirs):
        return False
    return any(_set_out(ours, mark) != _set_out(theirs, mark) for mark in ("to", "then"))


def _set_out(words: Sequence[str], mark: str) -> list[Counter[str]] | None:
    """The words between one mark and the next, as bags; None if the mark does not set parts out in order."""
    if mark not in words or (mark == "to" and "from" not in words[: words.index("to")]):
        return None
    parts: list[Counter[str]] = [Counter()]
    started = mark != "to"
    for word in words:
        if not started:
            started = word == "from"
        elif word == mark:
            parts.append(Counter())
        elif word not in _LIGHT:
            parts[-1][word] += 1
    return parts


def is_telling(found: Difference, names: Sequence[str]) -> bool:
    """Whether only words that carry the rule differ: numbers, units, sides, places, denials, grades.

    `names` are words of grades and values of the books. Reworded sentences differ in other words too and are
    left unread.
    """
    lost, added = Counter(found.lost), Counter(found.added)
    gone, new = _heavy(lost - added), _heavy(added - lost)  # what only stands elsewhere tells nothing
    if not gone or not new:
        return False
    changed = [*gone, *new]
    known = _SIDES | _PLACES | _UNITS | _POLARITY | frozenset(names)
    return all(word in known or _NUMBER.fullmatch(word) for word in changed)


def _heavy(words: Counter[str]) -> list[str]:
    return [word for word in words if word not in _LIGHT]
