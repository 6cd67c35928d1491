"""Quotations of clauses: whether they are word for word, and where they are not."""

from __future__ import annotations

import re
from difflib import SequenceMatcher

import msgspec

from kb.guidance.checking.words import fold, level

_QUOTED = re.compile(r'"([^"]{2,4000})"')
_GAP = re.compile(r"\s*(?:\[\s*\.\.\.\s*\]|\.\.\.)\s*")
_GOES_ON = re.compile(r",? (?:unless|except|save|but|if|when|where|or|and|only|provided)\b", re.IGNORECASE)
_LEAST_WORDS = 4
_NEAR = 0.6
_COMMON = frozenset(
    {"the", "and", "are", "for", "not", "any", "all", "may", "must", "ref", "with", "when", "than"}
)


class Quotation(msgspec.Struct, frozen=True):
    """A quotation in a sentence: characters `start` to `end` with its marks, and its text."""

    start: int
    end: int
    text: str


def find_quotations(text: str) -> tuple[Quotation, ...]:
    """Every stretch in double quotation marks of a levelled sentence."""
    return tuple(Quotation(m.start(), m.end(), m[1].strip()) for m in _QUOTED.finditer(text))


def cited_directly(sentence: str, quotation: Quotation, start: int, end: int) -> bool:
    """Whether a citation stands directly behind a quotation, or leads to it ("clause 2.1 says: ...")."""
    after = sentence[quotation.end : start] if start >= quotation.end else ""
    before = sentence[end : quotation.start] if end <= quotation.start else ""
    if start >= quotation.end:
        return re.fullmatch(r"[\s.,;:(]*", after) is not None
    return (
        re.fullmatch(r"[\s.,;:)]*(?:(?:says|states|reads|provides|requires)(?: that)?)?[\s:,]*", before)
        is not None
    )


def is_verbatim(quotation: str, clause: str) -> bool:
    """Whether a quotation stands in a clause as it is, but for white space, typography and left-out parts.

    One that ends with a full stop where the clause goes on to an exception or another case leaves that out.
    """
    text = _compact(clause)
    place = 0
    for part in _GAP.split(level(quotation)):
        wanted = _compact(part).strip(" .,;:")
        if not wanted:
            continue
        found = text.find(wanted, place)
        if found < 0 and place == 0:  # a sentence's own capital may begin a quotation
            found = text.find(wanted[:1].swapcase() + wanted[1:])
        if found < 0:
            return False
        place = found + len(wanted)
    return not (quotation.rstrip()[-1:] in ".;" and _GOES_ON.match(text, place))


def _compact(text: str) -> str:
    return re.sub(r"\s*([,;:.])\s*", r"\1 ", level(text)).strip()


def is_long(quotation: str) -> bool:
    """Whether a quotation is more than a term."""
    return len(quotation.split()) >= _LEAST_WORDS


def nearest_part(quotation: str, clause: str) -> str:
    """The sentence or sentences of a clause that are nearest to a quotation; the whole of a short one."""
    if len(clause) < 200:
        return level(clause)
    parts = re.split(r"(?<=[.;])\s+", level(clause))
    wanted = fold(quotation)
    span = max(1, len(re.split(r"(?<=[.;])\s+", wanted)))
    runs = [" ".join(parts[i : i + span]) for i in range(max(1, len(parts) - span + 1))]
    words = _content(wanted)
    return max(runs, key=lambda r: (len(words & _content(r)), SequenceMatcher(None, wanted, fold(r)).ratio()))


def _content(text: str) -> set[str]:
    """The words of a text that say what it is about."""
    return {word for word in re.findall(r"[a-z]{3,}", fold(text)) if word not in _COMMON}


def is_near(quotation: str, clause: str) -> bool:
    """Whether a text was plainly taken from a clause, though not word for word."""
    part = nearest_part(quotation, clause)
    return SequenceMatcher(None, fold(quotation), fold(part)).ratio() > _NEAR
