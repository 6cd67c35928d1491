"""Questions for one clause: by its number, by the term it defines, by who grants something."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query
from kb.model.records import Case, Clause, Fact, is_in_force
from kb.model.values import YES
from kb.reader.meaning.frame import Frame
from kb.reader.names.lexicon import CREDENTIALS, joined
from kb.reader.names.spelling import akin
from kb.reader.pieces.parts import Roles
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

GRANTABLE = (*CREDENTIALS, "authorisation")
_GRANTING = ("granted", "authorised", "appointed", "awarded", "approved", "issued", "ordered")


def defining_clause(frame: Frame, roles: Roles, case: Case, lookup: Lookup) -> Query | Ask | None:
    """The clause that the question asks for, where it names one term or one thing that is granted."""
    if roles.asked or roles.worn or roles.unworn or roles.value is not None or len(roles.facts) != 1:
        return None
    (fact, values), *_ = roles.facts.items()
    record = lookup.facts[fact]
    if frame.kind in ("when", "source") and record.family == "term" and values == YES and not roles.aspect:
        return clause_defining(fact, case, lookup)
    granted = roles.granting or record.family == "authorisation"
    if frame.kind == "who" and record.family in GRANTABLE and granted:
        return one_of([clause.id for clause in granting(record, lookup)], case, lookup)
    return None


def clause_defining(term: str, case: Case, lookup: Lookup) -> Query | Ask | None:
    """The clause in force that says what a term is, or which of several is meant."""
    return one_of([d.clause for d in lookup.base.definitions if d.term == term], case, lookup)


_ENDING = (
    r"(?: (?:in|under|by|for|according to) (?:these|the|this|our|your) [a-z ]{3,24}| here| anyway| now)?"
)
_MEANING = tuple(
    Pattern(rf"(?i){asking}{_ENDING}")
    for asking in (
        r"what(?:'s|’s| is| are)? (?:exactly |actually )?(?:is |are )?(?:meant|understood|intended) by (.+?)",
        r"what (?:exactly )?(?:does|do|is|did) (.+?)"
        r" (?:actually |exactly )?(?:mean|means|stand for|refer to)",
        r"what(?:'s|’s| is| are)? the (?:exact )?(?:meaning|definition|sense) of (.+?)",
        r"what (?:exactly )?(?:does|do) (.+?) (?:actually |exactly )?mean,?"
        r" (?:with|for|on|of|at|in|to|under|as|when) .+",
        r"(?:how (?:is|are|do you|does one|would you) )?(?:define|explain) (.+?)",
        r"how (?:is|are) (.+?) defined",
        r"when (?:exactly )?(?:does|do|is|will) (.+?) (?:begin|start|end|finish|over)",
        r"(?:which|what) (?:months?|days?|dates|grades?|ranks?|time of (?:the )?year|part of the year|people)"
        r" (?:is|are|counts? as|belongs? to|makes? up) (.+?)",
        r"(?:is|are) (?:an? |the )?[\w' -]{1,60}? (?:counted as |classed as )?an? (.+?)",
        r"(?:who|what)(?: exactly)? (?:counts?|qualif(?:y|ies)|is classed|is regarded|is treated) as (.+?)",
        r"(?:who|what)(?:'s|’s| is| are)(?: exactly)? (.+?)",
    )
)
_LED_NAME = Pattern(r"(?i)^(?:the|an?|our|your) |^(?:word|term|expression|phrase) ")
_KIND_OF_NAME = Pattern(r"(?i)^(?:word|term|expression|phrase) ")
_DEFINING = (
    r"""["“'‘]({name})["”'’],? (?:is|are|means?|stands? for|covers?|includes?|comprises?|refers? to|has)\b"""
)


def meaning_asked(text: str, case: Case, lookup: Lookup) -> Query | None:
    """The one clause in force that says what some words mean, where the text asks for no more than that."""
    said = " ".join(text.split()).strip(" ?.!").removeprefix("So ").removeprefix("And ")
    for pattern in _MEANING:
        asked = pattern.fullmatch(said)
        if asked is None:
            continue
        name = _KIND_OF_NAME.sub("", _LED_NAME.sub("", asked.group(1))).strip(" \"'“”‘’")
        if name and len(name) < _LONGEST_TERM:
            clause = one_of([clause.id for clause in _that_define(name, lookup)], case, lookup)
            return clause if isinstance(clause, Query) else None
    return None


_LONGEST_TERM, _LADDER = 60, 3


def _that_define(name: str, lookup: Lookup) -> Iterator[Clause]:
    """The clauses that have the words in quotes before what they mean, or are definitions that begin so."""
    key = joined(name)
    quoted = Pattern(_DEFINING.replace("{name}", '[^"“”]{1,60}?'))
    bare = Pattern(rf"(?i)(?:^|[.;:] )(?:an? |the )?{re.escape(name)}s? (?:is|are|means?)\b")
    named = Pattern(r"[\"“]([^\"“”]{1,60})[\"”]")
    for clause in lookup.base.clauses:
        defines = clause.kind == "definition"
        plain = defines and bare.search(clause.text) is not None
        ways = (named if defines else quoted).finditer(clause.text)
        if plain or any(joined(match.group(1)) == key for match in ways):
            yield clause
    if name[-1:].isdigit() or name.isupper():
        yield from _of_the_ladder(name.casefold(), lookup)


