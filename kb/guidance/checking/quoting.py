"""Quotations of clauses in a sentence, and what is wrong with them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from kb.guidance.checking.books import Books, Cited
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.citations import Found as FoundCitations
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.modals import speaks_of_duty
from kb.guidance.checking.passage import Passage
from kb.guidance.checking.quotations import (
    Quotation,
    cited_directly,
    find_quotations,
    is_long,
    is_near,
    is_verbatim,
    nearest_part,
)
from kb.guidance.checking.verdicts import Weighing
from kb.guidance.checking.words import fold
from kb.model.records import Clause
from kb.wording import clause_reference


class Quoting:
    """Holds quotations against the clauses that are cited for them."""

    def __init__(self, citations: Citations, books: Books, weighing: Weighing) -> None:
        self.citations = citations
        self.books = books
        self.weighing = weighing
        self.lookup = books.lookup

    def check(
        self, passage: Passage, found: FoundCitations, cited: Cited, read: bool
    ) -> tuple[int, list[CheckFinding]]:
        """How many quotations of clauses a sentence has, and the findings about them."""
        if not found.citations:
            return 0, []
        findings: list[CheckFinding] = []
        count = 0
        clauses = [*cited.clauses, *cited.stale]
        for quotation in find_quotations(passage.text):
            direct = any(cited_directly(passage.text, quotation, c.start, c.end) for c in found.citations)
            taken = any(is_verbatim(quotation.text, clause.text) for clause in clauses)
            if not direct and not (
                is_long(quotation.text) and any(is_near(quotation.text, c.text) for c in clauses)
            ):
                continue
            if taken:
                count += 1
            elif clauses and not read and (is_long(quotation.text) or self._is_term(passage.text, quotation)):
                count += 1
                findings.append(self._misquoted(passage, quotation, clauses))
        return count, findings

    def _is_term(self, text: str, quotation: Quotation) -> bool:
        """Whether a short quotation claims to be a clause's own words: it is all there is, or must be so."""
        before = self.citations.find(text[: quotation.start]).rest
        return (
            not re.search(r"\w{3,}", before)
            or re.search(r"\b(?:must|may|shall)(?: not)? be$", before) is not None
        )

    def _misquoted(self, passage: Passage, quotation: Quotation, clauses: Sequence[Clause]) -> CheckFinding:
        edition = clauses[0].edition
        others = [c for c in self.lookup.base.clauses if c.edition == edition and is_long(quotation.text)]
        home = next((c for c in others if is_verbatim(quotation.text, c.text)), None)
        names = clause_reference(self.lookup, clauses[0].id)
        if home is not None:
            right = clause_reference(self.lookup, home.id)
            return finding_at(
                passage,
                "error",
                "wrong-clause",
                f"{names} does not read so; these are words of {right}.",
                clause=right,
                quotation=nearest_part(quotation.text, home.text),
                suggestion=f"Cite {right}.",
            )
        part = nearest_part(quotation.text, clauses[0].text)
        rules = [rule for clause in clauses for rule in self.books.lookup.rules_of(clause.id)]
        near = self.weighing.best(rules, passage.text)
        suggestion = f"“{part}”"
        if near is not None and self._is_term(passage.text, quotation) and speaks_of_duty(fold(passage.text)):
            suggestion = self.weighing.said(near, passage.contexts[0])
        return finding_at(
            passage,
            "error",
            "not-verbatim",
            f"This is not what {names} says word for word.",
            clause=names,
            quotation=part,
            suggestion=suggestion,
        )
