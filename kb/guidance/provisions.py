"""What the rules say in the setting of a plan: each rule where it holds, and what takes it back elsewhere.

A rule is never stated as if it held where another beats it: its provision says "unless" with the case of the
other. What nothing settles is taken out of both rules and stated as open.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product

import msgspec

from kb.audit.conflicts import Opposition, oppositions
from kb.audit.law import View, places
from kb.guidance.setting import Known, Setting, either
from kb.model.conditions import ALWAYS, NEVER, AllOf, Condition, NotOf, Test, all_of, negate
from kb.model.records import Rule, Scope
from kb.model.values import Choices, contains, subtract
from kb.reasoner import Norm
from kb.reasoner.norms import covered_items

_FREE = ("may", "need_not")


class Provision(msgspec.Struct, frozen=True, kw_only=True):
    """What one or more rules say alike, as far as they hold in the setting.

    `rule` carries the items and the condition that are left, `rules` are the ids of the rules that it says,
    `rivals` of those that its "unless" is about. `period` is the part of the guidance's time in which it
    holds, in words; empty means all of it. `granted` is a permission as it is without the duties that it
    leaves to others, if there are any.
    """

    rule: Rule
    rules: tuple[str, ...]
    rivals: tuple[str, ...] = ()
    period: str = ""
    granted: Provision | None = None


class Open(msgspec.Struct, frozen=True):
    """Rules that oppose each other in some case of the setting, where nothing settles which goes first."""

    rules: tuple[str, ...]
    item: str
    aspect: str
    facts: tuple[tuple[str, object], ...]


class _Rival(msgspec.Struct, frozen=True):
    """A norm that takes back what another says, and the condition in which it does.

    `declared` if by an exception, `wins` if it beats the other, `duty` if it requires what the other permits.
    """

    rule: str
    condition: Condition
    declared: bool = False
    wins: bool = False
    duty: bool = False


class Provisions:
    """Works out provisions in one setting."""

    def __init__(self, setting: Setting) -> None:
        self.setting = setting
        self.law = setting.law
        self.lookup = setting.lookup
        self._pairs: dict[tuple[str, str], tuple[Opposition, ...]] = {}
        self._place = {item.id: i for i, item in enumerate(self.lookup.base.items)}

    # -- one norm ---------------------------------------------------------------------------------------

    def pairs(self, view: View) -> tuple[Opposition, ...]:
        """The opposed norms of a view."""
        key = (view.item, view.aspect)
        if key not in self._pairs:
            self._pairs[key] = tuple(oppositions(view))
        return self._pairs[key]

    def _applies(self, norm: Norm) -> Condition:
        """When a norm applies, in the words of the books: terms are not written out."""
        disablers = [self.lookup.rules[rule].condition for rule in self.law.engine.disablers(norm.rule)]
        return self._unless(norm.condition, disablers)

    def _unless(self, condition: Condition, others: Iterable[Condition]) -> Condition:
        """What is left of a condition in the setting where none of some others holds."""
        own = self.setting.settle(condition)
        inside = self.setting.within(own)
        left = [self.setting.settle(other, inside) for other in others]
        return NEVER if ALWAYS in left else all_of([own, *(negate(o) for o in left if o != NEVER)])

    def holds(self, view: View, norm: Norm, mask: int) -> bool:
        """Whether a norm has a say in some case of the setting."""
        known = self.setting.of(view)
        return any(
            self.setting.case(view.effective(norm, mask, i), known=known) is not None for i in places(mask)
        )

    def rivals(self, view: View, norm: Norm) -> tuple[_Rival, ...]:
        """What beats a norm, or ties with it, in some case of the setting."""
        known = self.setting.of(view)
        found: dict[str, _Rival] = {}
        for pair in self.pairs(view):
            norms = [n for n, _ in pair.norms]
            if norm not in norms or pair.winner == norm.rule:
                continue
            other = next(n for n in norms if n.key != norm.key)
            both = (view.applies(norm), view.applies(other))
            if self.setting.case(*both, known=known) is not None:
                declared = pair.principle == "exception"
                wins = bool(pair.winner)
                found[other.key] = _Rival(other.rule, self._applies(other), declared, wins)
        return tuple(found.values())

    def _duties(self, view: View, norm: Norm) -> tuple[_Rival, ...]:
        """What requires an act that a norm permits: a permission is not stated where there is a duty."""
        rule = self.lookup.rules[norm.rule]
        if rule.modality != "may" or self.lookup.aspects[rule.aspect].kind != "act":
            return ()
        known = self.setting.of(view)
        no = next(i for i, values in enumerate(view.group.classes) if contains(values, "no"))
        found = []
        for duty, mask in view.closing:
            if duty.key != duty.rule or not mask >> no & 1:
                continue
            if self.setting.case(view.applies(norm), view.alive(duty, mask, no), known=known) is not None:
                found.append(_Rival(duty.rule, self._stands(view, duty), duty=True))
        return tuple(found)

    def _stands(self, view: View, duty: Norm) -> Condition:
        """When a duty applies and nothing beats it."""
        return self._unless(self._applies(duty), [rival.condition for rival in self.rivals(view, duty)])

    # -- one rule ---------------------------------------------------------------------------------------

    def of_rule(self, rule: Rule, wanted: frozenset[str]) -> list[Provision]:
        """The provisions of a rule about the wanted items; none where it never has a say."""
        items = sorted(covered_items(self.lookup, rule.scope), key=self._place.__getitem__)
        if rule.scope.alternatives is not None:
            return self._of_choice(rule, [item for item in items if item in rule.scope.items])
        rivals: dict[str, tuple[_Rival, ...]] = {}
        dead: list[str] = []
        for item in items:
            view = self.law.view(item, rule.aspect)
            norm, mask = next((n, m) for n, m in view.norms() if n.rule == rule.id)
            if self.holds(view, norm, mask):
                rivals[item] = (*self.rivals(view, norm), *self._duties(view, norm))
            else:
                dead.append(item)
        if not rivals:
            return []
        shared = [r for r in next(iter(rivals.values())) if all(r in found for found in rivals.values())]
        special = [item for item, found in rivals.items() if any(r not in shared for r in found)]
        plain = [item for item in rivals if item not in special]
        found = []
        if plain or not special:
            scope = self._without(rule.scope, [*special, *dead])
            found.append(self._provision(rule, scope, shared))
        for item in special:
            if item in wanted:
                scope = Scope(items=(item,), narrower=rule.scope.narrower)
                found.append(self._provision(rule, scope, rivals[item]))
        return [provision for provision in found if provision.rule.condition != NEVER]

    def _without(self, scope: Scope, items: Sequence[str]) -> Scope:
        """The scope less some items: the broadest of them that are not what it names itself."""
        taken = [item for item in items if item not in scope.items]
        broadest = [i for i in taken if not any(o != i and o in self.lookup.broader(i) for o in taken)]
        return msgspec.structs.replace(scope, excluding=tuple(dict.fromkeys((*scope.excluding, *broadest))))

    def _of_choice(self, rule: Rule, items: Iterable[str]) -> list[Provision]:
        """One duty over a set: what exempts from it takes it back, as does an exception with a duty.

        Who is exempt from a part owes the others. What merely forbids a part narrows it, and is said beside.
        """
        parts: list[list[_Rival]] = []
        held = False
        for item in items:
            view = self.law.view(item, rule.aspect)
            mine: dict[_Rival, None] = {}
            for norm, mask in view.norms():
                if norm.rule == rule.id:
                    held = held or self.holds(view, norm, mask)
                    mine |= dict.fromkeys(self.rivals(view, norm))
            parts.append(list(mine))
        rivals = dict.fromkeys(rival for part in parts for rival in part)
        modality = {rival: self.lookup.rules[rival.rule].modality for rival in rivals}
        replaced = any(rival.declared and modality[rival] == "must" for rival in rivals)
        exempts = [rival for rival in rivals if modality[rival] in _FREE]
        taken = [r for r in exempts if not r.wins]
        taken += [r for r in rivals if r not in exempts and r.declared and replaced]
        lifted = ([r for r in part if r.wins and modality[r] != "must"] for part in parts)
        for together in product(*lifted):
            if any(rival in exempts for rival in together):
                case = all_of([rival.condition for rival in together])
                taken += [msgspec.structs.replace(rival, condition=case) for rival in together]
        return [self._provision(rule, rule.scope, taken)] if held else []

    def plain(self, rule: Rule) -> Provision:
        """A rule where its condition holds, whatever else is said."""
        return self._provision(rule, rule.scope, ())

    def _needed(self, parts: Sequence[Condition]) -> list[Condition]:
        """Conditions that must all hold, without an "unless" that the others cover."""
        kept = [p for part in parts for p in (part.parts if isinstance(part, AllOf) else (part,))]
        for part in list(kept):
            others = [other for other in kept if other is not part]
            if isinstance(part, NotOf) and self._is_within(all_of(others), part, self.setting.known):
                kept = others
        return kept

    def _joined(self, conditions: Sequence[Condition], known: Known) -> list[Condition]:
        """Conditions without those within another, and as one where they differ in the values of a fact."""
        kept: list[Condition] = []
        for i, condition in enumerate(conditions):
            others = [*kept, *(other for other in conditions[i + 1 :] if other != condition)]
            if any(self._is_within(condition, other, known) for other in others):
                continue
            for place, earlier in enumerate(kept):
                both = either(earlier, condition)
                if both is not None:
                    kept[place] = self.setting.settle(both, known)
                    break
            else:
                kept.append(condition)
        return kept

    def _is_within(self, one: Condition, other: Condition, known: Known) -> bool:
        """Whether every case of one condition is one of another's."""
        written = self.setting.written
        return self.setting.case(written(one), negate(written(other)), known=known) is None

    def _provision(self, rule: Rule, scope: Scope, rivals: Sequence[_Rival]) -> Provision:
        """The rule with what is left of its condition, less the cases of its rivals."""
        setting = self.setting
        own = setting.settle(rule.condition)
        inside = setting.within(own)
        parts: list[Condition] = [own]
        named: list[str] = []
        for other in self.law.engine.disablers(rule.id):
            parts.append(negate(setting.settle(self.lookup.rules[other].condition, inside)))
            named.append(other)
        taken = [(rival.rule, setting.settle(rival.condition, inside)) for rival in rivals]
        taken = [(name, left) for name, left in taken if left != NEVER]
        named += [name for name, _ in taken]
        for left in self._joined([left for _, left in taken], inside):
            parts = _less(parts, left)
        condition = NEVER if NEVER in parts else all_of(self._needed(parts))
        clause = self.lookup.clauses[rule.clause]
        said = msgspec.structs.replace(
            rule,
            scope=scope,
            condition=condition,
            valid_from=clause.valid_from,
            valid_until=clause.valid_until,
        )
        others = [rival for rival in rivals if not rival.duty]
        granted = self._provision(rule, scope, others) if len(others) < len(rivals) else None
        return Provision(rule=said, rules=(rule.id,), rivals=tuple(dict.fromkeys(named)), granted=granted)


def _less(parts: Sequence[Condition], taken: Condition) -> list[Condition]:
    """Conditions that must all hold, less the cases of another: "rough or below" less "moderate or above" is
    "slight or below"."""
    if taken == ALWAYS:
        return [NEVER]
    flat = [p for part in parts for p in (part.parts if isinstance(part, AllOf) else (part,))]
    if isinstance(taken, Test) and isinstance(taken.values, Choices):
        for i, part in enumerate(flat):
            if isinstance(part, Test) and part.fact == taken.fact and isinstance(part.values, Choices):
                left = subtract(part.values, taken.values)
                return [*flat[:i], Test(part.fact, left), *flat[i + 1 :]]
    return [*flat, negate(taken)]
