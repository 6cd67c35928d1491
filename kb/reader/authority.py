"""Who may change a rule: "can the Master change the gloves", "who can vary it", "is there a way round it"."""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, Delegation
from kb.reader.pieces import Understood
from kb.text import Pattern

_CHANGES = Pattern(
    r"\b(?:chang(?:e|es|ed|ing)|var(?:y|ies|ied|ying)|depart(?:s|ed)?|deviat\w+|relax\w*|waiv(?:e|es|ed|ing)|"
    r"excus(?:e|es|ed|ing)|exempt\w*|dispense with|overrid\w+|overrul\w+|loosen\w*|tighten\w*|exceptions?|"
    r"a say|any say|the say|last word|final say|whose word|way (?:round|around|out of|past)|stricter|lenient|"
    r"get (?:round|around|out of)|let (?:us|me|him|her|them|anyone|people|members) off|leave (?:for|to)|"
    r"power (?:to|over)|powers|(?:something|anything) (?:other than|else|but|different)|"
    r"(?:rule|order) otherwise)\b"
)
_EXCUSES = Pattern(r"\b(?:excus\w+|exempt\w*|waiv\w+|dispense|overr\w+|say|way|off|out of|leave|relax\w*)\b")
_WHO = frozenset({"who", "authority"})
_ANYONE = frozenset({"anyone", "anybody", "someone", "somebody"})


def asked_authority(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The one clause that lets somebody depart from what is named, or lets nobody; None without one."""
    said = " ".join(token.low for token in found.tokens)
    tags = {piece.tag for piece in found.pieces}
    asks = tags & _WHO or any(token.low in _ANYONE for token in found.tokens)
    if not asks or not _CHANGES.search(said):
        return None
    named = {piece.arg for piece in found.pieces if piece.tag == "authority"}
    things = {entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries}
    if not named and not things:
        return None
    clauses = {d.clause for d in lookup.base.delegations if _lets(d, named, things, lookup)}
    current = [clause for clause in clauses if _in_force(lookup.clauses[clause], case)]
    if not current and things and _EXCUSES.search(said):
        current = list(dict.fromkeys(_kept(things, case, lookup)))
    return Query(kind="source", clause=current[0], case=case) if len(current) == 1 else None


def _in_force(clause: Clause, case: Case) -> bool:
    day = case.as_of
    return clause.valid_from <= day and (clause.valid_until is None or day < clause.valid_until)


def _lets(delegation: Delegation, named: set[str], things: set[str], lookup: Lookup) -> bool:
    """Whether it lets those named (anybody, if nobody is) depart as to the things (anything, if none is)."""
    if named and delegation.to not in named:
        return False
    if not things:
        return True
    if delegation.items:
        return any(things.intersection(lookup.broader(item)) for item in delegation.items)
    related = {near for thing in things for near in lookup.narrower(thing)} | things
    return any(
        rule.clause in delegation.clauses and related.intersection(rule.scope.items)
        for rule in lookup.base.rules
    )


def _kept(things: set[str], case: Case, lookup: Lookup) -> Iterator[str]:
    """Clauses on the things from which nobody may depart."""
    for rule in lookup.base.rules:
        kept = rule.non_derogable and things.intersection(rule.scope.items)
        if kept and _in_force(lookup.clauses[rule.clause], case):
            yield rule.clause
