"""Nouns and verbs that the books themselves use for each other: who is "in a van" is "in a vehicle".

A value with the two names "in a vehicle" and "in a van" says that of a place a van is a vehicle; so "while
the van is moving" may be what another name has as "a vehicle is moving". Only names of the books are put,
and only where all of their words but the verb's form and the article were said.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set

Edit = tuple[int, int, str]
_ARTICLES = word_set("a an the my our your his her their this that")
_BEYOND = word_set("beyond past outside through")
_SHORTEST = 3


def alike(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each name that was said with another noun or form of its verb."""
    lows = found.text.casefold()
    if not any(
        piece.tag in ("unknown", "particle", "range", "fact", "values", "does", "care")
        for piece in found.pieces
    ):
        return
    nouns = [pair for pair in _pairs(lookup) if pair[0] in lows]
    names = _names(lookup)
    tokens = found.tokens
    known = {(tokens[p.first].start, tokens[p.last - 1].end) for p in found.pieces}
    starts, ends = ({place[side] for place in known} for side in (0, 1))
    lasts = Counter(_plainly(name)[-1] for name in names)
    beyond = any(word in lows for word in _BEYOND)
    for name in names:
        for pattern in (*_patterns(name, nouns, lows), *(_past(name, lasts) if beyond else ())):
            for match in re.finditer(pattern, found.text, re.IGNORECASE):
                whole = match.start() in starts and match.end() in ends and match.span() not in known
                if whole and _plainly(match.group()) != _plainly(name):
                    yield match.start(), match.end(), name


def _plainly(text: str) -> list[str]:
    return [word for word in text.casefold().split() if word not in _ARTICLES]


@cache
def _names(lookup: Lookup) -> tuple[str, ...]:
    """The names of circumstances that have a verb or a noun to be said otherwise."""
    found = list[str]()
    for fact in lookup.base.facts:
        if fact.family != "situation" or fact.kind not in ("choice", "yes_no", "scale"):
            continue
        named = fact.values if fact.kind != "yes_no" else (fact,)
        for one in named:
            found += (name for name in (one.label, *one.other_labels) if len(_plainly(name)) > 1)
    return tuple(found)


@cache
def _pairs(lookup: Lookup) -> set[tuple[str, str]]:
    """Nouns said, and the noun of the books in whose place they stand in two names of one value."""
    found: set[tuple[str, str]] = set()
    for fact in lookup.base.facts:
        for value in fact.values if fact.family == "situation" else ():
            rows = [name.casefold().split() for name in (value.label, *value.other_labels)]
            ends = [row for row in rows if len(row) > 2 and row[-2] in _ARTICLES]
            found |= {
                (one[-1], other[-1])
                for one in ends
                for other in ends
                if one[:-2] == other[:-2] and one != other
            }
    return found


def _patterns(name: str, nouns: list[tuple[str, str]], lows: str) -> Iterator[str]:
    """The name with one noun or verb said otherwise, and any articles, where its other words were said."""
    words = name.casefold().split()
    doing = words[0].endswith("ing") and len(words[0]) > len("ing") + _SHORTEST - 1
    said = {other: one for one, other in nouns}
    as_it_is = (w for w in words[int(doing) :] if w not in _ARTICLES and _singular(w) not in said)
    if any(word not in lows for word in as_it_is):
        return
    if not doing and not any(_singular(word) in said for word in words):
        return
    parts = []
    for place, word in enumerate(words):
        if word in _ARTICLES:
            continue
        one = _singular(word)
        form = rf"(?:{re.escape(one)}|{re.escape(said[one])})s?" if one in said else re.escape(word)
        parts.append(_verb(word) if doing and not place else form)
    articles = "|".join(sorted(_ARTICLES))
    yield rf"\b(?:(?:{articles}) )?" + rf"[ -](?:(?:{articles}) )?".join(parts) + r"\b"


def _past(name: str, lasts: Mapping[str, int]) -> Iterator[str]:
    """ "Past the gate" of "beyond the depot gate", where no other name has the noun."""
    words = name.casefold().split()
    if words[0] in _BEYOND and lasts[words[-1]] == 1:
        lead = "".join(rf"(?:{re.escape(word)} )?" for word in words[1:-1] if word not in _ARTICLES)
        yield rf"\b(?:out )?(?:{'|'.join(sorted(_BEYOND))}) (?:the |our |my )?{lead}{re.escape(words[-1])}\b"


def _singular(word: str) -> str:
    return word.removesuffix("s") if len(word) > _SHORTEST else word


def _verb(doing: str) -> str:
    """ "Recovering", "to recover", "recovers" by one pattern."""
    stem = doing.removesuffix("ing")
    undoubled = stem[:-1] if len(stem) > _SHORTEST and stem[-1] == stem[-2] else stem
    return rf"(?:(?:to|i'm|we're|am|are|is) )?(?:{re.escape(stem)}|{re.escape(undoubled)})(?:ing|e|es|s|ed)?"
