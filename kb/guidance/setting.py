"""What a plan settles on one day, and conditions worked out under it: exact, by satisfiability."""

from __future__ import annotations

from collections.abc import Mapping

from kb.audit.law import Law, View
from kb.model.conditions import (
    ALWAYS,
    NEVER,
    AllOf,
    AnyOf,
    Condition,
    NotOf,
    Test,
    all_of,
    any_of,
    evaluate,
    negate,
)
from kb.model.records import Case
from kb.model.values import Choices, ValueSet, intersect, unite
from kb.reasoner import Facts, possible_facts
from kb.reasoner.space import narrowed
from kb.reasoner.terms import write_out

Known = Mapping[str, ValueSet]


class Setting:
    """The law of one day under the facts that a plan states for everybody and everywhere it is for."""

    def __init__(self, law: Law, facts: Facts) -> None:
        self.law = law
        self.lookup = law.lookup
        self.known: dict[str, ValueSet] = possible_facts(
            Case(as_of=law.day, facts=facts), (), False, law.lookup
        )
        terms = [Test(fact, values) for fact, values in facts if fact in law.engine.definitions]
        self.terms = tuple(self.written(test) for test in terms)

    def written(self, condition: Condition) -> Condition:
        """The condition with its defined terms written out."""
        return write_out(condition, self.law.engine.definitions, ())

    def case(self, *conditions: Condition, known: Known | None = None) -> dict[str, ValueSet] | None:
        """Facts within the setting that make the (written out) conditions true; None if there are none."""
        return self.law.case((*conditions, *self.terms), self.known if known is None else known)

    def of(self, view: View) -> dict[str, ValueSet]:
        """What is known in questions about the item of a view: the plan, and that the item is worn."""
        known = dict(self.known)
        for fact, values in view.known.items():
            known[fact] = narrowed(known.get(fact), values, fact, self.lookup)
        return known

    # -- partial evaluation -----------------------------------------------------------------------------

    def truth(self, condition: Condition, known: Known | None = None) -> bool | None:
        """Whether a condition holds in every case of the setting, in none, or in some (None)."""
        given = self.known if known is None else known
        plain = evaluate(condition, given.get)
        if plain is not None:
            return plain
        written = self.written(condition)
        if self.case(written, known=given) is None:
            return False
        return True if self.case(negate(written), known=given) is None else None

    def settle(self, condition: Condition, known: Known | None = None) -> Condition:
        """What is left of a condition in the setting: decided parts gone, values that cannot be left out.

        Holds in the same cases of the setting as the condition itself.
        """
        given = self.known if known is None else known
        truth = self.truth(condition, given)
        if truth is not None:
            return ALWAYS if truth else NEVER
        if isinstance(condition, Test):
            return self._narrowed(condition, given)
        if isinstance(condition, NotOf):
            return negate(self.settle(condition.part, given))
        parts = [self.settle(part, given) for part in condition.parts]
        kept = [part for part in parts if part not in (ALWAYS, NEVER)]
        if isinstance(condition, AnyOf):
            return any_of(kept)
        return all_of(kept)

    def _narrowed(self, test: Test, given: Known) -> Test:
        possible = given.get(test.fact)
        if not isinstance(test.values, Choices) or not isinstance(possible, Choices):
            return test
        return Test(test.fact, intersect(possible, test.values))

    def within(self, condition: Condition, known: Known | None = None) -> dict[str, ValueSet]:
        """What is known where a condition holds: the setting and the tests that it says outright."""
        found = dict(self.known if known is None else known)
        parts = condition.parts if isinstance(condition, AllOf) else (condition,)
        for part in parts:
            if isinstance(part, Test):
                found[part.fact] = narrowed(found.get(part.fact), part.values, part.fact, self.lookup)
        return found


def either(one: Condition, other: Condition) -> Condition | None:
    """Either of two conditions as one, where they differ in the values of a single fact."""
    left, right = _parts(one), _parts(other)
    if len(left) != len(right):
        return None
    differing = [i for i, pair in enumerate(zip(left, right, strict=True)) if pair[0] != pair[1]]
    if len(differing) != 1:
        return None
    here, there = left[differing[0]], right[differing[0]]
    if not (isinstance(here, Test) and isinstance(there, Test) and here.fact == there.fact):
        return None
    if not (isinstance(here.values, Choices) and isinstance(there.values, Choices)):
        return None
    left[differing[0]] = Test(here.fact, unite(here.values, there.values))
    return all_of(left)


def _parts(condition: Condition) -> list[Condition]:
    return list(condition.parts) if isinstance(condition, AllOf) else [condition]
