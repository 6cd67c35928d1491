"""Sentences that are true on the effective date and will not stay so."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING

import msgspec

from kb.guidance.checking.findings import CheckFinding, Severity
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.passages import Passages
from kb.reasoner.norms import covered_items
from kb.wording import say_date

if TYPE_CHECKING:
    from kb.guidance.checking.checking import _Check

_MOST_DAYS = 24


def change_days(check: _Check) -> list[datetime.date]:
    """The days after the effective date, up to the expiry, on which a rule or clause begins or ends."""
    header = check.header
    last = header.expires.date if header.expires else max(check.today, check.day)
    base = check.desk.lookup.base
    found = {day for r in base.rules for day in (r.valid_from, r.valid_until) if day is not None}
    found |= {day for c in base.clauses for day in (c.valid_from, c.valid_until) if day is not None}
    return sorted(day for day in found if check.day < day <= last)[:_MOST_DAYS]


def later_findings(check: _Check, results: Sequence[tuple[Passage, Result]]) -> Iterator[CheckFinding]:
    """One finding for each confirmed sentence that a later day of the guidance does not bear out."""
    waiting = [(p, r) for p, r in results if r.confirmed and r.claim and not r.local]
    for day in change_days(check):
        later = check.passages_on(day)
        touched = _touched(later, day)
        kept = []
        for passage, result in waiting:
            found = _on(later, passage, result, day, check.today) if touched(result) else None
            if found is None:
                kept.append((passage, result))
            else:
                yield found
        waiting = kept


def _touched(later: Passages, day: datetime.date) -> Callable[[Result], bool]:
    """Whether what begins or ends on a day can bear on a sentence."""
    base, lookup = later.lookup.base, later.lookup
    rules = [rule for rule in base.rules if day in (rule.valid_from, rule.valid_until)]
    clauses = {clause.id for clause in base.clauses if day in (clause.valid_from, clause.valid_until)}
    giving = {d.clause for d in base.definitions} | {d.clause for d in base.delegations}
    everything = bool(clauses & giving) or any(rule.disables or rule.repairs for rule in rules)
    items: dict[str, set[str]] = {}
    for rule in rules:
        items.setdefault(rule.aspect, set()).update(covered_items(lookup, rule.scope), rule.scope.items)

    def touched(result: Result) -> bool:
        claim = result.claim
        if claim is None or everything or any(clause.id in clauses for clause in result.cited):
            return True
        mine = covered_items(lookup, claim.scope) | set(claim.scope.items)
        return not mine.isdisjoint(items.get(claim.aspect, ()))

    return touched


def _on(
    later: Passages, passage: Passage, result: Result, day: datetime.date, today: datetime.date
) -> CheckFinding | None:
    """What is wrong with a sentence on a later day, if anything."""
    claim = result.claim
    assert claim is not None, "only sentences that state a rule come here"
    if (claim.since is not None and day < claim.since) or (claim.until is not None and day >= claim.until):
        return None
    cited = [clause for clause in result.cited if later.books.is_current(clause)]
    gone = [clause for clause in result.cited if not later.books.is_current(clause)]
    verdict, _ = later.weigh(claim, passage.contexts, cited, passage.text)
    severity: Severity = "error" if day <= today else "warning"
    when = f"From {say_date(day)} this is not so any more"
    if gone and not cited:
        fault = later.books.gone(gone[0])
        found = later._fault(passage, fault, claim)
        said = f"From {say_date(day)} {later.books.fate(gone[0])}."
        return msgspec.structs.replace(
            found, severity=severity, code="changes", message=said, since=day, cause=fault.cause
        )
    if verdict.kind in ("false", "partly") and verdict.code != "open-conflict":
        found = later.of_verdict(passage, verdict, passage.text, day)
        return msgspec.structs.replace(
            found,
            severity=severity,
            code="changes",
            message=f"{when}. {verdict.message}",
            cause=verdict.message,
        )
    return None
