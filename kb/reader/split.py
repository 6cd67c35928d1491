"""Several questions in one line."""

from __future__ import annotations

import re

from kb.text import Pattern

_END = Pattern(r"[?!]+(?=\s|$)|[.;](?=\s+(?:and\s+)?[A-Z])|\n+")
_SHORT = Pattern(r"\b(?:cl|para|sec|art|no|approx|max|min|ca|in|ft|st|dr|mr|mrs|ms)\.$", re.IGNORECASE)
_NEXT = Pattern(
    r"[,;]?\s+and\s+(?=(?:may|can|must|should|do|does|am|are|is|where|how|who|what|which|when|why)\s+"
    r"(?:i|we|you|the|a|an|it|they|do|does|must|may|is|are|many|can|should|someone|anyone)\b)|"
    r"[,;]?\s+and\s+(?=(?:what|how) about\b)|"
    r"[,;]?\s+and\s+(?=how\s+(?:long|wide|high|deep|big|tall|thick|far|often)\s+(?:is|are|must|may|can|does|do)"
    r"\s+(?:it|they|the|each|every|its|their|my)\b)|"
    r"[,;]?\s+and\s+(?=(?:what|which)\s+(?:sort|kind|type|colou?r|size|side|sleeve|arm|way|clause|knot)\b)|"
    r"[,;]?\s+and\s+(?=who\s+(?:gets|has|wears|needs|grants|decides|says|carries)\b)|"
    r",\s+and\s+(?=(?:may|can|must|should|do|does|are|is)\s+[\w' -]{2,40}\?)",
    re.IGNORECASE,
)

_OPENING = Pattern(
    r"(?:may|can|could|must|should|shall|do|does|am|is|are|isn|aren|don|can|where|how|who|what|which|when|why|show|list)\b",
    re.IGNORECASE,
)


_LED = Pattern(
    r",\s*(?:may|can|could|must|should|do|does|am|are|is)\s+(?:i|we|you|he|she|they|the|an?|my|our)\b",
    re.IGNORECASE,
)


_SAID_OF = Pattern(
    r"\s*(?:no|nope|nah|not|yes|yep|yeah|yup|aye)\b"
    r"(?=\s*(?:[.,;:!?]|$)|\s+(?:and|but)\b|\s+[^.,;?!]{1,40}\?\s*(?:no|nope|nah|yes|yep|yeah|yup|aye)\b)",
    re.IGNORECASE,
)
_CONFIRMS = Pattern(
    r"(?:(?:so|and|then|or|well|just|please|a|an|simple|straight|plain|honest|quick)[ ,]+)*"
    r"(?:yes|no|true|false|right|wrong|correct|agreed)"
    r"(?:,? or (?:an? )?(?:yes|no|not|true|false|right|wrong))?"
    r"(?:[ ,]+(?:please|then|though|surely))*[?!. ]*",
    re.IGNORECASE,
)
_FRAGMENT = Pattern(r"[^.,;:?!\n]*$")
_LONGEST_FRAGMENT = 6


def _is_answered(text: str, start: int, mark: int, after: int) -> bool:
    """ "On watch? no": whether a bare fact and the yes or no said of it stand around a question mark."""
    fragment = _FRAGMENT.search(text[start:mark])
    words = fragment.group().split() if fragment is not None else []
    bare = 0 < len(words) <= _LONGEST_FRAGMENT and _OPENING.match(" ".join(words)) is None
    return bare and _SAID_OF.match(text, after) is not None


def split_questions(text: str) -> tuple[str, ...]:
    """The questions in a text, in order.

    It is parted at ? and !, at full stops and semicolons before a capital letter, at line ends, and at "and"
    before the opening of another question. A statement stays with the question that it goes with.
    """
    parts: list[str] = []
    start = 0
    for match in _END.finditer(text[:4000]):
        if match.group() == "." and _SHORT.search(text[start : match.end()]):
            continue
        if match.group() == "?" and _is_answered(text, start, match.start(), match.end()):
            continue
        parts.append(text[start : match.end()].strip())
        start = match.end()
    parts.append(text[start:4000].strip())
    found = [piece.strip(" ,;") for part in parts for piece in _NEXT.split(part)]
    return _with_statements([piece for piece in found if any(c.isalnum() for c in piece)])


def _with_statements(parts: list[str]) -> tuple[str, ...]:
    """Each question with the statements before it ("I am a K5. May I ..."); the last takes those after it."""
    if not any(_is_question(part) for part in parts):
        return tuple(parts)
    found: list[str] = []
    waiting: list[str] = []
    for part in parts:
        if found and not waiting and part.endswith("?") and _CONFIRMS.fullmatch(part):
            continue  # "May I? Yes or no?"
        waiting.append(part)
        if _is_question(part):
            found.append(" ".join(waiting))
            waiting = []
    if waiting:
        found[-1] = " ".join([found[-1], *waiting])
    return tuple(found)


_LEADS = frozenset(("on", "in", "to", "from", "for", "at", "by", "under"))
_ASKED = frozenset(("which", "what", "whom"))


def _is_question(part: str) -> bool:
    if part.endswith("?"):
        return True
    words = part.casefold().split(None, 2)
    led = len(words) > 2 and words[0] in _LEADS and words[1] in _ASKED  # "on which arm ..."
    return led or _OPENING.match(part) is not None or _LED.search(part) is not None
