"""What the sentences leave out together: cases in which a cited rule holds and nothing says so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.measured import apart
from kb.guidance.checking.nearest import difference
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.passages import Passages
from kb.guidance.checking.words import fold
from kb.model.conditions import Condition, all_of, negate
from kb.model.records import Rule
from kb.text import Pattern
from kb.wording import clause_reference, say_rule

_TAKEN = 0.75
_EXCEPTS = Pattern(r"\b(?:unless|except|save|only)\b")


def left_out_findings(checker: Passages, results: Sequence[tuple[Passage, Result]]) -> Iterator[CheckFinding]:
    """A finding at each sentence that says a rule for too few cases, if no other says the rest."""
    weighing = checker.weighing
    judge = weighing.judge
    told = [
        (passage, claim, result.within, result)
        for passage, result in results
        if result.claim is not None and result.within is not None and result.confirmed
        for claim in apart(result.claim)
    ]
    said_so = tuple(dict.fromkeys((claim, bool(result.local)) for _, claim, _, result in told))
    faithful = cache(lambda claim, within: judge.faithful(claim, within, weighing.rules))  # rows repeat
    for passage, claim, within, result in told:
        here = {clause.id for clause in result.cited}
        if result.local or claim.rules or claim.residual or claim.since or claim.until or not here:
            continue
        if claim.scope.alternatives and len(here) > 1:
            continue  # another clause takes a part of the choice away
        own = [rule for rule in faithful(claim, within) if rule.clause in here]
        exact = [r for r in own if judge.implies(all_of([r.condition, within]), claim.condition)]
        if not own or exact:
            continue
        same = [o for o, local in said_so if _alike(o, claim) or (local and _about(o, claim))]
        rule = own[0]
        rest = _rest(judge, rule, same, within)
        if rest is None:
            continue
        left = msgspec.structs.replace(claim, condition=rest)
        ruling = judge.judge(left, within)
        somewhere = any(instance.outcome == "agrees" for instance in ruling.instances)
        if not (ruling.holds if claim.scope.alternatives else somewhere):
            continue
        rest_of_it = checker.citations.find(passage.text).rest
        near = difference(rest_of_it, say_rule(checker.lookup, rule)).ratio
        duty = claim.modality in ("must", "must_not")
        excepts = duty and _EXCEPTS.search(fold(rest_of_it)) is not None
        if checker.left_out == "warning" and not (duty and near >= _TAKEN) and not excepts:
            continue  # a sentence of one's own may speak of some cases only
        name = clause_reference(checker.lookup, rule.clause)
        said = weighing.said(rule, within, cite=False)
        yield finding_at(
            passage,
            "error"
            if excepts
            else checker.left_out,  # an exception that the books do not know relaxes a duty
            "narrower",
            f"{name} says this of more cases: {said}",
            clause=name,
            quotation=weighing.quoted(rule, passage.text),
            suggestion=weighing.said(rule, within),
        )


def _alike(one: Claim, other: Claim) -> bool:
    """Whether two claims say the same of a thing, each in its own cases."""
    return (
        one.modality == other.modality
        and one.aspect == other.aspect
        and one.value.values == other.value.values
        and set(other.scope.items) <= set(one.scope.items)
    )


def _about(one: Claim, other: Claim) -> bool:
    """Whether a local rule is about the same thing, so that its cases are its own."""
    return one.aspect == other.aspect and not set(one.scope.items).isdisjoint(other.scope.items)


def _rest(judge: object, rule: Rule, same: Sequence[Claim], within: Condition) -> Condition | None:
    """The cases of a rule that no claim is about; None if there are none."""
    rest = all_of([rule.condition, *(negate(claim.condition) for claim in same)])
    possible = judge.possible(all_of([rest, within]))  # type: ignore[attr-defined]
    return rest if possible else None
