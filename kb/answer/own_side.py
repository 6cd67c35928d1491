"""What is of one side of a comparison: the things of which a duty speaks of just this outfit or place."""

from __future__ import annotations

from collections.abc import Iterable

from kb.model.conditions import Condition, NotOf, Test
from kb.model.records import Case
from kb.model.values import Choices, intersect, is_empty
from kb.reasoner import Engine


def of_this_side(
    engine: Engine, case: Case, other: Case, aspect: str, things: Iterable[str]
) -> dict[str, tuple[str, ...]]:
    """The things, each with the duties that speak of this side by its name.

    What the other side merely leaves out ("except in working rig") is not among them. Where the sides differ
    in no choice, as in a day or a measure, all things are, with no duty.
    """
    known = dict(other.facts)
    apart = {
        fact: values
        for fact, values in case.facts
        if values != known.get(fact) and engine.lookup.facts[fact].kind == "choice"
    }

    def speaking(item: str) -> tuple[str, ...]:
        rules = dict.fromkeys(norm.rule for norm, _ in engine.group(item, aspect).norms)
        duties = (rule for rule in rules if engine.lookup.rules[rule].modality == "must")
        own = apart.items()
        return tuple(r for r in duties if any(_names(engine, engine.condition(r), *one) for one in own))

    found = {item: speaking(item) for item in things}
    return {item: rules for item, rules in found.items() if rules or not apart}


def _names(engine: Engine, condition: Condition, fact: str, values: object) -> bool:
    """Whether a condition asks for some of the values of a fact by name, not for all but a few."""
    if isinstance(condition, Test):
        asked = condition.values
        if condition.fact != fact or not isinstance(asked, Choices) or not isinstance(values, Choices):
            return False
        few = not asked.complement and 2 * len(asked.members) <= len(engine.lookup.facts[fact].values)
        return few and not is_empty(intersect(asked, values))
    if isinstance(condition, NotOf):
        return False
    return any(_names(engine, part, fact, values) for part in condition.parts)
