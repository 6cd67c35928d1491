"""What differs: two cases, or two items in one case, laid side by side."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import msgspec

from kb.answer.acts import act_part
from kb.answer.amending import clauses_behind
from kb.answer.aspects import aspect_part
from kb.answer.common import Part
from kb.answer.lists import LISTED, class_lines, grant_notes, listed_items, with_required
from kb.answer.own_side import of_this_side
from kb.model.grants import ungranted
from kb.model.questions import AnswerCase, Derivation, Difference, Query, Side, ValueStatus, Verdict
from kb.model.records import OWNED_ASPECTS, Case
from kb.model.values import ValueSet, intersect, is_empty, unite
from kb.reasoner import Engine, Facts, Problem, possible_facts, rows
from kb.wording import say_class_line, say_lead, say_matter, say_table

Outcome = tuple[Verdict, ValueSet | None]


class _View(msgspec.Struct, frozen=True):
    """One side: the reasoner for its day, its case, and the item where the sides differ in that."""

    engine: Engine
    case: Case
    item: str | None = None


class _Table(msgspec.Struct, frozen=True):
    """What one side says of an item and aspect: outcome by case, under the facts that are known there."""

    rows: tuple[tuple[Facts, Outcome], ...]
    possible: dict[str, ValueSet]
    problem: Problem


class Comparison(msgspec.Struct, frozen=True, kw_only=True):
    """What differs; how many matters are the same, and how many of these depend on further facts.

    `own`: the items that each side requires, in some case at least, and the other in none, and whether it
    requires all of them in every case. `lead` tells them.
    """

    differences: tuple[Difference, ...]
    alike: int
    open_alike: int
    notes: tuple[str, ...] = ()
    own: tuple[tuple[tuple[str, ...], bool], ...] = ()
    naming: tuple[tuple[str, ...], ...] = ()
    lead: str = ""


def compare(engine: Engine, query: Query) -> Comparison:
    """The two sides of a comparison; of what a book did only the points that its clauses bear on."""
    found = _compare_all(engine, query)
    if query.book is None:
        lead = say_lead(engine.lookup, query, found.own, found.differences)
        return msgspec.structs.replace(found, lead=lead)
    clauses = clauses_behind(engine.lookup, query.book)
    rules = engine.lookup.rules
    kept = tuple(
        one
        for one in found.differences
        if any(rules[rule].clause in clauses for side in one.sides for rule in side.rules)
    )
    return Comparison(differences=kept, alike=0, open_alike=0, notes=found.notes)


def _compare_all(engine: Engine, query: Query) -> Comparison:
    """The two sides of a comparison; without an item all that is worn as a list has it, then all else."""
    views = _views(engine, query)
    if query.items:
        pairs = [(item, item) for item in _spoken_of(views, query.items)]
        if query.other is None:
            pairs = [(query.items[0], query.items[1])]
        return _compare_matters(
            views, [(pair, a) for pair in pairs for a in _aspects(views, pair, query.aspect)]
        )
    lists = _compare_lists(views, query.aspect)
    if query.aspect != "wear":
        return lists
    rest = _compare_matters(views, _all_but_wear(views))
    return Comparison(
        differences=(*lists.differences, *rest.differences),
        alike=lists.alike + rest.alike,
        open_alike=lists.open_alike + rest.open_alike,
        notes=lists.notes,
        own=lists.own,
        naming=lists.naming,
    )


def _views(engine: Engine, query: Query) -> tuple[_View, _View]:
    if query.other is None:
        first, second = query.items[:2]
        return _View(engine, query.case, first), _View(engine, query.case, second)
    return _View(engine, query.case), _View(engine.on(query.other.as_of), query.other)


# -- everything worn ------------------------------------------------------------------------------------


def _compare_lists(views: tuple[_View, _View], aspect: str) -> Comparison:
    grants = shared_grants(views, aspect)
    known = [
        with_required(
            v.engine, listed_items(v.engine, aspect), Query(kind="list", aspect=aspect, case=v.case), grants
        )
        for v in views
    ]
    named = {item for view in views for item in listed_items(view.engine, aspect)}
    lookup = views[0].engine.lookup
    found: list[Difference] = []
    alike = open_alike = 0
    own: tuple[dict[str, bool], dict[str, bool]] = ({}, {})
    for item in (record.id for record in lookup.base.items if record.id in named):
        tables = [_act_table(v.engine, item, aspect, k) for v, k in zip(views, known, strict=True)]
        sides = [_list_side(v.engine, item, table) for v, table in zip(views, tables, strict=True)]
        if _differ(*tables):
            label = say_matter(lookup, item, aspect, alone=True)
            found.append(Difference(item=item, aspect=aspect, label=label, sides=(sides[0], sides[1])))
            for table, other, things in zip(tables, tables[::-1], own, strict=True):
                if _ever(table, "required") and not _ever(other, "required", "conditional", "conflict"):
                    things[item] = len(table.rows) == 1
        elif sides[0].verdict != "silent":
            alike += 1
            open_alike += sides[0].verdict == "conditional"
    found += _class_differences(views, known, aspect)
    ordered = sorted(found, key=lambda one: min(_rank(side.verdict) for side in one.sides))
    notes = grant_notes(views[0].engine, grants)
    sided = [
        of_this_side(view.engine, view.case, other.case, aspect, things)
        for view, other, things in zip(views, views[::-1], own, strict=True)
    ]
    return Comparison(
        differences=tuple(ordered),
        alike=alike,
        open_alike=open_alike,
        notes=notes,
        own=tuple(
            (tuple(kept), all(things[one] for one in kept)) for kept, things in zip(sided, own, strict=True)
        ),
        naming=tuple(rules for kept in sided for rules in kept.values() if rules),
    )


def _ever(table: _Table, *verdicts: Verdict) -> bool:
    return any(verdict in verdicts for _, (verdict, _) in table.rows)


def shared_grants(views: tuple[_View, _View], aspect: str) -> dict[str, ValueSet]:
    """The grants that lists of both sides take as not given, where neither side states them."""
    lookup = views[0].engine.lookup
    found = ungranted(lookup, aspect, (), *(dict(view.case.facts) for view in views))
    possible = [{**possible_facts(view.case, (), True, lookup), **found} for view in views]
    fits = all(view.engine.check_case(known) for view, known in zip(views, possible, strict=True))
    return found if fits else {}


def _rank(verdict: Verdict) -> int:
    return LISTED.index(verdict) if verdict in LISTED else len(LISTED)


def _act_table(engine: Engine, item: str, aspect: str, possible: dict[str, ValueSet]) -> _Table:
    problem = engine.problem(engine.group(item, aspect), possible)
    found = tuple((when, (verdict, None)) for when, verdict in rows(problem.verdicts()))
    return _Table(found, possible, problem)


def _list_side(engine: Engine, item: str, table: _Table) -> Side:
    """A line of a list: the verdict, in words, and all rules that decide some case."""
    said = [(when, verdict, "") for when, (verdict, _) in table.rows]
    verdict: Verdict = said[0][1] if len(said) == 1 else "conditional"
    text = say_table(engine.lookup, said)
    return Side(item=item, verdict=verdict, text=text, rules=table.problem.decisive_rules())


def _class_differences(
    views: tuple[_View, _View], known: Sequence[Mapping[str, ValueSet]], aspect: str
) -> list[Difference]:
    """Prohibitions of everything of a kind but some that hold on one side only, or in other cases."""
    lines = [
        {line.rule: line for line in class_lines(view.engine, aspect, possible)}
        for view, possible in zip(views, known, strict=True)
    ]
    lookup = views[0].engine.lookup
    found = []
    for rule in dict.fromkeys([*lines[0], *lines[1]]):
        pair = [side.get(rule) for side in lines]
        if pair[0] == pair[1]:
            continue
        record = lookup.rules[rule]
        item = record.scope.items[0]
        sides = [
            Side(item=item, verdict="silent", text=say_class_line(lookup, "silent", None))
            if line is None
            else Side(
                item=item,
                verdict=line.verdict,
                text=say_class_line(lookup, line.verdict, line.condition),
                rules=(rule,),
            )
            for line in pair
        ]
        label = say_matter(lookup, item, aspect, alone=True, scope=record.scope)
        found.append(Difference(item=item, aspect=aspect, label=label, sides=(sides[0], sides[1])))
    return found


# -- one item, or items of a kind -----------------------------------------------------------------------


Matter = tuple[tuple[str, str], str]


def _compare_matters(views: tuple[_View, _View], matters: Iterable[Matter]) -> Comparison:
    """Pairs of items, each in one aspect; a matter that differs is worked out in full."""
    lookup = views[0].engine.lookup
    found: list[Difference] = []
    alike = open_alike = 0
    for pair, aspect in matters:
        tables = [_table(v, i, aspect) for v, i in zip(views, pair, strict=True)]
        if _differ(*tables):
            sides = [_side(v.engine, _part(v, i, aspect)) for v, i in zip(views, pair, strict=True)]
            label = say_matter(lookup, pair[0], aspect)
            found.append(Difference(item=pair[0], aspect=aspect, label=label, sides=(sides[0], sides[1])))
        elif {verdict for _, (verdict, _) in tables[0].rows} != {"silent"}:
            alike += 1
            open_alike += len(tables[0].rows) > 1
    return Comparison(differences=tuple(found), alike=alike, open_alike=open_alike)


def _all_but_wear(views: tuple[_View, _View]) -> list[Matter]:
    """Every item and aspect but wearing of which a rule that names the item speaks on either side."""
    lookup = views[0].engine.lookup
    named: dict[str, set[str]] = {}
    for rule in lookup.base.rules:
        for item in rule.scope.items if not rule.residual else ():
            named.setdefault(item, set()).add(rule.aspect)
    return [
        ((item.id, item.id), aspect)
        for item in lookup.base.items
        for aspect in lookup.aspects
        if aspect != "wear"
        and aspect in named.get(item.id, ())
        and any(view.engine.group(item.id, aspect).rules for view in views)
    ]


def _spoken_of(views: tuple[_View, _View], items: Iterable[str]) -> tuple[str, ...]:
    """The items, what is narrower and their parts, as far as rules in force on either day name them."""
    lookup = views[0].engine.lookup
    kinds = {narrow for item in items for narrow in lookup.narrower(item)}
    kinds |= {part.id for part in lookup.base.items if part.part_of in kinds}
    named = {item for rule in lookup.base.rules for item in rule.scope.items}
    chosen = (kinds & named) | set(items)
    return tuple(item.id for item in lookup.base.items if item.id in chosen)


def _aspects(views: tuple[_View, _View], pair: tuple[str, str], aspect: str) -> tuple[str, ...]:
    """The aspects in which a rule that names one of the items speaks of it on either side; all for "wear"."""
    lookup = views[0].engine.lookup
    wanted = lookup.aspects_within(aspect) if aspect != "wear" else tuple(lookup.aspects)
    named = {rule.aspect for rule in lookup.base.rules if not set(pair).isdisjoint(rule.scope.items)}
    sides = tuple(zip(views, pair, strict=True))
    return tuple(
        one
        for one in wanted
        if (one in named or one == "wear") and any(view.engine.group(item, one).rules for view, item in sides)
    )


def _possible(view: _View, item: str, aspect: str) -> dict[str, ValueSet]:
    """An item whose colour or place is asked about is worn."""
    wearing = not _is_act(view, aspect) and aspect not in OWNED_ASPECTS
    return possible_facts(view.case, (item,), wearing, view.engine.lookup)


def _is_act(view: _View, aspect: str) -> bool:
    record = view.engine.lookup.aspects[aspect]
    return record.kind == "act" and record.within is None


def _part(view: _View, item: str, aspect: str) -> Part:
    part = act_part if _is_act(view, aspect) else aspect_part
    return part(view.engine, item, aspect, _possible(view, item, aspect))


def _table(view: _View, item: str, aspect: str) -> _Table:
    """The outcomes of an item and aspect without proofs, which take most of the time."""
    engine, possible = view.engine, _possible(view, item, aspect)
    if _is_act(view, aspect):
        return _act_table(engine, item, aspect, possible)
    group = engine.group(item, aspect)
    problem = engine.problem(group, possible)
    act = engine.lookup.aspects[aspect].kind == "act"  # its verdict says it all

    def key(statuses: tuple[ValueStatus, ...], _: bool) -> Outcome:
        left = None if act else _left(group.classes, statuses)
        return engine.verdict(group, statuses), left

    return _Table(tuple(rows(problem.values(key, ("conditional", None)))), possible, problem)


def left_open(proof: Derivation) -> ValueSet | None:
    """All values that a proof leaves open together; None where it leaves none, or nothing is said."""
    return _left([fate.values for fate in proof.fates], [fate.status for fate in proof.fates])


def _left(classes: Sequence[ValueSet], statuses: Sequence[ValueStatus]) -> ValueSet | None:
    left = [
        values
        for values, status in zip(classes, statuses, strict=True)
        if status == "supported" or (status == "unaddressed" and "closed" in statuses)
    ]
    found = left[0] if left else None
    for values in left[1:]:
        found = values if found is None else unite(found, values)
    return found


def _side(engine: Engine, part: Part) -> Side:
    act = engine.lookup.aspects[part.aspect].kind == "act"
    said = [(case.when, case.verdict, "" if act else _values(case)) for case in part.cases]
    rules = tuple(dict.fromkeys(rule for case in part.cases for rule in case.rules))
    return Side(
        item=part.item,
        verdict=part.verdict,
        text=say_table(engine.lookup, said),
        cases=part.cases,
        derivation=part.derivations,
        rules=rules,
    )


def _values(case: AnswerCase) -> str:
    """ "must be 2 in", "may be gilt or silver"."""
    labels = dict.fromkeys(value.label for value in case.values)
    modal = "must" if len(labels) > 1 or all(value.required for value in case.values) else "may"
    return f"{modal} be {' or '.join(labels)}" if labels else ""


# -- the same or not ------------------------------------------------------------------------------------


def _differ(left: _Table, right: _Table) -> bool:
    """Whether some case of each side, alike in all that neither side states for itself, is decided otherwise.

    Where what is decided rests on a fact that the sides know differently, they are not alike.
    """
    if left.problem.said() != right.problem.said():
        return True
    outcomes = [{outcome for _, outcome in table.rows} for table in (left, right)]
    if any(verdict == "conditional" for found in outcomes for verdict, _ in found):  # some rows are folded
        return left.rows != right.rows
    if outcomes[0] != outcomes[1]:
        return True
    if len(outcomes[0]) == 1:
        return False
    tested = {fact for table in (left, right) for when, _ in table.rows for fact, _ in when}
    if any(left.possible.get(fact) != right.possible.get(fact) for fact in tested):
        return True
    return any(
        one != other and _meet(left, right, when, also)
        for when, one in left.rows
        for also, other in right.rows
    )


def _meet(left: _Table, right: _Table, when: Facts, also: Facts) -> bool:
    """Whether a possible case of each side lies in both rows."""
    both = dict(when)
    for fact, values in also:
        both[fact] = intersect(both[fact], values) if fact in both else values
        if is_empty(both[fact]):
            return False
    return bool(left.problem.said(both)) and bool(right.problem.said(both))
