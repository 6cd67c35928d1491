"""What is left off beside a thing that may be worn: "the tunic without the shirt", "the shirt alone".

The thing may well be worn; what is said to be missing must be. So the answer is of that: "No: the shirt must
be worn."
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

import msgspec

from kb.answer.acts import act_part
from kb.answer.common import Part, replaced
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, AnswerCase, Query, Verdict
from kb.model.values import NO, YES
from kb.reasoner import WORN, Engine, possible_facts
from kb.wording import clause_reference, listing, say_verdict, the_item
from kb.wording.unless import ordinary, usually_in

_WORN = frozenset({"garment", "accessory"})
_MOST, _NOT_ALONE = 4, "Not by itself"


def lacking(engine: Engine, query: Query, part: Part, carried: Collection[str]) -> Query | None:
    """Whether one may go without what a question says is not worn beside its own thing, where one may not.

    `carried` are facts that the question does not say itself.
    """
    if query.kind != "may" or query.polarity != "do" or query.aspect != "wear" or query.value is not None:
        return None
    if _ordinarily(engine, query, part) in ("prohibited", "conflict"):
        return None
    asked = (_without(query, item) for item in _left_off(engine.lookup, query, carried))
    found = (one for one in asked if _must_be_beside(engine, one, _part(engine, one), query.items[0]))
    return next(found, None) or (next(_required_beside(engine, query), None) if query.case.alone else None)


def _must_be_beside(engine: Engine, without: Query, part: Part, item: str) -> bool:
    """Whether what is left off must ordinarily be worn, or in some case because the thing itself is.

    Stockings that go with a skirt, but not in the heat, are what a skirt without them is asked about.
    """
    usual = _ordinarily(engine, without, part)
    due = [case for case in part.cases if case.verdict == "required"]
    return usual == "required" or (usual == "conditional" and any(_rests_on(engine, due, item)))


def _required_beside(engine: Engine, query: Query) -> Iterator[Query]:
    """What must ordinarily be worn with a thing that is said to be worn alone, and has to do with it.

    It is of a kind with it, one duty asks for both to protect the same, or it must be worn because the other
    is: who says "just the gaiter" keeps the boots on.
    """
    kinds = _kinds(engine.lookup, query.items[0])
    for without, found in _others(engine, query):
        akin = kinds & _kinds(engine.lookup, without.items[0]) or _protects_too(engine, query, without, found)
        if akin or any(_rests_on(engine, found.cases, query.items[0])):
            yield without


def _protects_too(engine: Engine, query: Query, without: Query, part: Part) -> bool:
    """Whether one sentence asks for both against the same, as no list of a rig does: plugs and defenders."""
    item, things = query.items[0], engine.lookup.items
    if set(things[item].protects).isdisjoint(things[without.items[0]].protects):
        return False
    duties = [engine.lookup.rules[rule] for case in part.cases for rule in case.rules]
    facts = engine.lookup.facts
    beside = [
        rule
        for rule in engine.lookup.base.rules
        if rule.modality == "must"
        and item in rule.scope.items
        and all(facts[test.fact].family != "rig" for test in tests(rule.condition))
    ]
    return any(one.clause == r.clause and one.condition == r.condition for one in duties for r in beside)


def company_note(engine: Engine, query: Query, carried: Collection[str]) -> tuple[str, ...]:
    """What must be worn, too: in the rig that is known beside a thing that is said to be worn alone, and when
    what is said to be left off ("the turban instead of the helmet")."""
    if not query.case.alone:
        return tuple(_left_notes(engine, query, carried))
    rig = any(engine.lookup.facts[fact].family == "rig" for fact, _ in query.case.facts)
    found = [one for one, part in _others(engine, query) if part.verdict == "required"] if rig else []
    others = [the_item(engine.lookup, one.items[0]) for one in found]
    more = [f"{len(others) - _MOST} more"] if len(others) > _MOST else []
    return (f"{_NOT_ALONE}: {listing([*others[:_MOST], *more])} must be worn, too.",) if others else ()


def said_alone(engine: Engine, query: Query, answer: Answer) -> Answer:
    """The answer about a thing alone, in words that say no more: it may be banned beside others just as well,
    and be worn, but not by itself."""
    headline = answer.headline
    if answer.verdict == "prohibited":
        beside = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, alone=False))
        banned = _part(engine, beside).verdict == "prohibited"
        headline = say_verdict(engine.lookup, "prohibited", beside) if banned else headline
    elif answer.notes and answer.notes[0].startswith(_NOT_ALONE) and headline.startswith("Yes"):
        headline = f"Yes, but not by itself: t{headline.removeprefix('Yes: t').removeprefix('Yes. T')}"
    return replaced(answer, headline=headline)


def _left_notes(engine: Engine, query: Query, carried: Collection[str]) -> Iterator[str]:
    for item in _left_off(engine.lookup, query, carried) if query.polarity == "do" else ():
        without = msgspec.structs.replace(_without(query, item), kind="must", polarity="do")
        part = _part(engine, without)
        table = [(case.when, case.verdict) for case in part.cases]
        rules = [rule for case in part.cases if case.verdict == "required" for rule in case.rules]
        if rules:
            clauses = dict.fromkeys(engine.lookup.rules[rule].clause for rule in rules)
            named = listing([clause_reference(engine.lookup, clause) for clause in clauses])
            facts = [fact for when, _ in table for fact, _ in when]
            said = say_verdict(engine.lookup, part.verdict, without, open_facts=facts, rows=table)
            yield f"Whether {the_item(engine.lookup, item)} must be worn: {said} ({named})"


def _left_off(lookup: Lookup, query: Query, carried: Collection[str]) -> Iterator[str]:
    """The single things that a question says are not worn: without any tie is without each."""
    said = [fact for fact, values in query.case.facts if fact.startswith(WORN) and values == NO]
    left = (fact[len(WORN) :] for fact in said if fact not in carried)
    asked = set(query.items)  # a hood instead of any hat is one of them
    kinds = (lookup.narrower(item) for item in left if item in lookup.items)
    single = (one for kind in kinds if asked.isdisjoint(kind) for one in kind)
    return (item for item in dict.fromkeys(single) if len(lookup.narrower(item)) == 1)


def _others(engine: Engine, query: Query) -> Iterator[tuple[Query, Part]]:
    """The other things that must ordinarily be worn, each as the question whether one may go without it."""
    from kb.answer.lists import listed_items  # noqa: PLC0415  only of what is worn alone

    lookup, item = engine.lookup, query.items[0]
    own = {*lookup.broader(item), *lookup.narrower(item)}
    for other in listed_items(engine, "wear"):
        if other in own or len(lookup.narrower(other)) > 1 or not _WORN.intersection(lookup.broader(other)):
            continue
        without = _without(query, other)
        found = _part(engine, without)
        if _ordinarily(engine, without, found) == "required":
            yield without, found


def _kinds(lookup: Lookup, item: str) -> set[str]:
    """The kinds of a thing below those that all things worn are of."""
    return {kind for kind in lookup.broader(item)[1:] if not set(lookup.items[kind].broader) <= {"anything"}}


def _rests_on(engine: Engine, cases: Iterable[AnswerCase], item: str) -> Iterator[bool]:
    """Of each test of the rules that decide, whether it is that the thing is worn."""
    for case in cases:
        for rule in case.rules:
            yield from (test.fact == WORN + item for test in tests(engine.lookup.rules[rule].condition))


def _without(query: Query, item: str) -> Query:
    """ "May one go without it", with the thing asked about worn."""
    facts = {fact: values for fact, values in query.case.facts if fact != WORN + item}
    facts.update((WORN + other, YES) for other in query.items)
    case = msgspec.structs.replace(query.case, facts=tuple(facts.items()), alone=False)
    return msgspec.structs.replace(query, items=(item,), polarity="not", case=case)


def _part(engine: Engine, query: Query) -> Part:
    possible = possible_facts(query.case, query.items, False, engine.lookup)
    return act_part(engine, query.items[0], query.aspect, possible)


def _ordinarily(engine: Engine, query: Query, part: Part) -> Verdict:
    """The verdict, of a table that of its ordinary row."""
    if part.verdict != "conditional":
        return part.verdict
    said = usually_in(engine.lookup, query)
    usual = ordinary(engine.lookup, [(case.when, case.verdict) for case in part.cases], said)
    return part.cases[usual].verdict if usual is not None else "conditional"
