"""Cautions that a draft had when it was made, and that somebody took out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.guidance.checking.books import Books
from kb.guidance.checking.claim import Claim
from kb.guidance.checking.document import Document
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.truth import Judge
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, all_of
from kb.model.records import Rule
from kb.wording import clause_reference


def cautions_left_out(
    results: Sequence[tuple[Passage, Result]], document: Document, books: Books, judge: Judge
) -> Iterator[CheckFinding]:
    """The findings that a draft speaks of what protects, or states a rule, without its caution; each once."""
    from kb.answer.common import DEFERENCE  # noqa: PLC0415

    lookup = books.lookup
    text = " ".join(fold(block.text) for block in document.blocks)
    told = {fold(DEFERENCE)} if fold(DEFERENCE).partition(";")[0] in text else set()
    cautions = (fold(rule.caution).rstrip(" .") for rule in lookup.base.rules if rule.caution)
    beside = any(caution in text for caution in cautions)  # the draft has them beside its sentences
    for passage, result in results:
        items = result.claim.scope.items if result.claim else ()
        protects = any(lookup.items[kind].protects for item in items for kind in lookup.broader(item))
        if protects and fold(DEFERENCE) not in told:
            told.add(fold(DEFERENCE))
            message = "This is about what protects, and the caution about protective equipment is gone."
            yield finding_at(passage, "warning", "no-caution", message, DEFERENCE)
        for rule in (r for clause in result.cited if beside for r in books.lookup.rules_of(clause.id)):
            caution = rule.caution or ""
            known = fold(caution).rstrip(" .")
            if not caution or known in told or known in text or not _states(result, rule, judge):
                continue
            told.add(known)
            name = clause_reference(lookup, rule.clause)
            message = f"{name} has a caution beside this, and it is gone: {caution}"
            cited = books.cite(rule.clause)
            suggestion = f"Caution: {caution.rstrip('.')} ({cited})."
            yield finding_at(passage, "warning", "no-caution", message, suggestion, clause=name)


def _states(result: Result, rule: Rule, judge: Judge) -> bool:
    """Whether a sentence that is borne out states a rule, of some of its things and cases at least."""
    claim: Claim | None = result.claim
    if claim is None or not result.confirmed:
        return False
    same = (claim.aspect, claim.modality) == (rule.aspect, rule.modality)
    shared = same and not set(claim.scope.items).isdisjoint(rule.scope.items)
    return shared and judge.implies(all_of([claim.condition, result.within or ALWAYS]), rule.condition)
