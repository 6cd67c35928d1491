"""Citations in a sentence: "(ref. (a), 3.16)", "Dress Order 2024, clause 3.16"."""

from __future__ import annotations

import re
from functools import cached_property, lru_cache

import msgspec

from kb.guidance.checking.words import KEPT, fold
from kb.model.lookup import Lookup

_NUMBER = (
    r"(?!(?:19|20)\d\d(?![\d.]))[A-Z]{0,3}-?\d+(?:[.-]\d+)*[a-z]?"
    r"(?![\w/]|\.\d|\s*(?:in|mm|cm|m|ft|°|%)(?!\w))"
)
_NUMBERS = rf"{_NUMBER}(?:(?:,? and |,? or |, | to |-){_NUMBER})*"
_WORD = r"(?:clauses?|paragraphs?|paras?\.?|sections?|sect\.?|articles?|art\.?|cl\.?|§§?)"
_LETTER = r"(?:ref(?:erence)?s?\.?\s*\(?(?P<{0}>[a-z])\)?|\((?P<{1}>[a-z])\))(?![\w'])"


_SQUARE = re.compile(r"\[([^\[\]]*\d[^\[\]]*)\]")  # no place in the text moves


class Citation(msgspec.Struct, frozen=True):
    """One citation: characters `start` to `end`, a letter or a book (and its edition), numbers.

    `local` says that the sentence is called a local rule made under them.
    """

    start: int
    end: int
    letter: str
    book: str
    edition: str
    numbers: tuple[str, ...]
    local: bool = False


class Found(msgspec.Struct, frozen=True):
    """All citations of a sentence, the sentence without them, and whether it calls itself local."""

    citations: tuple[Citation, ...]
    rest: str
    local: bool


