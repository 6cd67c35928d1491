"""A little service with plain and odd labels, for tests of the wording."""

# ruff: noqa: E501  tables read better on one line
from __future__ import annotations

import datetime
from fractions import Fraction

from kb.errors import Location
from kb.model.conditions import ALWAYS, Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.model.records import (
    Aspect,
    AspectKind,
    Authority,
    Book,
    Clause,
    Delegation,
    Edition,
    Fact,
    FactFamily,
    FactKind,
    FactValue,
    Group,
    Item,
    Modality,
    Rule,
    RuleBase,
    RuleValue,
    Scope,
    Service,
)
from kb.model.values import NO, YES, Choices, Interval, Ranges, ValueSet, choices

AT = Location("words.yaml", 1, 1)
START = datetime.date(2024, 3, 1)
EDITION = "dress-order/2024"


def value(text: str, group: str | None = None) -> FactValue:
    """ "id: label" or "id: label < broader"."""
    name, _, rest = text.partition(": ")
    label, _, within = (rest or name).partition(" < ")
    return FactValue(id=name, label=label, within=within or None, group=group, at=AT)


def fact(
    name: str,
    label: str,
    ask: str = "Which?",
    *values: str,
    kind: FactKind = "choice",
    family: FactFamily = "situation",
    unit: str | None = None,
) -> Fact:
    return Fact(
        id=name,
        label=label,
        ask=ask,
        kind=kind,
        family=family,
        unit=unit,
        at=AT,
        values=tuple(map(value, values)),
    )


def yes_no(name: str, label: str, ask: str, family: FactFamily = "situation") -> Fact:
    return fact(name, label, ask, kind="yes_no", family=family)


LADDERS = {
    "hands": ("deck hands", "deck hand", ["H1: Third Hand", "H2: Second Hand", "H3: First Hand"]),
    "keepers": ("keepers", "keeper", [f"K{n}: Keeper {n}" for n in range(1, 8)]),
    "officers": ("officers", "officer", [f"W{n}: Warden {n}" for n in range(1, 5)]),
}
GRADES = tuple(value(grade, ladder) for ladder, (_, _, grades) in LADDERS.items() for grade in grades)

ITEMS: dict[str, tuple[str, str]] = {
    "anything": ("anything", ""),
    "garment": ("garment", "anything"),
    "feature": ("feature of a garment", "anything"),
    "insignia": ("insignia", "anything"),
    "outer-garment": ("outer garment", "garment"),
    "storm-coat": ("storm coat", "outer-garment"),
    "smock": ("tarred smock", "outer-garment"),
    "liner": ("quilted liner", "garment"),
    "gloves": ("deck gloves", "garment"),
    "cap": ("service cap", "garment"),
    "jersey": ("jersey", "garment"),
    "trousers": ("trousers", "garment"),
    "boots": ("sea boots", "garment"),
    "shoes": ("black shoes", "garment"),
    "clogs": ("clogs", "garment"),
    "scarf": ("wool scarf", "garment"),
    "harness": ("climbing harness", "garment"),
    "visor": ("visor", "feature"),
    "cuff": ("cuff of the storm coat", "feature"),
    "device": ("cap device", "insignia"),
    "pin": ("keeper's pin", "insignia"),
    "bar": ("bar of merit", "insignia"),
    "diver-badge": ("diver badge", "insignia"),
    "pilot-badge": ("pilot badge", "insignia"),
    "ring": ("finger ring", "anything"),
    "hair": ("hair", "anything"),
    "own": ("any watch of one's own", "anything"),
    "the-sash": ("the Sash", "garment"),
    "u-pin": ("Union pin (large)", "insignia"),
}
PARTS = {"visor": "cap", "cuff": "storm-coat"}


def _act(name: str, label: str, verb: str, done: str) -> Aspect:
    return Aspect(id=name, label=label, kind="act", verb=verb, done=done, at=AT)


def _aspect(name: str, kind: AspectKind, label: str, within: str | None = None, *values: str) -> Aspect:
    return Aspect(id=name, label=label, kind=kind, within=within, at=AT, values=tuple(map(value, values)))


