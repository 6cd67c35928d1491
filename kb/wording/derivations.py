"""Why: the chain of rules behind an answer, line by line."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Derivation, Principle, RuleStep
from kb.wording.cases import say_facts
from kb.wording.english import listing, phrase
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


def say_derivation_chain(
    lookup: Lookup, derivation: Derivation, *, everything: bool = False
) -> tuple[str, ...]:
    """Lines for "why": the rules that applied, those that gave way and to what, those set aside.

    With `everything` also the rules that did not apply, with what kept them out.
    """
    lines: list[str] = []
    if derivation.when:
        lines.append(f"Taking it that {say_facts(lookup, derivation.when)}:")
    lines += [_applied(lookup, step) for step in derivation.steps if step.status == "applies"]
    lines += [
        f"{say_defeat(lookup, defeat.principle, defeat.winner, defeat.loser)}."
        for defeat in derivation.defeats
    ]
    lines += [_set_aside(lookup, step) for step in derivation.steps if step.status == "disabled"]
    if everything:
        kept = ("does_not_apply", "not_in_force", "depends")
        lines += [_kept_out(lookup, step) for step in derivation.steps if step.status in kept]
    return tuple(lines)


def _applied(lookup: Lookup, step: RuleStep) -> str:
    because = f" Here {say_facts(lookup, step.facts)}." if step.facts else ""
    return f"{clause_reference(lookup, step.clause)} applies: {step.statement}{because}"


def _set_aside(lookup: Lookup, step: RuleStep) -> str:
    by = listing(list(dict.fromkeys(rule_reference(lookup, rule) for rule in step.disabled_by)))
    return phrase(clause_reference(lookup, step.clause), "is set aside", f"by {by}" if by else "") + "."


def _kept_out(lookup: Lookup, step: RuleStep) -> str:
    reference = clause_reference(lookup, step.clause)
    if step.status == "not_in_force":
        return f"{reference} is not in force: {step.statement}"
    if step.status == "depends":
        return f"{reference} applies in some of the cases: {step.statement}"
    because = f" because {say_facts(lookup, step.facts)}" if step.facts else ""
    return f"{reference} does not apply{because}: {step.statement}"
