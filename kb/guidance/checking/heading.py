"""What is wrong with the header of guidance: editions, dates, the time that it is for."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from kb.guidance.checking.books import Books
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.header import Header, Reference
from kb.model.records import Edition
from kb.wording import edition_reference, say_date


def header_findings(header: Header, books: Books, today: datetime.date) -> Iterator[CheckFinding]:
    """Every finding about references and dates; `today` is the day of the check."""
    letters: set[str] = set()
    for reference in header.references:
        if reference.letter in letters:
            message = f"There are two references ({reference.letter})."
            yield finding_at(reference, "error", "unknown-reference", message, "Give each its own letter.")
        letters.add(reference.letter)
        yield from _reference(reference, header, books)
    yield from _dates(header, today)


def _title(books: Books, edition: Edition, letter: str) -> str:
    label = books.lookup.books[edition.book].label
    name = edition.id.rpartition("/")[2]
    return f"({letter}) {label}, {name} edition, in force from {say_date(edition.valid_from)}"


def _reference(reference: Reference, header: Header, books: Books) -> Iterator[CheckFinding]:
    if reference.unknown:
        fault = books.unknown_edition(reference.book, reference.unknown)
        yield finding_at(reference, "error", fault.code, fault.message, fault.suggestion)
        return
    if reference.misspelt:
        label = books.lookup.books[reference.book].label
        message = f"The rule books have no book of this name; they have the {label}."
        yield finding_at(reference, "error", "unknown-book", message, f"Write “{label}”.")
    if not reference.edition:
        return
    edition = books.lookup.editions[reference.edition]
    title, letter = edition_reference(books.lookup, edition.id), reference.letter
    expires = header.expires.date if header.expires else None
    begins_later = edition.valid_from > books.day
    if begins_later and expires is not None and edition.valid_from <= expires:
        if reference.since is None:
            day = say_date(edition.valid_from)
            message = f"{title} takes effect only on {day}, while the guidance is in force."
            yield finding_at(
                reference, "warning", "begins-later", message, _title(books, edition, letter), cause=message
            )
    elif not books.is_current(edition):
        yield _not_in_force(reference, edition, books)
        return
    if reference.since is not None and reference.since != edition.valid_from:
        message = (
            f"{title} is in force from {say_date(edition.valid_from)}, not from {say_date(reference.since)}."
        )
        yield finding_at(reference, "error", "stale-date", message, _title(books, edition, letter))
    if edition.valid_until is not None and expires is not None and edition.valid_until <= expires:
        message = f"{title} ends on {say_date(edition.valid_until)}, before the guidance expires."
        yield finding_at(reference, "warning", "ends-before-expiry", message)


def _not_in_force(reference: Reference, edition: Edition, books: Books) -> CheckFinding:
    """The finding that a reference names an edition that is over, or not there before the guidance ends."""
    title, day = edition_reference(books.lookup, edition.id), say_date(books.day)
    others = [e for e in books.lookup.base.editions if e.book == edition.book and books.is_current(e)]
    if edition.valid_from > books.day:
        code, why = "not-in-force", f"it takes effect only on {say_date(edition.valid_from)}"
    else:
        assert edition.valid_until is not None, "an edition that is over has an end"
        code, why = "expired-edition", f"it ended on {say_date(edition.valid_until)}"
    suggestion = _title(books, others[0], reference.letter) if others else "Take the reference out."
    message = f"{title} is not in force on {day}: {why}."
    return finding_at(reference, "error", code, message, suggestion, cause=why)


def early_findings(header: Header, found: list[CheckFinding]) -> Iterator[CheckFinding]:
    """The finding that guidance takes effect before a clause that it cites."""
    if header.effective is None:
        return
    early = [f for f in found if f.code == "not-in-force" and "is in force only from" in f.message]
    if early:
        message = f"The guidance takes effect before a clause that it cites: {early[0].message}"
        yield finding_at(
            header.effective, "error", "stale-date", message, "Correct the effective date, or the sentence."
        )


def _dates(header: Header, today: datetime.date) -> Iterator[CheckFinding]:
    effective, expires, review = header.effective, header.expires, header.review
    if effective and expires and expires.date < effective.date:
        message = f"The guidance expires on {say_date(expires.date)}, before it takes effect."
        for date in (effective, expires):
            yield finding_at(date, "error", "stale-date", message, "Correct one of the two dates.")
    elif expires and expires.date < today:
        message = f"The guidance expired on {say_date(expires.date)}."
        yield finding_at(expires, "warning", "expired", message, "Review it and give it a new date.")
    early = review and effective and review.date < effective.date
    late = review and expires and review.date > expires.date
    if review and (early or late):
        which = "before the guidance takes effect" if early else "after it has expired"
        message = f"The review on {say_date(review.date)} would be {which}."
        yield finding_at(review, "error", "stale-date", message, "Correct the date of review.")
    elif review and expires and expires.date >= today and review.date < today:
        message = f"The review was due on {say_date(review.date)}."
        yield finding_at(review, "warning", "review-due", message, "Review the guidance.")
