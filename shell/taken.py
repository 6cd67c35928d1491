"""What words of a question were taken for: corrected ones, and everyday words for things with other names."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb
from shell.words import brief

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_LONGEST = 5  # words; a longer stretch was found by all its words together
_PLAIN = ("label", "pattern")  # linked by a name of theirs, or read by their form
_LEADING = frozenset(
    ("a", "an", "the", "my", "your", "his", "her", "our", "in", "on", "at", "of", "for", "as")
)


def taken(answer: Answer, base: KnowledgeBase) -> str:
    """ "jersay as service jersey; jumper as service jersey": "" where all words are plain.

    A word that is part of a name of what it was taken for needs no telling ("the liner"), and of facts only
    what was corrected is told: the read-back has them in their own words.
    """
    reading = answer.reading
    told: list[str] = []
    for span in reading.spans:
        if span.how in _PLAIN or span.target is None or span.text not in reading.question:
            continue
        names = _names(span.role, span.target, answer, base)
        if span.role != "item" and span.how != "spelling":
            continue
        said = _bare(span.text)
        if 0 < len(said) <= _LONGEST and names and not any(_is_said(said, _bare(name)) for name in names):
            meant = _bare(names[0]) if span.role != "item" else names[0].split()
            told.append(f"{' '.join(said)} as {' '.join(meant)}")
    return "; ".join(kb.visible(one) for one in dict.fromkeys(told))


def _names(role: str, target: str, answer: Answer, base: KnowledgeBase) -> tuple[str, ...]:
    """The names of what a stretch of the question is linked to, its label first."""
    lookup, query = base.lookup, answer.reading.query
    if role == "item" and target in lookup.items:
        return (lookup.items[target].label, *lookup.items[target].other_labels)
    if role == "aspect" and target in lookup.aspects:
        return (lookup.aspects[target].label, *lookup.aspects[target].other_labels)
    values = dict(query.case.facts).get(target) if query is not None else None
    if role in ("fact", "grade") and target in lookup.facts and values is not None:
        members = getattr(values, "members", ())
        if role == "grade" and len(members) == 1 and not getattr(values, "complement", True):
            return tuple(lookup.value_label(target, value) for value in members)
        return (brief(((target, values),), base),)
    return ()


def _bare(text: str) -> list[str]:
    """The words of a text without an article or a preposition before them."""
    words = text.split()
    while words and words[0].casefold() in _LEADING:
        words = words[1:]
    return words


def _is_said(said: list[str], name: list[str]) -> bool:
    """Whether what was said is part of a name, or has the whole name in it, but for endings."""
    words, known = _stems(said), _stems(name)
    return words <= known or known <= words


def _stems(words: list[str]) -> set[str]:
    return {_stem(word) for word in " ".join(words).replace("-", " ").split()}


def _stem(word: str) -> str:
    plain = word.casefold().replace("’", "'").removesuffix("'s").strip("'\".,;:?!()")
    return f"{plain[:-3]}f" if plain.endswith("ves") else plain.removesuffix("s")