def _of_the_ladder(key: str, lookup: Lookup) -> Iterator[Clause]:
    """The clauses that say what a grade written short is: "K6", which may be of "K1 to K7".

    Where no definition does, those that have many grades.
    """
    ladders = [fact for fact in lookup.base.facts if fact.family == "grade"]
    grades = {value.id.casefold() for fact in ladders for value in fact.values}
    if key not in grades:
        return
    told = {True: list[Clause](), False: list[Clause]()}
    for clause in lookup.base.clauses:
        text = clause.text.casefold()
        ranges = (
            f"{letters}{number}"
            for letters, low, high in (match.groups() for match in _RANGE.finditer(text))
            for number in range(int(low), int(high) + 1)
        )
        said = {token.low for token in tokenize(text)} | set(ranges)
        defines = clause.kind in ("definition", "information")
        if key in said and (defines or len(said & grades) > _LADDER):
            told[defines].append(clause)
    yield from told[True] or told[False]


_RANGE = Pattern(r"\b([a-z]+)(\d{1,2}) (?:to|and|-|–) \1(\d{1,2})\b")


def granting(fact: Fact, lookup: Lookup) -> Iterator[Clause]:
    """The clauses that speak of granting something by its name, and of who does it.

    Where none does, those on what is so only when it has been granted.
    """
    names = [[token.key for token in tokenize(label)] for label in (fact.label, *fact.other_labels)]
    heads = {name[-1] for name in names if name}
    found = False
    others: list[Clause] = []  # granted by somebody who makes no rules: "the Doctor may grant"
    for clause in lookup.base.clauses:
        tokens = tokenize(f"{clause.heading or ''}. {clause.text}")
        keys = [token.key for token in tokens]
        if heads.isdisjoint(keys) or not any(holds(keys, name) for name in names):
            continue
        said = [token.low for token in tokens]
        grants = any(akin(word, verb) for word in said for verb in _GRANTING)
        if grants and any(_ends(said, label) for label in _labels(lookup)):
            found = True
            yield clause
        elif grants and fact.family == "waiver":
            others.append(clause)
    if not found:
        yield from others
    if not found and fact.family == "authorisation":
        resting = (r.clause for r in lookup.base.rules if any(t.fact == fact.id for t in tests(r.condition)))
        yield from (lookup.clauses[name] for name in dict.fromkeys(resting))


def _labels(lookup: Lookup) -> Iterator[str]:
    for authority in lookup.base.authorities:
        yield from (authority.label, *authority.other_labels)


def holds(said: list[str], words: list[str]) -> bool:
    return any(said[start : start + len(words)] == words for start in range(len(said) - len(words) + 1))


def _ends(said: list[str], label: str) -> bool:
    """Whether the last word of a label is said: "the Superintendent"."""
    return tokenize(label)[-1].low in said


def one_of(clauses: list[str], case: Case, lookup: Lookup) -> Query | Ask | None:
    """The one clause in force, or which of several is meant."""
    day = case.as_of
    current = [
        clause
        for clause in (lookup.clauses[name] for name in dict.fromkeys(clauses))
        if is_in_force(clause, day)
    ]
    return _shown(current, "Which clause is meant?", case, lookup) if current else None


def find_clause(number: str, book: str, case: Case, lookup: Lookup) -> Query | Ask | Abstain:
    """The clause with a number, of the book or edition named, in force on the day if several are."""
    wanted = number.rstrip(".").casefold()
    found = [
        clause
        for clause in lookup.base.clauses
        if clause.number.casefold() == wanted
        and book in ("", clause.edition, lookup.editions[clause.edition].book)
    ]
    day = case.as_of
    current = [c for c in found if is_in_force(c, day)]
    chosen = current or found[-1:]
    if not chosen:
        numbers = [c.number for c in lookup.base.clauses if c.number.split(".")[0] == wanted.split(".")[0]]
        near = tuple(f"clause {n}" for n in dict.fromkeys(numbers))[:3]
        return Abstain(reason=f"There is no clause {number}.", words=(number,), suggestions=near)
    return _shown(chosen, "Which book is meant?", case, lookup)


def _shown(clauses: Sequence[Clause], prompt: str, case: Case, lookup: Lookup) -> Query | Ask:
    if len(clauses) == 1:
        return Query(kind="source", clause=clauses[0].id, case=case)
    choices = []
    for clause in clauses:
        title = lookup.books[lookup.editions[clause.edition].book].label
        choices.append((f"Show clause {clause.number} of {title}", f"{title}, clause {clause.number}"))
    return Ask(fact="reading", prompt=prompt, choices=tuple(choices))
