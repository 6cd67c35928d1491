"""Local rules: whether the delegation that a sentence names lets a station say so."""

from __future__ import annotations

from collections.abc import Sequence

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.truth import Ruling
from kb.guidance.checking.verdicts import TRUE, Verdict, Weighing
from kb.model.conditions import Condition
from kb.model.records import Clause, Delegation, Rule
from kb.wording import clause_reference, listing


def weigh_local(
    weighing: Weighing,
    claim: Claim,
    contexts: Sequence[Condition],
    cited: Sequence[Clause],
    stale: Sequence[Clause],
) -> Verdict:
    """The verdict on a local rule: true if a cited delegation covers all that it departs from."""
    lookup = weighing.lookup
    if not cited and not stale:
        message = "A local rule has to name the delegation that it rests on."
        return Verdict(
            "false", "no-delegation", message, suggestion="Name the clause that delegates, or take it out."
        )
    here = {clause.id for clause in cited}
    delegations = [d for d in lookup.base.delegations if d.clause in here]
    if not delegations and cited:
        names = listing([clause_reference(lookup, clause.id) for clause in cited])
        giving = dict.fromkeys(
            clause_reference(lookup, d.clause)
            for d in lookup.base.delegations
            if weighing.books.is_current(lookup.clauses[d.clause])
        )
        message = f"{names} delegates nothing to a lower authority."
        return Verdict(
            "false", "no-delegation", message, suggestion=f"Delegations are in {listing(list(giving))}."
        )
    within = contexts[0]
    ruling = weighing.judge.judge(claim, within)
    if ruling.holds:
        return TRUE
    departed = _departed(weighing, claim, ruling)
    above = [rule for rule in departed if any(_is_above(weighing, rule, d) for d in delegations)]
    beyond = [rule for rule in above if not any(_covers(weighing, d, rule, claim) for d in delegations)]
    if not beyond:
        return TRUE
    rule = beyond[0]
    name = clause_reference(lookup, rule.clause)
    given = listing(list(dict.fromkeys(clause_reference(lookup, d.clause) for d in delegations)))
    if rule.non_derogable:
        message = f"Nobody may depart from {name}."
    elif any(_reaches(weighing, d, rule) for d in delegations):
        message = f"{given} lets a station be stricter than {name}, not more lenient."
    else:
        message = f"{given} does not let a station depart from {name}."
    return Verdict("false", "outside-delegation", message, rule, tuple(beyond), weighing.said(rule, within))


def _departed(weighing: Weighing, claim: Claim, ruling: Ruling) -> list[Rule]:
    """The rules of the books that a claim is against, in some of its cases."""
    rules = weighing.lookup.rules
    found = dict.fromkeys(name for instance in ruling.against() for name in instance.rules)
    against = (
        ("must", "must_not")
        if claim.modality in ("may", "need_not")
        else ("may", "need_not", "must", "must_not")
    )
    departed = [rules[name] for name in found if rules[name].modality in against and not rules[name].residual]
    return [rule for rule in departed if not weighing.judge.says(rule, claim)]


def _is_above(weighing: Weighing, rule: Rule, delegation: Delegation) -> bool:
    """Whether a rule is of a higher authority than the one that a delegation is for."""
    rank = {name: authority.rank for name, authority in weighing.lookup.authorities.items()}
    return rank[rule.authority] < rank[delegation.to]


def _reaches(weighing: Weighing, delegation: Delegation, rule: Rule) -> bool:
    if not delegation.clauses:
        return True
    lookup = weighing.lookup
    waiting, seen = [rule.clause], set()
    while waiting:
        clause = waiting.pop()
        if clause in delegation.clauses:
            return True
        if clause not in seen:
            seen.add(clause)
            waiting += lookup.clauses[clause].replaces
    return False


def _covers(weighing: Weighing, delegation: Delegation, rule: Rule, claim: Claim) -> bool:
    """Whether a delegation lets a claim depart from a rule."""
    if rule.non_derogable or not _reaches(weighing, delegation, rule):
        return False
    if delegation.allows == "stricter" and claim.modality not in ("must", "must_not"):
        return False
    lookup = weighing.lookup
    return not delegation.items or all(
        any(allowed in lookup.broader(item) for allowed in delegation.items) for item in claim.scope.items
    )
