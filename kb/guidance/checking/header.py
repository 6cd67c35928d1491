"""What guidance says of itself: references, dates, the books it was made from, and for whom it is."""

from __future__ import annotations

import datetime
import re
from difflib import SequenceMatcher

import msgspec

from kb.guidance.checking.citations import Citations
from kb.guidance.checking.document import Block, Document
from kb.guidance.checking.findings import Unread
from kb.guidance.checking.words import fold, level
from kb.measures import find_date
from kb.model.lookup import Lookup

_LABELS = {
    "references": r"references?|refs?|authority and references",
    "effective": r"effective(?: date| from| on)?|takes effect(?: on)?|in force from|date of effect",
    "expires": r"expir(?:y|es|ation)(?: date| on)?|valid until|in force until|lapses(?: on)?",
    "review": r"review(?: date| by| on)?|next review|to be reviewed(?: by| on)?",
    "applies": r"applicability|applies to|application|audience|for whom|scope",
    "other": r"subject|purpose|signature|signed|from|to|title|distribution|name|date|rank|grade|appointment"
    r"|approved(?: by)?",
}
_FOLLOWS = r"(?=\s*[:.|-]|\s*$|\s+(?:\d|on ))"
_FOLLOWS_OTHER = r"(?=\s*:|\s*$)"  # "From 1 October 2026 ..." is a sentence
_LABEL = re.compile(
    "|".join(
        f"(?P<{name}>^(?:{forms}){_FOLLOWS_OTHER if name == 'other' else _FOLLOWS})"
        for name, forms in _LABELS.items()
    ),
    re.IGNORECASE,
)
_DATES = ("effective", "expires", "review")
_PIECES = re.compile(
    r"(?<=[.;,|])\s+(?=(?:effective|expir|review|valid|next review)[a-z ]*\b)", re.IGNORECASE
)
_LETTERED = re.compile(r"(?:^|(?<=[\s;]))\(?([a-z])\)\s+(.+?)(?=;?\s+\(?[a-z]\)\s|$)", re.IGNORECASE)
_DIGEST = re.compile(r"\b(?P<digest>[0-9a-f]{64})\b")
_MADE_FROM = re.compile(r"made from (?:the )?rule books", re.IGNORECASE)
_FROM = re.compile(
    r"\b(?:in force|effective|dated|with effect|valid)\b(?:\s+from|\s+since)?|\bfrom\b|\bof\b", re.IGNORECASE
)
_EDITION = re.compile(
    r"(?P<id>[\w.-]+)\s+edition|edition\s+(?:of\s+)?(?P<other>[\w.-]*\d[\w.-]*)|\((?P<bare>\d{4})\)|,\s*(?P<year>(?:19|20)\d\d)(?=\s*(?:,|;|\.|$))",
    re.IGNORECASE,
)
_NEARLY = 0.86
_ORDINALS = frozenset(
    {
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
        "this",
        "that",
        "the",
        "current",
        "latest",
        "new",
        "present",
    }
)


class Reference(msgspec.Struct, frozen=True):
    """A lettered reference: the book it names (empty if none is known), its edition if there is one.

    `since` is the day it says the edition is in force from, `unknown` the edition it names that is not there,
    `misspelt` that it gives the book's name but for a letter or two.
    """

    letter: str
    text: str
    line: int
    place: str
    book: str = ""
    edition: str = ""
    since: datetime.date | None = None
    unknown: str = ""
    misspelt: bool = False


class Dated(msgspec.Struct, frozen=True):
    """A date that guidance gives of itself, and where."""

    date: datetime.date
    line: int
    place: str
    text: str


class Header(msgspec.Struct, frozen=True, kw_only=True):
    """`blocks` are the places of all blocks that belong to the header and state no rule.

    `undated` are lines that are meant to give a date, and give none that can be.
    """

    references: tuple[Reference, ...] = ()
    effective: Dated | None = None
    expires: Dated | None = None
    review: Dated | None = None
    digest: str = ""
    digest_line: int = 0
    applies: tuple[str, ...] = ()
    undated: tuple[Unread, ...] = ()
    blocks: frozenset[int] = frozenset()


