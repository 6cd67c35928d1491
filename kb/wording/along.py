"""What goes along with what is told: who names the material has it in hand, and who is on watch is a guard.

All of it by the books' own rules: a circumstance of which they never speak without a place, a task or a grade
has that place, task or grade where nothing else is said.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from functools import lru_cache, reduce

from kb.model.conditions import Condition, all_of, tests
from kb.model.lookup import Lookup
from kb.model.records import is_in_force
from kb.model.values import YES, Choices, ValueSet, intersect, is_empty, is_subset, unite
from kb.wording.labels import GRADE, is_place
from kb.wording.presumed import needed
from kb.wording.situations import WORN

_DOINGS = frozenset({"activity", "task", "duty", "work", "job"})
_BRANCH = "branch"
_HOURS = frozenset(
    [
        "weather",
        "light",
        "dark",
        "daylight",
        "day",
        "night",
        "time",
        "hour",
        "month",
        "season",
        "year",
        "wind",
        "sun",
        "snow",
    ]
)
_FEWEST, _MOSTLY = 2, 4
"""Duties that tell whose a doing is: one alone may be for some of those who do it, and so it is for many
where others name no grade."""


def goes_along(
    lookup: Lookup, known: Mapping[str, ValueSet], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The places, tasks and grades without which the books say nothing of what is told."""
    found: dict[str, ValueSet] = {}
    for fact, values in known.items():
        of_somebody = _is_told(lookup, fact, values) and not _is_of_the_hour(lookup, fact)
        for name, either in _along(lookup, fact, values, day) if of_somebody else ():
            if name not in known:
                both = intersect(found.get(name, lookup.domain(name)), either)
                found[name] = found.get(name, either) if is_empty(both) else both
    return found


def _is_told(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    """Whether it is said what is so of a circumstance, and not what is not."""
    record = lookup.facts[fact]
    if record.family not in ("situation", "term") or not isinstance(values, Choices) or values.complement:
        return False
    return values == YES if record.kind == "yes_no" else record.kind == "choice"


def _is_measured(lookup: Lookup, fact: str) -> bool:
    """Whether a fact is one of degrees, of which anything that is told is so: a temperature, the going."""
    return lookup.facts[fact].family == "situation" and lookup.facts[fact].kind in ("scale", "quantity")


def goes_along_of(
    lookup: Lookup, known: Mapping[str, ValueSet], items: Sequence[str], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The places and tasks without which the books say nothing of a thing in what is told: goggles in falling
    snow are for those on snow."""
    told = {fact: v for fact, v in known.items() if _is_told(lookup, fact, v) or _is_measured(lookup, fact)}
    wider = {other for item in items[:1] for other in lookup.broader(item)}
    bearing = [
        condition
        for rule in lookup.base.rules
        if rule.modality in ("must", "may") and (day is None or is_in_force(rule, day))
        if wider.intersection(rule.scope.items)
        and _names(lookup, condition := _written_out(lookup, rule.condition), told)
    ]
    anybody = [one for one in bearing if all(test.fact != _BRANCH for test in tests(one))]
    bearing = bearing if _BRANCH in known else anybody or bearing
    shared = [{test.fact for test in tests(condition)} for condition in bearing]
    return {
        name: either
        for name in sorted(set.intersection(*shared) - known.keys() if shared else ())
        if _goes(lookup, name) and (either := _either(lookup, bearing, name)) is not None
    }


def _names(lookup: Lookup, condition: Condition, told: Mapping[str, ValueSet]) -> bool:
    """Whether a condition has what is told in it by name, and not as what it must not be."""
    return any(
        test.fact in told
        and is_subset(told[test.fact], test.values)
        and test.values != lookup.domain(test.fact)
        and not is_empty(intersect(needed(condition, test.fact, lookup.domain(test.fact)), told[test.fact]))
        for test in tests(condition)
    )


def _is_of_the_hour(lookup: Lookup, fact: str) -> bool:
    """Whether a fact is of the weather or the time, which is everybody's wherever they are."""
    return not _HOURS.isdisjoint(lookup.facts[fact].label.casefold().split())


@lru_cache(maxsize=512)
def _along(
    lookup: Lookup, fact: str, values: ValueSet, day: datetime.date | None
) -> tuple[tuple[str, ValueSet], ...]:
    rules = [
        (rule, condition)
        for rule in lookup.base.rules
        if not rule.residual and (day is None or is_in_force(rule, day))
        if _turns(lookup, condition := _written_out(lookup, rule.condition), fact, values)
    ]
    turning = [condition for _, condition in rules]
    shared = [{test.fact for test in tests(condition)} for condition in turning]
    found = {
        name: either
        for name in sorted(set.intersection(*shared) - {fact} if shared else ())
        if _goes(lookup, name) and (either := _either(lookup, turning, name)) is not None
    }
    duties = [condition for rule, condition in rules if rule.modality == "must"]
    if GRADE in lookup.facts and fact != GRADE and not is_place(lookup, fact):
        whose = [one for one in duties if _either(lookup, [one], GRADE) is not None]
        mostly = len(whose) >= _FEWEST and (len(duties) - len(whose)) * _MOSTLY <= len(whose)
        if mostly and (grades := _either(lookup, whose, GRADE)) is not None:
            found[GRADE] = grades
    return tuple(found.items())


def _written_out(lookup: Lookup, condition: Condition) -> Condition:
    """A condition with what is so where a term that it needs holds: of object work the tasks that are."""
    terms = [test.fact for test in tests(condition) if lookup.facts[test.fact].family == "term"]
    held = [term for term in terms if needed(condition, term, lookup.domain(term)) == YES]
    meant = [[one.condition for one in lookup.base.definitions if one.term == term] for term in held]
    return all_of([condition, *(one[0] for one in meant if len(one) == 1)])


def _turns(lookup: Lookup, condition: Condition, fact: str, values: ValueSet) -> bool:
    """Whether a rule holds only in some of the cases of a fact, what is told among them."""
    if all(test.fact != fact for test in tests(condition)):
        return False
    domain = lookup.domain(fact)
    within = needed(condition, fact, domain)
    return within != domain and not is_empty(intersect(within, values))


def _goes(lookup: Lookup, name: str) -> bool:
    """Whether a fact is where somebody is or what they do: of the weather nothing goes without saying."""
    record = lookup.facts[name]
    if record.kind != "choice" or record.family != "situation" or name.startswith(WORN):
        return False
    return is_place(lookup, name) or not _DOINGS.isdisjoint(record.label.casefold().split())


def _either(lookup: Lookup, conditions: Sequence[Condition], name: str) -> ValueSet | None:
    """The values with which any of them can hold; nothing where that is all there are, or none."""
    domain = lookup.domain(name)
    none: ValueSet = Choices(frozenset())
    either = reduce(unite, [needed(condition, name, domain) for condition in conditions], none)
    return None if is_empty(either) or either == domain else either
