"""Lettered references, and the citation behind a sentence: "ref. (a), 3.16; ref. (b), 2.1"."""

from __future__ import annotations

from collections.abc import Iterable

from kb.guidance.provisions import Provision
from kb.model.lookup import Lookup
from kb.model.records import Edition
from kb.wording import listing, say_date

_LETTERS = "abcdefghijklmnopqrstuvwxyz"


class Citing:
    """Citations of one draft, whose own clauses stand in the edition `local`.

    References are lettered from the highest authority down, within one by the date of the edition.
    """

    def __init__(
        self, lookup: Lookup, local: str, provisions: Iterable[Provision], more: Iterable[str]
    ) -> None:
        self.lookup = lookup
        self.local = local
        clauses = {
            clause for s in provisions for rule in (*s.rules, *s.rivals) for clause in self._told(rule)
        }
        editions = {lookup.clauses[clause].edition for clause in (*clauses, *more)}
        self.editions = sorted((lookup.editions[name] for name in editions), key=self._rank)
        self._letter = {edition.id: _letter(i) for i, edition in enumerate(self.editions)}

    def _rank(self, edition: Edition) -> tuple[int, int, str]:
        rank = self.lookup.authorities[self.lookup.books[edition.book].authority].rank
        return rank, edition.valid_from.toordinal(), edition.id

    def _told(self, rule: str) -> tuple[str, ...]:
        """The clause that a reader is sent to for a rule: of a local rule, that of its delegation."""
        record = self.lookup.rules[rule]
        if self.lookup.clauses[record.clause].edition != self.local:
            return (record.clause,)
        return (self.lookup.delegations[record.delegation].clause,) if record.delegation else ()

    def clause(self, clause: str) -> str:
        """ "ref. (a), 3.16"."""
        record = self.lookup.clauses[clause]
        return f"ref. ({self._letter[record.edition]}), {record.number}"

    def citation(self, rules: Iterable[str]) -> str:
        """What stands in the brackets behind a sentence that states rules."""
        parts: dict[str, dict[str, None]] = {}
        for rule in rules:
            local = self.lookup.clauses[self.lookup.rules[rule].clause].edition == self.local
            for clause in self._told(rule):
                record = self.lookup.clauses[clause]
                source = f"{'local, under ' if local else ''}ref. ({self._letter[record.edition]})"
                parts.setdefault(source, {})[record.number] = None
        return "; ".join(f"{source}, {listing(list(numbers))}" for source, numbers in parts.items())

    def references(self) -> tuple[str, ...]:
        """ "(a) Dress Order, second edition, in force from 1 March 2024"."""
        return tuple(f"({self._letter[e.id]}) {self._title(e)}" for e in self.editions)

    def _title(self, edition: Edition) -> str:
        book = self.lookup.books[edition.book]
        names = (book.label, *book.other_labels)
        named = any(name.lower() in edition.label.lower() for name in names)
        title = edition.label if named else f"{book.label}, {edition.label}"
        if edition.label in names:
            title = f"{title}, {edition.id.rpartition('/')[2]}"
        return f"{title}, in force from {say_date(edition.valid_from)}"


def _letter(index: int) -> str:
    """a to z, then aa, ab and so on."""
    text = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, len(_LETTERS))
        text = _LETTERS[rest] + text
    return text