ASPECTS = (
    _act("wear", "wear", "wear", "worn"),
    _act("possession", "possession", "own", "owned"),
    _act("piercing", "piercing", "pierce", "pierced"),
    _aspect("position", "position", "position"),
    _aspect("size", "measure", "size"),
    _aspect("height", "measure", "height", "size"),
    _aspect("letter-height", "measure", "height of the letters", "size"),
    _aspect("fit", "manner", "fit"),
    _aspect("reach", "measure", "reach", "fit"),
    _aspect("count", "count", "number worn"),
    _aspect("stock", "count", "stock"),
    _aspect("colour", "choice", "colour", None, "gilt", "silver", "navy: navy blue"),
    _aspect("care", "manner", "care"),
    _aspect("fit:square", "act", "square on the head", "fit"),
    _aspect("fit:buttoned", "act", "buttoned to the throat", "fit"),
    _aspect("care:hand", "act", "wash by hand", "care"),
    _aspect("precedence", "order", "order of precedence"),
)


def _facts() -> tuple[Fact, ...]:
    grants = ("none: not granted", "pilots: Pilot Wardens", "station: Station Keeper",
              "superintendent: District Superintendent", "board: Board of Lights")  # fmt: skip
    return (
        Fact(id="grade", label="grade", ask="Which grade?", kind="scale", family="grade", values=GRADES, at=AT),
        fact("branch", "branch", "Which branch?", "boats: boat branch", "lights: light branch", "stores", family="branch"),
        fact("rig", "rig", "Which rig?", "boat: boat rig", "parade: parade rig", "shore: shore rig", family="rig"),
        fact("weather", "weather", "What is the weather?", "fair: fair weather", "foul: foul weather"),
        fact("sky", "sky", "How is the sky?", "clear", "cloudy", "overcast"),
        fact("place", "place", "Where?", "ashore", "town: in town < ashore", "pier: on the pier < ashore", "afloat",
             "skiff: in a skiff < afloat", "cutter: on the cutter < afloat"),
        fact("room", "room", "Which room?", "mess", "engine: engine room", "chart: chart room"),
        fact("sleeves", "sleeves", "Are the sleeves up or down?", "down: sleeves down", "up: sleeves up"),
        fact("sea", "sea state", "What is the sea state?", "calm: calm sea", "slight: slight sea", "rough: rough sea",
             "high: high sea", kind="scale"),
        fact("activity", "activity", "What?", "boarding: boarding a vessel", "parade: on parade", "leave: on leave"),
        yes_no("hauling", "hauling lines", "Are you hauling lines?"),
        yes_no("machinery", "machinery running", "Is machinery running near you?"),
        yes_no("hot-work", "hot work", "Is hot work being done?"),
        yes_no("deck-wet", "deck wet", "Is the deck wet?"),
        yes_no("guard", "a member of the guard", "Are you a member of the guard?"),
        yes_no("drill", "fire drill", "fire drill: yes or no?"),
        yes_no("winter", "winter", "Is it winter?", "term"),
        yes_no("dark", "dark hours", "Is it in the dark hours?", "term"),
        fact("temperature", "air temperature", "How warm?", kind="quantity", unit="Cel"),
        fact("winds", "winds aloft", "How strong?", kind="quantity", unit="[kn_i]"),
        fact("awarded", "date of award", "When?", kind="date"),
        yes_no("holds:diver", "diver qualification", "Are you a qualified diver?", "qualification"),
        yes_no("holds:coxswain", "coxswain", "Are you coxswain?", "appointment"),
        yes_no("holds:beard", "beard waiver", "Have you a beard waiver?", "waiver"),
        fact("granted:heat", "extreme heat dress", "Who?", *grants, kind="scale", family="authorisation"),
        *(yes_no(f"worn:{item}", label, f"Is the {label} worn?", "worn") for item, (label, _) in ITEMS.items()),
    )  # fmt: skip


def _group(name: str, fact_id: str, label: str, *members: str, one: str | None = None) -> Group:
    return Group(id=name, label=label, fact=fact_id, members=members, one=one, at=AT)


