"""A rule base with its indexes: everything that is looked up by id, made once and never changed."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from kb.model.records import (
    Aspect,
    Authority,
    Book,
    Clause,
    Delegation,
    Edition,
    Fact,
    Group,
    Item,
    Rule,
    RuleBase,
)
from kb.model.values import ALL_NUMBERS, Choices, ValueSet


def _closure(start: str, step: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    """`start` and all that is reached from it, nearest first."""
    seen = dict.fromkeys([start])
    queue = [start]
    for node in queue:
        for following in step.get(node, ()):
            if following not in seen:
                seen[following] = None
                queue.append(following)
    return tuple(seen)


class Lookup:
    """Indexes over one `RuleBase`. Unknown ids raise `KeyError`; the source checks leave none in a base."""

    def __init__(self, base: RuleBase) -> None:
        self.base = base

    @cached_property
    def items(self) -> dict[str, Item]:
        return {item.id: item for item in self.base.items}

    @cached_property
    def facts(self) -> dict[str, Fact]:
        return {fact.id: fact for fact in self.base.facts}

    @cached_property
    def aspects(self) -> dict[str, Aspect]:
        return {aspect.id: aspect for aspect in self.base.aspects}

    @cached_property
    def rules(self) -> dict[str, Rule]:
        return {rule.id: rule for rule in self.base.rules}

    @cached_property
    def clauses(self) -> dict[str, Clause]:
        return {clause.id: clause for clause in self.base.clauses}

    @cached_property
    def _of_clauses(self) -> dict[str, list[Rule]]:
        found: dict[str, list[Rule]] = {clause.id: [] for clause in self.base.clauses}
        for rule in self.base.rules:
            found[rule.clause].append(rule)
        return found

    def rules_of(self, clause: str) -> tuple[Rule, ...]:
        """The rules of a clause, in the order of the base."""
        return tuple(self._of_clauses[clause])

    @cached_property
    def _places_of_items(self) -> dict[str, list[int]]:
        found: dict[str, list[int]] = {}
        for place, rule in enumerate(self.base.rules):
            for item in dict.fromkeys(rule.scope.items):
                found.setdefault(item, []).append(place)
        return found

    def rules_on(self, items: Iterable[str]) -> tuple[Rule, ...]:
        """The rules that are put for one of these items itself, in the order of the base."""
        places = {place for item in items for place in self._places_of_items.get(item, ())}
        return tuple(self.base.rules[place] for place in sorted(places))

    @cached_property
    def editions(self) -> dict[str, Edition]:
        return {edition.id: edition for edition in self.base.editions}

    @cached_property
    def books(self) -> dict[str, Book]:
        return {book.id: book for book in self.base.books}

    @cached_property
    def authorities(self) -> dict[str, Authority]:
        return {authority.id: authority for authority in self.base.authorities}

    @cached_property
    def delegations(self) -> dict[str, Delegation]:
        return {delegation.id: delegation for delegation in self.base.delegations}

    @cached_property
    def groups(self) -> dict[str, Group]:
        return {group.id: group for group in self.base.groups}

    @cached_property
    def _broader(self) -> dict[str, tuple[str, ...]]:
        return {item.id: item.broader for item in self.base.items}

    @cached_property
    def _narrower(self) -> dict[str, tuple[str, ...]]:
        below: dict[str, list[str]] = {}
        for item in self.base.items:
            for parent in item.broader:
                below.setdefault(parent, []).append(item.id)
        return {parent: tuple(children) for parent, children in below.items()}

    @cached_property
    def _ancestors(self) -> dict[str, tuple[str, ...]]:
        return {}

    @cached_property
    def _descendants(self) -> dict[str, tuple[str, ...]]:
        return {}

    def broader(self, item: str) -> tuple[str, ...]:
        """The item and everything broader, nearest first."""
        if item not in self._ancestors:
            self._ancestors[item] = _closure(item, self._broader)
        return self._ancestors[item]

    def narrower(self, item: str) -> tuple[str, ...]:
        """The item and everything narrower, nearest first."""
        if item not in self._descendants:
            self._descendants[item] = _closure(item, self._narrower)
        return self._descendants[item]

    def use_of(self, item: str) -> str:
        """The act by which a thing is used: carrying, where rules on it speak of that and not of wearing."""
        if "carried" not in self.broader(item) or "carrying" not in self.aspects:
            return "wear"
        related = {i for i in (*self.broader(item), *self.narrower(item)) if self.items[i].broader}
        spoken = {rule.aspect for rule in self.rules_on(related)}
        return "carrying" if "carrying" in spoken and "wear" not in spoken else "wear"

    def aspects_within(self, aspect: str) -> tuple[str, ...]:
        """The aspect and all aspects within it."""
        return tuple(a.id for a in self.base.aspects if aspect in self._aspect_path(a.id))

    def _aspect_path(self, aspect: str) -> Iterable[str]:
        current: str | None = aspect
        while current is not None:
            yield current
            current = self.aspects[current].within

    @cached_property
    def _domains(self) -> dict[str, ValueSet]:
        return {fact.id: self._domain(fact.id) for fact in self.base.facts}

    def domain(self, fact: str) -> ValueSet:
        """All values that a fact may have."""
        return self._domains[fact]

    def _domain(self, fact: str) -> ValueSet:
        record = self.facts[fact]
        if record.kind == "yes_no":
            return Choices(frozenset({"yes", "no"}))
        if record.kind in ("quantity", "date"):
            return ALL_NUMBERS
        return Choices(frozenset(value.id for value in record.values))

    def order(self, fact: str) -> tuple[str, ...]:
        """The values of a fact in the order of the sources (junior first for grades)."""
        return tuple(value.id for value in self.facts[fact].values)

    @cached_property
    def _value_labels(self) -> dict[tuple[str, str], str]:
        labels = {(fact.id, value.id): value.label for fact in self.base.facts for value in fact.values}
        labels |= {
            (aspect.id, value.id): value.label for aspect in self.base.aspects for value in aspect.values
        }
        return labels

    def value_label(self, owner: str, value: str) -> str:
        """Label of a value of a fact or an aspect; the value itself where it has none."""
        return self._value_labels.get((owner, value), value)
