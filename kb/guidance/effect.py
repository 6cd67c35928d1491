"""What a local rule changes: what holds with it and without it, compared over all cases at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.audit.law import View, places
from kb.guidance.setting import Setting
from kb.model.conditions import Condition, all_of, any_of, negate
from kb.model.records import Rule
from kb.model.values import contains
from kb.reasoner import Norm


class Effect(msgspec.Struct, frozen=True):
    """Whether a rule applies in some case and changes what holds in one; if not, which rules say as much.

    `others` is empty where they do not say as much in every case: then the rule is beaten.
    """

    applies: bool
    changes: bool
    others: tuple[str, ...] = ()


def effect_of(setting: Setting, rule: Rule, views: Sequence[View]) -> Effect:
    """The effect of a rule in the setting, exactly: no case is sampled."""
    applies = False
    others: dict[str, None] = {}
    for view in views:
        known = setting.of(view)
        mine = [(norm, mask) for norm, mask in view.norms() if norm.rule == rule.id]
        applying = any_of(view.applies(norm) for norm, _ in mine)
        if setting.case(applying, known=known) is None:
            continue
        applies = True
        without = without_rule(view, rule)
        if any(setting.case(applying, change, known=known) is not None for change in _changes(view, without)):
            return Effect(True, True)
        alike = _alike(setting, without, mine)
        if setting.case(applying, negate(any_of(alike.values())), known=known) is not None:
            return Effect(True, False)
        for name, said in alike.items():
            if setting.case(applying, said, known=known) is not None:
                others[name] = None
    return Effect(applies, False, tuple(others))


def _alike(setting: Setting, view: View, mine: Sequence[tuple[Norm, int]]) -> dict[str, Condition]:
    """When other rules, that are not beaten everywhere, say of the values of a local one what it says."""
    wanted = {own.closes: mask for own, mask in mine}
    return {
        norm.rule: view.applies(norm)
        for norm, mask in view.norms()
        if norm.closes in wanted
        and not wanted[norm.closes] & ~mask
        and any(
            setting.case(view.effective(norm, mask, i), known=setting.of(view)) is not None
            for i in places(mask)
        )
    }


def without_rule(view: View, rule: Rule) -> View:
    """The same view as it would be if the books did not have the rule."""
    found = View(view.law, view.group)
    for norms in (found.closing, found.supporting, found.residual):
        norms[:] = [(norm, mask) for norm, mask in norms if norm.rule != rule.id]
    return found


def _changes(view: View, without: View) -> Iterator[Condition]:
    """The conditions under which two views of one matter come to different verdicts."""
    everything = places(view.everything)
    closed = {i: (_closed(view, i), _closed(without, i)) for i in everything}
    supported = {i: (_supported(view, i), _supported(without, i)) for i in everything}
    for pair in closed.values():
        yield from _differ(*pair)
    if view.law.lookup.aspects[view.aspect].kind != "act":
        for pair in supported.values():
            yield from _differ(*pair)
        return
    yes, no = (next(i for i in everything if contains(view.group.classes[i], v)) for v in ("yes", "no"))
    free = {yes: negate(closed[no][0]), no: all_of([negate(supported[yes][0]), negate(closed[yes][0])])}
    for i in (yes, no):  # support says nothing new where the act is required or prohibited anyway
        matters = any_of([closed[i][0], free[i]])
        for change in _differ(*supported[i]):
            yield all_of([change, matters])


def _differ(one: Condition, other: Condition) -> Iterator[Condition]:
    yield all_of([one, negate(other)])
    yield all_of([other, negate(one)])


def _closed(view: View, place: int) -> Condition:
    norms = [(norm, mask) for norm, mask in [*view.closing, *view.residual] if mask >> place & 1]
    return any_of(view.effective(norm, mask, place) for norm, mask in norms)


def _supported(view: View, place: int) -> Condition:
    return any_of(view.alive(norm, mask, place) for norm, mask in view.supporting if mask >> place & 1)
