"""Why a rule of a lower authority may, or may not, depart from one of a higher.

The reasoner only needs to know whether; a writer needs to know why not. A test compares the two.
"""

from __future__ import annotations

from typing import Literal

from kb.audit.law import Law
from kb.model.lookup import Lookup
from kb.model.records import Delegation, Rule, is_in_force
from kb.wording import clause_reference, listing, the_item

Fault = Literal[
    "non-derogable",
    "no-delegation",
    "delegation-ended",
    "outside-delegation",
    "stricter-only",
    "delegation-not-granted",
]


def claim_faults(law: Law, rule: Rule) -> tuple[Fault, ...]:
    """What is wrong with the delegation that a rule names, whatever it departs from."""
    if rule.delegation is None:
        return ()
    lookup, delegation = law.lookup, law.lookup.delegations[rule.delegation]
    clause = lookup.clauses[delegation.clause]
    found: list[Fault] = []
    if not is_in_force(clause, law.day):
        found.append("delegation-ended")
    ranks = lookup.authorities
    if ranks[rule.authority].rank > ranks[delegation.to].rank:
        found.append("delegation-not-granted")
    if delegation.allows == "stricter" and rule.modality in ("may", "need_not"):
        found.append("stricter-only")
    if delegation.items and not all(
        any(allowed in lookup.broader(item) for allowed in delegation.items) for item in rule.scope.items
    ):
        found.append("outside-delegation")
    return tuple(found)


def departure_fault(law: Law, rule: Rule, other: Rule) -> Fault | None:
    """Why a rule may not depart from another of a higher authority; None where it may."""
    if other.non_derogable:
        return "non-derogable"
    if rule.delegation is None:
        return "no-delegation"
    faults = claim_faults(law, rule)
    if faults:
        return faults[0]
    lookup, delegation = law.lookup, law.lookup.delegations[rule.delegation]
    if delegation.clauses and not _stands_for(lookup, other.clause, delegation.clauses):
        return "outside-delegation"
    giver = lookup.books[lookup.editions[lookup.clauses[delegation.clause].edition].book].authority
    if lookup.authorities[giver].rank > lookup.authorities[other.authority].rank:
        return "delegation-not-granted"
    return None


def _stands_for(lookup: Lookup, clause: str, named: tuple[str, ...]) -> bool:
    """Whether a clause is one of those named, or has come in the place of one of them."""
    replaced = lookup.clauses[clause].replaces
    return clause in named or any(_stands_for(lookup, earlier, named) for earlier in replaced)


def say_fault(lookup: Lookup, fault: Fault, rule: Rule, other: Rule | None) -> str:
    """The fault as a clause that follows "because" or a colon."""
    target = clause_reference(lookup, other.clause) if other else "a clause of a higher authority"
    if fault == "non-derogable":
        return f"no lower authority may depart from {target}"
    if fault == "no-delegation" or rule.delegation is None:
        return f"no delegation is named that would let it depart from {target}"
    delegation = lookup.delegations[rule.delegation]
    source = clause_reference(lookup, delegation.clause)
    if fault == "delegation-ended":
        return f"the delegation of {source} is not in force"
    if fault == "stricter-only":
        return f"the delegation of {source} only lets a rule be stricter, and this one permits or exempts"
    if fault == "delegation-not-granted":
        to = lookup.authorities[delegation.to].label
        return f"the delegation of {source} to the {to} does not reach so far"
    return f"the delegation of {source} covers {_covered(lookup, delegation)}, not {target}"


def _covered(lookup: Lookup, delegation: Delegation) -> str:
    clauses = [clause_reference(lookup, clause) for clause in delegation.clauses]
    items = [the_item(lookup, item) for item in delegation.items]
    parts = [*([listing(clauses)] if clauses else []), *([f"only {listing(items)}"] if items else [])]
    return " and ".join(parts) or "nothing"


REMEDIES: dict[Fault, str] = {
    "non-derogable": "Remove the rule, or ask {authority} to change its clause.",
    "no-delegation": "Name the delegation with under:, or ask {authority} for one, or remove the rule.",
    "delegation-ended": "Name a delegation that is in force, or ask {authority} for one.",
    "outside-delegation": "Ask {authority} to widen the delegation, or remove the rule.",
    "stricter-only": "Make the rule stricter, or remove it, or ask {authority} to widen the delegation.",
    "delegation-not-granted": "Ask {authority} to grant the delegation, or remove the rule.",
}
