"""The clauses that citations mean on a day, and what became of those that are not in force."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

import msgspec

from kb.guidance.checking.citations import Citation
from kb.guidance.checking.header import Header, Reference
from kb.guidance.checking.words import fold
from kb.model.lookup import Lookup
from kb.model.records import Clause, Edition, Rule, is_in_force
from kb.wording import clause_reference, edition_reference, listing, say_date


class Fault(msgspec.Struct, frozen=True):
    """What is wrong with a citation: a code, the words for it, its clause, what to cite instead."""

    code: str
    message: str
    clause: str = ""
    suggestion: str = ""
    cause: str = ""


class Cited(msgspec.Struct, frozen=True):
    """What the citations of a sentence lead to. `foreign` names references that are no rule books."""

    clauses: tuple[Clause, ...] = ()
    faults: tuple[Fault, ...] = ()
    foreign: tuple[str, ...] = ()
    stale: tuple[Clause, ...] = ()

    @property
    def all_clauses(self) -> tuple[Clause, ...]:
        """Also those that are not in force on the day."""
        return (*self.clauses, *self.stale)


class Books:
    """Resolves citations for guidance with a certain header."""

    def __init__(self, lookup: Lookup, header: Header, day: datetime.date) -> None:
        self.lookup = lookup
        self.day = day
        self.references = {reference.letter: reference for reference in header.references}

    def is_current(self, record: Clause | Edition | Rule) -> bool:
        """Whether something is in force on the day of the guidance."""
        return is_in_force(record, self.day)

    def cite(self, clause: str) -> str:
        """A clause as the guidance cites it: "ref. (a), 3.16", else "Dress Order (2024) 3.16"."""
        record = self.lookup.clauses[clause]
        for reference in self.references.values():
            if any(edition.id == record.edition for edition in self.of_reference(reference)):
                return f"ref. ({reference.letter}), {record.number}"
        return clause_reference(self.lookup, clause)

    # -- citations --------------------------------------------------------------------------------------

    def resolve(self, citations: Sequence[Citation]) -> Cited:
        """The clauses that the citations of a sentence mean, and what is wrong with those that mean none."""
        clauses: list[Clause] = []
        stale: list[Clause] = []
        faults: list[Fault] = []
        foreign: list[str] = []
        for citation in citations:
            editions, fault, other = self._editions(citation)
            faults += [fault] if fault else []
            foreign += [other] if other else []
            for number in citation.numbers if editions else ():
                found = [c for e in editions if (c := self._clause(e, number)) is not None]
                current = [clause for clause in found if self.is_current(clause)]
                if not found:
                    faults.append(self._invented(editions, number))
                elif not current:
                    stale += found[:1]
                    ended = self._edition_of(found[0]).valid_until
                    by_reference = bool(citation.letter) and ended is not None and ended <= self.day
                    faults += [] if by_reference else [self.gone(found[0])]
                clauses += current
        return Cited(
            tuple(dict.fromkeys(clauses)),
            tuple(dict.fromkeys(faults)),
            tuple(dict.fromkeys(foreign)),
            tuple(dict.fromkeys(stale)),
        )

    def _clause(self, edition: Edition, number: str) -> Clause | None:
        return self.lookup.clauses.get(f"{edition.id}/{number}")

    def _edition_of(self, clause: Clause) -> Edition:
        return self.lookup.editions[clause.edition]

    def _editions(self, citation: Citation) -> tuple[list[Edition], Fault | None, str]:
        """The editions that a citation may mean; a fault if it means none; a name if it is no rule book."""
        if citation.letter:
            return self._by_letter(citation.letter)
        if citation.book:
            return self._by_book(citation)
        named = [e for r in self.references.values() for e in self.of_reference(r)]
        if not named:
            named = [edition for edition in self.lookup.base.editions if self.is_current(edition)]
        holding = [
            e for e in named if any(self._clause(e, number) is not None for number in citation.numbers)
        ]
        return holding or named, None, ""

    def _by_letter(self, letter: str) -> tuple[list[Edition], Fault | None, str]:
        reference = self.references.get(letter)
        if reference is None:
            known = listing([f"({name})" for name in self.references], "or")
            message = f"There is no reference ({letter}) in the list of references."
            remedy = f"Cite {known}, or add the reference." if known else "Add the list of references."
            return [], Fault("unknown-reference", message, suggestion=remedy), ""
        found = self.of_reference(reference)
        return found, None, "" if found else f"reference ({letter})"

    def of_reference(self, reference: Reference) -> list[Edition]:
        """The editions that a reference may mean: the one it names if that is in force, else the one that is.

        A reference to an edition that is over is reported where it stands, not at each sentence again. One
        that takes effect later is meant as it is: a sentence may be for that time.
        """
        editions = [e for e in self.lookup.base.editions if e.book == reference.book]
        current = [e for e in editions if self.is_current(e)]
        named = [
            e for e in editions if e.id == reference.edition and (e in current or e.valid_from > self.day)
        ]
        return named or current or [e for e in editions if e.id == reference.edition] or editions[-1:]

    def _by_book(self, citation: Citation) -> tuple[list[Edition], Fault | None, str]:
        editions = [e for e in self.lookup.base.editions if e.book == citation.book]
        if citation.edition:
            named = [e for e in editions if fold(e.id.rpartition("/")[2]) == citation.edition]
            named = named or [e for e in editions if citation.edition in fold(e.label)]
            if not named:
                return [], self.unknown_edition(citation.book, citation.edition), ""
            return named, None, ""
        referred = [
            e for r in self.references.values() if r.book == citation.book for e in self.of_reference(r)
        ]
        current = [e for e in editions if self.is_current(e)]
        return referred or current or editions[-1:], None, ""

    def unknown_edition(self, book: str, edition: str) -> Fault:
        """The fault of an edition that a book does not have."""
        known = [edition_reference(self.lookup, e.id) for e in self.lookup.base.editions if e.book == book]
        label = self.lookup.books[book].label
        message = f"The rule books have no edition {edition} of the {label}."
        return Fault("unknown-edition", message, suggestion=f"They have {listing(known)}.")

    def _invented(self, editions: Sequence[Edition], number: str) -> Fault:
        edition = editions[0]
        numbers = [c.number for c in self.lookup.base.clauses if c.edition == edition.id]
        part = number.rpartition(".")[0]
        near = [n for n in numbers if part and n.startswith(f"{part}.")] or numbers
        title = edition_reference(self.lookup, edition.id)
        shown = f"{near[0]} to {near[-1]}" if len(near) > 1 else "".join(near)
        message = f"There is no clause {number} in {title}."
        return Fault("invented-clause", message, suggestion=f"{title} has {shown} there." if shown else "")

    # -- what is not in force ---------------------------------------------------------------------------

    def gone(self, clause: Clause) -> Fault:
        """The fault of a clause that is not in force on the day: since when, and what came instead."""
        name, day = clause_reference(self.lookup, clause.id), say_date(self.day)
        if clause.valid_from > self.day:
            message = f"{name} is in force only from {say_date(clause.valid_from)}, not on {day}."
            return Fault("not-in-force", message, clause.id, cause=message)
        successor = self.successor(clause)
        why = self.fate(clause)
        edition = self._edition_of(clause)
        code = "expired-edition" if not self.is_current(edition) else "not-in-force"
        instead = (
            f"Cite {clause_reference(self.lookup, successor.id)}." if successor else "Take the sentence out."
        )
        return Fault(code, f"{name} is not in force on {day}: {why}.", clause.id, instead, cause=why)

    def fate(self, clause: Clause) -> str:
        """What became of a clause, in words without a full stop."""
        lookup = self.lookup
        until = say_date(clause.valid_until) if clause.valid_until else ""
        if clause.replaced_by and clause.replaced_by in lookup.clauses:
            return f"{clause_reference(lookup, clause.replaced_by)} replaced it on {until}"
        for other in lookup.base.clauses:
            if clause.id in other.repeals:
                return f"{clause_reference(lookup, other.id)} repealed it on {until}"
        edition = self._edition_of(clause)
        if edition.valid_until is not None and edition.valid_until <= self.day:
            later = [
                e
                for e in lookup.base.editions
                if e.book == edition.book and e.valid_from >= edition.valid_until
            ]
            name = edition_reference(lookup, edition.id)
            by = f" when {edition_reference(lookup, later[0].id)} took effect" if later else ""
            return f"{name} ended on {say_date(edition.valid_until)}{by}"
        return f"it ended on {until}" if until else "it is not in force"

    def successor(self, clause: Clause) -> Clause | None:
        """The clause in force that has come in the place of one, or has its number now."""
        seen: set[str] = set()
        current: Clause | None = clause
        while current is not None and current.id not in seen:
            seen.add(current.id)
            if self.is_current(current):
                return current
            following = self.lookup.clauses.get(current.replaced_by or "")
            if following is None:
                book = self._edition_of(current).book
                editions = [e for e in self.lookup.base.editions if e.book == book and self.is_current(e)]
                following = next((c for e in editions if (c := self._clause(e, current.number))), None)
            current = following
        return None
