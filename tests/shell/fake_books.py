"""The books of the canned base: two items, a few facts, one clause."""

from __future__ import annotations

import datetime
from typing import Any

from kb.errors import Location, UsageError
from kb.model.lookup import Lookup
from kb.model.records import (
    Aspect,
    Authority,
    Book,
    Clause,
    Edition,
    Fact,
    FactValue,
    Item,
    RuleBase,
    Service,
)
from kb.sparql.terms import QueryTerm

AT = Location("order/gloves.yaml", 12, 5)
DAY = datetime.date(2026, 11, 25)
TEXT = (
    "The quilted liner may be worn alone by keepers in foul weather when the sleeves are down. "
    "It is not worn alone ashore, nor on any occasion on which visitors are received."
)
TERMS = (
    QueryTerm("cb:", "https://clothbound.example/ns#", "prefix"),
    QueryTerm("skos:", "http://www.w3.org/2004/02/skos/core#", "prefix"),
    QueryTerm("cb:Rule", "class", "class"),
    QueryTerm("cb:rank", "property", "property"),
    QueryTerm("skos:prefLabel", "property", "property"),
    QueryTerm("<https://quay.example/item/coat>", "storm coat", "record"),
)
HOSTILE = "\x1b[31mred\x1b[0m [/para] [bold]x[/bold] \u202eevil\u202c \x07 :smile:"


class FakeOpening:
    """Stands in for `Opening`."""

    def __init__(self, books: object = None, _cache: object = None) -> None:
        if books is not None and "missing" in str(books):
            raise UsageError(f"{books} is not a folder.")


def _item(name: str, label: str, *others: str) -> Item:
    return Item(id=name, label=label, other_labels=others, broader=(), at=AT)


def _fact(name: str, label: str, family: Any, *values: tuple[str, str]) -> Fact:
    records = tuple(FactValue(id=value, label=text, at=AT) for value, text in values)
    kind: Any = "choice" if values else "yes_no"
    return Fact(id=name, label=label, family=family, kind=kind, ask=f"What {label}?", values=records, at=AT)


def little_lookup() -> Lookup:
    edition = Edition(id="order/2", label="Quay Order, second edition", book="order", valid_from=DAY, at=AT)
    clause = Clause(
        id="order/2/4.12",
        edition="order/2",
        number="4.12",
        heading="Liner",
        text=TEXT,
        kind="rule",
        at=AT,
        valid_from=DAY,
    )
    return Lookup(
        RuleBase(
            service=Service(id="quay", label="Quay Service", namespace="https://quay.example/", at=AT),
            authorities=(Authority(id="board", label="Board", rank=0, at=AT),),
            facts=(
                _fact("grade", "grade", "grade", ("K4", "Under Keeper"), ("K5", "Upper Keeper")),
                _fact("rig", "rig", "rig", ("boat-rig", "boat rig"), ("watch-rig", "watch rig")),
                _fact("weather", "weather", "situation", ("fair", "fair weather"), ("foul", "foul weather")),
                _fact("place", "place", "situation", ("mess", "in the mess")),
                _fact("hauling", "hauling lines", "situation"),
                _fact("worn:liner", "worn quilted liner", "worn"),
            ),
            groups=(),
            aspects=(
                Aspect(id="wear", label="wear", kind="act", verb="wear", done="worn", at=AT),
                Aspect(id="pierce", label="piercing", kind="act", verb="pierce", done="pierced", at=AT),
                Aspect(id="colour", label="colour", kind="choice", at=AT),
            ),
            items=(
                _item("coat", "storm coat", "oilskin coat"),
                _item("liner", "quilted liner"),
                _item("gloves", "deck gloves"),
                _item("strip", "name strip"),
            ),
            books=(Book(id="order", label="Quay Order", authority="board", at=AT),),
            editions=(edition,),
            clauses=(clause,),
            delegations=(),
            definitions=(),
            tolerances=(),
            exclusions=(),
            rules=(),
        )
    )
