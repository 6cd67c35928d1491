"""References in rule books to the clauses and rules that they mean."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.sources.drafts import ClauseDraft
from kb.sources.report import Report, quoted, suggestion
from kb.sources.tree import Scalar
from kb.text import Pattern

_CLAUSE = Pattern(r"(?:(?P<book>[^\s/]+)(?:/(?P<edition>[^\s/]+))?\s+)?clause\s+(?P<number>\S+)")
_RULE = Pattern(r"(?:(?P<book>[^\s/]+)/)?(?:(?P<edition>[^\s/]+)/)?(?P<name>[^\s/]+)")


class ClauseReference(msgspec.Struct, frozen=True):
    """The clauses a reference means; `exact` if it names one edition (if only by standing in it)."""

    clauses: tuple[str, ...]
    exact: bool


class References:
    """Clauses and rules by what references call them."""

    def __init__(self, drafts: Iterable[ClauseDraft]) -> None:
        self.clauses: dict[tuple[str, str], list[str]] = {}
        self.rules_of_clause: dict[str, list[str]] = {}
        self.rules: dict[tuple[str, str], list[str]] = {}
        self.editions: dict[str, list[str]] = {}
        for draft in drafts:
            edition = draft.clause.edition
            book = edition.partition("/")[0]
            if edition not in self.editions.setdefault(book, []):
                self.editions[book].append(edition)
            self.clauses.setdefault((edition, draft.clause.number), []).append(draft.clause.id)
            self.rules_of_clause[draft.clause.id] = [rule.rule.id for rule in draft.rules]
            for rule in draft.rules:
                names = {rule.rule.id.removeprefix(f"{edition}/"), rule.source.removeprefix(f"{edition}/")}
                for name in names:
                    self.rules.setdefault((edition, name), []).append(rule.rule.id)

    def _editions(self, book: str | None, edition: str | None, own: str) -> list[str]:
        if book is None:
            return [own]
        return [f"{book}/{edition}"] if edition is not None else self.editions.get(book, [])

    def clauses_of(self, text: Scalar, own: str, report: Report) -> ClauseReference | None:
        """The clauses a reference in the edition `own` means; a problem if there are none."""
        match = _CLAUSE.fullmatch(" ".join(text.text.split()))
        if match is None:
            remedy = "Write clause 4.12, or dress-order/2024 clause 4.12, or dress-order clause 4.12."
            report.error(
                text.at, "bad-reference", f"{quoted(text.text)} is no reference to a clause.", remedy
            )
            return None
        editions = self._editions(match["book"], match["edition"], own)
        found = [c for e in editions for c in self.clauses.get((e, match["number"]), ())]
        if found:
            return ClauseReference(tuple(found), exact=match["book"] is None or match["edition"] is not None)
        known = [number for e, number in self.clauses if e in editions] if editions else []
        close = suggestion(match["number"], known, "Correct the number, or the book and edition before it.")
        report.error(
            text.at, "unknown-clause", f"There is no clause that {quoted(text.text)} could mean.", close
        )
        return None

    def rules_meant(self, text: Scalar, own: str, report: Report) -> tuple[str, ...]:
        """The rules a reference means: a clause stands for all its rules."""
        if _CLAUSE.fullmatch(" ".join(text.text.split())):
            meant = self.clauses_of(text, own, report)
            return tuple(r for c in (meant.clauses if meant else ()) for r in self.rules_of_clause[c])
        match = _RULE.fullmatch(text.text)
        if match is None:
            remedy = "Write clause 4.12, or the id of a rule, or dress-order/2024/the-id."
            report.error(text.at, "bad-reference", f"{quoted(text.text)} is no reference.", remedy)
            return ()
        editions = self._editions(match["book"], match["edition"], own)
        found = [rule for e in editions for rule in self.rules.get((e, match["name"]), ())]
        if not found:
            known = [name for e, name in self.rules if e in editions]
            remedy = suggestion(match["name"], known, "Correct it; a clause is written clause 4.12.")
            message = f"There is no rule that {quoted(text.text)} could mean."
            report.error(text.at, "unknown-rule", message, remedy)
        return tuple(dict.fromkeys(found))
