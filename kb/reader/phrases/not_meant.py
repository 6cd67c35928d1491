"""Names of the books that stand in a turn of phrase and are not meant: "on the cards", "do my watch"."""

from __future__ import annotations

from kb.model.questions import Reading, Span
from kb.reader.words.forms import word_set
from kb.text import Pattern

_IDIOMATIC = word_set(
    "cards water hot bad fair arm luck soup table menu agenda charge line bounds mark book land leave"
    " approval authority authorisation authorization permission consent clearance inspection muster home"
)
"""Words of wrappings that a book may have as names: "on the cards" is of no card."""

_NO_GRADE = Pattern(
    r"(?i)<hand (?:it|th\w+) (?:out|over|back|in)\b|\blast <night\b|[\"'‘“]<[\w ]+[\"'’”]"
    r"|\b(?:do(?:ing)?|did|stand(?:ing)?|stood|work(?:ing|ed)?|pull(?:ing)?)"
    r"(?: (?:my|the|an?|his|her|our|their|your|first|next|middle|night|day))* <watch\b"
)
"""Words with a name in them not meant: "hand it out", "dyed it last night", "do my watch"."""


def is_idiom(span: Span, put: str, reading: Reading) -> bool:
    """Whether a name was only in a turn of phrase, which is not in the words `put` for the text."""
    words = span.text.casefold().split()
    if _NO_GRADE.search(f"{reading.question[: span.start]}<{reading.question[span.start :]}"):
        return True
    return bool(span.target) and _IDIOMATIC.issuperset(words) and span.text.casefold() not in put.casefold()
