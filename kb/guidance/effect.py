"""What a local rule changes: what holds with it and without it, compared over all cases at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.audit.law import View, places
from kb.guidance.setting import Setting
from kb.model.conditions import Condition, all_of, any_of, negate
from kb.model.records import Rule
from kb.model.values import contains


class Effect(msgspec.Struct, frozen=True):
    """Whether a rule applies in some case and changes what holds in one; if not, which rules say as much."""

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
        without = _without(view, rule)
        if any(setting.case(applying, change, known=known) is not None for change in _changes(view, without)):
            return Effect(True, True)
        for norm, mask in without.norms():
            alike = [i for own, theirs in mine if own.closes == norm.closes for i in places(mask & theirs)]
            said = any_of(without.effective(norm, mask, i) for i in alike)
            if setting.case(applying, said, known=known) is not None:
                others[norm.rule] = None
    return Effect(applies, False, tuple(others))


def _without(view: View, rule: Rule) -> View:
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
