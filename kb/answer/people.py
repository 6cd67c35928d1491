"""Who may, who must: the grades, branches and holders for whom an act has a verdict."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from kb.answer.acts import act_part
from kb.answer.common import Part
from kb.model.lookup import Lookup
from kb.model.questions import ListEntry, Query, Verdict
from kb.model.values import ValueSet
from kb.reasoner import Engine, Facts, Problem, rows
from kb.wording import say_facts, say_holders, say_usual
from kb.wording.unless import Usually, usually

PERSONAL = ("grade", "branch", "qualification", "appointment", "waiver")


def personal_facts(lookup: Lookup) -> tuple[str, ...]:
    """Facts about the person, grade first."""
    ranked = [(PERSONAL.index(f.family), f.id) for f in lookup.base.facts if f.family in PERSONAL]
    return tuple(fact for _, fact in sorted(ranked, key=lambda entry: entry[0]))


def people_part(
    engine: Engine, query: Query, possible: Mapping[str, ValueSet]
) -> tuple[Part, tuple[ListEntry, ...]]:
    """The table with the person's facts first, and one entry for each kind of person."""
    lookup = engine.lookup
    item, aspect = query.items[0], query.aspect
    personal = personal_facts(lookup)
    part = act_part(engine, item, aspect, possible, first=personal)
    problem = engine.problem(engine.group(item, aspect), possible)
    grouped: dict[Facts, list[tuple[Facts, Verdict]]] = {}
    for when, verdict in rows(problem.verdicts(personal)):
        who = tuple(entry for entry in when if entry[0] in personal)
        rest = tuple(entry for entry in when if entry[0] not in personal)
        grouped.setdefault(who, []).append((rest, verdict))
    asked = (*(query.modalities or ("required", "permitted")), "conflict")
    said = usually(lookup, query.case.as_of, query.case.facts)
    entries = [_entry(problem, item, who, found, (lookup, said), asked) for who, found in grouped.items()]
    return part, tuple(entries)


def _entry(
    problem: Problem, item: str, who: Facts, found: list[tuple[Facts, Verdict]],
    known: tuple[Lookup, Usually], asked: Sequence[Verdict],
) -> ListEntry:  # fmt: skip
    """One kind of person: their verdict, or when they have one that was asked for (any, if none)."""
    lookup, said = known
    verdicts = {verdict for _, verdict in found}
    rules = problem.decisive_rules(dict(who))
    wanted = [row for row in found if row[1] in asked]
    usual = say_usual(lookup, found, asked, said)
    conditions = (
        [usual]
        if usual
        else [
            f"{verdict.replace('_', ' ')} when {say_facts(lookup, rest)}"
            for rest, verdict in wanted or [row for row in found if row[1] not in ("silent", "conditional")]
        ]
    )
    return ListEntry(
        item=item,
        label=say_holders(lookup, who),
        verdict=found[0][1] if len(verdicts) == 1 else "conditional",
        condition="; ".join(conditions) if len(verdicts) > 1 else "",
        rules=rules,
    )
