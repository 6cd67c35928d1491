"""What mostly holds and what is out of the ordinary: "Yes. The satchel may be carried, unless the wearer is
working aloft".

A table whose rows differ only in what somebody does, wears, holds or was granted beyond the ordinary has one
row in which nothing of the kind is the case. Its verdict leads, and the rows that answer otherwise follow it.
Nothing is left out by it: the sentence says what the table says.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from kb.model.conditions import AllOf, AnyOf, Condition, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.months import month_of
from kb.model.questions import Query, Verdict
from kb.model.values import YES, Choices, ValueSet, intersect, is_empty, is_subset, subtract, unite
from kb.wording.along import goes_along, goes_along_of
from kb.wording.bystanders import guests, is_far
from kb.wording.cases import Facts
from kb.wording.conditions import phrase_in
from kb.wording.labels import GRADE, is_place
from kb.wording.left_off import rigs_of_duty
from kb.wording.normal import positive
from kb.wording.phrases import WEARER
from kb.wording.presumed import (
    RIG,
    award_of,
    circumstances_of,
    goes_on,
    grade_of,
    implied,
    must_be_worn,
    out_of_uniform,
    place_of,
    rig_named,
    the_rest,
    worn_in,
)
from kb.wording.sets import is_ordered, members_of
from kb.wording.situations import WORN
from kb.wording.trades import grade_of_branch, not_in_rig, outfit_rigs, rig_ordered
from kb.wording.whose import whose

Usually = Mapping[str, ValueSet]
_ALWAYS_SOMETHING = (GRADE, "branch", "rig")  # everybody has one: none of them is out of the ordinary
_RARE = 2  # a place or an activity is one of several: rare is fewer than half of them
_FEW = 4  # at most a quarter is few: what holds but for them is said with them named
_FEWS = frozenset({GRADE, "branch"})
_MOST_JOINED = 3  # cases that "when" joins in a line of a list
_LONGEST_JOINED = 170  # characters of them
_LONGEST = 120  # characters of an exception beside a verdict


def usually(lookup: Lookup, day: datetime.date | None, stated: Facts = ()) -> Usually:
    """What is ordinary since it was said: the month of the day with the season that follows from it, the rig
    of what is worn, duty, the open air where weather is told, and of what a place holds the place itself.

    Who says "on the fell" is not on a crag, though a crag is on the fell, too.
    """
    month = month_of(day, lookup) if day is not None else None
    found = dict([month] if month is not None else [])
    known = dict(stated)
    of_month = {fact: values for fact, values in implied(lookup, found).items() if fact not in known}
    for fact, values in stated:
        within = {value.id: value.within for value in lookup.facts[fact].values}
        chosen = set(members_of(lookup, fact, values)) if isinstance(values, Choices) and within else set()
        widest = [value for value in chosen if within[value] not in chosen]
        if len(widest) == 1 and len(chosen) > 1:
            found[fact] = Choices(frozenset(widest))
    place = place_of(lookup, worn_in(lookup, stated), day)
    place = {fact: values for fact, values in place.items() if fact not in known}
    on = {**goes_on(lookup, stated), **not_in_rig(lookup, known), **grade_of_branch(lookup, stated, day)}
    if RIG not in place and RIG not in known:
        named = rig_named(lookup, stated)
        ordered = rig_ordered(lookup, {**on, **of_month, **found, **known}, day)
        place |= {} if named and ordered and named != ordered else named or ordered  # a guard on the platform
    of_leave = circumstances_of(lookup, stated, day)
    along = goes_along(lookup, known, day)
    return {**along, **on, **of_month, **place, **grade_of(lookup, stated, day), **of_leave, **found}


def usually_in(lookup: Lookup, query: Query, *, of_duty: bool = True) -> Usually:
    """What is ordinary in what a question tells; with `of_duty` that a thing is a duty where it is asked of.

    Of the rigs in which things that are worn with it have their place those count that it has itself.
    """
    beside = tuple((WORN + item, YES) for item in query.items[1:] if item in lookup.items)
    found = dict(usually(lookup, query.case.as_of, (*query.case.facts, *beside)))
    if RIG in found and not outfit_rigs(lookup).keys().isdisjoint(query.items):
        del found[RIG]  # whoever asks to wear another outfit there does not mean the one that is ordered
    own = place_of(lookup, query.items[:1], query.case.as_of) if RIG in found else {}
    if RIG in own and not is_empty(both := intersect(found[RIG], own[RIG])):
        found[RIG] = both
    if of_duty and RIG not in found and (due := rigs_of_duty(lookup, query)) is not None:
        found[RIG] = due
    found |= award_of(lookup, query.items[:1])
    if GRADE not in found and (grades := whose(lookup, query)) is not None:
        found[GRADE] = grades
    found = goes_along_of(lookup, dict(query.case.facts), query.items, query.case.as_of) | found
    return {**must_be_worn(lookup, query.case.facts, query.items, query.case.as_of), **found}


def ordinary(
    lookup: Lookup, rows: Sequence[tuple[Facts, Verdict]], said: Usually = MappingProxyType({})
) -> int | None:
    """The number of a row in which nothing is out of the ordinary, if all such rows have one verdict."""
    found = ordinary_rows(lookup, rows, said)
    return found[0] if found and len({rows[index][1] for index in found}) == 1 else None


def ordinary_rows(
    lookup: Lookup, rows: Sequence[tuple[Facts, Verdict]], said: Usually = MappingProxyType({})
) -> tuple[int, ...]:
    """The numbers of the rows in which nothing is out of the ordinary; none where no row is out of it.

    A fact of which nothing is ordinary (a grade, a rig, a temperature) may be anything in them.
    """
    beside = goes_with(rows)
    sets = ordinary_sets(lookup, [row for row, _ in rows], said)
    if beside is not None:
        sets[beside] = YES
    found = [i for i, (row, _) in enumerate(rows) if not strange_in(row, sets)]
    return tuple(found) if len(found) < len(rows) else ()


def ordinary_sets(
    lookup: Lookup, rows: Sequence[Facts], said: Usually = MappingProxyType({})
) -> dict[str, ValueSet]:
    """For each fact of a table of which some values are out of the ordinary those that are not."""
    found: dict[str, ValueSet] = {}
    for fact, values in (test for row in rows for test in row):
        if fact in said:
            found[fact] = _narrowed(lookup, fact, found.get(fact, said[fact]), values)
        elif _is_ordinary(lookup, fact, values):
            both = intersect(found.get(fact, values), values)
            found[fact] = both if not is_empty(both) else found[fact]
        elif fact == RIG and not is_empty(private := out_of_uniform(lookup)):
            found[fact] = subtract(lookup.domain(RIG), private)
        elif fact == GRADE and guests(lookup):
            found[fact] = subtract(lookup.domain(GRADE), Choices(guests(lookup)))
    for fact in _FEWS.intersection(found).difference(said):
        if not _is_few(lookup, fact, subtract(lookup.domain(fact), found[fact])):
            del found[fact]  # several few are many
            if fact == GRADE and guests(lookup):
                found[fact] = subtract(lookup.domain(GRADE), Choices(guests(lookup)))
    return found


def _narrowed(lookup: Lookup, fact: str, said: ValueSet, values: ValueSet) -> ValueSet:
    """Of several values that go with what was said of a situation those that are ordinary in any case."""
    several = isinstance(said, Choices) and len(members_of(lookup, fact, said)) > 1
    if not several or lookup.facts[fact].family != "situation" or not _is_ordinary(lookup, fact, values):
        return said
    both = intersect(said, values)
    return said if is_empty(both) else both


def nearest_first(lookup: Lookup, query: Query, rows: Sequence[Facts]) -> tuple[int, ...]:
    """The numbers of the rows of a table, those with the fewest facts out of the ordinary first."""
    sets = ordinary_sets(lookup, rows, usually_in(lookup, query))
    return tuple(sorted(range(len(rows)), key=lambda index: len(strange_in(rows[index], sets))))


def nearest_open(lookup: Lookup, query: Query, rows: Sequence[Facts]) -> str:
    """The first fact of a table of which no value is out of the ordinary, if any: a grade, a temperature."""
    sets = ordinary_sets(lookup, rows, usually_in(lookup, query))
    facts = [fact for row in rows for fact, _ in row]
    return next((fact for fact in facts if fact not in sets), facts[0])


def all_values(facts: Sequence[Facts], chosen: Sequence[int], fact: str) -> ValueSet:
    """All values that a fact has in some rows."""
    found = [values for index in chosen for name, values in facts[index] if name == fact]
    whole = found[0]
    for values in found[1:]:
        whole = unite(whole, values)
    return whole


def strange_in(row: Facts, sets: Mapping[str, ValueSet]) -> tuple[str, ...]:
    """The facts of a row that are out of the ordinary in it."""
    return tuple(fact for fact, values in row if fact in sets and is_empty(intersect(sets[fact], values)))


def goes_with(rows: Sequence[tuple[Facts, Verdict]]) -> str | None:
    """The wearing of another thing with which this one may or must be worn, and without which it is not.

    Who asks about the device of a cap has the cap on.
    """
    for fact in dict.fromkeys(fact for row, _ in rows[:1] for fact, _ in row):
        worn = [dict(row).get(fact) for row, _ in rows]
        without = {verdict for (_, verdict), values in zip(rows, worn, strict=True) if values != YES}
        beside = {verdict for (_, verdict), values in zip(rows, worn, strict=True) if values == YES}
        if (
            fact.startswith(WORN)
            and None not in worn
            and len(without) == 1
            and without <= {"prohibited", "silent"}
            and beside & {"required", "permitted"}
            and "conditional" not in beside
        ):
            return fact
    return None


def say_usual(
    lookup: Lookup,
    rows: Sequence[tuple[Facts, Verdict]],
    wanted: Sequence[Verdict],
    said: Usually = MappingProxyType({}),
) -> str:
    """ "permitted, unless the wearer is diving": a table by its ordinary row, if its verdict is wanted."""
    facts = [row for row, _ in rows]
    usual = ordinary(lookup, rows, said)
    if (
        usual is None
        or goes_with(rows) is not None
        or rows[usual][1] not in wanted
        or any(found in ("conditional", "conflict") for _, found in rows)  # "unless" would hide a conflict
    ):
        return ""
    verdict = rows[usual][1]
    otherwise = [i for i, (_, found) in enumerate(rows) if found != verdict]
    unless = say_exceptions(lookup, facts, otherwise, said)
    return f"{verdict.replace('_', ' ')}, unless {unless}" if unless else ""


def _is_usual(lookup: Lookup, fact: str, values: ValueSet, said: Usually) -> bool:
    """Whether values are the ordinary ones, or have what was said in them."""
    return is_subset(said[fact], values) if fact in said else _is_ordinary(lookup, fact, values)


def _is_ordinary(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    if is_far(lookup, fact, values):
        return True
    rest = _rest(lookup, fact, values)
    return rest is not None and _is_rare(lookup, fact, rest)


def is_denied(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    """Whether values can only be said by what they are not: "the weather is not foul"."""
    said = f" {phrase_in(lookup, Test(fact, values)).clause} "
    return any(word in said for word in (" not ", " neither ", " none ", " except ", " no "))


def _rest(lookup: Lookup, fact: str, values: ValueSet) -> Choices | None:
    if not isinstance(values, Choices):
        return None
    order = lookup.order(fact) or ("yes", "no")
    chosen = set(members_of(lookup, fact, values))
    return Choices(frozenset(value for value in order if value not in chosen))


def _is_rare(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    record = lookup.facts[fact]
    if not isinstance(values, Choices):
        return False
    if record.family in _ALWAYS_SOMETHING:
        apart = out_of_uniform(lookup) if fact == RIG else Choices(guests(lookup)) if fact == GRADE else None
        if apart is not None and not is_empty(values) and is_subset(values, apart):
            return True
        return fact in _FEWS and _is_few(lookup, fact, values)
    if record.kind == "yes_no":
        return values == YES
    if record.family == "authorisation":
        return lookup.order(fact)[0] not in members_of(lookup, fact, values)
    if is_ordered(record):
        return False
    if others := the_rest(lookup, fact):
        return not is_empty(values) and others.isdisjoint(members_of(lookup, fact, values))
    located = "place" in record.label.casefold().split() and is_place(lookup, fact)
    if not located and lookup.order(fact)[0] in members_of(lookup, fact, values):
        return False  # of circumstances the first named is the ordinary one; of places none
    rest = _rest(lookup, fact, values)
    if rest is not None and rest.members and members_of(lookup, fact, values):
        denied = [is_denied(lookup, fact, one) for one in (values, rest)]
        if denied[0] != denied[1]:
            return denied[1]  # "unless the weather is foul", however many kinds of foul weather there are
    return 0 < len(members_of(lookup, fact, values)) * _RARE < len(lookup.order(fact))


def _is_few(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    several = len(members_of(lookup, fact, values)) if isinstance(values, Choices) else 0
    return 0 < several * _FEW <= len(lookup.order(fact))


def say_exceptions(
    lookup: Lookup, rows: Sequence[Facts], otherwise: Sequence[int], said: Usually = MappingProxyType({})
) -> str:
    """When the rows `otherwise` hold, to stand after "unless", with nothing that goes without saying.

    Empty if that takes too many words.
    """
    conditions = exceptions(lookup, rows, otherwise, said)
    text = say_any(lookup, conditions)
    return text if len(text) <= _LONGEST else ""


def say_any(lookup: Lookup, conditions: Sequence[Condition]) -> str:
    """That one of the conditions holds; what all have in common, and the wearer, is said once.

    Nothing where there is none.
    """
    if not conditions:
        return ""
    sets = [one.parts if isinstance(one, AllOf) else (one,) for one in conditions]
    shared = [part for part in sets[0] if all(part in parts for parts in sets)] if len(sets) > 1 else []
    rests = [all_of(part for part in parts if part not in shared) for parts in sets]
    first = rests[0]
    if (
        shared
        and isinstance(first, Test)
        and all(isinstance(r, Test) and r.fact == first.fact for r in rests)
    ):
        values = first.values
        for rest in rests:
            values = unite(values, rest.values) if isinstance(rest, Test) else values
        rests = [] if is_subset(lookup.domain(first.fact), values) else [Test(first.fact, values)]
    whole = positive(
        lookup, all_of([*shared, *([any_of(rests)] if rests else [])]) if shared else any_of(conditions)
    )
    text = phrase_in(lookup, whole).clause.removeprefix("either ")
    parts = whole.parts if isinstance(whole, AnyOf) else (whole,)
    if len(parts) > 1 and all(phrase_in(lookup, part).clause.startswith(f"{WEARER} ") for part in parts):
        plain = all(isinstance(part, Test) for part in parts)
        if plain or len(parts) == _PAIR:
            text = text.replace(f" or {WEARER} ", " or ")
        if plain:
            text = text.replace(f", {WEARER} ", ", ")
    both = whole.parts if isinstance(whole, AllOf) and len(whole.parts) == _PAIR else ()
    if both and all(
        isinstance(p, Test) and phrase_in(lookup, p).clause.startswith(f"{WEARER} ") for p in both
    ):
        text = text.replace(f" and {WEARER} ", " and ")
    return text


_PAIR = 2


def say_joined(lookup: Lookup, rows: Sequence[Facts], chosen: Sequence[int]) -> str:
    """When one of the rows `chosen` holds, as "when ..."; empty if that takes too many words.

    What tells one of them from another alone goes without saying.
    """
    conditions = exceptions(lookup, rows, chosen, every=True)
    said = say_any(lookup, conditions)
    short = len(conditions) <= _MOST_JOINED and len(said) <= _LONGEST_JOINED and "(a)" not in said
    return f"when {said}" if short else ""


def exceptions(
    lookup: Lookup,
    rows: Sequence[Facts],
    otherwise: Sequence[int],
    said: Usually = MappingProxyType({}),
    *,
    every: bool = False,
) -> list[Condition]:
    """Conditions of which one holds in just the rows `otherwise`, as short as they can be.

    With `every` any test may be left out that the other rows do not need, not only one for what is ordinary.
    """
    kept = [row for index, row in enumerate(rows) if index not in otherwise]
    shorter = dict.fromkeys(
        frozenset(_shortened(lookup, rows[index], kept, said, every=every)) for index in otherwise
    )
    least = [row for row in shorter if not any(other < row for other in shorter)]
    tests = [test for row in rows for test in row]
    places = {test: place for place, test in enumerate(dict.fromkeys(tests) if every else tests)}
    return [all_of(Test(*test) for test in sorted(row, key=places.__getitem__)) for row in least]


def _shortened(lookup: Lookup, row: Facts, kept: Sequence[Facts], said: Usually, *, every: bool) -> Facts:
    """The row without tests for what is ordinary, where no row outside the exceptions has the rest."""
    left = list(row)
    for test in sorted(row, key=lambda test: not _is_usual(lookup, test[0], test[1], said)) if every else row:
        fewer = [other for other in left if other != test]
        if (
            (every or _is_usual(lookup, *test, said))
            and fewer
            and not any(_meet(lookup, fewer, other) for other in kept)
        ):
            left = fewer
    return left


def _meet(lookup: Lookup, one: Facts, other: Facts) -> bool:
    """Whether two rows have a case in common, as far as their facts go."""
    known = dict(one)
    return not any(
        fact in known and is_empty(intersect(intersect(known[fact], values), lookup.domain(fact)))
        for fact, values in other
    )
