"""The facts of a case as a space: what is possible, what excludes what, and exact satisfiability.

Every question about conditions (does one imply the other, can both hold, which facts still matter) is
answered by splitting the facts that they test into the classes that no test divides. Exact, never sampled.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from kb.model.conditions import (
    AllOf,
    AnyOf,
    Condition,
    NotOf,
    Test,
    all_of,
    any_of,
    evaluate,
    negate,
    tests,
)
from kb.model.lookup import Lookup
from kb.model.records import Case
from kb.model.values import (
    NO,
    YES,
    Choices,
    Ranges,
    ValueSet,
    intersect,
)
from kb.reasoner.decide import value_classes

WORN = "worn:"


def _implications(facts: Iterable[str], lookup: Lookup) -> list[Condition]:
    """Who wears a narrower item wears the broader one."""
    worn = [fact for fact in facts if fact.startswith(WORN)]
    found: list[Condition] = []
    for narrow in worn:
        above = lookup.broader(narrow[len(WORN) :])
        found += [
            any_of([Test(narrow, NO), Test(broad, YES)])
            for broad in worn
            if broad != narrow and broad[len(WORN) :] in above
        ]
    return found


def constraints(
    conditions: Iterable[Condition], lookup: Lookup, exclusions: Sequence[Condition] | None = None
) -> tuple[Condition, ...]:
    """What must hold between the facts of the conditions: declared exclusions and the item taxonomy.

    Exclusions that share a fact with the conditions bring in their own facts, until nothing is added.
    `exclusions` gives those of the base with their terms written out.
    """
    facts = dict.fromkeys(test.fact for condition in conditions for test in tests(condition))
    waiting = list(lookup.base.exclusions if exclusions is None else exclusions)
    chosen: list[Condition] = []
    changed = True
    while changed:
        changed = False
        for exclusion in list(waiting):
            named = [test.fact for test in tests(exclusion)]
            if any(_touches(fact, facts, lookup) for fact in named):
                facts.update(dict.fromkeys(named))
                chosen.append(negate(exclusion))
                waiting.remove(exclusion)
                changed = True
    return (*chosen, *_implications(facts, lookup))


def _touches(fact: str, facts: Mapping[str, None], lookup: Lookup) -> bool:
    """Whether a fact is among `facts`, or is the wearing of a broader or narrower item than one of them."""
    if fact in facts:
        return True
    if not fact.startswith(WORN):
        return False
    item = fact[len(WORN) :]
    others = [f[len(WORN) :] for f in facts if f.startswith(WORN)]
    return any(item in lookup.broader(other) or other in lookup.broader(item) for other in others)


def simplify(condition: Condition, possible: Mapping[str, ValueSet]) -> Condition:
    """The condition with decided tests replaced by their truth; `AllOf(())` is true, `AnyOf(())` false."""
    if isinstance(condition, Test):
        truth = evaluate(condition, possible.get)
        return condition if truth is None else (AllOf(()) if truth else AnyOf(()))
    if isinstance(condition, NotOf):
        inner = simplify(condition.part, possible)
        if inner == AllOf(()):
            return AnyOf(())
        return AllOf(()) if inner == AnyOf(()) else NotOf(inner)
    conjunction = isinstance(condition, AllOf)
    absorbing: Condition = AnyOf(()) if conjunction else AllOf(())
    parts = [simplify(part, possible) for part in condition.parts]
    if absorbing in parts:
        return absorbing
    kept = [part for part in parts if part not in (AllOf(()), AnyOf(()))]
    return all_of(kept) if conjunction else any_of(kept)


def truth_of(condition: Condition) -> bool | None:
    """Truth of a simplified condition."""
    if condition == AllOf(()):
        return True
    return False if condition == AnyOf(()) else None


def classes_of(
    fact: str, possible: ValueSet, conditions: Iterable[Condition], lookup: Lookup
) -> tuple[ValueSet, ...]:
    """The possible values of a fact, cut into classes that no test of the conditions divides.

    Days are whole: between one day and the next there is none.
    """
    sets = {test.values for condition in conditions for test in tests(condition) if test.fact == fact}
    return pieces_of(fact, possible, tuple(sets), lookup)


def pieces_of(
    fact: str, possible: ValueSet, sets: Sequence[ValueSet], lookup: Lookup
) -> tuple[ValueSet, ...]:
    """The possible values of a fact, cut into classes that none of the sets divides."""
    if isinstance(possible, Ranges):
        return value_classes(sets, possible, lookup.facts[fact].kind == "date")
    if len(possible.members) == 1:
        return (possible,)
    groups: dict[tuple[bool, ...], set[str]] = {}
    ordered = [values for values in sets if isinstance(values, Choices)]
    for member in sorted(possible.members):
        signature = tuple([(member in values.members) != values.complement for values in ordered])
        groups.setdefault(signature, set()).add(member)
    return tuple(Choices(frozenset(group)) for group in groups.values())


def satisfiable(
    conditions: Sequence[Condition], possible: Mapping[str, ValueSet], lookup: Lookup
) -> dict[str, ValueSet] | None:
    """A class for each fact that makes all conditions true, or None. Facts not in `possible` are unknown."""
    residual = [simplify(condition, possible) for condition in conditions]
    truths = [truth_of(condition) for condition in residual]
    if False in truths:
        return None
    left = [condition for condition, truth in zip(residual, truths, strict=True) if truth is None]
    if not left:
        return dict(possible)
    fact = tests(left[0])[0].fact
    for piece in classes_of(fact, possible.get(fact, lookup.domain(fact)), left, lookup):
        found = satisfiable(left, {**possible, fact: piece}, lookup)
        if found is not None:
            return found
    return None


def complete(
    conditions: Sequence[Condition],
    limits: Sequence[Condition],
    possible: Mapping[str, ValueSet],
    lookup: Lookup,
) -> dict[str, ValueSet] | None:
    """The known facts and a class for each further one that decides every condition within the limits."""
    bounds = [simplify(limit, possible) for limit in limits]
    if any(truth_of(bound) is False for bound in bounds):
        return None
    watched = [*(simplify(condition, possible) for condition in conditions), *bounds]
    open_ones = [condition for condition in watched if truth_of(condition) is None]
    if not open_ones:
        return dict(possible)
    fact = tests(open_ones[0])[0].fact
    for piece in classes_of(fact, possible.get(fact, lookup.domain(fact)), open_ones, lookup):
        found = complete(conditions, limits, {**possible, fact: piece}, lookup)
        if found is not None:
            return found
    return None


def implies(
    left: Condition, right: Condition, lookup: Lookup, exclusions: Sequence[Condition] | None = None
) -> bool:
    """Whether every possible case that meets `left` meets `right`; `exclusions` as for `constraints`."""
    both = (left, negate(right))
    return satisfiable((*both, *constraints(both, lookup, exclusions)), {}, lookup) is None


def narrowed(left: ValueSet | None, right: ValueSet, fact: str, lookup: Lookup) -> ValueSet:
    """What stays possible of a fact when both sets are known of it."""
    return intersect(left if left is not None else lookup.domain(fact), right)


def _spread_worn(known: dict[str, ValueSet], lookup: Lookup) -> None:
    """Wearing an item is wearing what is broader; not wearing it is wearing nothing narrower."""
    for fact, values in list(known.items()):
        if not fact.startswith(WORN):
            continue
        item = fact[len(WORN) :]
        kinds = lookup.broader(item) if values == YES else lookup.narrower(item) if values == NO else ()
        for kind in kinds:
            if WORN + kind in lookup.facts:
                known[WORN + kind] = narrowed(known.get(WORN + kind), values, WORN + kind, lookup)


def possible_facts(case: Case, items: Sequence[str], wearing: bool, lookup: Lookup) -> dict[str, ValueSet]:
    """What is known of the facts of a case in a question about `items` (the first is asked about).

    The other items are worn; if `wearing` the question takes for granted that the first is worn too, whatever
    the case says. "Alone" means that no item is worn but those and what the case says. A fact that is said to
    be two things at once is left without any value.
    """
    known: dict[str, ValueSet] = {}
    for fact, values in case.facts:
        known[fact] = narrowed(known.get(fact), values, fact, lookup)
    for item in items if wearing else items[1:]:
        known.update((WORN + broad, YES) for broad in lookup.broader(item) if WORN + broad in lookup.facts)
    _spread_worn(known, lookup)
    if case.alone:
        kept = {broad for item in items for broad in lookup.broader(item)}
        for item in lookup.items:
            if item not in kept:
                known.setdefault(WORN + item, NO)
        _spread_worn(known, lookup)
    return known
