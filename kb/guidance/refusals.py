"""Refusals in words: what a local rule does, the principle against it, what would make it possible."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

import msgspec

from kb.audit.standing import Fault, say_fault
from kb.errors import Problem
from kb.guidance.effect import Effect
from kb.model.lookup import Lookup
from kb.model.records import Delegation, Rule
from kb.reasoner import Facts
from kb.wording import clause_reference, definite, listing, say_facts, say_rule, sentence

_PRINCIPLES: dict[Fault, str] = {
    "non-derogable": "from a clause that is not derogable nobody departs",
    "no-delegation": "the higher authority goes first, unless it has delegated the matter",
    "delegation-ended": "a delegation holds only while its clause is in force",
    "outside-delegation": "a delegation reaches as far as its clause says and no farther",
    "stricter-only": "under a delegation to be stricter nothing is permitted, exempted or turned round",
    "delegation-not-granted": "a delegation serves the authority that it names, and those above it",
}


class Departure(msgspec.Struct, frozen=True):
    """A rule above (`other`) from which a local one departs, and why it may not; `facts` are one such case.

    `against` says that the two oppose each other; otherwise the local one is stricter.
    """

    other: str
    fault: Fault
    relaxed: bool
    against: bool
    facts: Facts


class Judge(Protocol):
    """What wording needs of the one who judges."""

    lookup: Lookup

    def delegation_for(self, rule: Rule, above: Rule | None) -> Delegation | None: ...


def departs(judge: Judge, rule: Rule, found: Departure) -> Problem:
    """A rule relaxes, overrides or tightens one above it."""
    lookup = judge.lookup
    other = lookup.rules[found.other]
    does = "relaxes" if found.relaxed else "overrides" if found.against else "is stricter than"
    where = f", for example where {say_facts(lookup, found.facts)}" if found.facts else ""
    why = say_fault(lookup, found.fault, rule, other)
    if found.fault == "stricter-only" and not found.relaxed:
        why = "the delegation that it names only lets it be stricter, not turn the duty round"
    above = f"{clause_reference(lookup, other.clause)}, “{say_rule(lookup, other)}”"
    message = f"{_own(lookup, rule)} {does} {above}{where}, but {why}"
    turned = found.against and other.modality in ("must", "must_not")
    allows = "anything" if found.relaxed or turned else "stricter"
    return _problem(rule, found.fault, message, _remedy(judge, rule, other, found.fault, allows))


def unnamed(judge: Judge, rule: Rule) -> Problem:
    """A rule rests on no delegation at all."""
    message = f"{_own(judge.lookup, rule)} names no delegation that it rests on"
    return _problem(rule, "no-delegation", message, _remedy(judge, rule, None, "no-delegation", _least(rule)))


def beyond_reach(judge: Judge, rule: Rule, fault: Fault) -> Problem:
    """A rule names a delegation that does not carry it."""
    lookup = judge.lookup
    why = say_fault(lookup, fault, rule, None)
    if fault == "outside-delegation" and rule.delegation:
        delegation = lookup.delegations[rule.delegation]
        named = [clause_reference(lookup, clause) for clause in delegation.clauses]
        why = (
            f"the delegation of {clause_reference(lookup, delegation.clause)} covers {listing(named)}, "
            "and no rule of theirs is about this"
            if named
            else f"the delegation of {clause_reference(lookup, delegation.clause)} covers other things"
        )
    message = f"{_own(lookup, rule)} cannot rest on its delegation: {why}"
    return _problem(rule, fault, message, _remedy(judge, rule, None, fault, _least(rule)))


def unsettled_problem(judge: Judge, rule: Rule, rules: Sequence[str], facts: Facts) -> Problem:
    """A rule opposes another of equal weight."""
    lookup = judge.lookup
    others = [lookup.rules[name] for name in rules if name != rule.id]
    said = (
        listing([f"{clause_reference(lookup, o.clause)}, “{say_rule(lookup, o)}”" for o in others])
        or "itself"
    )
    where = f" where {say_facts(lookup, facts)}" if facts else ""
    message = f"{_own(lookup, rule)} opposes {said}{where}, and nothing settles which goes first"
    remedy = "Make one of them an exception to the other with exception to:, or narrow one with unless:."
    return Problem(rule.at, "unsettled", sentence(message), remedy)


def no_effect(lookup: Lookup, rule: Rule, effect: Effect) -> Problem:
    """A rule says nothing new, or never applies."""
    if not effect.applies:
        message = f"{_own(lookup, rule)} never applies to anybody whom the plan is for"
        return Problem(
            rule.at, "never-applies", sentence(message), "Correct its condition, or remove the rule."
        )
    ranks = lookup.authorities
    others = [lookup.rules[name] for name in effect.others]
    above = [o for o in others if ranks[o.authority].rank < ranks[rule.authority].rank]
    others = above or others
    names = list(dict.fromkeys(clause_reference(lookup, other.clause) for other in others))
    said = listing(names[:3]) or "the rule books"
    message = (
        f"{_own(lookup, rule)} repeats what {said} {'say' if len(names) > 1 else 'says'} already. "
        "What a higher authority has said is cited, not made again, so that it changes with its book"
    )
    return Problem(
        rule.at, "repeats", sentence(message), "Remove the rule: the draft cites the clause by itself."
    )


def _own(lookup: Lookup, rule: Rule) -> str:
    return f"The local clause {lookup.clauses[rule.clause].number}, “{say_rule(lookup, rule)}”,"


def _problem(rule: Rule, fault: Fault, message: str, remedy: str) -> Problem:
    return Problem(rule.at, fault, f"{sentence(message)} The principle: {_PRINCIPLES[fault]}.", remedy)


def _least(rule: Rule) -> str:
    return "anything" if rule.modality in ("may", "need_not") else "stricter"


def _remedy(judge: Judge, rule: Rule, other: Rule | None, fault: Fault, allows: str) -> str:
    """Which authority, by which delegation, could make the rule possible."""
    lookup = judge.lookup
    giver = definite(lookup.authorities[other.authority].label) if other else _top(lookup)
    target = clause_reference(lookup, other.clause) if other else "the matter"
    if fault == "non-derogable":
        return f"Remove the rule. No delegation can reach {target}; only {giver} could change the clause."
    known = judge.delegation_for(rule, other)
    if known is not None and known.id != rule.delegation:
        return f"Write under: {known.id} ({clause_reference(lookup, known.clause)} lets the station do this)."
    to = definite(lookup.authorities[rule.authority].label)
    return (
        f"Remove the rule, or ask {giver} for a delegation to {to} that names {target} "
        f"(allows: {allows}), and name it with under:."
    )


def _top(lookup: Lookup) -> str:
    return definite(min(lookup.authorities.values(), key=lambda a: a.rank).label)
