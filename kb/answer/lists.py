"""Everything required, permitted and prohibited for a person in a situation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import msgspec

from kb.answer.aspects import aspect_part
from kb.answer.citing import citations, names_its_things
from kb.answer.common import list_cautions, replaced
from kb.model.conditions import Condition, evaluate, tests
from kb.model.grants import ungranted
from kb.model.questions import Answer, ListEntry, OpenValue, Query, Verdict
from kb.model.records import is_in_force
from kb.model.values import YES, Choices, ValueSet, contains, subtract
from kb.reasoner import WORN, Engine, Facts, Problem, possible_facts, rows, simplify, truth_of
from kb.wording import (
    listing,
    rule_reference,
    say_condition,
    say_depends,
    say_facts,
    say_joined,
    say_list_headline,
    say_scope,
    say_usual,
)
from kb.wording.counts import counts_pairs
from kb.wording.unless import Usually, goes_with, ordinary, ordinary_sets, strange_in, usually

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
        if rule.aspect == aspect and names_its_things(rule)
        for item in rule.scope.items
        if rule.id in engine.group(item, aspect).rules
    }
    return tuple(item.id for item in lookup.base.items if item.id in named)


_MOST_ROWS = 2


def _condition(
    engine: Engine,
    whole: Sequence[tuple[Facts, Verdict]],
    problem: Problem,
    wanted: Sequence[Verdict],
    known: Usually,
    usual: int | None,
) -> str:
    """When an item has one of the wanted verdicts; what that depends on, where it takes too many words."""
    exact = say_usual(engine.lookup, whole, wanted, known)
    if exact:
        return exact
    if usual is not None and whole[usual][1] in wanted and (mostly := _mostly(engine, whole, usual, known)):
        return mostly
    table = [(when, said) for when, said in whole if said in wanted]
    folded = any(said == "conditional" for _, said in whole)
    joined = () if folded else _joined(engine, whole, wanted)
    if joined:
        return "; ".join(joined)
    if len(table) > _MOST_ROWS or folded:
        verdicts = [v for v in LISTED if v in wanted and v in problem.said()] if folded else []
        said = " or ".join(v.replace("_", " ") for v in verdicts or dict.fromkeys(said for _, said in table))
        stating = [when for when, verdict in whole if verdict in (*wanted, "conditional")]
        facts = tuple(dict.fromkeys(fact for when in stating for fact, _ in when)) or problem.facts
        return f"{said}, depending on {say_depends(engine.lookup, facts)}"
    return "; ".join(
        f"{said.replace('_', ' ')} when {say_facts(engine.lookup, when)}" for when, said in table
    )


def _usual(engine: Engine, whole: Sequence[tuple[Facts, Verdict]], known: Usually) -> int | None:
    """The row in which nothing is out of the ordinary; nobody has said that what it goes with is worn."""
    return ordinary(engine.lookup, whole, known) if goes_with(whole) is None else None


def _mostly(engine: Engine, whole: Sequence[tuple[Facts, Verdict]], usual: int, known: Usually) -> str:
    """ "ordinarily required, depending on the place and 4 more facts", by what makes it otherwise."""
    sets = ordinary_sets(engine.lookup, [when for when, _ in whole], known)
    verdict = whole[usual][1]
    strange = [fact for when, found in whole if found != verdict for fact in strange_in(when, sets)]
    facts = sorted(dict.fromkeys(strange), key=strange.count, reverse=True)
    depends = say_depends(engine.lookup, facts) if facts else ""
    return f"ordinarily {verdict.replace('_', ' ')}, depending on {depends}" if depends else ""


def _joined(
    engine: Engine, whole: Sequence[tuple[Facts, Verdict]], wanted: Sequence[Verdict]
) -> tuple[str, ...]:
    """For each wanted verdict when it is given, all its cases in one; nothing where that is too long."""
    said = []
    for verdict in dict.fromkeys(v for _, v in whole if v in wanted):
        chosen = [index for index, (_, v) in enumerate(whole) if v == verdict]
        when = say_joined(engine.lookup, [facts for facts, _ in whole], chosen)
        if not when:
            return ()
        said.append(f"{verdict.replace('_', ' ')} {when}")
    return tuple(said)


class Line(msgspec.Struct, frozen=True):
    """One line of a list, and the sets of rules of which a clause each carries what it says.

    `choice` is the duty that another thing would meet as well, where nothing is out of the ordinary.
    """

    entry: ListEntry
    carriers: tuple[tuple[str, ...], ...]
    choice: str | None = None


def _line(
    engine: Engine,
    item: str,
    aspect: str,
    possible: Mapping[str, ValueSet],
    wanted: Sequence[Verdict],
    known: Usually,
) -> Line:
    """One item; what carries it is what carries the cases that are told of it."""
    group = engine.group(item, aspect)
    problem = engine.problem(group, possible)
    verdicts = problem.said()
    verdict: Verdict = next(iter(verdicts)) if len(verdicts) == 1 else "conditional"
    conditional = verdict == "conditional" and not verdicts.isdisjoint(wanted)
    whole = rows(problem.verdicts()) if conditional else ()
    usual = _usual(engine, whole, known)
    entry = ListEntry(
        item=item,
        label=engine.lookup.items[item].label,
        verdict=verdict,
        usual=whole[usual][1] if usual is not None and whole[usual][1] in wanted else None,
        condition=_condition(engine, whole, problem, wanted, known, usual) if conditional else "",
        rules=problem.decisive_rules(),
    )
    told = [dict(when) for when, said in whole if said in wanted] if conditional else [{}]
    groups = dict.fromkeys(group for when in told for group in problem.carrying_rules(when))
    mostly = problem.decisive_rules(dict(whole[usual][0])) if usual is not None else ()
    choices = (rule for rule in mostly if engine.lookup.rules[rule].scope.alternatives is not None)
    return Line(entry, tuple(groups) or (entry.rules,), next(choices, None))


_WAYS: dict[Verdict, tuple[tuple[bool, str], ...]] = {
    "required": ((True, "no"),),
    "prohibited": ((True, "yes"),),
    "permitted": ((False, "yes"),),
    "not_required": ((False, "no"),),
    "conflict": ((True, "yes"), (True, "no")),
}
"""What a rule must do for a verdict to come about: close (or support) a value of the act."""


def _can_have(
    engine: Engine, item: str, aspect: str, possible: Mapping[str, ValueSet], wanted: Sequence[Verdict]
) -> bool:
    """Whether a rule that is not known to be kept out does what one of the verdicts takes.

    Where none does, no case has any of them, and the item need not be decided.
    """
    stated = frozenset(fact for fact in possible if fact in engine.definitions)
    ways = {way for verdict in wanted for way in _WAYS.get(verdict, ())}
    return any(
        any(norm.closes is closes and contains(norm.values, value) for closes, value in ways)
        and evaluate(engine.condition(norm.rule, stated), possible.get) is not False
        for norm, _ in engine.group(item, aspect).norms
    )


class ClassLine(msgspec.Struct, frozen=True):
    """A prohibition of everything of a kind but some, in the cases that are still open (None: in all)."""

    rule: str
    condition: Condition | None

    @property
    def verdict(self) -> Verdict:
        return "prohibited" if self.condition is None else "conditional"


def class_lines(engine: Engine, aspect: str, possible: Mapping[str, ValueSet]) -> tuple[ClassLine, ...]:
    """Those of an aspect that are in force and not known to be kept out."""
    found = []
    for rule in engine.lookup.base.rules:
        if rule.modality != "must_not" or rule.aspect != aspect or not rule.scope.excluding:
            continue
        if rule.residual or not is_in_force(rule, engine.as_of):
            continue
        condition = simplify(engine.condition(rule.id), possible)
        truth = truth_of(condition)
        if truth is not False:
            found.append(ClassLine(rule.id, None if truth else condition))
    return tuple(found)


def _class_lines(engine: Engine, query: Query, possible: Mapping[str, ValueSet]) -> list[Line]:
    """Prohibitions of everything of a kind but some: a line each, in the words of their scope."""
    lookup = engine.lookup
    entries = (
        ListEntry(
            item=lookup.rules[line.rule].scope.items[0],
            label=say_scope(lookup, lookup.rules[line.rule].scope),
            verdict=line.verdict,
            condition="" if line.condition is None else f"prohibited {say_condition(lookup, line.condition)}",
            rules=(line.rule,),
        )
        for line in class_lines(engine, query.aspect, possible)
    )
    return [Line(entry, (entry.rules,)) for entry in entries]


def list_lines(engine: Engine, query: Query) -> tuple[Line, ...]:
    """The list, closed under duties that follow from what is worn: required items count as worn."""
    items = listed_items(engine, query.aspect)
    wanted = query.modalities or LISTED
    possible = with_required(engine, items, query, list_grants(engine, query))
    known = usually(engine.lookup, query.case.as_of, query.case.facts)
    lines = [
        _line(engine, item, query.aspect, possible, wanted, known)
        for item in items
        if _is_of(item, query, engine) and _can_have(engine, item, query.aspect, possible, wanted)
    ]
    lines += [
        line for line in _class_lines(engine, query, possible) if _is_of(line.entry.item, query, engine)
    ]
    kept = [_with_number(engine, line, query) for line in lines if _is_wanted(line.entry, wanted)]
    return tuple(sorted(kept, key=lambda line: LISTED.index(line.entry.verdict)))


def _with_number(engine: Engine, line: Line, query: Query) -> Line:
    """The line of a thing that must be owned with how many of it, where that is the same in every case."""
    if query.aspect != "possession" or line.entry.verdict != "required":
        return line
    part = aspect_part(
        engine, line.entry.item, "kit-count", possible_facts(query.case, (), True, engine.lookup)
    )
    values = part.cases[0].values if len(part.cases) == 1 else ()
    told = tuple(_in_pairs(engine, value) for value in values)
    return Line(msgspec.structs.replace(line.entry, values=told), line.carriers) if told else line


def _in_pairs(engine: Engine, value: OpenValue) -> OpenValue:
    """ "At least 6 pairs", where the clause counts pairs."""
    rules = engine.lookup.rules
    pairs = any(counts_pairs(engine.lookup, rules[rule]) for rule in value.rules)
    done = not pairs or "pair" in value.label
    return value if done else msgspec.structs.replace(value, label=f"{value.label} pairs")


def carried_notes(engine: Engine, query: Query) -> tuple[str, ...]:
    """What must be carried, beside a list of all that must be worn."""
    if query.aspect != "wear" or query.items or query.modalities != ("required",):
        return ()
    said = []
    for line in list_lines(engine, msgspec.structs.replace(query, aspect="carrying")):
        entry = line.entry
        clauses = listing(list(dict.fromkeys(rule_reference(engine.lookup, rule) for rule in entry.rules)))
        when = entry.condition.removeprefix("required").strip(", ")
        said.append(" ".join(part for part in (entry.label, when, f"({clauses})" if clauses else "") if part))
    return (f"To be carried besides: {'; '.join(said)}.",) if said else ()


def list_grants(engine: Engine, query: Query) -> dict[str, ValueSet]:
    """The grants that a list takes as not given, as far as they can be so in its case."""
    lookup = engine.lookup
    found = ungranted(lookup, query.aspect, query.items, dict(query.case.facts))
    known = {**possible_facts(query.case, (), True, lookup), **found}
    return found if found and engine.check_case(known) else {}


def grant_notes(engine: Engine, grants: Mapping[str, ValueSet]) -> tuple[str, ...]:
    """What grants that change something are taken as not given."""
    tested = {
        test.fact
        for rule in engine.lookup.base.rules
        if rule.aspect == "wear" and is_in_force(rule, engine.as_of)
        for test in tests(engine.condition(rule.id))
    }
    named = [engine.lookup.facts[fact].label for fact in grants if fact in tested]
    return (
        (f"Taken as not granted: {listing(named)}. State a grant to see what it changes.",) if named else ()
    )


def with_required(
    engine: Engine, items: Sequence[str], query: Query, grants: Mapping[str, ValueSet]
) -> dict[str, ValueSet]:
    """What is known of the case and of grants, and that all is worn that is required in every case."""
    lookup = engine.lookup
    possible = {**possible_facts(query.case, (), True, lookup), **grants}
    if query.aspect != "wear":
        return possible
    waiting = [item for item in items if _can_have(engine, item, query.aspect, possible, ("required",))]
    while True:
        required = [
            item
            for item in waiting
            if engine.problem(engine.group(item, query.aspect), possible).always("required")
        ]
        waiting = [item for item in waiting if item not in required]
        above = {WORN + broad for item in required for broad in lookup.broader(item)}
        worn = {fact: YES for fact in above if fact not in possible and fact in lookup.facts}
        if not worn or not engine.check_case({**possible, **worn}):
            return possible
        possible = {**possible, **worn}


def _is_of(item: str, query: Query, engine: Engine) -> bool:
    """Whether an item is of the kinds that the list is narrowed to; all are where it is not narrowed."""
    return not query.items or not set(engine.lookup.broader(item)).isdisjoint(query.items)


def _is_wanted(entry: ListEntry, wanted: tuple[Verdict, ...]) -> bool:
    if entry.verdict == "silent":
        return False
    if entry.verdict == "conditional":
        return bool(entry.condition)
    return entry.verdict in wanted


_GOING_ON = frozenset({"situation", "term", "rig"})


def _others(engine: Engine, fact: str, values: ValueSet, goes_on: set[str]) -> list[ValueSet]:
    """What a fact is otherwise: anything else as a whole, of people each of the others."""
    rest = subtract(engine.lookup.domain(fact), values)
    if fact in goes_on or not isinstance(rest, Choices):
        return [rest]
    return [Choices(frozenset({one})) for one in rest.members]


def _own(engine: Engine, query: Query, entries: Sequence[ListEntry]) -> frozenset[str]:
    """The things of which a duty speaks of just what was told: of hot work; of stewards where that is all."""
    known = {fact: values for fact, values in query.case.facts if not fact.startswith(WORN)}
    goes_on = {fact for fact in known if engine.lookup.facts[fact].family in _GOING_ON}
    otherwise = [
        {fact: values}
        for fact in (goes_on or known)
        for values in _others(engine, fact, known[fact], goes_on)
    ]

    def speaks(rule: str) -> bool:
        condition = engine.condition(rule)
        of_it = any(evaluate(condition, case.get) is False for case in otherwise)
        duty = engine.lookup.rules[rule].modality == "must"
        return duty and of_it and evaluate(condition, known.get) is not False

    return frozenset(entry.item for entry in entries if any(map(speaks, entry.rules)))


def list_answer(engine: Engine, query: Query, blank: Answer) -> Answer:
    """The list that answers a question; silent where nothing is on it."""
    lines = list_lines(engine, query)
    entries = tuple(line.entry for line in lines)
    rules = tuple(dict.fromkeys(rule for entry in entries for rule in entry.rules))
    carried = [group for line in lines for group in line.carriers]
    choices = {line.entry.item: line.choice for line in lines if line.choice is not None}
    answer = replaced(
        blank,
        outcome="answer",
        headline=say_list_headline(engine.lookup, query, entries, choices, _own(engine, query, entries)),
        entries=entries,
        citations=citations(engine.lookup, carried, stated=query.case.facts),
        cautions=list_cautions(engine.lookup, tuple(entry.item for entry in entries), rules),
        notes=(*carried_notes(engine, query), *grant_notes(engine, list_grants(engine, query))),
    )
    return answer if entries else replaced(answer, verdict="silent")
