"""The rig of the question before, which is not that of what goes on now: "at the gala?", after day dress."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

import msgspec

from kb.model.conditions import AllOf, AnyOf, Condition, Test, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.questions import Query, Reading
from kb.model.records import is_in_force
from kb.model.values import NO, Choices, ValueSet, intersect, is_empty, is_subset
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.pointing import is_place
from kb.reader.talks.talked import Talk
from kb.wording import say_query


def out_of_that_rig(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A reading without the rig that was told before, where rules put people into another for what is new."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None:
        return reading
    old, known = dict(before.case.facts), dict(query.case.facts)
    new = {f for f, v in known.items() if old.get(f) != v and lookup.facts[f].family == "situation"}
    new -= {fact for fact in new if known[fact] == NO or months_of(lookup.facts[fact])}
    kept = [
        fact
        for fact, values in known.items()
        if lookup.facts[fact].family == "rig" and old.get(fact) == values and isinstance(values, Choices)
    ]
    named = {span.target for span in reading.spans}
    if not new or len(kept) != 1 or kept[0] in named or kept[0] in dict(talk.case.facts):
        return reading
    rig = known.pop(kept[0])
    worn = set(_worn_for({fact: old.get(fact) for fact in new}, known, kept[0], query, lookup))
    own = rig.members if isinstance(rig, Choices) else frozenset()
    if not worn or not worn.isdisjoint(own) or _is_worn_then(new, known, kept[0], own, lookup):
        return reading
    case = msgspec.structs.replace(query.case, facts=tuple(known.items()))
    asked = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def out_of_that_place(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A reading without the place told before, where all rules on the thing that ask for what is new are of
    another: "and over an open tank?", after an enclosure, where only an order of the pool house has tanks.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or not query.items:
        return reading
    old, known = dict(before.case.facts), dict(query.case.facts)
    named = {span.target for span in reading.spans} | {*dict(talk.case.facts)}
    here = [f for f, v in known.items() if old.get(f) == v and f not in named and is_place(f, v, lookup)]
    new = {f for f, v in known.items() if old.get(f) != v and lookup.facts[f].family == "situation"}
    if len(here) != 1 or not new:
        return reading
    place = here[0]
    asking = [
        {test.fact: test.values for test in _asserted(rule.condition)}
        for rule in rules_of_aspect(query.items, query.aspect, lookup)
        if is_in_force(rule, query.case.as_of)
    ]
    asking = [told for told in asking if any(f in told and is_subset(known[f], told[f]) for f in new)]
    if not asking or not all(
        place in told and is_empty(intersect(told[place], known[place])) for told in asking
    ):
        return reading
    facts = tuple((fact, values) for fact, values in known.items() if fact != place)
    asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def _is_worn_then(
    new: Collection[str], known: Mapping[str, ValueSet], rig: str, own: frozenset[str], lookup: Lookup
) -> bool:
    """Whether a rule speaks of the rig of before in the new circumstances."""
    for rule in lookup.base.rules:
        told = {test.fact: test.values for test in _asserted(rule.condition)}
        worn = told.get(rig)
        in_it = isinstance(worn, Choices) and not worn.complement and bool(worn.members & own)
        if in_it and any(fact in told and is_subset(known[fact], told[fact]) for fact in new):
            return True
    return False


def _worn_for(
    new: Mapping[str, ValueSet | None], known: Mapping[str, ValueSet], rig: str, query: Query, lookup: Lookup
) -> Iterator[str]:
    """The rigs that must be worn, by a rule on the rig as a whole, for a circumstance that is new."""
    labels = {value.label: value.id for value in lookup.facts[rig].values}
    for rule in lookup.base.rules:
        if rule.aspect != "wear" or rule.modality != "must" or not is_in_force(rule, query.case.as_of):
            continue
        met = (
            is_subset(known[test.fact], test.values)
            for test in _asserted(rule.condition)
            if test.fact in new and _is_few(test, lookup)
            if (before := new[test.fact]) is None or not is_subset(before, test.values)
        )
        open_facts = [test.fact for test in tests(rule.condition) if test.fact not in known]
        if (
            not any(met)
            or any(lookup.facts[f].family in PERSONAL for f in open_facts)
            or evaluate(rule.condition, known.get) is False
        ):
            continue
        for item in rule.scope.items:
            value = labels.get(lookup.items[item].label) if item in lookup.items else None
            if value is not None:
                yield value


def _asserted(condition: Condition) -> Iterator[Test]:
    """The tests of a condition that are not denied in it."""
    if isinstance(condition, Test):
        yield condition
    elif isinstance(condition, AllOf | AnyOf):
        for part in condition.parts:
            yield from _asserted(part)


def _is_few(test: Test, lookup: Lookup) -> bool:
    """Whether a test names what it is for, rather than all but what it is not for."""
    values = test.values
    if not isinstance(values, Choices):
        return False
    return not values.complement and len(values.members) * 2 <= max(len(lookup.facts[test.fact].values), 2)
