"""May I, must I: the verdict on an act, as one line or as a table over the facts that change it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import msgspec

from kb.answer.common import Part, row_label
from kb.explanation import derive
from kb.model.lookup import Lookup
from kb.model.questions import AnswerCase, Query
from kb.model.records import OWNED_ASPECTS
from kb.model.values import NO, Choices, Interval, Ranges, ValueSet
from kb.reasoner import WORN, Engine, Facts, Problem, possible_facts, rows


def act_part(
    engine: Engine,
    item: str,
    aspect: str,
    possible: Mapping[str, ValueSet],
    first: Sequence[str] = (),
) -> Part:
    """The table for one act on one item, each row with its deciding rules and the proof of one case."""
    problem = engine.problem(engine.group(item, aspect), possible)
    cases, derivations, found = [], [], []
    for when, verdict in rows(problem.verdicts(first)):
        cases.append(
            AnswerCase(
                when=when,
                label=row_label(engine.lookup, when),
                verdict=verdict,
                rules=_row_rules(problem, when),
            )
        )
        derivations.append(derive(engine, problem, possible, when))
        found.append(problem.carrying_rules(dict(when)))
    return Part(
        item=item,
        aspect=aspect,
        cases=tuple(cases),
        derivations=tuple(derivations),
        carriers=tuple(found),
    )


def _row_rules(problem: Problem, row: Facts) -> tuple[str, ...]:
    """The decisive rules in any of the cases of a row."""
    return problem.decisive_rules(dict(row))


def count_breach(engine: Engine, query: Query) -> Part | None:
    """The table of a limit on numbers that the items of a question break together, if they do.

    Count rules bound the set of worn items: what is known to be worn is the least that is worn, so a limit is
    broken when every number from there on is closed in every case.
    """
    lookup = engine.lookup
    worn = {
        fact[len(WORN) :] for fact, values in query.case.facts if fact.startswith(WORN) and _is_yes(values)
    }
    worn |= set(query.items)
    limited = {item for rule in lookup.base.rules if rule.aspect == "count" for item in rule.scope.items}
    for kind in sorted(limited):
        number = len(worn & set(lookup.narrower(kind)))
        if number < 2:
            continue
        group = engine.group(kind, "count")
        possible = possible_facts(query.case, tuple(query.items), True, lookup)
        at_least = Ranges((Interval(low=number),))  # type: ignore[arg-type]

        problem = engine.problem(group, possible)
        if problem.always_closed(at_least):
            derivation = derive(engine, problem, possible)
            rules = tuple(dict.fromkeys(r for fate in derivation.fates for r in fate.closed_by))
            case = AnswerCase(when=(), label="in every case", verdict="prohibited", rules=rules)
            return Part(
                item=kind, aspect="count", cases=(case,), derivations=(derivation,), carriers=((rules,),)
            )
    return None


def _is_yes(values: ValueSet) -> bool:
    return isinstance(values, Choices) and values.members == {"yes"} and not values.complement


def act_answer(engine: Engine, query: Query) -> Part:
    """The part that answers a may or must question; the most restrictive of several items."""
    lookup = engine.lookup
    items = tuple(dict.fromkeys(query.items))
    parts = []
    for item in items:
        others = tuple(other for other in items if other != item)
        possible = possible_facts(query.case, (item, *others), False, lookup)
        parts.append(act_part(engine, item, query.aspect, possible))
    breach = count_breach(engine, query) if query.aspect == "wear" and len(items) > 0 else None
    if breach is not None and parts[0].verdict not in ("prohibited", "conflict"):
        return breach
    order = ["conflict", "prohibited", "conditional", "silent", "not_required", "permitted", "required"]
    return min(parts, key=lambda part: (order.index(part.verdict), parts.index(part)))


def carriers(lookup: Lookup, query: Query, part: Part) -> list[tuple[str, ...]]:
    """For the rows of a table the sets of rules of which a clause each is enough to carry them."""
    groups = [
        group
        for case, found in zip(part.cases, part.carriers, strict=True)
        for group in found or (case.rules,)
    ]
    if query.kind != "may" or query.polarity == "not":
        return groups
    # Who asks whether a thing may be is not answered by "it need not".
    told = [tuple(r for r in group if lookup.rules[r].modality != "need_not") for group in groups]
    return [found or group for found, group in zip(told, groups, strict=True)]


def wear_question(lookup: Lookup, query: Query) -> Query:
    """Whether the first thing asked about may be worn, or carried where that is how it is used."""
    use = lookup.use_of(query.items[0])
    return msgspec.structs.replace(query, kind="may", aspect=use, value=None, items=query.items[:1])


def is_named_so(lookup: Lookup, query: Query) -> bool:
    """Whether a thing is asked to be as its name has it: socks that are the black socks, black."""
    value = query.value
    if query.polarity == "not" or not isinstance(value, Choices) or value.complement or not query.items:
        return False
    aspect, own = lookup.aspects[query.aspect], lookup.items[query.items[0]].label.lower().split()
    return aspect.kind == "choice" and any(
        v.id in value.members and set(v.label.lower().split()) <= set(own) for v in aspect.values
    )


def is_way(lookup: Lookup, query: Query) -> bool:
    """Whether it is asked if a thing may be worn in one way, or of one make: "under the helmet", "plain"."""
    way = lookup.aspects[query.aspect]
    return query.kind == "may" and way.kind == "act" and way.within in ("fit", "fastening", "construction")


def is_banned(engine: Engine, query: Query, unspoken: bool = False) -> bool:
    """Whether the thing asked about may not be worn at all: how it is worn is then no question.

    Nor is it, where it is asked whether one may have one of some size that one ordinarily may not have, or of
    a colour on which no rule is, if all kinds of it fare alike (`unspoken`).

    Of a class it is said kind by kind, so that a class is never banned here. What one owns or keeps in order
    is a question all the same.
    """
    lookup = engine.lookup
    if query.kind in ("list", "source", "compare") or query.polarity == "not" or not query.items:
        return False
    apart = query.aspect in OWNED_ASPECTS or query.aspect in lookup.aspects_within("care")
    if apart or (not unspoken and len(lookup.narrower(query.items[0])) > 1):
        return False
    plain = wear_question(lookup, query)
    part = act_answer(engine, plain)
    out = part.verdict == "prohibited" or (
        query.kind == "may"
        and (query.value is not None or is_way(lookup, query))
        and _is_ordinarily_banned(lookup, plain, part, unspoken or _is_somewhere(lookup, query))
    )
    return out and part.aspect == lookup.use_of(query.items[0])


def closes_all(engine: Engine, query: Query) -> bool:
    """Whether a rule closes a class by its name in any case, whatever is said of a kind of it."""
    lookup = engine.lookup
    if not query.items or query.polarity == "not" or len(lookup.narrower(query.items[0])) < _TWO:
        return False
    part = act_answer(engine, wear_question(lookup, query))
    rules = [lookup.rules[rule] for case in part.cases for rule in case.rules]
    return part.verdict == "prohibited" and any(query.items[0] in rule.scope.items for rule in rules)


_TWO = 2


def _is_somewhere(lookup: Lookup, query: Query) -> bool:
    """Whether leave is asked, somewhere, for a way of carrying a thing or for several: it is none to have."""
    several = query.kind == "may" and lookup.aspects[query.aspect].kind == "count"
    return (several or is_way(lookup, query)) and any(
        lookup.facts[fact].family in ("situation", "term") and values != NO
        for fact, values in query.case.facts
    )


def _is_ordinarily_banned(lookup: Lookup, query: Query, part: Part, unspoken: bool) -> bool:
    """ "May I have a 10 mm beard?", who may have none without a waiver: whether no is what leads.

    Of a name plate it is asked how long it may be where it is worn.
    """
    if not unspoken and "grooming" not in lookup.broader(query.items[0]):
        return False
    from kb.wording.unless import ordinary, usually_in  # noqa: PLC0415  few questions are of a size that one has

    table = [(case.when, case.verdict) for case in part.cases]
    usual = ordinary(lookup, table, usually_in(lookup, query))
    return usual is not None and table[usual][1] == "prohibited"
