"""Who may change a rule: "can the Master change the gloves", "who can vary it", "is there a way round it"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.records import Case, Clause, Delegation, is_in_force
from kb.model.values import is_subset
from kb.reader.meaning.defined import one_of
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_CHANGES = Pattern(
    r"\b(?:chang(?:e|es|ed|ing)|own way|own rules?|"
    r"var(?:y|ies|ied|ying)|depart(?:s|ed)?|deviat\w+|relax\w*|waiv(?:e|es|ed|ing)|"
    r"excus(?:e|es|ed|ing)|exempt\w*|dispense with|overrid\w+|overrul\w+|loosen\w*|tighten\w*|exceptions?|"
    r"a say|any say|the say|last word|final say|whose word|way (?:round|around|out of|past)|stricter|lenient|"
    r"get (?:round|around|out of)|let (?:us|me|him|her|them|anyone|people|members) off|leave (?:for|to)|"
    r"power (?:to|over)|powers|(?:something|anything) (?:other than|else|but|different)|"
    r"(?:rule|order) otherwise)\b"
)
_ALLOWS = Pattern(
    r"^(?:so |and |but |well )?(?:can|could|may|might|will|would|does|is|has|have)(?: n't| not)? "
    r"(?:the |a |my |our )?(?:\w+ ){1,6}?(?:allow|permit|let|forbid|ban|order)s?\b"
)
_STRICT = Pattern(r"\b(?:forbid|ban|prohibit|strict\w*|tight\w*|tough\w*)\b")
_EXCUSES = Pattern(r"\b(?:excus\w+|exempt\w*|waiv\w+|dispense|overr\w+|say|way|off|out of|leave|relax\w*)\b")
_LETS_OFF = Pattern(
    r"\b(?:excus(?:e|es|ing)|waiv(?:e|es|ing)|exempts?|let (?:\w+ ){1,2}off|release (?:\w+ ){1,2}from"
    r"|leave to (?:wear|have|go|keep))\b"
)
_EXCUSED = Pattern(
    r"^(?:and |so )?(?:who|(?:which|what) \w+) (?:is|'s|are) (?:exempt\w*|excused|let off|relieved|freed)\b"
)
_DONE = Pattern(r"\bwho (?:has |have |'s )?(?:changed|altered|varied|relaxed|waived|overruled)\b")
_WHO = frozenset({"who", "authority"})
_ANYONE = frozenset({"anyone", "anybody", "someone", "somebody"})


def asked_authority(found: Understood, case: Case, lookup: Lookup) -> Query | Ask | None:
    """The clause that lets somebody depart from what is named, or lets nobody; asks which of several."""
    tags = {piece.tag for piece in found.pieces}
    asks = tags & {*_WHO, "which clause"} or any(token.low in _ANYONE for token in found.tokens)
    named = set(_authorities(found, lookup))
    said = " ".join(token.low for token in found.tokens)
    if not (named or asks) or _EXCUSED.search(said) or _DONE.search(said):
        return None  # who is so, or did so, and not who lets them
    things = {entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries}
    rigs = [p for p in found.pieces if p.tag == "fact" and lookup.facts[p.fact].family == "rig"]
    if not things and rigs and (named or asks) and _CHANGES.search(said):
        clauses = [d.clause for d in lookup.base.delegations if _lets_in(d, named, rigs, lookup)]
        current = [clause for clause in dict.fromkeys(clauses) if _in_force(lookup.clauses[clause], case)]
        return one_of(current, case, lookup) if current else None
    allows = named and things and _ALLOWS.search(said)
    alters = named and not things and "alter" in said.split()
    changes = _CHANGES.search(" ".join(_unnamed(found)))
    if not (named or (asks and things)) or not (changes or allows or alters):
        return None
    looser = not named and _LETS_OFF.search(said) is not None  # who may be stricter lets nobody off
    clauses = letting(named, things, case, lookup, looser)
    if named and not clauses:
        clauses = letting(named, _akin(found, lookup), case, lookup, looser)
    if not clauses and things and _EXCUSES.search(said):
        off = _LETS_OFF.search(said) is not None
        clauses = list(dict.fromkeys(_kept(things, case, lookup, off)))
    if allows and "than" in said.split():
        return None  # less than somebody else has ordered
    if allows and len(clauses) != 1:
        clauses = _bounded(named, "stricter" if _STRICT.search(said) else "anything", case, lookup)
    return one_of(clauses, case, lookup) if len(clauses) == 1 or not things else None


def _unnamed(found: Understood) -> Iterator[str]:
    """The words outside the names of facts: "a religious exemption" asks of no exemption from a rule."""
    named = {i for p in found.pieces if p.tag == "fact" for i in range(p.first, p.last)}
    return (token.low for place, token in enumerate(found.tokens) if place not in named)


def _bounded(named: set[str], allows: str, case: Case, lookup: Lookup) -> list[str]:
    """The clauses that say how far those named may depart from others at all, where none is on the things."""
    clauses = [d.clause for d in lookup.base.delegations if d.to in named and d.allows == allows]
    return [clause for clause in dict.fromkeys(clauses) if _in_force(lookup.clauses[clause], case)]


def _authorities(found: Understood, lookup: Lookup) -> Iterator[str]:
    """Who is named, or gives the order that is named, unless nobody stands above them.

    Who has leave to depart from clauses may be named by the last word: "the commander at Hob Lane".
    """
    named = {i for p in found.pieces if p.tag == "fact" for i in range(p.first, p.last)}
    lows = {token.low for place, token in enumerate(found.tokens) if place not in named}
    for to in dict.fromkeys(delegation.to for delegation in lookup.base.delegations):
        heads = {a.id: a.label.casefold().partition(" of ")[0].split()[-1] for a in lookup.base.authorities}
        if heads[to] in lows and list(heads.values()).count(heads[to]) == 1:
            yield to
    for piece in found.pieces:
        if piece.tag == "authority":
            yield piece.arg
        elif piece.tag == "book":
            book = lookup.books.get(piece.arg) or lookup.books[lookup.editions[piece.arg].book]
            if lookup.authorities[book.authority].rank:
                yield book.authority


def letting(named: set[str], things: set[str], case: Case, lookup: Lookup, looser: bool = False) -> list[str]:
    """The clauses in force that let those named (anybody, if nobody is) depart as to the things.

    `looser`: not those that only let them be stricter.
    """
    able = (d for d in lookup.base.delegations if not (looser and d.allows == "stricter"))
    found = [d.clause for d in able if _lets(d, named, things, lookup)]
    return [clause for clause in dict.fromkeys(found) if _in_force(lookup.clauses[clause], case)]


def _akin(found: Understood, lookup: Lookup) -> set[str]:
    """Everything with the last word of what is named: "gloves" are not only what the books mean by it."""
    things = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    keys = {found.tokens[piece.first].key for piece in things if piece.last - piece.first == 1}
    return {i.id for i in lookup.base.items if tokenize(i.label) and tokenize(i.label)[-1].key in keys}


def _in_force(clause: Clause, case: Case) -> bool:
    day = case.as_of
    return is_in_force(clause, day)


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


def _lets_in(delegation: Delegation, named: set[str], rigs: Sequence[Piece], lookup: Lookup) -> bool:
    """Whether it lets somebody named (anybody, if nobody is) depart from clauses on one of the rigs."""
    if named and delegation.to not in named:
        return False
    ruled = [rule for rule in lookup.base.rules if rule.clause in delegation.clauses]
    return any(
        test.fact == piece.fact and piece.values is not None and is_subset(test.values, piece.values)
        for rule in ruled
        for test in tests(rule.condition)
        for piece in rigs
    )


def _kept(things: set[str], case: Case, lookup: Lookup, off: bool = False) -> Iterator[str]:
    """Clauses on the things from which nobody may depart; `off`: people are let off duties only."""
    for rule in lookup.base.rules:
        kept = rule.non_derogable and things.intersection(rule.scope.items)
        bans = off and rule.modality == "must_not" and rule.aspect == "wear"
        if kept and not bans and _in_force(lookup.clauses[rule.clause], case):
            yield rule.clause
