"""Local rules that relax or override what they may not, and those that give way in part."""

from __future__ import annotations

from collections.abc import Collection, Sequence

import msgspec

from kb.audit.conflicts import Opposition
from kb.audit.examples import question, smallest_case
from kb.audit.findings import Finding
from kb.audit.law import Law
from kb.audit.standing import REMEDIES, Fault, claim_faults, departure_fault, say_fault
from kb.model.conditions import all_of
from kb.model.lookup import Lookup
from kb.model.records import Rule, is_in_force
from kb.wording import clause_reference, say_facts, say_rule, sentence


class Overstep(msgspec.Struct, frozen=True):
    """A rule goes beyond what its authority may decide; `other` is what it departs from, if anything.

    `claimed` if the rule itself says that it does, by an exception, a disabling or a delegation.
    """

    rule: str
    fault: Fault
    other: str | None = None
    claimed: bool = True


def claimed_oversteps(law: Law) -> list[Overstep]:
    """Rules that claim a power (an exception, a disabling, a delegation) that they do not have."""
    found = []
    lookup = law.lookup
    for rule in law.rules:
        rank = lookup.authorities[rule.authority].rank
        for target in (*rule.exception_to, *rule.disables):
            other = lookup.rules[target]
            higher = lookup.authorities[other.authority].rank < rank
            if not higher or not is_in_force(other, law.day):
                continue
            fault = departure_fault(law, rule, other)
            if fault is not None:
                found.append(Overstep(rule.id, fault, target))
                break
        else:
            found += [Overstep(rule.id, fault) for fault in claim_faults(law, rule)[:1]]
    return found


def beaten_oversteps(law: Law, everything: Sequence[Opposition], dead: Collection[str]) -> list[Overstep]:
    """Rules without any effect because a higher authority has ruled otherwise."""
    found = []
    for pair in everything:
        if pair.principle == "authority" and pair.loser in dead:
            loser, winner = law.lookup.rules[pair.loser], law.lookup.rules[pair.winner]
            fault = departure_fault(law, loser, winner)
            if fault is not None:
                found.append(Overstep(loser.id, fault, winner.id, claimed=False))
    return found


def overstep_findings(lookup: Lookup, found: Sequence[Overstep]) -> list[Finding]:
    """One finding for each rule as written (several rules of one entry share a place)."""
    best: dict[tuple[str, int, int], Overstep] = {}
    for step in found:
        at = lookup.rules[step.rule].at
        place = (at.file, at.line, at.column)
        if place not in best or _weight(step) < _weight(best[place]):
            best[place] = step
    return [_finding(lookup, step) for step in best.values()]


def _weight(step: Overstep) -> tuple[bool, bool, str, str]:
    """What is said of a rule with several faults: the clause that nobody may depart from goes first."""
    return step.fault != "non-derogable", step.other is None, step.other or "", step.rule


def _finding(lookup: Lookup, step: Overstep) -> Finding:
    rule = lookup.rules[step.rule]
    other = lookup.rules[step.other] if step.other else None
    reference = clause_reference(lookup, rule.clause)
    above = _authority_above(lookup, rule, other)
    does = _does(rule, other)
    against = f" “{say_rule(lookup, other)}”" if other else ""
    return Finding(
        at=rule.at,
        code=step.fault,
        severity="error",
        clause=rule.clause,
        reference=reference,
        rules=(rule.id, *([other.id] if other else [])),
        message=sentence(f"{reference} {does}{against}, but {say_fault(lookup, step.fault, rule, other)}"),
        suggestion=REMEDIES[step.fault].format(authority=above),
        settled_by=above,
    )


def _does(rule: Rule, other: Rule | None) -> str:
    if other is None:
        return "claims a delegation"
    return "relaxes" if rule.modality in ("may", "need_not") else "overrides"


def _authority_above(lookup: Lookup, rule: Rule, other: Rule | None) -> str:
    if other is not None:
        return lookup.authorities[other.authority].label
    clause = lookup.clauses[lookup.delegations[rule.delegation].clause] if rule.delegation else None
    book = lookup.books[lookup.editions[clause.edition].book] if clause else None
    return lookup.authorities[book.authority if book else rule.authority].label


def partial_findings(
    law: Law, everything: Sequence[Opposition], quiet: Collection[str], dated: bool
) -> list[Finding]:
    """Rules that a higher authority overrules in some of their cases only, with one such case."""
    lookup = law.lookup
    findings: dict[tuple[str, str], Finding] = {}
    for pair in everything:
        key = (pair.loser, pair.winner)
        if pair.principle != "authority" or pair.loser in quiet or key in findings:
            continue
        loser, winner = lookup.rules[pair.loser], lookup.rules[pair.winner]
        view = pair.view
        both = all_of(view.applies(norm) for norm, _ in pair.norms)
        case = law.case((both,), view.known)
        if case is None:
            continue
        facts = smallest_case(view, both, case)
        names = [clause_reference(lookup, rule.clause) for rule in (loser, winner)]
        where = say_facts(lookup, facts) if facts else "in every case"
        findings[key] = Finding(
            at=loser.at,
            code="gives-way-in-part",
            severity="warning",
            clause=loser.clause,
            reference=names[0],
            rules=(loser.id, winner.id),
            message=sentence(f"{names[0]} gives way to {names[1]} of a higher authority where {where}"),
            suggestion="Take those cases out of the rule with unless:, so that it promises nothing there.",
            example=question(law, view.item, view.aspect, facts, dated),
            settled_by=lookup.authorities[winner.authority].label,
        )
    return list(findings.values())
