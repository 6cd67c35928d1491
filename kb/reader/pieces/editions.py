"""An edition that is named says the day: "under the 2019 Order", "in the first edition"."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.model.records import Edition
from kb.reader.pieces.days import Period
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth")
_OLD = frozenset({"old", "older", "previous", "former", "earlier", "last"})
_NEW = frozenset({"new", "newer", "current", "latest", "present", "newest"})
_COMPARED = Pattern(r"\b(?:since|chang\w*|differ\w*|compar\w*|against|versus|vs|than|as in)\b", re.IGNORECASE)
_LEAD = (
    r"(?:\b(?:back )?(?:under|in|by|per|with|on|from|at|as of|as per|according to|going by|in the days of|"
    r"during|before|prior to|until)\s+)?(?:the\s+)?"
)

_WHENCE = Pattern(
    r"\b(?:that|this|it|which)(?:['’]s| is| was| comes?| came| must (?:be|come))"
    r"(?: (?:all|only|just|still|straight|right))*\s*$",
    re.IGNORECASE,
)
"""What leads to where a rule is said to be from, not to a day: "that's from the old order"."""


_BEFORE = Pattern(r"(?:before|prior to|until)\b", re.IGNORECASE)


def in_edition(found: Understood, today: datetime.date, lookup: Lookup) -> Period | None:
    """The last day up to today of the one edition that a text names; None where it compares editions."""
    if _COMPARED.search(found.text):
        return None
    books = book_words(lookup)
    nouns = "|".join(sorted(map(re.escape, books), key=len, reverse=True))
    which = "|".join((*_ORDINALS, *sorted(_OLD | _NEW), r"\d{4}"))
    edition = r"edition|version|issue"
    match = re.search(
        rf"{_LEAD}\b(?P<which>{which})\s+(?P<noun>{edition}|{nouns})(?:\s+of\s+(?:the\s+)?(?P<book>{nouns}))?\b"
        rf"|{_LEAD}\b(?:(?P<noun2>{nouns})\s+of|(?:{edition})\s+of)\s+(?P<which2>\d{{4}})\b",
        found.text,
        re.IGNORECASE,
    )
    if match is None or _is_cut(found, match.end()) or _WHENCE.search(found.text[: match.start()]):
        return None
    word = (match["which"] or match["which2"]).casefold()
    noun = (match["book"] or match["noun"] or match["noun2"] or "").casefold()
    chosen = list(_fitting(word, books.get(noun, ()), today, lookup))
    if len(chosen) != 1:
        return None
    (edition_found,) = chosen
    if _BEFORE.match(match.group()):
        eve = edition_found.valid_from - datetime.timedelta(days=1)
        return Period(match.start(), match.end(), eve, eve, settled=True)
    last = edition_found.valid_until
    day = last - datetime.timedelta(days=1) if last is not None and last <= today else today
    day = max(day, edition_found.valid_from)
    return Period(match.start(), match.end(), day, day, settled=True)


def _is_cut(found: Understood, end: int) -> bool:
    """Whether a name goes on where the words for an edition end: "a new service cap"."""
    return any(
        found.tokens[piece.first].start < end < found.tokens[piece.last - 1].end
        for piece in found.pieces
        if piece.entries
    )


def book_words(lookup: Lookup) -> dict[str, Sequence[str]]:
    """How books are called, whole and by the last word, each with the books it may be."""
    named: dict[str, list[str]] = {}
    for book in lookup.base.books:
        for label in (book.label, *book.other_labels):
            whole = label.casefold().removeprefix("the ")
            for name in {whole, whole.split()[-1]}:
                named.setdefault(name, []).append(book.id)
    for name in ("book", "rule book", "rulebook", "rules", "regulations"):
        named.setdefault(name, [])  # any book of more than one edition: "the old book"
    return {name: tuple(dict.fromkeys(books)) for name, books in named.items()}


def _fitting(word: str, books: Sequence[str], today: datetime.date, lookup: Lookup) -> Iterator[Edition]:
    for book in books or lookup.books:
        editions = sorted(
            (e for e in lookup.base.editions if e.book == book), key=lambda edition: edition.valid_from
        )
        current = [n for n, e in enumerate(editions) if e.valid_from <= today]
        if word.isdecimal():
            yield from (e for e in editions if e.id.split("/")[-1] == word or str(e.valid_from.year) == word)
        elif len(editions) < 2:
            continue
        elif word in _ORDINALS:
            yield from editions[_ORDINALS.index(word) :][:1]
        elif current and word in _NEW:
            yield editions[current[-1]]
        elif current and current[-1] > 0:
            yield editions[current[-1] - 1]
