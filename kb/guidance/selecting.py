"""Which provisions matter to a plan: its topics, and what can be worn at all in its setting."""

from __future__ import annotations

from collections.abc import Iterator

from kb.audit.law import places
from kb.guidance.merging import merge_bounds, merge_cases
from kb.guidance.plan import Plan
from kb.guidance.provisions import Provision, Provisions
from kb.guidance.setting import Setting
from kb.model.conditions import Condition, any_of, negate
from kb.model.records import OWNED_ASPECTS, Rule
from kb.model.values import NO, ValueSet, contains
from kb.reasoner import WORN
from kb.reasoner.norms import covered_items

_ACTS_OF_USE = ("wear", "carrying")
_DONE, _NOT_DONE = "yes", "no"
_SAID = ("modality", "scope", "aspect", "value")


class Selection:
    """The provisions of one day that a plan wants."""

    def __init__(self, plan: Plan, setting: Setting) -> None:
        self.plan = plan
        self.setting = setting
        self.law = setting.law
        self.lookup = setting.lookup
        self.provisions = Provisions(setting)
        self.wanted = self._wanted()
        self._idle = self._never_worn()

    def _wanted(self) -> frozenset[str]:
        """The topics with everything narrower, and the parts of all that."""
        lookup = self.lookup
        if not self.plan.topics:
            return frozenset(lookup.items)
        found = {inner for topic in self.plan.topics for inner in lookup.narrower(topic)}
        found |= {item.id for item in lookup.base.items if item.part_of in found}
        return frozenset(found)

    # -- what can be worn -------------------------------------------------------------------------------

    def in_play(self, item: str) -> bool:
        """Whether anybody in the setting may or must wear (or carry) an item, or a kind of it."""
        return any(kind not in self._idle for kind in self.lookup.narrower(item))

    def _never_worn(self) -> frozenset[str]:
        """The items that nothing provides for, also not through one another."""
        idle: frozenset[str] = frozenset()
        while True:
            known = self._unworn(idle)
            rest = [item for item in self.lookup.items if item not in idle]
            more = {item for item in rest if not self._is_provided_for(item, {**known, **self.setting.known})}
            parts = {i.id for i in self.lookup.base.items if i.part_of in idle | more and i.id in rest}
            more |= {item for item in parts if not self._has_rule_of_use(item)}
            if not more:
                return idle
            idle |= more

    def _unworn(self, idle: frozenset[str]) -> dict[str, ValueSet]:
        """That things of which no kind is worn are not worn."""
        whole = [item for item in idle if idle.issuperset(self.lookup.narrower(item))]
        return {WORN + item: NO for item in whole if WORN + item in self.lookup.facts}

    def _has_rule_of_use(self, item: str) -> bool:
        return any(
            self.law.engine.group(item, act).rules for act in _ACTS_OF_USE if act in self.lookup.aspects
        )

    def _is_provided_for(self, item: str, known: dict[str, ValueSet]) -> bool:
        """Whether some case has a rule alive that permits the use of an item or requires it.

        What has no such rule at all (hair, a sleeve) is always there.
        """
        for act in _ACTS_OF_USE:
            if act in self.lookup.aspects and self.law.engine.group(item, act).rules:
                return any(
                    self.setting.case(condition, known=known) is not None
                    for condition in self._grants(item, act)
                )
        return True

    def _grants(self, item: str, act: str) -> Iterator[Condition]:
        """When a rule that permits an act is alive, or one that requires it."""
        view = self.law.view(item, act)
        for norm, mask in view.norms():
            value = _NOT_DONE if norm.closes else _DONE
            for i in places(mask):
                if contains(view.group.classes[i], value):
                    yield view.effective(norm, mask, i)

    def _possible(self, condition: Condition) -> bool:
        """Whether a condition holds in some case in which nothing is worn that nobody may wear."""
        known = {**self._unworn(self._idle), **self.setting.known}
        return self.setting.case(self.setting.written(condition), known=known) is not None

    # -- provisions -------------------------------------------------------------------------------------

    def _is_wanted(self, rule: Rule) -> bool:
        """Whether a rule is about a topic, and about something that can come up in the setting."""
        if rule.residual or (rule.aspect in OWNED_ASPECTS and not self.plan.kit):
            return False
        items = covered_items(self.lookup, rule.scope)
        if items.isdisjoint(self.wanted) and self.wanted.isdisjoint(rule.scope.items):
            return False
        if rule.aspect in (*_ACTS_OF_USE, *OWNED_ASPECTS):
            return True
        return any(self.in_play(item) for item in items & self.wanted)

    def chosen(self) -> list[Provision]:
        """The provisions in the order of the books, without those that add nothing to another."""
        found = [
            provision
            for rule in self.law.rules
            if self._is_wanted(rule)
            for provision in self.provisions.of_rule(rule, self.wanted)
            if self._possible(provision.rule.condition)
        ]
        found = [provision for provision in found if not self._is_required_anyway(provision)]
        merged = merge_bounds(merge_cases(self.setting, found, self.is_local))
        return [s for s in merged if not any(self._adds_nothing(s, other) for other in merged)]

    def _is_required_anyway(self, provision: Provision) -> bool:
        """Whether a permission to do something holds only where it must be done."""
        rule = provision.rule
        if rule.modality != "may" or self.lookup.aspects[rule.aspect].kind != "act":
            return False
        item = rule.scope.items[0]
        if len(self.lookup.narrower(item)) > 1 or not contains(rule.value.values, _DONE):
            return False
        view = self.law.view(item, rule.aspect)
        duties = [
            view.effective(norm, mask, i)
            for norm, mask in [*view.closing, *view.residual]
            for i in places(mask)
            if contains(view.group.classes[i], _NOT_DONE)
        ]
        written = self.setting.written(rule.condition)
        return bool(duties) and self.setting.case(written, negate(any_of(duties))) is None

    def _adds_nothing(self, one: Provision, other: Provision) -> bool:
        """Whether a provision of the same or a higher authority says as much, in more cases."""
        left, right = one.rule, other.rule
        ranks = self.lookup.authorities
        lower = ranks[right.authority].rank > ranks[left.authority].rank
        if one is other or lower or left.condition == right.condition or self.is_local(other):
            return False
        if any(getattr(left, name) != getattr(right, name) for name in _SAID):
            return False
        written = self.setting.written
        return self.setting.case(written(left.condition), negate(written(right.condition))) is None

    def is_local(self, provision: Provision) -> bool:
        """Whether a provision is one of the plan's own rules."""
        return self.lookup.clauses[provision.rule.clause].edition == self.plan.edition

    def residual(self) -> list[Provision]:
        """What closes all that nothing else speaks about, as far as it bears on the topics."""
        return [
            self.provisions.plain(rule)
            for rule in self.law.rules
            if rule.residual
            and not self.wanted.isdisjoint(covered_items(self.lookup, rule.scope))
            and self.setting.truth(rule.condition) is not False
        ]