class Citations:
    """Finds citations of the books of one rule base."""

    def __init__(self, lookup: Lookup) -> None:
        self.lookup = lookup
        self.find = lru_cache(maxsize=KEPT)(self._find)
        """The citations of a (levelled) sentence and what is left of it without those in brackets."""

    @cached_property
    def books(self) -> dict[str, str]:
        """Every name of a book, folded, and its id."""
        found: dict[str, str] = {}
        for book in self.lookup.base.books:
            for name in (book.label, *book.other_labels):
                key = fold(name).removeprefix("the ")
                found.setdefault(key, book.id)
        for edition in self.lookup.base.editions:
            found.setdefault(fold(edition.label).removeprefix("the "), edition.book)
        return found

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        names = sorted(self.books, key=len, reverse=True)
        book = "|".join(re.escape(name).replace(r"\ ", r"\s+") for name in names) or "(?!)"
        words = (
            "|".join(re.escape(fold(e.id.rpartition("/")[2])) for e in self.lookup.base.editions) or "(?!)"
        )
        edition = (
            r"(?:,?\s*\(?(?:of\s+)?(?:the\s+)?"
            rf"(?P<{{e}}>(?:{words})(?!\.?\d)|(?:19|20)\d\d(?![\d.])|(?:first|second|third|fourth|fifth|\d+(?:st|nd|rd|th))\s+edition)"
            r"(?:\s+edition)?\)?)?"
        )

        def source(mark: str) -> str:
            letter = _LETTER.format(f"l{mark}", f"k{mark}")
            named = edition.replace("{e}", f"e{mark}")
            return rf"(?:{letter}|(?<!\w)(?:the\s+)?(?P<b{mark}>{book})(?!\w){named})"

        forms = (
            rf"{source('1')},?\s*(?:at\s+)?(?:{_WORD}\s*)?(?P<n1>{_NUMBERS})",
            rf"(?<!\w){_WORD}\s*(?P<n2>{_NUMBERS}),?\s+(?:of|in|to|from|under)\s+{source('2')}",
            rf"(?<!\w){_WORD}\s*(?P<n3>{_NUMBERS})",
        )
        return re.compile("|".join(f"(?:{form})" for form in forms), re.IGNORECASE)

    def _find(self, text: str) -> Found:
        text = _SQUARE.sub(r"(\1)", text)
        found: list[Citation] = []
        cut: list[tuple[int, int]] = []
        local = False
        for start, end in _brackets(text):
            inside = text[start + 1 : end - 1]
            cited = self._inside(inside, start + 1)
            is_local = re.match(r"\s*(?:this is an? )?local\b", inside, re.IGNORECASE) is not None
            if cited or is_local:
                local = local or is_local
                found += [msgspec.structs.replace(one, local=is_local) for one in cited]
                cut.append((start, end))
        free = text
        for start, end in cut:
            free = free[:start] + " " * (end - start) + free[end:]
        for match in self._pattern.finditer(free):
            found.append(self._citation(match, 0))
            cut.append(_with_lead(free, match.start(), match.end()))
        rest = text
        for start, end in sorted(cut, reverse=True):
            rest = rest[:start] + " " + rest[end:]
        return Found(tuple(sorted(found, key=lambda c: c.start)), _tidy(rest), local)

    def _inside(self, text: str, offset: int) -> list[Citation]:
        """The citations in one pair of brackets; later ones may leave out what stays the same."""
        found: list[Citation] = []
        for match in self._pattern.finditer(text):
            found.append(self._citation(match, offset))
        last = found[-1] if found else None
        if last is not None:
            for match in re.finditer(rf"(?<=[;,])\s*({_NUMBERS})", text):
                if not any(one.start - offset <= match.start(1) < one.end - offset for one in found):
                    numbers = tuple(re.findall(_NUMBER, match[1]))
                    found.append(
                        msgspec.structs.replace(
                            last, start=offset + match.start(1), end=offset + match.end(1), numbers=numbers
                        )
                    )
        elif re.fullmatch(rf"\s*(?:see\s+)?{_NUMBERS}\s*", text) and re.search(r"\d[.-]\d", text):
            numbers = tuple(re.findall(_NUMBER, text))
            found.append(Citation(offset, offset + len(text), "", "", "", numbers))
        return found

    def _citation(self, match: re.Match[str], offset: int) -> Citation:
        group = match.groupdict()
        numbers = next(text for key in ("n1", "n2", "n3") if (text := group[key]))
        letter = next((text for key in ("l1", "k1", "l2", "k2") if (text := group[key])), "").casefold()
        book = next((text for key in ("b1", "b2") if (text := group[key])), "")
        edition = next((text for key in ("e1", "e2") if (text := group[key])), "")
        known = self.books[" ".join(fold(book).split())] if book else ""
        return Citation(
            offset + match.start(), offset + match.end(), letter, known, fold(edition), _spread(numbers)
        )


def _spread(text: str) -> tuple[str, ...]:
    """The clause numbers of "3.16, 3.17 and 3.18"; of a run only its ends."""
    return tuple(re.findall(_NUMBER, text))


def _brackets(text: str) -> list[tuple[int, int]]:
    """Where the outermost pairs of brackets stand; a letter in brackets belongs to what is around it."""
    found: list[tuple[int, int]] = []
    opened: list[int] = []
    for place, char in enumerate(text):
        if char == "(":
            opened.append(place)
        elif char == ")" and opened:
            start = opened.pop()
            if not opened and place - start > 2:
                found.append((start, place + 1))
    return found


_LEADS = re.compile(
    r"(?:,?\s*(?:in accordance with|according to|as required by|as laid down (?:in|by)|under|by|as per|per|"
    r"see(?: also)?|"
    r"pursuant to|as stated in|as set out in|as provided (?:in|by)|in line with)\s+(?:the\s+)?)$",
    re.IGNORECASE,
)
_AFTER = re.compile(r"\s*,?\s*(?:says|states|provides|requires|lays down)(?:\s+that)?\s*[:,]?", re.IGNORECASE)


def _with_lead(text: str, start: int, end: int) -> tuple[int, int]:
    """The citation with the words that only lead to it: "in accordance with clause 3.16,"."""
    lead = _LEADS.search(text[:start])
    after = _AFTER.match(text, end)
    return (lead.start() if lead else start, after.end() if after else end)


def _tidy(text: str) -> str:
    found = " ".join(text.split())
    found = re.sub(r"\s+([.,;:])", r"\1", found)
    return re.sub(r"^[,;:\s]+|[,;\s]+(?=\.?$)", "", found)
