"""Queries made at random from a rule base, of the kind that a reading can give."""

from __future__ import annotations

import datetime
import random

from kb.model.lookup import Lookup
from kb.model.questions import Query, QuestionKind, Verdict
from kb.model.records import Case
from kb.model.values import NO, YES, Choices, Interval, ValueSet, point, ranges
from kb.reader.pieces.values import closure
from tests.reader.notation import TODAY

_KINDS: tuple[QuestionKind, ...] = (
    "may", "may", "must", "who", "list", "where", "how", "how_many", "why", "when", "source",
)  # fmt: skip
_LISTED: tuple[tuple[Verdict, ...], ...] = (
    ("required",), ("prohibited",), ("required", "permitted"), ("permitted", "not_required"),
)  # fmt: skip
_DAY = datetime.date(2019, 4, 1).toordinal()


def make_query(chance: random.Random, lookup: Lookup) -> Query:
    """A query about one item, or a list, with up to four facts."""
    kind = chance.choice(_KINDS)
    items = [item.id for item in lookup.base.items if item.at.file != "built-in"]
    item = chance.choice(items)
    aspect = _aspect(chance, kind, item, lookup)
    return Query(
        kind=kind,
        items=() if kind == "list" else (item,),
        aspect=aspect,
        polarity=chance.choice(("do", "do", "not")) if kind in ("may", "must") and aspect == "wear" else "do",
        case=_case(chance, items, lookup),
        modalities=chance.choice(_LISTED) if kind in ("who", "list") else (),
    )


def make_comparison(chance: random.Random, lookup: Lookup) -> Query:
    """A comparison of two cases that know different values of the same one or two facts, or two days."""
    items = [item.id for item in lookup.base.items if item.at.file != "built-in"]
    named = [f.id for f in lookup.base.facts if f.kind in ("choice", "scale", "yes_no")]
    named = [fact for fact in named if fact != "month" and lookup.facts[fact].family != "worn"]
    shared = dict(_case(chance, items, lookup).facts)
    apart = chance.sample([fact for fact in named if fact not in shared], chance.choice((0, 1, 1, 2)))
    days = (TODAY, TODAY) if apart else (datetime.date.fromordinal(_DAY), TODAY)
    sides = [
        {fact: Choices(frozenset({value})) for fact, value in zip(apart, values, strict=True)}
        for values in zip(*(chance.sample(_single(lookup, fact), 2) for fact in apart), strict=True)
    ] or [{}, {}]
    cases = [
        Case(as_of=day, facts=tuple((fact, {**shared, **side}[fact]) for fact in lookup.facts
                                    if fact in {**shared, **side}))
        for day, side in zip(days, sides, strict=True)
    ]  # fmt: skip
    chosen = tuple(chance.sample(items, chance.choice((0, 1, 1))))
    return Query(kind="compare", items=chosen, case=cases[0], other=cases[1])


def _single(lookup: Lookup, fact: str) -> list[str]:
    record = lookup.facts[fact]
    if record.kind == "yes_no":
        return ["yes", "no"]
    wide = {value.within for value in record.values}
    return [value.id for value in record.values if value.id not in wide]


def _aspect(chance: random.Random, kind: QuestionKind, item: str, lookup: Lookup) -> str:
    acts = [aspect.id for aspect in lookup.base.aspects if aspect.kind == "act" and aspect.verb]
    if kind == "how":
        return chance.choice(("wear", "colour", "height", "width", "care", "fit", "finish", "fastening"))
    if kind == "how_many":
        return chance.choice(("count", "kit-count"))
    if kind == "where":
        return "position"
    if "carried" in lookup.broader(item):
        return "carrying"
    return "wear" if kind == "source" else chance.choice(["wear"] * 4 + acts)


def _case(chance: random.Random, items: list[str], lookup: Lookup) -> Case:
    """Up to three facts of any family, and sometimes one item worn or not worn.

    Left out: a month (one may be called May) and "everyone", which is no fact.
    """
    named = [fact.id for fact in lookup.base.facts if fact.family != "worn" and fact.id != "month"]
    facts = {
        fact: _values(chance, fact, lookup) for fact in chance.sample(named, chance.choice((0, 1, 1, 2, 3)))
    }
    if isinstance(grades := facts.get("grade"), Choices) and grades.members == set(lookup.order("grade")):
        del facts["grade"]
    if chance.random() < 0.3:
        facts[f"worn:{chance.choice(items)}"] = chance.choice((YES, NO))
    ordered = tuple((fact, facts[fact]) for fact in lookup.facts if fact in facts)
    return Case(as_of=TODAY, facts=ordered, alone=chance.random() < 0.1)


def _values(chance: random.Random, fact: str, lookup: Lookup) -> ValueSet:
    record = lookup.facts[fact]
    if record.kind == "yes_no":
        return chance.choice((YES, NO))
    if record.kind == "quantity":
        number = chance.choice((5, 10, 32))
        bounds = (
            Interval(number, None, True),
            Interval(None, number, False, True),
            Interval(number, number + 5),
        )  # type: ignore[arg-type]
        return chance.choice((point(number), *(ranges([bound]) for bound in bounds)))
    if record.kind == "date":
        days = (
            Interval(_DAY, _DAY + 1, False, True),
            Interval(None, _DAY, False, True),
            Interval(_DAY, None),
        )  # type: ignore[arg-type]
        return ranges([chance.choice(days)])
    order = lookup.order(fact)
    if record.family == "authorisation":
        return Choices(frozenset(chance.choice((order[:1], order[-1:], order[1:2], order[1:]))))
    if record.kind == "scale":
        low = chance.randrange(len(order))
        high = chance.randrange(low, len(order))
        return Choices(frozenset(chance.choice((order[low : low + 1], order[low : high + 1], order[low:]))))
    return _chosen(chance, fact, order, lookup)


def _chosen(chance: random.Random, fact: str, order: tuple[str, ...], lookup: Lookup) -> Choices:
    """One value with all narrower, or two, or all the others."""
    members = closure(lookup, fact, chance.choice(order))
    turn = chance.random()
    if turn < 0.2:
        members |= closure(lookup, fact, chance.choice(order))
    elif turn > 0.85 and members != frozenset(order):
        members = frozenset(order) - members
    return Choices(members)
