"""What differs by grade, as a table: one row for each set of grades, one column for each aspect."""

from __future__ import annotations

from collections.abc import Sequence

from kb.guidance.citing import Citing
from kb.guidance.document import Table
from kb.guidance.provisions import Provision
from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.values import Choices, ValueSet, contains
from kb.wording import capital, listing, of_item, say_value, say_values

_COLUMN_KINDS = frozenset({"choice", "measure", "count", "position"})
NOTHING = "no rule"


def grade_fact(lookup: Lookup) -> str | None:
    return next((fact.id for fact in lookup.base.facts if fact.family == "grade"), None)


def grade_table(
    lookup: Lookup, provisions: Sequence[Provision], citing: Citing
) -> tuple[Table, list[Provision]] | None:
    """The table of what provisions about one thing say by grade, and the provisions that are in it.

    Only aspects for which two or more sets of grades have rules of their own make a column; None without any.
    """
    fact = grade_fact(lookup)
    columns: dict[str, list[tuple[ValueSet, Provision]]] = {}
    for provision in provisions:
        rule, condition = provision.rule, provision.rule.condition
        by_grade = isinstance(condition, Test) and condition.fact == fact
        single = len(rule.scope.items) == 1 and not rule.scope.excluding
        plain = rule.modality == "must" and not provision.period and not rule.caution and not rule.note
        if by_grade and single and plain and lookup.aspects[rule.aspect].kind in _COLUMN_KINDS:
            assert isinstance(condition, Test)
            columns.setdefault(rule.aspect, []).append((condition.values, provision))
    columns = {aspect: found for aspect, found in columns.items() if len(found) > 1 and _apart(found)}
    if fact is None or not columns:
        return None
    item = next(iter(columns.values()))[0][1].rule.scope.items[0]
    names = [of_item(lookup, aspect, item) for aspect in columns]
    rows = [
        (
            capital(say_values(lookup, fact, grades)),
            *(_cell(lookup, grades, f, citing) for f in columns.values()),
        )
        for grades in _rows(lookup, fact, columns)
    ]
    used = [provision for found in columns.values() for _, provision in found]
    table = Table(
        caption=f"The table below gives, by grade, {listing(names)}",
        head=(capital(lookup.facts[fact].label), *map(capital, names)),
        rows=tuple(rows),
        rules=tuple(dict.fromkeys(rule for provision in used for rule in provision.rules)),
    )
    return table, used


def _apart(found: Sequence[tuple[ValueSet, Provision]]) -> bool:
    """Whether no grade has two of the rules."""
    members = [values.members for values, _ in found if isinstance(values, Choices) and not values.complement]
    return len(members) == len(found) and len(frozenset().union(*members)) == sum(map(len, members))


def _rows(lookup: Lookup, fact: str, columns: dict[str, list[tuple[ValueSet, Provision]]]) -> list[Choices]:
    """The grades that some column speaks of, cut so that each row has one cell of each column."""
    groups: dict[tuple[int, ...], list[str]] = {}
    for grade in lookup.order(fact):
        cells = tuple(
            next((i for i, (values, _) in enumerate(found) if contains(values, grade)), -1)
            for found in columns.values()
        )
        if any(cell >= 0 for cell in cells):
            groups.setdefault(cells, []).append(grade)
    return [Choices(frozenset(grades)) for grades in groups.values()]


def _cell(
    lookup: Lookup, grades: Choices, found: Sequence[tuple[ValueSet, Provision]], citing: Citing
) -> str:
    grade = min(grades.members)
    for values, provision in found:
        if contains(values, grade):
            rule = provision.rule
            return f"{say_value(lookup, rule.aspect, rule.value)} ({citing.citation(provision.rules)})"
    return NOTHING
