"""Authorities, grades, branches and what a person holds, read from the vocabulary sections."""

from __future__ import annotations

from collections.abc import Iterable

from kb.model.records import Authority, Fact, FactFamily, FactValue, Group
from kb.sources.builtin import BUILT_IN
from kb.sources.cycles import find_cycles
from kb.sources.fields import Fields
from kb.sources.naming import NAME_KEYS, by_id, check_labels, read_name
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.scales import make_scale, read_scale
from kb.sources.tree import Mapping, Scalar

HOLDINGS: tuple[tuple[str, FactFamily], ...] = (
    ("qualifications", "qualification"),
    ("appointments", "appointment"),
    ("waivers", "waiver"),
)
NOT_GRANTED = "none"


def read_authorities(nodes: Iterable[Mapping], report: Report) -> dict[str, Authority]:
    """Authorities by id, the highest first; rank 0 is the highest, equals share a rank."""
    drafts: list[Authority] = []
    equal: dict[str, Scalar] = {}
    rank = 0
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "equal to"), "an authority", report)
        name = read_name(fields)
        if name is None:
            continue
        same = fields.scalar("equal to")
        if same is not None:
            equal[name.id] = same
        drafts.append(
            Authority(id=name.id, label=name.label, other_labels=name.other_labels, at=name.at, rank=rank)
        )
        rank += 0 if same else 1
    found = by_id(drafts, "authority", report)
    check_labels(found.values(), "authorities", report)
    for circle in find_cycles({name: (target.text,) for name, target in equal.items()}):
        message = f"Authorities are equal to each other in a circle: {', '.join(circle)}."
        report.error(equal[circle[0]].at, "circular-rank", message, "Take away one of the equal to lines.")
    return {name: _ranked(record, found, equal, report) for name, record in found.items()}


def _ranked(
    record: Authority, found: dict[str, Authority], equal: dict[str, Scalar], report: Report
) -> Authority:
    seen = {record.id}
    current = record
    while current.id in equal:
        target = equal[current.id]
        if target.text not in found:
            remedy = suggestion(target.text, found, f"Write {listed(found)}.")
            report.error(
                target.at, "unknown-authority", f"There is no authority {quoted(target.text)}.", remedy
            )
            break
        if target.text in seen:
            break
        seen.add(target.text)
        current = found[target.text]
    return Authority(
        id=record.id, label=record.label, other_labels=record.other_labels, at=record.at, rank=current.rank
    )


def read_value(node: Mapping, what: str, report: Report, group: str | None = None) -> FactValue | None:
    """One value of a fact or an aspect."""
    fields = Fields(node, (*NAME_KEYS, "within", "everyday words", "note"), what, report)
    name = read_name(fields)
    if name is None:
        return None
    return FactValue(
        id=name.id,
        label=name.label,
        other_labels=name.other_labels,
        at=name.at,
        within=fields.text("within"),
        everyday=fields.texts("everyday words"),
        group=group,
        note=fields.text("note"),
    )


def read_ladders(nodes: Iterable[Mapping], report: Report) -> tuple[Fact | None, list[Group]]:
    """The fact `grade` with all grades in one order, and a group for each ladder."""
    grades: list[FactValue] = []
    ladders: list[Group] = []
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "one", "grades"), "a ladder", report)
        name = read_name(fields)
        if name is None:
            continue
        steps = [read_value(step, "a grade", report, name.id) for step in fields.mappings("grades")]
        values = [value for value in steps if value is not None]
        if not values:
            fields.missing("grades", "grades: [{id: H1, label: Third Hand}]")
        grades.extend(values)
        ladders.append(
            Group(
                id=name.id,
                label=name.label,
                other_labels=name.other_labels,
                at=name.at,
                fact="grade",
                members=tuple(value.id for value in values),
                one=fields.text("one"),
            )
        )
    if not grades:
        return None, ladders
    values_by_id = tuple(by_id(grades, "grade", report).values())
    ask = "Which grade?"
    fact = Fact(
        id="grade", label="grade", at=BUILT_IN, kind="scale", family="grade", ask=ask, values=values_by_id
    )
    return fact, ladders


