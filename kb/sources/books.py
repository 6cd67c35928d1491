"""Books and editions, put together from all files that hold parts of them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from itertools import pairwise

import msgspec

from kb.errors import Location
from kb.model.records import Book, Edition
from kb.sources.fields import Fields, as_text, is_id
from kb.sources.naming import check_labels
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.sections import Part
from kb.sources.tree import Mapping, Node, Scalar
from kb.sources.vocabulary import Vocabulary

_BOOK_KEYS = ("id", "title", "other labels", "authority")
_EDITION_KEYS = ("id", "title", "other labels", "in force from", "in force until")
UNDATED = datetime.date.min


class Books(msgspec.Struct, frozen=True):
    """Books and editions by id, and for each part of a book the id of its edition (None if it has none)."""

    books: dict[str, Book]
    editions: dict[str, Edition]
    part_editions: tuple[str | None, ...]


def _named(node: Node | None, what: str, report: Report) -> Scalar | None:
    """The id by which a part names its book or edition."""
    if node is None:
        return None
    if not isinstance(node, Mapping):
        return as_text(node, f"The {what}", report)
    named = node.get("id")
    return named if isinstance(named, Scalar) and named.text else None


def read_books(parts: Iterable[Part], vocabulary: Vocabulary, report: Report) -> Books:
    """Books and editions of all parts; later editions end earlier ones of the same book."""
    books: dict[str, Book] = {}
    editions: dict[str, Edition] = {}
    places: list[tuple[Part, Scalar | None, Scalar | None]] = []
    for part in parts:
        book = _named(part.book, "book", report)
        edition = _named(part.edition, "edition", report)
        if isinstance(part.book, Mapping):
            _add_book(part.book, books, vocabulary, report)
        if isinstance(part.edition, Mapping) and book is not None:
            _add_edition(part.edition, book.text, editions, report)
        places.append((part, book, edition))
    labelled = {name: _with_title(edition, books) for name, edition in editions.items()}
    check_labels(books.values(), "books", report)
    ends = end_earlier_editions(labelled, report)
    found = tuple(_edition_of(*place, books, ends, report) for place in places)
    return Books(books, ends, found)


def _add_book(node: Mapping, books: dict[str, Book], vocabulary: Vocabulary, report: Report) -> None:
    fields = Fields(node, _BOOK_KEYS, "a book", report)
    name = fields.identifier()
    if name is None or set(fields.lines) == {"id"}:
        return
    title = fields.required("title", "title: Dress Order")
    authority = fields.required("authority", f"authority: {next(iter(vocabulary.authorities), 'board')}")
    if authority is not None and authority.text not in vocabulary.authorities:
        remedy = suggestion(authority.text, vocabulary.authorities, "Declare it under authorities.")
        message = f"There is no authority {quoted(authority.text)}."
        report.error(authority.at, "unknown-authority", message, remedy)
    book = Book(
        id=name.text,
        label=title.text if title else name.text,
        other_labels=fields.texts("other labels"),
        at=fields.at,
        authority=authority.text if authority else "",
    )
    _keep(book.id, book, books, "book", report)


def _add_edition(node: Mapping, book: str, editions: dict[str, Edition], report: Report) -> None:
    fields = Fields(node, _EDITION_KEYS, "an edition", report)
    name = fields.identifier()
    if name is None or set(fields.lines) == {"id"}:
        return
    begin, end = fields.span("in force from", "in force until")
    if not fields.has("in force from"):
        fields.missing("in force from", "in force from: 2024-03-01")
    edition = Edition(
        id=f"{book}/{name.text}",
        label=fields.text("title") or "",
        other_labels=fields.texts("other labels"),
        at=fields.at,
        book=book,
        valid_from=begin or UNDATED,
        valid_until=end,
    )
    _keep(edition.id, edition, editions, "edition", report)


def _keep(
    name: str, record: Book | Edition, known: dict[str, Book] | dict[str, Edition], what: str, report: Report
) -> None:
    """Add a record unless it is there; a different one under the same id is a problem."""
    first = known.get(name)
    if first is None:
        known[name] = record  # type: ignore[assignment]  # the caller pairs record and dictionary
    elif msgspec.structs.replace(record, at=first.at) != first:
        message = f"The {what} {quoted(name)} is described here otherwise than in {first.at}."
        short = f"{what}: {record.id.rpartition('/')[2]}"
        remedy = f"Describe it in full in one file, and write only its id in the others ({short})."
        report.error(record.at, f"conflicting-{what}", message, remedy)


def _with_title(edition: Edition, books: dict[str, Book]) -> Edition:
    if edition.label:
        return edition
    book = books.get(edition.book)
    number = edition.id.partition("/")[2]
    return msgspec.structs.replace(edition, label=f"{book.label if book else edition.book}, {number}")


def end_earlier_editions(editions: dict[str, Edition], report: Report) -> dict[str, Edition]:
    """Each edition ends on the day the next one of its book comes into force, if not before."""
    ended = dict(editions)
    by_book: dict[str, list[Edition]] = {}
    for edition in editions.values():
        by_book.setdefault(edition.book, []).append(edition)
    for of_book in by_book.values():
        of_book.sort(key=lambda edition: edition.valid_from)
        for earlier, later in pairwise(of_book):
            if earlier.valid_from == later.valid_from and earlier.valid_from != UNDATED:
                both = f"{quoted(earlier.id)} and {quoted(later.id)}"
                message = f"The editions {both} come into force on the same day."
                report.error(later.at, "same-first-day", message, "Correct the date of one of them.")
            elif earlier.valid_until is None or earlier.valid_until > later.valid_from:
                ended[earlier.id] = msgspec.structs.replace(earlier, valid_until=later.valid_from)
    return ended


def _edition_of(
    part: Part,
    book: Scalar | None,
    edition: Scalar | None,
    books: dict[str, Book],
    editions: dict[str, Edition],
    report: Report,
) -> str | None:
    if book is None or edition is None:
        lacking = "book" if book is None else "edition"
        if part.clauses or part.edition is not None:
            at: Location = part.clauses[0].at if part.clauses else part.at
            remedy = 'Write book: and edition: above the clauses, such as edition: "2024".'
            report.error(
                at, f"missing-{lacking}", f"The clauses of this file belong to no {lacking}.", remedy
            )
        return None
    if book.text not in books:
        remedy = suggestion(
            book.text, books, f"Describe it: book: {{id: {book.text}, title: ..., authority: ...}}."
        )
        report.error(book.at, "unknown-book", f"There is no book {quoted(book.text)}.", remedy)
        return None
    name = f"{book.text}/{edition.text}"
    if name not in editions:
        known = [e.id.partition("/")[2] for e in editions.values() if e.book == book.text]
        describe = f"Describe it: edition: {{id: {quoted(edition.text)}, in force from: 2024-03-01}}."
        remedy = (
            f"Write {listed(known)}, or describe it in full." if known and is_id(edition.text) else describe
        )
        report.error(edition.at, "unknown-edition", f"There is no edition {quoted(name)}.", remedy)
        return None
    return name