GROUPS = (
    *(
        _group(ladder, "grade", label, *(g.partition(":")[0] for g in grades), one=one)
        for ladder, (label, one, grades) in LADDERS.items()
    ),
    _group("petty", "grade", "petty keepers", "K3", "K4", "K5", one="petty keeper"),
    _group("open-boats", "place", "in an open boat", "skiff", "cutter"),
)


def rule(
    modality: Modality,
    *items: str,
    aspect: str = "wear",
    value: RuleValue | ValueSet = YES,
    when: Condition = ALWAYS,
    alternatives: str | None = None,
    excluding: tuple[str, ...] = (),
    name: str = "r",
    **more: object,
) -> Rule:
    """A rule of clause 4.12 with everything left out that a test does not speak about."""
    fields: dict[str, object] = {
        "id": f"{EDITION}/{name}",
        "modality": modality,
        "scope": Scope(items=items, excluding=excluding, alternatives=alternatives),  # type: ignore[arg-type]
        "aspect": aspect,
        "value": value if isinstance(value, RuleValue) else RuleValue(values=value),
        "condition": when,
        "clause": f"{EDITION}/4.12",
        "authority": "board",
        "valid_from": START,
        "at": AT,
        **more,
    }
    return Rule(**fields)  # type: ignore[arg-type]


def words(*rules: Rule) -> Lookup:
    """The little service with these rules."""
    return Lookup(
        RuleBase(
            service=Service(id="words", label="Words", namespace="https://words.example/", at=AT),
            authorities=tuple(
                Authority(id=name, label=label, rank=rank, at=AT)
                for name, label, rank in (
                    ("board", "Board of Lights", 0),
                    ("superintendent", "District Superintendent", 1),
                    ("station", "Station Keeper", 2),
                    ("pilots", "Pilot Wardens", 2),
                )
            ),
            facts=_facts(),
            groups=GROUPS,
            aspects=ASPECTS,
            items=tuple(
                Item(id=i, label=label, broader=(up,) if up else (), part_of=PARTS.get(i), at=AT)
                for i, (label, up) in ITEMS.items()
            ),
            books=(
                Book(id="dress-order", label="Dress Order", authority="board", at=AT),
                Book(id="local", label="Local Order", authority="station", at=AT),
            ),
            editions=(
                Edition(id="dress-order/2019", label="Dress Order, first edition", book="dress-order",
                        valid_from=datetime.date(2019, 1, 1), at=AT),
                Edition(id=EDITION, label="Dress Order, second edition", book="dress-order", valid_from=START, at=AT),
                Edition(id="local/2025", label="Local Order", book="local", valid_from=START, at=AT),
            ),
            clauses=tuple(
                Clause(id=f"{edition}/{number}", edition=edition, number=number, text="Grades are called by their codes here: K5.", kind="rule",
                       valid_from=START, at=AT)
                for edition in ("dress-order/2019", EDITION, "local/2025")
                for number in ("4.12", "5.1")
            ),
            delegations=(
                Delegation(id="local-gloves", clause=f"{EDITION}/5.1", to="station", at=AT),
            ),
            definitions=(),
            tolerances=(),
            exclusions=(),
            rules=rules,
        )
    )  # fmt: skip


def is_(fact_id: str, *values: str) -> Test:
    return Test(fact_id, choices(*values))


def yes(fact_id: str) -> Test:
    return Test(fact_id, YES)


def no(fact_id: str) -> Test:
    return Test(fact_id, NO)


def span(fact_id: str, low: int | None = None, high: int | None = None, opened: str = "") -> Test:
    """A range of a quantity; `opened` names the open ends: "l", "h", "lh"."""
    bounds = [None if n is None else Fraction(n) for n in (low, high)]
    return Test(fact_id, Ranges((Interval(bounds[0], bounds[1], "l" in opened, "h" in opened),)))


def everything_but(fact_id: str, *values: str) -> Test:
    return Test(fact_id, Choices(frozenset(values), complement=True))


def both(*parts: Condition) -> Condition:
    return all_of(parts)
