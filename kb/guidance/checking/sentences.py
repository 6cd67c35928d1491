"""A paragraph cut into sentences, each with the line on which it begins."""

from __future__ import annotations

import re

import msgspec

from kb.guidance.checking.document import Block
from kb.guidance.checking.words import level

_END = re.compile(r"[.!?][\"”’')\]]*(?=\s|$)")
_ABBREVIATIONS = re.compile(
    r"(?:\b(?:refs?|paras?|cl|arts?|sect|no|nos|e\.g|i\.e|approx|max|min|ca|cf|vs|etc|fig|st|dr|mr|mrs|ms|lt|cdr)|(?<![\w.])[A-Za-z]|\bin)\.$",
    re.IGNORECASE,
)
_ATTACHED = re.compile(r"\s*\((?:ref|local|see|clause|para|\([a-z]\)|[A-Z][\w ]*,? \(?\d)", re.IGNORECASE)

_AROUND = 200  # characters that tell whether a sentence ends
_MARKED = re.compile(r"\s*(?:\([a-z0-9]{1,3}\)|[a-z]{1,3}[.)])\s+(?=\S)")
_CITED = re.compile(
    r"[.!?][\"”]?\s*\((?:ref|local|see|clause|para|[A-Z])[^()]*(?:\([a-z]\)[^()]*)*\)(?=\s+[A-Z“\"*]|\s*$)",
)


class Sentence(msgspec.Struct, frozen=True):
    """A sentence as written (with plain typography) and its line or paragraph."""

    text: str
    line: int
    place: str


def split_sentences(block: Block) -> tuple[Sentence, ...]:
    """The sentences of a block; quotations stay whole, a citation in brackets stays with what it follows."""
    text, found = block.text, []
    mark = _MARKED.match(text) if block.kind in ("text", "item") else None
    start = mark.end() if mark else 0
    for end in (place for place in _ends(text) if place > start):
        if _ATTACHED.match(text[end : end + _AROUND]):
            continue
        found.append((start, end))
        start = end
    if text[start:].strip():
        found.append((start, len(text)))
    sentences = []
    for first, last in found:
        raw = text[first:last]
        begin = first + len(raw) - len(raw.lstrip())
        line = block.line_at(begin)
        place = f"line {line}" if block.place.startswith("line") else block.place
        place += f" ({block.number})" if block.number else ""
        if raw.strip():
            sentences.append(Sentence(level(raw), line, place))
    return tuple(sentences)


def _ends(text: str) -> list[int]:
    """Where sentences end, outside quotations and brackets."""
    depth, quoted, ends = 0, False, []
    boundaries = {match.end(): match.start() for match in _END.finditer(text)}
    behind = {match.end() for match in _CITED.finditer(text)}
    for place, char in enumerate(text):
        if char == "(":
            depth += 1
        elif char == ")":
            depth = max(depth - 1, 0)
        elif char in "“„" or (char == '"' and not quoted):
            quoted = True
        elif char in '”"':
            quoted = False
        after = place + 1
        if after in behind and not quoted and not depth:
            ends.append(after)
            continue
        mark = boundaries.get(after)
        if mark is None or quoted or depth or not _begins(text[after : after + _AROUND]):
            continue
        abbreviated = _ABBREVIATIONS.search(text[max(0, mark - 12) : mark + 1])
        if not abbreviated or _strong(text[after : after + _AROUND], text[max(0, mark - 12) : mark]):
            ends.append(after)
    return ends


def _begins(rest: str) -> bool:
    """Whether what follows can begin a sentence."""
    following = rest.lstrip()
    return not following or following[0].isupper() or following[0] in "“\"'‘(*[" or following[0].isdigit()


def _strong(rest: str, before: str) -> bool:
    """Whether "in." at the end of a length ends the sentence too: a capital follows that is no unit."""
    following = rest.lstrip()
    return before.endswith(" in") and (not following or following[0].isupper())
