"""Who may settle what the books leave open: the sentence behind "This is open: ..."."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.words import fold
from kb.model.lookup import Lookup
from kb.text import Pattern
from kb.wording import definite

_SETTLES = Pattern(
    r"(?:only )?(?P<who>.{2,80}?)(?: alone)? (?:(?P<modal>can|may|must|will|shall) )?(?:settle|decide)s?"
    r" (?:it|this|the matter)(?: alone)?"
)


def is_settling(text: str) -> bool:
    """Whether a sentence says who settles something: it is held against the one before it."""
    match = _SETTLES.fullmatch(fold(text).rstrip(" ."))
    return match is not None and match["modal"] in (None, "can")


def settling_findings(results: Sequence[tuple[Passage, Result]], lookup: Lookup) -> Iterator[CheckFinding]:
    """The finding that another authority is named than the highest behind the clauses that are open."""
    for (before, result), (here, _) in pairwise(results):
        match = _SETTLES.fullmatch(fold(here.text).rstrip(" ."))
        if match is None or not fold(before.text).startswith("this is open") or not result.cited:
            continue
        books = (lookup.books[lookup.editions[clause.edition].book] for clause in result.cited)
        authority = min((lookup.authorities[book.authority] for book in books), key=lambda a: a.rank)
        if match["who"].removeprefix("the ") in {
            fold(name).removeprefix("the ") for name in (authority.label, *authority.other_labels)
        }:
            continue
        said = f"Only {definite(authority.label)} can settle it."
        message = f"The clauses that oppose each other are of {definite(authority.label)}: {said}"
        yield finding_at(here, "error", "contradicts", message, said)
