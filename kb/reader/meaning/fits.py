"""What new words of a talk fit: the way in which something is worn, or whether it is worn at all."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

import msgspec

from kb.model.conditions import evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Query, QuestionKind
from kb.model.records import Rule
from kb.model.values import NO, YES, ValueSet, intersect, is_empty
from kb.reader.meaning.measured import rule_aspects
from kb.reader.names.lexicon import CREDENTIALS
from kb.reader.words.tokens import tokenize


def wearing(items: Sequence[str], lookup: Lookup, told: Mapping[str, ValueSet] | None = None) -> str:
    """The act of having a thing on: worn, or carried where it is one that is carried.

    `told` is what a question states: "a rucksack on the tower stair" is of wearing it, where the one rule on
    that place is of wearing.
    """
    carried = bool(items) and "carried" in lookup.broader(items[0]) and "carrying" in lookup.aspects
    if not carried:
        return "wear"
    spoken = [a for a in ("carrying", "wear") if told and any(_meet(items, a, told, lookup))]
    return "wear" if spoken == ["wear"] else "carrying"


def _meet(items: Sequence[str], aspect: str, told: Mapping[str, ValueSet], lookup: Lookup) -> Iterator[bool]:
    """Of each test of the rules on an aspect, whether what is stated of the situation may meet it."""
    for rule in rules_of_aspect(items, aspect, lookup):
        for test in tests(rule.condition):
            situation = test.fact in told and lookup.facts[test.fact].family == "situation"
            yield situation and not is_empty(intersect(test.values, told[test.fact]))


def rules_of_aspect(items: Sequence[str], aspect: str, lookup: Lookup) -> Iterator[Rule]:
    """The rules on an aspect of the first item, or on what it belongs to."""
    covering = set(lookup.broader(items[0])) if items else set()
    within = set(lookup.aspects_within(aspect))
    return (rule for rule in lookup.rules_on(covering) if rule.aspect in within)


def facts_that_matter(query: Query, lookup: Lookup) -> tuple[str, ...]:
    """The facts that the rules on what is asked test, by themselves or in the terms that they use."""
    rules = rules_of_aspect(query.items, query.aspect, lookup)
    found = dict.fromkeys(test.fact for rule in rules for test in tests(rule.condition))
    for term in tuple(found):
        for defined in lookup.base.definitions:
            if defined.term == term:
                found |= dict.fromkeys(test.fact for test in tests(defined.condition))
    return tuple(found)


def depends(items: Sequence[str], aspect: str, facts: Collection[str], lookup: Lookup) -> bool:
    """Whether a rule on the aspect of the item tests one of the facts."""
    return any(
        test.fact in facts
        for rule in rules_of_aspect(items, aspect, lookup)
        for test in tests(rule.condition)
    )


def tests_worn(item: str, worn: str, lookup: Lookup) -> bool:
    """Whether a rule on the item, of whatever aspect, tests whether another one is worn."""
    covering = set(lookup.broader(item))
    return any(
        test.fact == f"worn:{worn}" for rule in lookup.rules_on(covering) for test in tests(rule.condition)
    )


def _speaks(query: Query, lookup: Lookup) -> bool:
    """Whether a rule on what the query asks can hold in its case."""
    known = dict(query.case.facts)
    rules = list(rules_of_aspect(query.items, query.aspect, lookup))
    return not rules or any(evaluate(rule.condition, known.get) is not False for rule in rules)


def is_of_wearing(query: Query, facts: Collection[str], lookup: Lookup) -> bool:
    """Whether new facts bear on whether the item is worn, and not on the aspect that was asked before.

    "And for wardens?", after a colour that is one for all who wear it, asks whether they wear it.
    """
    act = wearing(query.items, lookup)
    if lookup.aspects[query.aspect].kind == "act" or not depends(query.items, act, facts, lookup):
        return False
    held = {lookup.facts[fact].family for fact in facts} & set(CREDENTIALS)
    akin = {*facts, *(fact.id for fact in lookup.base.facts if fact.family in held)}
    return not depends(query.items, query.aspect, akin, lookup) or not (held or _speaks(query, lookup))


def whole_of(item: str, lookup: Lookup) -> str | None:
    """What a thing is part of: as the books say, else what the name of a part begins with, "knife blade"."""
    record = lookup.items[item]
    if record.part_of is not None or "feature" not in lookup.broader(item):
        return record.part_of
    first = record.label.casefold().split()[:-1]
    return next(
        (
            other.id
            for other in lookup.base.items
            if first and any(name.casefold().split() == first for name in (other.label, *other.everyday))
        ),
        None,
    )


def of_the_whole(query: Query, facts: Collection[str], lookup: Lookup) -> Query:
    """The query about what its part belongs to, where the new facts bear on that and not on the part.

    "And for the hall branch?", after how long the blade of a knife may be, asks about the knife.
    """
    whole = whole_of(query.items[0], lookup) if len(query.items) == 1 else None
    if whole is None or lookup.aspects[query.aspect].kind == "act":
        return query
    worn_itself = any(rules_of_aspect(query.items, wearing(query.items, lookup), lookup))
    if worn_itself or depends(query.items, query.aspect, facts, lookup):
        return query
    if not depends((whole,), wearing((whole,), lookup), facts, lookup):
        return query
    return whether_worn(msgspec.structs.replace(query, items=(whole,)), lookup)


def of_one(before: Query, items: Sequence[str], lookup: Lookup) -> Query:
    """A list as a question about one thing, where a further turn names one: "and the side cap indoors?"."""
    if before.kind != "list" or len(items) != 1 or len(lookup.narrower(items[0])) > 1:
        return before
    kind: QuestionKind = "must" if before.modalities == ("required",) else "may"
    return msgspec.structs.replace(before, kind=kind, aspect=wearing(items, lookup), modalities=())


def same_act(before: Query, items: Sequence[str], lookup: Lookup) -> str:
    """What is worn goes on as what is carried where the new thing is one that is carried, and back.

    A size goes on as whatever measures the new thing has.
    """
    aspect = wearing(items, lookup) if before.aspect == wearing(before.items, lookup) else before.aspect
    within = lookup.aspects[aspect].within
    other = (
        within
        and not any(rules_of_aspect(items, aspect, lookup))
        and any(rules_of_aspect(items, within, lookup))
    )
    return within if within and other else aspect


def whether_worn(query: Query, lookup: Lookup) -> Query:
    """The query as one of whether the (first) item may be worn."""
    act = wearing(query.items, lookup)
    return msgspec.structs.replace(
        query, kind="may", items=query.items[:1], aspect=act, value=None, modalities=(), polarity="do"
    )


def asked_kind(word: str, before: Query, lookup: Lookup) -> Query | None:
    """ "What knot?": the aspect of the item whose rules say the word; None where none or several do."""
    found = set()
    for item in before.items[:1]:
        for rule in lookup.base.rules:
            aspect = lookup.aspects[rule.aspect]
            said = {token.key for token in tokenize(aspect.label)}
            if item in rule.scope.items and aspect.within and word in said:
                found.add(aspect.within)
    if len(found) != 1:
        return None
    return msgspec.structs.replace(
        before, kind="how", aspect=found.pop(), value=None, modalities=(), polarity="do"
    )


def kind_of_part(word: str, before: Query, lookup: Lookup) -> Query | None:
    """ "And the letters?": the aspect of the item that the word is of; None where none or several are."""
    rules = [rule for item in before.items[:1] for rule in lookup.rules_on((item,))]
    found = {
        rule.aspect for rule in rules if word in {t.key for t in tokenize(lookup.aspects[rule.aspect].label)}
    }
    if len(found) != 1 or lookup.aspects[min(found)].kind == "act":
        return asked_kind(word, before, lookup)
    return msgspec.structs.replace(
        before, kind="how", aspect=found.pop(), value=None, modalities=(), polarity="do"
    )


def without_clashes(query: Query, before: Query, lookup: Lookup) -> Query:
    """The query without those facts of the one before that cannot hold together with what is new in it."""
    known, old = dict(query.case.facts), dict(before.case.facts)
    gone = {
        test.fact
        for exclusion in lookup.base.exclusions
        if evaluate(exclusion, known.get) is True
        and any(old.get(test.fact) != known[test.fact] for test in tests(exclusion))
        for test in tests(exclusion)
        if old.get(test.fact) == known[test.fact]
    }
    gone |= set(_of_another_time(known, old, lookup))
    if not gone:
        return query
    kept = tuple((fact, values) for fact, values in query.case.facts if fact not in gone)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=kept))


def _of_another_time(
    known: Mapping[str, ValueSet], old: Mapping[str, ValueSet], lookup: Lookup
) -> Iterator[str]:
    """The terms kept from before whose facts are told anew, and facts kept that a term told anew excludes.

    "And in July?", after the summer term; "in that term?", after July; "at noon?", after the dark hours.
    """
    defined: dict[str, set[str]] = {}
    for one in lookup.base.definitions:
        defined.setdefault(one.term, set()).update(test.fact for test in tests(one.condition))
    new = {fact for fact, values in known.items() if old.get(fact) != values}
    told = new.union(*(defined[term] for term in new if term in defined))
    yield from (term for term, facts in defined.items() if term in known and term not in new and facts & told)
    for one in lookup.base.definitions:
        holds = evaluate(one.condition, known.get) if one.term in new else None
        if holds is not None and known[one.term] == (NO if holds else YES):
            yield from (test.fact for test in tests(one.condition) if test.fact not in new)


def unmeasured(before: Query, items: Sequence[str], lookup: Lookup) -> Query:
    """The question before, put of other things: a measure or place said of one thing is not said of them.

    How they are measured is asked, or where they go that have no other measure.
    """
    kind = lookup.aspects[before.aspect].kind
    if before.value is None or kind not in ("measure", "position"):
        return before
    kin = {near for item in items for near in (*lookup.broader(item), *lookup.narrower(item))}
    if kin & {*before.items} and kind == "measure":
        return before
    asked = msgspec.structs.replace(before, kind="how", value=None, polarity="do", modalities=())
    if kind == "position":
        return msgspec.structs.replace(asked, kind="where")
    spoken = rule_aspects(items[0], lookup)
    if before.aspect in spoken:
        return asked
    sizes = [aspect for aspect in spoken if lookup.aspects[aspect].kind == "measure"]
    if len(sizes) == 1:
        return msgspec.structs.replace(asked, aspect=sizes[0])
    if not sizes and "position" in spoken:
        return msgspec.structs.replace(asked, kind="where", aspect="position")
    return asked


_FAR = 2.5  # times as much


def is_far(query: Query, lookup: Lookup) -> bool:
    """Whether what the rules fix of a measure is so much more or less that nobody would mean it."""
    bounds = [
        bound
        for rule in rules_of_aspect(query.items, query.aspect, lookup)
        if rule.value.measure is not None
        for bound in (rule.value.measure.interval.low, rule.value.measure.interval.high)
        if bound
    ]
    asked = [bound for one in getattr(query.value, "intervals", ()) for bound in (one.low, one.high) if bound]
    ratios = [float(max(one, other) / min(one, other)) for one in bounds for other in asked]
    return bool(ratios) and min(ratios) > _FAR
