"""What is left off beside a thing that may be worn: "the tunic without the shirt", "the shirt alone".

The thing may well be worn; what is said to be missing must be. So the answer is of that: "No: the shirt must
be worn."
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

import msgspec

from kb.answer.acts import act_part
from kb.answer.common import Part
from kb.model.conditions import tests
from kb.model.questions import Query, Verdict
from kb.model.values import NO, YES
from kb.reasoner import WORN, Engine, possible_facts
from kb.wording.unless import ordinary, usually

_WORN = frozenset({"garment", "accessory"})


def lacking(engine: Engine, query: Query, part: Part, carried: Collection[str]) -> Query | None:
    """Whether one may go without what a question says is not worn beside its own thing, where one may not.

    `carried` are facts that the question does not say itself.
    """
    if query.kind != "may" or query.polarity != "do" or query.aspect != "wear" or query.value is not None:
        return None
    if _ordinarily(engine, query, part) in ("prohibited", "conflict"):
        return None
    lookup = engine.lookup
    said = [fact for fact, values in query.case.facts if fact.startswith(WORN) and values == NO]
    left = [fact[len(WORN) :] for fact in said if fact not in carried]
    single = (item for item in left if item in lookup.items and len(lookup.narrower(item)) == 1)
    asked = (_without(query, item) for item in single)
    found = (one for one in asked if _ordinarily(engine, one, _part(engine, one)) == "required")
    return next(found, None) or (next(_required_beside(engine, query), None) if query.case.alone else None)


def _required_beside(engine: Engine, query: Query) -> Iterator[Query]:
    """What must ordinarily be worn with a thing that is said to be worn alone, what is most like it first.

    Where no rig is known only what must be worn because it is; who says "alone" takes off no boots.
    """
    from kb.answer.lists import listed_items  # noqa: PLC0415  only of what is worn alone

    lookup, item = engine.lookup, query.items[0]
    rig = any(lookup.facts[fact].family == "rig" for fact, _ in query.case.facts)
    own, above = {*lookup.broader(item), *lookup.narrower(item)}, {*lookup.broader(item)}
    if not above & _WORN:
        return
    others = [
        other
        for other in listed_items(engine, "wear")
        if other not in own and _WORN.intersection(lookup.broader(other)) and len(lookup.narrower(other)) == 1
    ]
    for other in sorted(others, key=lambda one: len(above ^ {*lookup.broader(one)})):
        without = _without(query, other)
        found = _part(engine, without)
        if _ordinarily(engine, without, found) == "required" and (rig or _rests_on(engine, found, item)):
            yield without


def _rests_on(engine: Engine, part: Part, item: str) -> bool:
    """Whether a rule that decides tests that the thing is worn."""
    facts = {
        test.fact
        for case in part.cases
        for rule in case.rules
        for test in tests(engine.lookup.rules[rule].condition)
    }
    return WORN + item in facts


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
    said = usually(engine.lookup, query.case.as_of, query.case.facts)
    usual = ordinary(engine.lookup, [(case.when, case.verdict) for case in part.cases], said)
    return part.cases[usual].verdict if usual is not None else "conditional"
