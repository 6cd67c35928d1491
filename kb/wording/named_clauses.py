"""The clauses that a reference means, in the forms in which the program itself writes references."""

from __future__ import annotations

from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.model.records import Clause
from kb.text import Pattern
from kb.wording.labels import edition_reference

_WORD = Pattern(r"[^\s,;()]+")
_SMALL = frozenset({"the", "of", "and", "clause", "clauses", "paragraph", "paragraphs"})


def clauses_named(lookup: Lookup, reference: str) -> tuple[Clause, ...]:
    """The clauses that references such as "4.12" or "Dress Order (2024) 4.12" fit, the latest first.

    A book is called what anything calls it, or by some of those words; it is meant for the numbers behind it,
    too. Raises `UsageError` where nothing fits.
    """
    numbers = {clause.number.casefold() for clause in lookup.base.clauses}
    found: list[Clause] = []
    book: tuple[str, ...] = ()
    last_was_number = False
    for word in _words(reference):
        number = word.rstrip(".")
        if number not in numbers:
            book = (word,) if last_was_number else (*book, word)
            last_was_number = False
            continue
        editions = _editions(lookup, book)
        fitting = [c for c in lookup.base.clauses if c.number.casefold() == number and c.edition in editions]
        if not fitting:
            raise UsageError(f"There is no clause {reference.strip()}.")
        found += sorted(fitting, key=lambda clause: clause.valid_from, reverse=True)
        last_was_number = True
    if book and not last_was_number:
        raise UsageError(f"There is no clause {reference.strip()}.")
    if not found:
        raise UsageError("Name a clause, for example: clause 4.12.")
    return tuple(dict.fromkeys(found))


def _words(text: str) -> tuple[str, ...]:
    return tuple(word for word in _WORD.findall(text.casefold()) if word not in _SMALL)


def _editions(lookup: Lookup, name: tuple[str, ...]) -> set[str]:
    """The editions that are called so, or else those that have all of these words in what they are called."""
    called: dict[str, list[tuple[str, ...]]] = {}
    for edition in lookup.base.editions:
        book = lookup.books[edition.book]
        texts = (edition.id, edition.label, *edition.other_labels, edition_reference(lookup, edition.id))
        called[edition.id] = [_words(text) for text in (*texts, book.id, book.label, *book.other_labels)]
    exact = {edition for edition, names in called.items() if not name or name in names}
    wanted = set(name)
    return exact or {edition for edition, names in called.items() if any(wanted <= {*one} for one in names)}