def read_grade_groups(
    nodes: Iterable[Mapping], fact: Fact | None, ladders: list[Group], report: Report
) -> list[Group]:
    """Ladders and grade groups; a group may be made of earlier groups."""
    groups = list(ladders)
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "one", "grades"), "a grade group", report)
        name = read_name(fields)
        texts = fields.scalars("grades")
        if not texts:
            fields.missing("grades", "grades: K3 to K5")
        if name is None or fact is None or not texts:
            continue
        members = read_scale(texts, make_scale(fact, groups), report)
        groups.append(
            Group(
                id=name.id,
                label=name.label,
                other_labels=name.other_labels,
                at=name.at,
                fact="grade",
                members=tuple(v.id for v in fact.values if members and v.id in members),
                one=fields.text("one"),
            )
        )
    if fact is not None:
        check_labels([*fact.values, *groups], "grades or groups", report)
    return groups


def read_values_fact(nodes: Iterable[Mapping], fact_id: FactFamily, ask: str, report: Report) -> Fact | None:
    """The built-in fact `branch` or `rig` from its section."""
    read = [read_value(node, f"a {fact_id}", report) for node in nodes]
    values = tuple(by_id((v for v in read if v is not None), fact_id, report).values())
    check_labels(values, f"{fact_id}s" if fact_id == "rig" else "branches", report)
    if not values:
        return None
    return Fact(id=fact_id, label=fact_id, at=BUILT_IN, kind="choice", family=fact_id, ask=ask, values=values)


def read_holdings(nodes: Iterable[Mapping], family: FactFamily, report: Report) -> list[Fact]:
    """A yes/no fact `holds:<id>` for each qualification, appointment or waiver."""
    facts: list[Fact] = []
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "ask"), f"a {family}", report)
        name = read_name(fields)
        if name is None:
            continue
        facts.append(
            Fact(
                id=f"holds:{name.id}",
                label=name.label,
                other_labels=name.other_labels,
                at=name.at,
                kind="yes_no",
                family=family,
                ask=fields.text("ask") or f"Do you hold the {name.label}?",
            )
        )
    return facts


def _grantors(authorities: dict[str, Authority]) -> tuple[FactValue, ...]:
    """Nobody, then every authority from the lowest to the highest."""
    nobody = FactValue(id=NOT_GRANTED, label="not granted", at=BUILT_IN)
    rising = sorted(authorities.values(), key=lambda authority: -authority.rank)
    return (
        nobody,
        *(FactValue(id=a.id, label=a.label, other_labels=a.other_labels, at=a.at) for a in rising),
    )


def read_authorisations(
    nodes: Iterable[Mapping], authorities: dict[str, Authority], report: Report
) -> tuple[list[Fact], dict[str, str]]:
    """A fact `granted:<id>` for each authorisation, and the lowest authority that may grant it."""
    facts: list[Fact] = []
    lowest: dict[str, str] = {}
    for node in nodes:
        fields = Fields(node, (*NAME_KEYS, "granted by", "ask"), "an authorisation", report)
        name = read_name(fields)
        grantor = fields.required("granted by", "granted by: station")
        if name is None:
            continue
        if grantor is not None and grantor.text not in authorities:
            remedy = suggestion(grantor.text, authorities, f"Write {listed(authorities)}.")
            message = f"There is no authority {quoted(grantor.text)}."
            report.error(grantor.at, "unknown-authority", message, remedy)
        elif grantor is not None:
            lowest[name.id] = grantor.text
        facts.append(
            Fact(
                id=f"granted:{name.id}",
                label=name.label,
                other_labels=name.other_labels,
                at=name.at,
                kind="scale",
                family="authorisation",
                ask=fields.text("ask") or f"Who, if anyone, has granted {name.label}?",
                values=_grantors(authorities),
            )
        )
    return facts, lowest
