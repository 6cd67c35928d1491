"""Amendments: a clause that replaces or repeals others ends them on its first day."""

from __future__ import annotations

import msgspec

from kb.model.records import Clause
from kb.sources.drafts import ClauseDraft
from kb.sources.references import References
from kb.sources.report import Report, quoted
from kb.sources.tree import Scalar
from kb.sources.vocabulary import Vocabulary


def end_amended_clauses(
    drafts: list[ClauseDraft], references: References, vocabulary: Vocabulary, report: Report
) -> list[ClauseDraft]:
    """Clauses with `replaces`, `repeals`, `replaced_by` and the validity that follows."""
    by_id = {draft.clause.id: draft for draft in drafts}
    clauses = {name: draft.clause for name, draft in by_id.items()}
    for draft in drafts:
        for replaced, texts in ((True, draft.replaces), (False, draft.repeals)):
            for text in texts:
                _amend(draft, text, replaced, by_id, clauses, references, vocabulary, report)
    return [msgspec.structs.replace(draft, clause=clauses[draft.clause.id]) for draft in drafts]


def _amend(
    draft: ClauseDraft,
    text: Scalar,
    replaced: bool,
    by_id: dict[str, ClauseDraft],
    clauses: dict[str, Clause],
    references: References,
    vocabulary: Vocabulary,
    report: Report,
) -> None:
    own = draft.clause
    meant = references.clauses_of(text, own.edition, report)
    if meant is None:
        return
    for target in meant.clauses:
        if not _may_end(draft, by_id[target], text, meant.exact, vocabulary, report):
            continue
        before = clauses[target]
        until = own.valid_from if before.valid_until is None else min(own.valid_from, before.valid_until)
        clauses[target] = msgspec.structs.replace(
            before, valid_until=until, replaced_by=own.id if replaced else before.replaced_by
        )
        current = clauses[own.id]
        if replaced:
            clauses[own.id] = msgspec.structs.replace(current, replaces=(*current.replaces, target))
        else:
            clauses[own.id] = msgspec.structs.replace(current, repeals=(*current.repeals, target))


def _may_end(
    draft: ClauseDraft, target: ClauseDraft, text: Scalar, exact: bool, vocabulary: Vocabulary, report: Report
) -> bool:
    """Whether the clause ends the other; a reference to every edition passes over those it does not reach."""
    own, other = draft.clause, target.clause
    if own.id == other.id:
        if exact:
            report.error(
                text.at, "amends-itself", "The clause replaces or repeals itself.", "Correct the reference."
            )
        return False
    if other.valid_until is not None and other.valid_until <= own.valid_from:
        return False
    authorities = vocabulary.authorities
    mine, theirs = authorities.get(draft.authority), authorities.get(target.authority)
    if mine is not None and theirs is not None and mine.rank > theirs.rank:
        message = f"{quoted(mine.label)} cannot end a clause of {quoted(theirs.label)}, which stands higher."
        remedy = "Write a rule that is an exception under a delegation instead."
        report.warn(text.at, "amends-higher", message, remedy)
        return False
    if other.valid_from >= own.valid_from:
        if exact:
            dates = f"on {other.valid_from}, not before this clause ({own.valid_from})"
            message = f"{quoted(text.text)} comes into force {dates}."
            report.error(text.at, "amends-later", message, "Correct the reference, or the dates.")
        return False
    return True
