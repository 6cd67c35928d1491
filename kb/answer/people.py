"""Who may, who must: the grades, branches and holders for whom an act has a verdict."""

from __future__ import annotations

from collections.abc import Mapping

from kb.answer.acts import act_part
from kb.answer.common import Part
from kb.model.lookup import Lookup
from kb.model.questions import ListEntry, Verdict
from kb.model.values import ValueSet, unite
from kb.reasoner import Engine, Facts
from kb.wording import say_facts, say_holders

PERSONAL = ("grade", "branch", "qualification", "appointment", "waiver")


def personal_facts(lookup: Lookup) -> tuple[str, ...]:
    """Facts about the person, grade first."""
    ranked = [(PERSONAL.index(f.family), f.id) for f in lookup.base.facts if f.family in PERSONAL]
    return tuple(fact for _, fact in sorted(ranked, key=lambda entry: entry[0]))


def people_part(
    engine: Engine, item: str, aspect: str, possible: Mapping[str, ValueSet]
) -> tuple[Part, tuple[ListEntry, ...]]:
    """The table with the person's facts first, and one entry for each kind of person."""
    lookup = engine.lookup
    personal = personal_facts(lookup)
    part = act_part(engine, item, aspect, possible, first=personal)
    grouped: dict[Facts, list[tuple[Facts, Verdict, tuple[str, ...]]]] = {}
    for case in part.cases:
        who = tuple(entry for entry in case.when if entry[0] in personal)
        rest = tuple(entry for entry in case.when if entry[0] not in personal)
        grouped.setdefault(who, []).append((rest, case.verdict, case.rules))
    entries = [_entry(lookup, who, found) for who, found in grouped.items()]
    return part, _merge_grades(lookup, item, entries)


def _entry(
    lookup: Lookup, who: Facts, found: list[tuple[Facts, Verdict, tuple[str, ...]]]
) -> tuple[Facts, Verdict, str, tuple[str, ...]]:
    verdicts = {verdict for _, verdict, _ in found}
    rules = tuple(dict.fromkeys(rule for _, _, listed in found for rule in listed))
    if len(verdicts) == 1:
        return who, found[0][1], "", rules
    lines = [
        f"{verdict.replace('_', ' ')} when {say_facts(lookup, rest)}"
        for rest, verdict, _ in found
        if verdict in ("required", "permitted", "conflict")
    ]
    return who, "conditional", "; ".join(lines), rules


def _merge_grades(
    lookup: Lookup, item: str, entries: list[tuple[Facts, Verdict, str, tuple[str, ...]]]
) -> tuple[ListEntry, ...]:
    """Kinds of people that differ in grade only and fare alike become one line."""
    merged: dict[tuple[Facts, Verdict, str], tuple[ValueSet | None, tuple[str, ...]]] = {}
    for who, verdict, condition, rules in entries:
        grade = dict(who).get("grade")
        rest = tuple(entry for entry in who if entry[0] != "grade")
        key = (rest, verdict, condition)
        if key in merged:
            before, listed = merged[key]
            grade = unite(before, grade) if before is not None and grade is not None else None
            rules = tuple(dict.fromkeys([*listed, *rules]))
        merged[key] = (grade, rules)
    lines = []
    for (rest, verdict, condition), (grade, rules) in merged.items():
        who = (("grade", grade), *rest) if grade is not None else rest
        label = say_holders(lookup, who)
        lines.append(ListEntry(item=item, label=label, verdict=verdict, condition=condition, rules=rules))
    return tuple(lines)
