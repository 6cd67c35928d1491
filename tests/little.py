"""Little rule bases made in code, for tests of the reasoner that need no source files."""

from __future__ import annotations

import datetime

from kb.errors import Location
from kb.model.conditions import ALWAYS, Condition
from kb.model.lookup import Lookup
from kb.model.records import (
    Aspect,
    Authority,
    Book,
    Clause,
    Delegation,
    Edition,
    Fact,
    FactValue,
    Item,
    Modality,
    Rule,
    RuleBase,
    RuleValue,
    Scope,
    Service,
)
from kb.model.values import YES, ValueSet

AT = Location("little.yaml", 1, 1)
DAY = datetime.date(2026, 11, 25)
START = datetime.date(2020, 1, 1)


def rule(
    name: str,
    modality: Modality,
    item: str = "cap",
    *,
    when: Condition = ALWAYS,
    edition: str = "order/1",
    clause: str = "1",
    authority: str = "board",
    aspect: str = "wear",
    values: ValueSet = YES,
    scope: Scope | None = None,
    exception_to: tuple[str, ...] = (),
    disables: tuple[str, ...] = (),
    repairs: str | None = None,
    delegation: str | None = None,
    non_derogable: bool = False,
    residual: bool = False,
) -> Rule:
    """A rule with everything left out that a test does not speak about; its id is its name."""
    return Rule(
        id=name,
        modality=modality,
        scope=scope or Scope(items=(item,)),
        aspect=aspect,
        value=RuleValue(values=values),
        condition=when,
        clause=f"{edition}/{clause}",
        authority=authority,
        valid_from=START,
        exception_to=exception_to,
        disables=disables,
        repairs=repairs,
        delegation=delegation,
        non_derogable=non_derogable,
        residual=residual,
        at=AT,
    )


def _value(name: str) -> FactValue:
    return FactValue(id=name, label=name, at=AT)


def fact(name: str, *values: str) -> Fact:
    """A choice of values; a yes-or-no fact without any."""
    kind = "choice" if values else "yes_no"
    family = "worn" if name.startswith("worn:") else "situation"
    return Fact(
        id=name,
        label=name.replace(":", " "),
        ask=f"{name}?",
        kind=kind,
        family=family,
        values=tuple(map(_value, values)),
        at=AT,
    )


def base(
    *rules: Rule,
    items: dict[str, tuple[str, ...]] | None = None,
    facts: tuple[Fact, ...] = (),
    delegations: tuple[Delegation, ...] = (),
    exclusions: tuple[Condition, ...] = (),
    aspects: tuple[Aspect, ...] = (),
    editions: dict[str, datetime.date] | None = None,
) -> Lookup:
    """A base with two authorities (board over station), book `order` of the board and `local` of the station.

    `items` maps an item to its broader ones; every item gets its `worn:` fact.
    """
    kinds = items or {"cap": (), "scarf": ()}
    dates = {"order/1": START, "local/1": START, **(editions or {})}
    clauses = dict.fromkeys([r.clause for r in rules] + [d.clause for d in delegations])
    worn = tuple(fact(f"worn:{item}") for item in kinds)
    return Lookup(
        RuleBase(
            service=Service(id="little", label="Little", namespace="https://little.example/", at=AT),
            authorities=(
                Authority(id="board", label="Board", rank=0, at=AT),
                Authority(id="station", label="Station", rank=1, at=AT),
            ),
            facts=(*facts, *worn),
            groups=(),
            aspects=(Aspect(id="wear", label="wear", kind="act", verb="wear", done="worn", at=AT), *aspects),
            items=tuple(Item(id=i, label=i, broader=b, at=AT) for i, b in kinds.items()),
            books=(
                Book(id="order", label="Order", authority="board", at=AT),
                Book(id="local", label="Local", authority="station", at=AT),
            ),
            editions=tuple(
                Edition(id=e, label=e, book=e.split("/")[0], valid_from=d, at=AT) for e, d in dates.items()
            ),
            clauses=tuple(
                Clause(
                    id=c,
                    edition=c.rsplit("/", 1)[0],
                    number=c.rsplit("/", 1)[1],
                    text="Text.",
                    kind="rule",
                    valid_from=START,
                    at=AT,
                )
                for c in clauses
            ),
            delegations=delegations,
            definitions=(),
            tolerances=(),
            exclusions=exclusions,
            rules=rules,
        )
    )
