"""Facts of the situation and their groups."""

from __future__ import annotations

from collections.abc import Iterable

from kb.measures import UNIT_BY_NAME, UNITS
from kb.model.records import Fact, FactFamily, FactKind, FactValue, Group
from kb.sources.cycles import find_cycles
from kb.sources.fields import Fields
from kb.sources.naming import NAME_KEYS, Name, by_id, check_labels, read_name
from kb.sources.people import read_value
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.tree import Mapping

_KINDS: dict[str, tuple[FactKind, FactFamily]] = {
    "choice": ("choice", "situation"),
    "scale": ("scale", "situation"),
    "yes or no": ("yes_no", "situation"),
    "measure": ("quantity", "situation"),
    "date": ("date", "situation"),
    "term": ("yes_no", "term"),
}
_ASK: dict[FactKind, str] = {
    "choice": "Which {}?",
    "scale": "Which {}?",
    "yes_no": "{}: yes or no?",
    "quantity": "What is the {}?",
    "date": "What is the {}?",
}
RESERVED = ("grade", "grades", "branch", "rig", "worn", "holds", "granted", "unless", "not")


def read_facts(nodes: Iterable[Mapping], report: Report) -> list[Fact]:
    """The facts that a service declares."""
    facts: list[Fact] = []
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "kind", "unit", "ask", "values"), "a fact", report)
        name = read_name(fields)
        if name is None:
            continue
        if name.id in RESERVED:
            message = f"{quoted(name.id)} is a word of the rule books and cannot be a fact."
            report.error(fields.place("id"), "reserved-id", message, "Give the fact another id.")
            continue
        facts.append(_fact(fields, name, report))
    check_labels(facts, "facts", report)
    return facts


def _fact(fields: Fields, name: Name, report: Report) -> Fact:
    word = fields.one_of("kind", _KINDS) if fields.has("kind") else "choice"
    kind, family = _KINDS[word or "yes or no"]
    return Fact(
        id=name.id,
        label=name.label,
        other_labels=name.other_labels,
        at=name.at,
        kind=kind,
        family=family,
        ask=fields.text("ask") or _ASK[kind].format(name.label),
        values=_values(fields, kind, report) if word else (),
        unit=_unit(fields, kind, report) if word else None,
    )


def _values(fields: Fields, kind: FactKind, report: Report) -> tuple[FactValue, ...]:
    read = [read_value(node, "a value", report) for node in fields.mappings("values")]
    values = tuple(by_id((value for value in read if value is not None), "value", report).values())
    if kind not in ("choice", "scale"):
        if fields.has("values"):
            message = "Values are listed, but the fact is not of the kind choice or scale."
            report.error(
                fields.lines["values"].key.at, "values-not-wanted", message, "Remove values or kind."
            )
        return ()
    if not values:
        fields.missing("values", "values: [{id: fair, label: fair weather}, {id: foul, label: foul weather}]")
    check_labels(values, "values", report)
    check_within(values, report)
    return values


def check_within(values: Iterable[FactValue], report: Report) -> None:
    """Report a value within an unknown value, and circles."""
    known = {value.id: value for value in values}
    for value in known.values():
        if value.within is not None and value.within not in known:
            remedy = suggestion(value.within, known, f"Write {listed(known)}.")
            message = (
                f"{quoted(value.id)} is said to be within {quoted(value.within)}, which is no value here."
            )
            report.error(value.at, "unknown-value", message, remedy)
    for circle in find_cycles({v.id: (v.within,) if v.within else () for v in known.values()}):
        message = f"Values lie within each other in a circle: {' within '.join((*circle, circle[0]))}."
        report.error(known[circle[0]].at, "circular-within", message, "Take one of the within lines away.")


_SHORTEST = 2  # letters of a unit that is close to another only by chance


def _unit(fields: Fields, kind: FactKind, report: Report) -> str | None:
    if kind != "quantity":
        if fields.has("unit"):
            message = "A unit is given, but the fact is not of the kind measure."
            report.error(fields.lines["unit"].key.at, "unit-not-wanted", message, "Write kind: measure.")
        return None
    written = fields.required("unit", "unit: °C")
    if written is None:
        return None
    unit = UNIT_BY_NAME.get(written.text.casefold()) or UNITS.get(written.text)
    if unit is None:
        near = suggestion(written.text, UNIT_BY_NAME, "") if len(written.text) > _SHORTEST else ""
        known = listed(u.symbol for u in UNITS.values())
        remedy = near or f"Write {known}; of a unit that is none of these ask yes or no (louder than 85 dB)."
        report.error(written.at, "unknown-unit", f"{quoted(written.text)} is no known unit.", remedy)
        return None
    return unit.code


def read_fact_groups(nodes: Iterable[Mapping], facts: dict[str, Fact], report: Report) -> list[Group]:
    """Named sets of values of one fact."""
    groups: list[Group] = []
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "one", "fact", "values"), "a fact group", report)
        name = read_name(fields)
        fact_id = fields.required("fact", "fact: place")
        if name is None or fact_id is None:
            continue
        fact = facts.get(fact_id.text)
        if fact is None or not fact.values:
            remedy = suggestion(fact_id.text, facts, "Declare it under facts, with its values.")
            message = f"There is no fact {quoted(fact_id.text)} with values."
            report.error(fact_id.at, "unknown-fact", message, remedy)
            continue
        known = [value.id for value in fact.values]
        members = []
        for value in fields.scalars("values"):
            if value.text in known:
                members.append(value.text)
                continue
            remedy = suggestion(value.text, known, f"Write {listed(known)}.")
            message = f"{quoted(value.text)} is no value of the fact {quoted(fact.id)}."
            report.error(value.at, "unknown-value", message, remedy)
        if not fields.has("values"):
            fields.missing("values", f"values: [{known[0]}]")
        groups.append(
            Group(
                id=name.id,
                label=name.label,
                other_labels=name.other_labels,
                at=name.at,
                fact=fact.id,
                members=tuple(members),
                one=fields.text("one"),
            )
        )
    return groups