def read_header(document: Document, lookup: Lookup, citations: Citations) -> Header:
    """Everything that the labelled lines of a document give, wherever they stand in it."""
    dates: dict[str, Dated] = {}
    references: list[Reference] = []
    applies: list[str] = []
    undated: list[Unread] = []
    mine: set[int] = set()
    digest, digest_line, section = "", 0, ""
    for index, block in enumerate(document.blocks):
        text = level(block.text if block.kind != "row" else ": ".join(cell for cell in block.cells if cell))
        found = _DIGEST.search(text)
        if found and (_MADE_FROM.search(text) or not digest):
            digest, digest_line = found["digest"], block.lines[0][1]
            mine.add(index)
            continue
        label = _LABEL.match(text)
        name = label.lastgroup or "" if label else ""
        rest = text[label.end() :].lstrip(" :.|-") if label else text
        if block.kind == "heading" and not label:
            section = ""
            continue
        if label:
            section = name if not rest or block.kind == "heading" else ""
            mine.add(index)
        kind = name or section
        if kind in _DATES and rest:
            for piece in _PIECES.split(text):
                named = _LABEL.match(piece)
                which = (named.lastgroup if named else None) or kind
                day = find_date(piece)
                if day is None and any(c.isdigit() for c in piece):
                    line = block.lines[0][1]
                    undated.append(Unread(line, block.place, text, "it gives no date that there is"))
                if day is not None and which in _DATES and which not in dates:
                    dates[which] = Dated(day.date, block.lines[0][1], block.place, text)
                    mine.add(index)
        elif kind == "applies" and rest:
            applies.append(rest)
            mine.add(index)
        if kind == "references" or (kind == "" and _is_reference(text, citations)):
            lettered = _references(block, rest if label else text, lookup, citations)
            references += lettered
            if lettered or label:
                mine.add(index)
            section = "references" if lettered or not rest else section
    return Header(
        references=tuple(references),
        effective=dates.get("effective"),
        expires=dates.get("expires"),
        review=dates.get("review"),
        digest=digest,
        digest_line=digest_line,
        applies=tuple(applies),
        undated=tuple(undated),
        blocks=frozenset(mine),
    )


def _is_reference(text: str, citations: Citations) -> bool:
    """Whether a line without a label is a lettered reference: "(a) Dress Order, 2024 edition"."""
    match = re.match(r"\(?[a-z]\)\s+(.+)", text, re.IGNORECASE)
    return (
        match is not None
        and _book_in(match[1], citations) != ""
        and " must " not in text
        and " may " not in text
    )


def _book_in(text: str, citations: Citations) -> str:
    folded = fold(text)
    names = [name for name in citations.books if re.search(rf"(?<!\w){re.escape(name)}(?!\w)", folded)]
    return citations.books[max(names, key=len)] if names else ""


def _begins_with_name(text: str, citations: Citations) -> bool:
    plain = fold(text).removeprefix("the ")
    return any(re.match(rf"{re.escape(name)}(?!\w)", plain) for name in citations.books)


def _nearly(text: str, citations: Citations) -> str:
    """The book whose name a text begins with but for a letter or two; empty if there is none."""
    words = fold(text).removeprefix("the ").split(" ")
    for name, book in citations.books.items():
        length = len(name.split(" "))
        written = " ".join(words[:length]).strip(",.;:")
        if SequenceMatcher(None, written, name, autojunk=False).ratio() >= _NEARLY:
            return book
    return ""


def _references(block: Block, text: str, lookup: Lookup, citations: Citations) -> list[Reference]:
    found = []
    for match in _LETTERED.finditer(text):
        line = block.lines[0][1]
        found.append(
            _reference(match[1].casefold(), match[2].strip(" ;."), line, block.place, lookup, citations)
        )
    return found


def _reference(
    letter: str, text: str, line: int, place: str, lookup: Lookup, citations: Citations
) -> Reference:
    book, misspelt = _book_in(text, citations), False
    if not _begins_with_name(text, citations):
        nearly = _nearly(text, citations)
        book, misspelt = nearly or book, bool(nearly)
    if not book:
        return Reference(letter, text, line, place)
    day = find_date(text)
    since = day.date if day else None
    without_dates = text
    while (found := find_date(without_dates)) is not None:
        without_dates = without_dates[: found.start] + without_dates[found.end :]
    editions = [e for e in lookup.base.editions if e.book == book]
    named = [
        e for e in editions if fold(e.label) != fold(lookup.books[book].label) and fold(e.label) in fold(text)
    ]
    tokens = set(re.findall(r"[\w.-]+", fold(without_dates)))
    by_id = [e for e in editions if fold(e.id.rpartition("/")[2]) in tokens]
    chosen = by_id or named
    if len(chosen) == 1:
        return Reference(letter, text, line, place, book, chosen[0].id, since, misspelt=misspelt)
    written = _EDITION.search(without_dates)
    word = next((w for w in written.groups() if w), "") if written else ""
    if word and fold(word) not in _ORDINALS and any(c.isdigit() for c in word):
        return Reference(letter, text, line, place, book, "", since, unknown=word, misspelt=misspelt)
    by_date = [e for e in editions if since is not None and e.valid_from == since]
    edition = by_date[0].id if len(by_date) == 1 else ""
    return Reference(letter, text, line, place, book, edition, since, misspelt=misspelt)
