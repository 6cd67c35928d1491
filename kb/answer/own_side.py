"""What is of one side of a comparison: the things of which a duty speaks of just this outfit or place."""

from __future__ import annotations

from collections.abc import Iterable

from kb.model.conditions import Condition, evaluate
from kb.model.records import Case
from kb.model.values import Choices
from kb.reasoner import Engine


def of_this_side(
    engine: Engine, case: Case, other: Case, aspect: str, things: Iterable[str]
) -> tuple[str, ...]:
    """The things, without those that the other side merely leaves out ("except in working rig").

    Where the sides differ in no choice, as in a day or a measure, all of them.
    """
    known = dict(other.facts)
    apart = [
        fact
        for fact, values in case.facts
        if values != known.get(fact) and engine.lookup.facts[fact].kind == "choice"
    ]

    def speaks(rule: str) -> bool:
        duty = engine.lookup.rules[rule].modality == "must"
        return duty and any(_names_few(engine, engine.condition(rule), fact) for fact in apart)

    return tuple(
        one for one in things if not apart or any(speaks(n.rule) for n, _ in engine.group(one, aspect).norms)
    )


def _names_few(engine: Engine, condition: Condition, fact: str) -> bool:
    """Whether a condition can hold for no more than half of the values of a fact."""
    values = engine.lookup.facts[fact].values
    held = [v for v in values if evaluate(condition, {fact: Choices(frozenset({v.id}))}.get) is not False]
    return 2 * len(held) <= len(values)
