"""A concrete case of a finding, as a question that can be pasted into a terminal."""

from __future__ import annotations

import datetime
import shlex
from collections.abc import Mapping
from fractions import Fraction

from kb.audit.law import Law, View
from kb.measures import day_values, format_quantity
from kb.model.conditions import Condition
from kb.model.lookup import Lookup
from kb.model.questions import Query, QuestionKind
from kb.model.records import Case, Fact
from kb.model.values import Choices, Interval, Ranges, ValueSet, contains
from kb.reasoner import Facts
from kb.wording import say_query

_UNSAFE = frozenset('"\\$`!')


def smallest_case(view: View, matter: Condition, found: Mapping[str, ValueSet]) -> Facts:
    """The facts of a case without those that the matter does not need, each with one value of its class."""
    kept = {fact: values for fact, values in found.items() if view.known.get(fact) != values}
    for fact in reversed(list(kept)):
        rest = {name: values for name, values in kept.items() if name != fact}
        if view.law.always(matter, {**view.known, **rest}):
            kept = rest
    lookup = view.law.lookup
    return tuple((fact, _one_value(lookup, fact, values)) for fact, values in _sorted(lookup, kept))


def _sorted(lookup: Lookup, facts: Mapping[str, ValueSet]) -> list[tuple[str, ValueSet]]:
    order = {fact.id: i for i, fact in enumerate(lookup.base.facts)}
    return sorted(facts.items(), key=lambda entry: order[entry[0]])


def _one_value(lookup: Lookup, fact: str, values: ValueSet) -> ValueSet:
    """One value of a set: of names one that has nothing narrower outside the set, of numbers a plain one."""
    record = lookup.facts[fact]
    if isinstance(values, Ranges):
        number = _plain_number(values)
        if record.kind == "date":
            day = datetime.date.fromordinal(
                min(max(number.__floor__(), 1), datetime.date.max.toordinal() - 1)
            )
            return day_values(day, day)
        return Ranges((Interval(number, number),))
    names = [value.id for value in record.values] or ["yes", "no"]
    inside = [name for name in names if contains(values, name)]
    parents = {value.within for value in record.values}
    leaves = [name for name in inside if name not in parents]
    return Choices(frozenset((leaves or inside)[:1]))


def _plain_number(values: Ranges) -> Fraction:
    """A whole number if there is one, else the middle or an end."""
    first = values.intervals[0]
    if first.low is None or first.high is None:
        end = first.high if first.low is None else first.low
        if end is None:
            return Fraction(0)
        whole = Fraction(end.__floor__() if first.low is None else end.__ceil__())
        step = -1 if first.low is None else 1
        return whole if contains(values, whole) else whole + step
    for number in (first.low.__ceil__(), first.low.__ceil__() + 1):
        if contains(values, Fraction(number)):
            return Fraction(number)
    return (first.low + first.high) / 2


def _written(fact: Fact, values: ValueSet) -> str:
    if isinstance(values, Ranges):
        number = values.intervals[0].low or Fraction(0)
        if fact.kind == "date":
            return datetime.date.fromordinal(int(number)).isoformat()
        return format_quantity(number, fact.unit or "1")
    return next(iter(sorted(values.members)))


def _kind(lookup: Lookup, aspect: str) -> QuestionKind:
    kind = lookup.aspects[aspect].kind
    if kind == "act":
        return "may"
    return {"position": "where", "count": "how_many"}.get(kind, "how")  # type: ignore[return-value]


def question(law: Law, item: str, aspect: str, facts: Facts, dated: bool) -> str:
    """A command line: the question with the grade in it, every other fact as an option."""
    lookup = law.lookup
    person = tuple((fact, values) for fact, values in facts if lookup.facts[fact].family == "grade")
    case = Case(as_of=law.day, facts=person)
    kind = _kind(lookup, aspect)
    text = say_query(lookup, Query(kind=kind, items=(item,), aspect=aspect, case=case))
    parts = ["clothbound", "ask", _quoted(text)]
    for fact, values in facts:
        if (fact, values) not in person:
            parts += ["--fact", shlex.quote(f"{fact}={_written(lookup.facts[fact], values)}")]
    if dated:
        parts += ["--as-of", law.day.isoformat()]
    return " ".join(parts)


def _quoted(text: str) -> str:
    return shlex.quote(text) if _UNSAFE & set(text) else f'"{text}"'
