"""What would have to change: the fewest stated facts that, were they otherwise, would turn the verdict.

Facts are varied, never rules. Sizes are tried upwards, so what is found is smallest; every set of a size is
tried.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

import msgspec

from kb.answer.citing import names_its_things
from kb.model.lookup import Lookup
from kb.model.questions import AnswerCase, Change, Query, Verdict
from kb.model.values import ValueSet
from kb.reasoner import Engine, Group, rows
from kb.wording import clause_reference, say_facts, say_verdict

_MOST_FACTS = 3
_MOST_CLAUSES = 3
TURNS: dict[Verdict, tuple[Verdict, ...]] = {
    "prohibited": ("permitted", "required"),
    "silent": ("permitted", "required", "prohibited"),
    "permitted": ("prohibited", "required"),
    "required": ("prohibited", "permitted", "not_required"),
    "not_required": ("required", "prohibited"),
    "conflict": ("permitted", "required", "prohibited", "not_required"),
}


def turning_changes(
    engine: Engine, group: Group, possible: Mapping[str, ValueSet], verdict: Verdict
) -> tuple[Change, ...]:
    """The smallest changes of known facts that turn a settled verdict into another that matters.

    `possible` holds what is known. What else is worn counts as one fact together where the question says
    "alone"; nothing is found where the verdict does not rest on what was stated.
    """
    watched = engine.problem(group, possible).facts
    stated = [fact for fact in possible if fact in watched]
    for size in range(1, min(_MOST_FACTS, len(stated)) + 1):
        found: list[Change] = []
        for changed in combinations(stated, size):
            found += _turned(engine, group, possible, verdict, changed)
        if found:
            return tuple(dict.fromkeys(found))
    return ()


def _turned(
    engine: Engine,
    group: Group,
    possible: Mapping[str, ValueSet],
    verdict: Verdict,
    changed: tuple[str, ...],
) -> list[Change]:
    """Rows of the table without the changed facts that rest on all of them and have another verdict.

    A row may need a fact that was not stated as well; rows that need none are enough where there are any.
    """
    relaxed = {fact: values for fact, values in possible.items() if fact not in changed}
    found, problem = [], engine.problem(group, relaxed)
    for when, said in rows(problem.verdicts(changed)):
        if said in TURNS.get(verdict, ()) and set(changed) <= {fact for fact, _ in when}:
            rules, label = problem.decisive_rules(dict(when)), say_facts(engine.lookup, when)
            found.append(Change(facts=when, verdict=said, label=label, rules=rules))
    alone = [change for change in found if len(change.facts) == len(changed)]
    return alone or found


def allowing(
    lookup: Lookup, query: Query, case: AnswerCase, changes: tuple[Change, ...]
) -> tuple[tuple[str, str], ...]:
    """Beside "nothing that is not listed": rules that list the thing, but for other facts, each with a note.

    The clause that forbids all that is not listed tells nothing of the thing; the clause that lists it does.
    Of each clause one way is told, of the first few clauses.
    """
    if case.verdict != "prohibited" or all(names_its_things(lookup.rules[rule]) for rule in case.rules):
        return ()
    found: dict[str, tuple[str, str]] = {}
    for change in changes:
        for rule in change.rules[:1]:
            if (clause := lookup.rules[rule].clause) not in found:
                said = say_verdict(lookup, change.verdict, msgspec.structs.replace(query, kind="why"))
                where = clause_reference(lookup, clause)
                found[clause] = (rule, f"{said.removesuffix('.')} if {change.label} ({where}).")
    return tuple(found.values())[:_MOST_CLAUSES]
