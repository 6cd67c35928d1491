"""Why one rule goes before another."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Principle
from kb.wording.labels import clause_reference, edition_reference, rule_reference


def say_principle(lookup: Lookup, principle: Principle, winner: str, loser: str) -> str:
    """Why one rule beats another: "higher authority: Board of Lights over Station Keeper"."""
    one, other = lookup.rules[winner], lookup.rules[loser]
    if principle == "authority":
        names = [lookup.authorities[rule.authority].label for rule in (one, other)]
        return f"higher authority: {names[0]} over {names[1]}"
    if principle == "edition":
        editions = [edition_reference(lookup, lookup.clauses[rule.clause].edition) for rule in (one, other)]
        return f"later edition: {editions[0]} over {editions[1]}"
    if principle == "delegation":
        if one.delegation is None:
            return "made under a delegation"
        delegation = lookup.delegations[one.delegation]
        to = lookup.authorities[delegation.to].label
        return f"made under the delegation of {clause_reference(lookup, delegation.clause)} to the {to}"
    if principle == "exception":
        return "an exception to it"
    return "more specific: all of its cases lie inside those of the other"


def say_defeat(lookup: Lookup, principle: Principle, winner: str, loser: str) -> str:
    """ "4.12 gives way to 5.1, an exception to it", with full references."""
    names = [rule_reference(lookup, loser), rule_reference(lookup, winner)]
    if names[0] == names[1]:
        names = [f"“{lookup.rules[loser].modality.replace('_', ' ')}” of {names[0]}", "the other rule there"]
    mark = "," if principle == "exception" else ":"
    return f"{names[0]} gives way to {names[1]}{mark} {say_principle(lookup, principle, winner, loser)}"
