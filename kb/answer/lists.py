"""Everything required, permitted and prohibited for a person in a situation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from kb.answer.common import decisive
from kb.model.questions import ListEntry, Query, Verdict
from kb.model.values import YES, ValueSet
from kb.reasoner import WORN, Engine, Problem, in_force, possible_facts, rows, simplify, truth_of
from kb.wording import say_condition, say_depends, say_facts, say_scope

LISTED: tuple[Verdict, ...] = (
    "required",
    "conditional",
    "permitted",
    "prohibited",
    "conflict",
    "not_required",
)


def listed_items(engine: Engine, aspect: str) -> tuple[str, ...]:
    """The items that a rule in force names for an aspect, in the order of the sources."""
    lookup = engine.lookup
    named = {
        item
        for rule in lookup.base.rules
        if rule.aspect == aspect and not rule.residual and not rule.scope.excluding
        for item in rule.scope.items
        if rule.id in engine.group(item, aspect).rules
    }
    return tuple(item.id for item in lookup.base.items if item.id in named)


_MOST_ROWS = 2


def _condition(engine: Engine, problem: Problem, wanted: Sequence[Verdict]) -> str:
    """When an item has one of the wanted verdicts; what that depends on, where it takes too many words."""
    table = [(when, said) for when, said in rows(problem.verdicts()) if said in wanted]
    if len(table) > _MOST_ROWS:
        said = " or ".join(dict.fromkeys(verdict.replace("_", " ") for _, verdict in table))
        facts = tuple(dict.fromkeys(fact for when, _ in table for fact, _ in when))
        return f"{said}, depending on {say_depends(engine.lookup, facts)}"
    return "; ".join(
        f"{said.replace('_', ' ')} when {say_facts(engine.lookup, when)}" for when, said in table
    )


def _entry(
    engine: Engine, item: str, aspect: str, possible: Mapping[str, ValueSet], wanted: Sequence[Verdict]
) -> tuple[ListEntry, bool]:
    """One line of the list, and whether the item is required in every case."""
    lookup = engine.lookup
    group = engine.group(item, aspect)
    problem = engine.problem(group, possible)
    found = problem.decisions()
    verdicts = {decision.verdict for decision in found}
    rules = tuple(dict.fromkeys(rule for decision in found for rule in decisive(decision, group.classes)))
    verdict: Verdict = found[0].verdict if len(verdicts) == 1 else "conditional"
    condition = _condition(engine, problem, wanted) if verdict == "conditional" else ""
    label = lookup.items[item].label
    return ListEntry(
        item=item, label=label, verdict=verdict, condition=condition, rules=rules
    ), verdict == "required"


def _class_entries(engine: Engine, query: Query, possible: Mapping[str, ValueSet]) -> list[ListEntry]:
    """Prohibitions of everything of a kind but some: a line each, in the words of their scope."""
    lookup = engine.lookup
    found = []
    for rule in lookup.base.rules:
        if rule.modality != "must_not" or rule.aspect != query.aspect or not rule.scope.excluding:
            continue
        if rule.residual or not in_force(rule.valid_from, rule.valid_until, engine.as_of):
            continue
        condition = simplify(engine.condition(rule.id), possible)
        truth = truth_of(condition)
        if truth is False:
            continue
        found.append(
            ListEntry(
                item=rule.scope.items[0],
                label=say_scope(lookup, rule.scope),
                verdict="prohibited" if truth else "conditional",
                condition="" if truth else f"prohibited {say_condition(lookup, condition)}",
                rules=(rule.id,),
            )
        )
    return found


def list_entries(engine: Engine, query: Query) -> tuple[ListEntry, ...]:
    """The list, closed under duties that follow from what is worn: required items count as worn."""
    possible = possible_facts(query.case, (), True, engine.lookup)
    items = listed_items(engine, query.aspect)
    wanted = query.modalities or LISTED
    while True:
        found = [_entry(engine, item, query.aspect, possible, wanted) for item in items]
        worn = {
            WORN + broad: YES
            for entry, required in found
            if required and query.aspect == "wear"
            for broad in engine.lookup.broader(entry.item)
            if WORN + broad not in possible and WORN + broad in engine.lookup.facts
        }
        if not worn or not engine.check_case({**possible, **worn}):
            break
        possible = {**possible, **worn}
    lines = [entry for entry, _ in found] + _class_entries(engine, query, possible)
    entries = [entry for entry in lines if _is_wanted(entry, wanted) and _is_of(entry, query, engine)]
    return tuple(sorted(entries, key=lambda entry: LISTED.index(entry.verdict)))


def _is_of(entry: ListEntry, query: Query, engine: Engine) -> bool:
    """Whether an entry is of the kinds that the list is narrowed to; all are where it is not narrowed."""
    return not query.items or not set(engine.lookup.broader(entry.item)).isdisjoint(query.items)


def _is_wanted(entry: ListEntry, wanted: tuple[Verdict, ...]) -> bool:
    if entry.verdict == "silent":
        return False
    if entry.verdict == "conditional":
        return bool(entry.condition)
    return entry.verdict in wanted
