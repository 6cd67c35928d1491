"""Provisions that say the same put together: of several rigs, clauses, items or days."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence

import msgspec

from kb.guidance.provisions import Provision, Provisions
from kb.guidance.setting import Setting, either
from kb.model.conditions import any_of, negate
from kb.model.lookup import Lookup
from kb.model.records import RuleValue
from kb.model.values import Ranges, intersect
from kb.wording import say_date, say_rule

_MERGED_KINDS = ("act", "choice", "measure", "position")


def _joined(one: Provision, other: Provision, **changes: object) -> Provision:
    """Two provisions as one, whose rule is that of the first with changes."""
    return msgspec.structs.replace(
        one,
        rule=msgspec.structs.replace(one.rule, **changes) if changes else one.rule,
        rules=tuple(dict.fromkeys((*one.rules, *other.rules))),
        rivals=tuple(dict.fromkeys((*one.rivals, *other.rivals))),
        granted=None,
    )


def _fold(
    provisions: Sequence[Provision], join: Callable[[Provision, Provision], Provision | None]
) -> list[Provision]:
    """Provisions with each put together with the first before it that it can be put together with."""
    kept: list[Provision] = []
    for provision in provisions:
        for index, earlier in enumerate(kept):
            joined = join(earlier, provision)
            if joined is not None:
                kept[index] = joined
                break
        else:
            kept.append(provision)
    return kept


def _alike(one: Provision, other: Provision, *names: str) -> bool:
    return one.period == other.period and all(
        getattr(one.rule, name) == getattr(other.rule, name) for name in names
    )


def merge_cases(
    setting: Setting, provisions: Sequence[Provision], is_local: Callable[[Provision], bool]
) -> list[Provision]:
    """One provision for what several clauses say, each in its own rig, place or the like."""

    def join(one: Provision, other: Provision) -> Provision | None:
        if not _alike(one, other, "modality", "scope", "aspect", "value", "residual", "repairs", "note"):
            return None
        if is_local(one) or is_local(other) or one.rule.caution != other.rule.caution:
            return None
        if one.rule.condition == other.rule.condition:
            return _joined(one, other)
        both = either(one.rule.condition, other.rule.condition)
        return None if both is None else _joined(one, other, condition=setting.settle(both))

    return _fold(provisions, join)


def merge_bounds(provisions: Sequence[Provision]) -> list[Provision]:
    """One provision for two bounds of one measure, "5 to 7 in" for "at least 5 in" and "at most 7 in"."""

    def join(one: Provision, other: Provision) -> Provision | None:
        names = ("modality", "scope", "aspect", "condition", "note", "caution", "delegation", "clause")
        left, right = one.rule.value.measure, other.rule.value.measure
        if one.rule.modality != "must" or not _alike(one, other, *names) or left is None or right is None:
            return None
        alike = (left.unit, left.about, left.datum) == (right.unit, right.about, right.datum)
        both = intersect(one.rule.value.values, other.rule.value.values)
        if left.about or not alike or not isinstance(both, Ranges) or len(both.intervals) != 1:
            return None
        if both.intervals[0].low_open or both.intervals[0].high_open:  # two sentences are plainer
            return None
        measure = msgspec.structs.replace(left, interval=both.intervals[0], also=None)
        return _joined(one, other, value=RuleValue(values=both, measure=measure))

    return _fold(provisions, join)


def merge_items(lookup: Lookup, provisions: Sequence[Provision]) -> list[Provision]:
    """One provision for what the same clauses say of several single things."""

    def clauses(provision: Provision) -> set[str]:
        return {lookup.rules[rule].clause for rule in (*provision.rules, *provision.rivals)}

    def join(one: Provision, other: Provision) -> Provision | None:
        names = (
            "modality",
            "aspect",
            "value",
            "condition",
            "residual",
            "repairs",
            "note",
            "caution",
            "delegation",
        )
        if not _alike(one, other, *names) or clauses(one) != clauses(other):
            return None
        if lookup.aspects[one.rule.aspect].kind not in _MERGED_KINDS:
            return None
        if not (_is_single(lookup, one) and _is_single(lookup, other)):
            return None
        scope = msgspec.structs.replace(
            one.rule.scope, items=(*one.rule.scope.items, *other.rule.scope.items)
        )
        return _joined(one, other, scope=scope)

    return _fold(provisions, join)


def _is_single(lookup: Lookup, provision: Provision) -> bool:
    """Whether a provision is about single things, each by its name."""
    scope = provision.rule.scope
    if scope.alternatives is not None or scope.excluding:
        return False
    return all(len(lookup.narrower(item)) == 1 for item in scope.items)


def merge_days(
    worked: Sequence[Provisions], days: Sequence[datetime.date], spells: Sequence[Sequence[Provision]]
) -> list[Provision]:
    """The provisions of successive spells, each once, with its period if it does not hold all the time.

    It holds also in a spell in which its rules say as much in more cases, or of things that nobody wears.
    """
    lookup = worked[0].lookup
    found: dict[tuple[tuple[str, ...], str], list[int]] = {}
    first: dict[tuple[tuple[str, ...], str], Provision] = {}
    for index, provisions in enumerate(_steady(lookup, spells)):
        for provision in provisions:
            key = (provision.rules, say_rule(lookup, provision.rule))
            found.setdefault(key, []).append(index)
            first.setdefault(key, provision)
    merged: list[Provision] = []
    for key, named in found.items():
        present = [i for i, each in enumerate(worked) if i in named or _says(each, first[key])]
        start = present[0]
        for here, after in zip(present, [*present[1:], -1], strict=True):
            if after != here + 1:
                period = _period(days, start, here)
                merged.append(msgspec.structs.replace(first[key], period=period))
                start = after
    return merged


def _steady(lookup: Lookup, spells: Sequence[Sequence[Provision]]) -> list[list[Provision]]:
    """The provisions of each spell, with a permission as granted where only the duties beside it change."""
    texts: dict[tuple[tuple[str, ...], str], set[str]] = {}
    for provision in (provision for provisions in spells for provision in provisions):
        texts.setdefault(_grant(lookup, provision), set()).add(say_rule(lookup, provision.rule))
    return [
        [
            provision.granted
            if provision.granted and len(texts[_grant(lookup, provision)]) > 1
            else provision
            for provision in provisions
        ]
        for provisions in spells
    ]


def _grant(lookup: Lookup, provision: Provision) -> tuple[tuple[str, ...], str]:
    return provision.rules, say_rule(lookup, (provision.granted or provision).rule)


def _says(there: Provisions, provision: Provision) -> bool:
    """Whether the rules of a provision say in another spell what it says, in all its cases."""
    rules = [rule for rule in there.law.rules if rule.id in provision.rules]
    if len(rules) < len(provision.rules):
        return False
    scope, names = provision.rule.scope, ("modality", "aspect", "value")
    said = [p for rule in rules for p in there.of_rule(rule, frozenset(scope.items))]
    for item in scope.items:
        covering = [
            p.rule.condition
            for p in said
            if (item in p.rule.scope.items or p.rule.scope == scope)
            and all(getattr(p.rule, name) == getattr(provision.rule, name) for name in names)
        ]
        written = [there.setting.written(c) for c in (provision.rule.condition, *covering)]
        if there.setting.case(written[0], negate(any_of(written[1:]))) is not None:
            return False
    return True


def _period(days: Sequence[datetime.date], first: int, last: int) -> str:
    """The time from the first day of one spell to the last of another, in words."""
    begin = say_date(days[first]) if first else ""
    end = days[last + 1] if last + 1 < len(days) else None
    if begin and end:
        return f"from {begin} to {say_date(end - datetime.timedelta(days=1))},"
    if begin:
        return f"from {begin},"
    return f"before {say_date(end)}," if end else ""
