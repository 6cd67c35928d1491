"""A small rule base that has something for every named query."""

from __future__ import annotations

import datetime

import msgspec

from kb.model.conditions import Condition, NotOf, Test, all_of
from kb.model.records import Delegation, Fact, FactValue, Group, Rule, RuleBase, Scope
from kb.model.values import Choices, choices
from tests import little

DAY = datetime.date(2026, 6, 1)
JULY = datetime.date(2026, 7, 1)
_ITEMS: dict[str, tuple[str, ...]] = {
    "anything": (),
    "garment": ("anything",),
    "coat": ("garment",),
    "storm-coat": ("coat",),
    "watch-coat": ("coat",),
    "accessory": ("anything",),
    "scarf": ("accessory", "garment"),
    "cap": ("anything",),
}


def _scale(name: str, family: str, *values: str) -> Fact:
    return Fact(
        id=name,
        label=name,
        ask=f"{name}?",
        kind="scale" if family == "grade" else "choice",
        family=family,  # type: ignore[arg-type]
        values=tuple(FactValue(id=value, label=f"Label {value}", at=little.AT) for value in values),
        at=little.AT,
    )


def _dated(rule: Rule, start: datetime.date | None = None, end: datetime.date | None = None) -> Rule:
    return msgspec.structs.replace(rule, valid_from=start or rule.valid_from, valid_until=end)


def _grades(*values: str) -> Condition:
    return Test("grade", choices(*values))


def _rules() -> tuple[Rule, ...]:
    rule = little.rule
    return (
        rule("coats", "must", "coat", when=all_of([_grades("K1", "K2"), Test("rig", choices("boat"))])),
        rule(
            "no-garment", "must_not", scope=Scope(items=("garment",), excluding=("storm-coat",)), clause="2"
        ),
        rule("only-coat", "may", scope=Scope(items=("coat",), narrower=False), clause="2"),
        rule(
            "local-scarf", "may", "scarf", edition="local/1", authority="station", delegation="local-scarves"
        ),
        rule("scarf-left-off", "must_not", "scarf", when=NotOf(Test("rig", choices("shore")))),
        rule("all-but-shore", "need_not", "cap", when=Test("rig", Choices(frozenset({"shore"}), True))),
        rule("cap-off", "must_not", "cap", disables=("all-but-shore",), when=_grades("W1")),
        rule("cap-on", "must", "cap", repairs="cap-off", exception_to=("coats",)),
        _dated(rule("old", "must_not", "watch-coat", clause="3"), start=JULY),
        _dated(rule("spent", "may", "watch-coat", clause="3"), end=DAY),
        rule("label", "must", "coat", aspect="colour", values=choices("navy")),
        rule("no-storm-coat", "must_not", "storm-coat", edition="local/1", authority="station"),
    )


def shop_base() -> RuleBase:
    """Two authorities, three clauses of the order, a local order, an amendment, a delegation, a phase-out."""
    delegation = Delegation(
        id="local-scarves",
        clause="order/1/2",
        to="station",
        clauses=("order/1/1", "order/1/2"),
        items=("scarf",),
        at=little.AT,
    )
    aspects = tuple(
        msgspec.structs.replace(little.base().base.aspects[0], id=name, label=name, kind=kind, verb=None)
        for name, kind in (("colour", "choice"),)
    )
    base = little.base(
        *_rules(),
        items=_ITEMS,
        facts=(
            _scale("grade", "grade", "K1", "K2", "W1"),
            _scale("rig", "rig", "boat", "shore"),
            _scale("weather", "situation", "fair", "foul"),
        ),
        delegations=(delegation,),
        aspects=aspects,
    ).base
    return _with_amendment(base)


def _with_amendment(base: RuleBase) -> RuleBase:
    clauses = {clause.id: clause for clause in base.clauses}
    changed = msgspec.structs.replace
    clauses["order/1/3"] = changed(
        clauses["order/1/3"],
        heading='Coats, "old"',
        text="The watch coat\nis left off.",
        valid_from=datetime.date(2026, 3, 1),
        replaces=("order/1/1",),
        repeals=("order/1/2",),
    )
    items = tuple(
        changed(item, valid_until=JULY, everyday=("muffler",), other_labels=("neck cloth",))
        if item.id == "scarf"
        else item
        for item in base.items
    )
    group = Group(id="keepers", label="keepers", fact="grade", members=("K1", "K2"), at=little.AT)
    return changed(base, clauses=tuple(clauses.values()), items=items, groups=(group,))
