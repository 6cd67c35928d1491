"""The derivation of a decision as data: what applied and why, what gave way and by which principle.

Everything is read off the reasoner and the frozen records; no source is opened again.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from itertools import combinations

from kb.model.conditions import AllOf, Condition, NotOf, Test, evaluate
from kb.model.questions import Defeat, Derivation, RuleStep, ValueFate
from kb.model.records import Rule
from kb.model.values import ValueSet
from kb.reasoner import Engine, Facts, Group, Norm, Problem
from kb.wording import say_facts, say_rule


def grounds(condition: Condition, possible: Mapping[str, ValueSet], truth: bool) -> tuple[Test, ...]:
    """The tests that make a decided condition true (or false): enough to settle it, as written."""
    if isinstance(condition, Test):
        return (condition,)
    if isinstance(condition, NotOf):
        return grounds(condition.part, possible, not truth)
    if isinstance(condition, AllOf) is truth:
        return tuple(test for part in condition.parts for test in grounds(part, possible, truth))
    for part in condition.parts:
        if evaluate(part, possible.get) is truth:
            return grounds(part, possible, truth)
    return ()


def _known(found: tuple[Test, ...], possible: Mapping[str, ValueSet]) -> Facts:
    return tuple((fact, possible[fact]) for fact in dict.fromkeys(t.fact for t in found) if fact in possible)


def _step(
    engine: Engine,
    rule: Rule,
    condition: Condition,
    possible: Mapping[str, ValueSet],
    truth: Mapping[str, bool],
    alive: Collection[str],
) -> RuleStep:
    lookup = engine.lookup
    holds = truth[rule.id]
    facts = _known(grounds(condition, possible, holds), possible)
    disabled_by = tuple(other for other in engine.disablers(rule.id) if engine.applies(other, truth))
    if not holds:
        status, reason = "does_not_apply", f"kept out: {say_facts(lookup, facts)}"
    elif disabled_by:
        status, reason = "disabled", "set aside while another rule applies"
    elif not engine.applies(rule.id, truth):
        status, reason = "does_not_apply", "the duty that it repairs does not stand"
    else:
        status, reason = "applies", say_facts(lookup, facts) if facts else "in every case"
    clause = lookup.clauses[rule.clause]
    return RuleStep(
        rule=rule.id,
        modality=rule.modality,
        statement=say_rule(lookup, rule),
        status=status,  # type: ignore[arg-type]
        alive=rule.id in alive,
        facts=facts,
        reason=reason,
        disabled_by=disabled_by,
        clause=rule.clause,
        text=clause.text,
        authority=rule.authority,
        at=rule.at,
    )


def _opposed(group: Group, one: tuple[Norm, int], other: tuple[Norm, int]) -> bool:
    """Whether two norms pull one value in opposite directions, or together leave nothing open."""
    everything = (1 << len(group.classes)) - 1
    if one[0].closes != other[0].closes:
        return bool(one[1] & other[1])
    return one[0].closes and not everything & ~one[1] & ~other[1]


def _defeats(engine: Engine, group: Group, truth: Mapping[str, bool]) -> tuple[Defeat, ...]:
    """Every pair of applying, opposed norms in which one beats the other."""
    applying = [n for n in group.norms if truth.get(n[0].key) and engine.applies(n[0].rule, truth)]
    found: dict[Defeat, None] = {}
    for one, other in combinations(applying, 2):
        win = engine.precedence.win(one[0].key, other[0].key) if _opposed(group, one, other) else None
        if win is None or one[0].rule == other[0].rule:
            continue
        winner, loser = (one, other) if win.winner == one[0].key else (other, one)
        from kb.wording import say_principle  # noqa: PLC0415  most rules beat no other

        names = (winner[0].rule, loser[0].rule)
        detail = say_principle(engine.lookup, win.principle, *names)
        found[Defeat(winner=names[0], loser=names[1], principle=win.principle, detail=detail)] = None
    return tuple(found)


def derive(engine: Engine, problem: Problem, possible: Mapping[str, ValueSet], row: Facts = ()) -> Derivation:
    """The proof for one decided case within a row of a table; `when` has the facts added to decide it."""
    group = problem.group
    chosen, truth = problem.example(dict(row))
    full = {**possible, **chosen}
    added = {fact: values for fact, values in chosen.items() if possible.get(fact) != values}
    decision = engine.decide(group, truth)
    alive = set(decision.rules)
    steps = tuple(
        _step(engine, engine.lookup.rules[rule], problem.conditions[rule], full, truth, alive)
        for rule in dict.fromkeys([*group.rules, *problem.conditions])
        if rule in engine.lookup.rules
    )
    fates = tuple(
        ValueFate(values=v, status=f.status, closed_by=f.closed_by, supported_by=f.supported_by)
        for v, f in zip(group.classes, decision.fates, strict=True)
    )
    return Derivation(
        item=group.item,
        aspect=group.aspect,
        when=tuple(added.items()),
        verdict=decision.verdict,
        steps=steps,
        defeats=_defeats(engine, group, truth),
        fates=fates,
    )
