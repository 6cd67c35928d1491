"""Rule bases for the tests of the graph: made by hypothesis from the records' own types, and one by hand."""

from __future__ import annotations

import datetime
import types
from fractions import Fraction
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

import msgspec
from hypothesis import strategies as st

import kb.model.records as r
from kb.errors import Location
from kb.model.conditions import AllOf, AnyOf, NotOf, Test
from kb.model.values import Choices, Interval, Ranges, choices, point

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=6) | st.sampled_from(
    [
        "4.12",
        "01",
        "1.50",
        "a/b",
        "..",
        ".",
        "%2F",
        'say "no"',
        "back\\slash",
        "two\nlines\r",
        "en-GB",
        "café ½",
    ]
)
FRACTION = st.fractions(max_denominator=64) | st.sampled_from([Fraction(1, 3), Fraction(-5, 4), Fraction(0)])


def _condition_strategy() -> st.SearchStrategy[Any]:
    tests = st.deferred(lambda: for_type(Test))
    return st.recursive(
        tests,
        lambda below: (
            st.builds(AllOf, st.lists(below, max_size=3).map(tuple))
            | st.builds(AnyOf, st.lists(below, max_size=3).map(tuple))
            | st.builds(NotOf, below)
        ),
        max_leaves=4,
    )


CONDITION = _condition_strategy()
_CONDITION_TYPES = {Test, AllOf, AnyOf, NotOf}


def for_type(kind: Any) -> st.SearchStrategy[Any]:
    """A strategy for a field's type, read off the records: a new field is covered without a change here."""
    origin, arguments = get_origin(kind), get_args(kind)
    if origin is Literal:
        return st.sampled_from(arguments)
    if origin in (Union, types.UnionType):
        if set(arguments) == _CONDITION_TYPES:
            return CONDITION
        return st.one_of([for_type(one) for one in arguments])
    if origin is tuple:
        return st.lists(for_type(arguments[0]), max_size=3).map(tuple)
    if origin is frozenset:
        return st.frozensets(for_type(arguments[0]), max_size=3)
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        hints = get_type_hints(kind)
        if kind is r.Measure:
            hints["also"] = type(None)
        return st.fixed_dictionaries({name: for_type(hint) for name, hint in hints.items()}).map(
            lambda values: kind(**values)
        )
    plain = {
        str: TEXT,
        bool: st.booleans(),
        int: st.integers(0, 9999),
        Fraction: FRACTION,
        datetime.date: st.dates(),
        type(None): st.none(),
    }
    return plain[kind]


def _unique(records: tuple[Any, ...], prefix: str = "") -> tuple[Any, ...]:
    """The records with ids that differ, whatever characters they hold."""
    return tuple(
        msgspec.structs.replace(record, id=f"{prefix}{number}{record.id}")
        for number, record in enumerate(records)
    )


def _with_unique_values(records: tuple[Any, ...]) -> tuple[Any, ...]:
    return tuple(msgspec.structs.replace(record, values=_unique(record.values)) for record in records)


def repaired(base: r.RuleBase) -> r.RuleBase:
    """The base with what every base has: unique ids, ids of clauses and rules made from their editions."""
    editions = _unique(base.editions, "order/")
    place = editions[0].id if editions else "order/2024"
    clauses = tuple(
        msgspec.structs.replace(clause, id=f"{place}/{number}{clause.number}", edition=place)
        for number, clause in enumerate(base.clauses)
    )
    service = msgspec.structs.replace(base.service, namespace="https://sls.example/")
    return msgspec.structs.replace(
        base,
        service=service,
        authorities=_unique(base.authorities),
        facts=_with_unique_values(_unique(base.facts)),
        groups=_unique(base.groups),
        aspects=_with_unique_values(_unique(base.aspects)),
        items=_unique(base.items),
        books=_unique(base.books),
        editions=editions,
        clauses=clauses,
        delegations=_unique(base.delegations),
        rules=_unique(base.rules, f"{place}/"),
        accepted_words=tuple(
            msgspec.structs.replace(word, word=f"{number}{word.word}")
            for number, word in enumerate(base.accepted_words)
        ),
    )


BASES = for_type(r.RuleBase).map(repaired)

_DAY = datetime.date(2024, 3, 1)


def at(line: int, file: str = "books/order.yaml") -> Location:
    return Location(file, line, 3)


def _grades() -> r.Fact:
    values = tuple(
        r.FactValue(id=name, label=label, group="hands", at=at(number))
        for number, (name, label) in enumerate(
            (("H1", "Third Hand"), ("H2", "Second Hand"), ("K1", "Keeper")), 10
        )
    )
    return r.Fact(
        id="grade", label="grade", kind="scale", family="grade", ask="Which grade?", values=values, at=at(9)
    )


def _facts() -> tuple[r.Fact, ...]:
    places = (
        r.FactValue(id="ashore", label="ashore", at=at(20)),
        r.FactValue(
            id="town",
            label="in town",
            within="ashore",
            other_labels=("in the town", "uptown"),
            everyday=("village",),
            at=at(21),
        ),
    )
    return (
        _grades(),
        r.Fact(id="place", label="place", kind="choice", ask="Where?", values=places, at=at(19)),
        r.Fact(
            id="temperature", label="air temperature", kind="quantity", unit="Cel", ask="How cold?", at=at(22)
        ),
        r.Fact(id="winter", label="winter", kind="yes_no", family="term", ask="Is it winter?", at=at(23)),
        r.Fact(
            id="worn:cap", label="cap worn", kind="yes_no", family="worn", ask="Is the cap worn?", at=at(24)
        ),
    )


def _aspects() -> tuple[r.Aspect, ...]:
    gilt = r.FactValue(id="gilt", label="gilt", other_labels=("gold",), at=at(33))
    return (
        r.Aspect(id="wear", label="wear", kind="act", verb="wear", done="worn", at=at(30)),
        r.Aspect(id="fit", label="fit", kind="manner", at=at(31)),
        r.Aspect(id="reach", label="reach", kind="measure", within="fit", at=at(32)),
        r.Aspect(id="colour", label="colour", kind="choice", values=(gilt,), at=at(33)),
        r.Aspect(id="position", label="position", kind="position", at=at(34)),
        r.Aspect(id="precedence", label="precedence", kind="order", at=at(35)),
    )


def _items() -> tuple[r.Item, ...]:
    return (
        r.Item(id="anything", label="anything", broader=(), at=at(40)),
        r.Item(
            id="cap",
            label="cap",
            broader=("anything",),
            everyday=("hat", "lid"),
            protects=("head",),
            at=at(41),
        ),
        r.Item(
            id="peak",
            label="peak",
            broader=("anything",),
            part_of="cap",
            layer="outer",
            care_note="Wipe.",
            valid_from=_DAY,
            valid_until=datetime.date(2030, 1, 1),
            note="Stiff.",
            at=at(42),
        ),
        r.Item(id="badge", label="badge", broader=("peak", "cap"), at=at(43)),
    )


def _clause(number: str, line: int, text: str, **more: Any) -> r.Clause:
    values: dict[str, Any] = {"edition": "order/2024", "kind": "rule", "valid_from": _DAY, **more}
    name = f"{values['edition']}/{number}"
    return r.Clause(id=name, number=number, text=text, at=at(line), **values)


def _measure() -> r.Measure:
    quarter = r.Measure(
        text="1/4 to 1/2 in",
        unit="[in_i]",
        interval=Interval(Fraction(127, 20), Fraction(127, 10), high_open=True),
        about=True,
        tolerance=Fraction(1, 3),
        datum=r.Datum(measured_from="cuff edge", measured_to="wrist bone", posture="arms hanging"),
    )
    return msgspec.structs.replace(
        quarter, also=r.Measure(text="6 mm", unit="mm", interval=Interval(Fraction(6)))
    )


def _rule(name: str, line: int, modality: r.Modality, **more: Any) -> r.Rule:
    values: dict[str, Any] = {
        "scope": r.Scope(items=("cap",)),
        "aspect": "wear",
        "value": r.RuleValue(values=choices("yes")),
        "clause": "order/2024/4.12",
        "authority": "board",
        "valid_from": _DAY,
        **more,
    }
    return r.Rule(id=f"order/2024/{name}", modality=modality, at=at(line), **values)


def _rules() -> tuple[r.Rule, ...]:
    town = Test("place", Choices(frozenset({"town"}), complement=True))
    cold = Test("temperature", Ranges((Interval(None, Fraction(-5, 2), high_open=True),)))
    place = r.Position(
        id="above-peak",
        relation="above",
        on="cap",
        feature="peak",
        side="left",
        offset=_measure(),
        orientation="horizontal",
        slot="primary",
        text="above the peak",
    )
    return (
        _rule("r1", 70, "must"),
        _rule(
            "r2",
            71,
            "must_not",
            condition=AllOf((Test("grade", choices("H2", "K1")), AnyOf((town, NotOf(cold))))),
            exception_to=("order/2024/r1", "order/2024/r4"),
            delegation="d1",
            note="A remark.",
            caution="Hot.",
            valid_until=datetime.date(2029, 1, 1),
        ),
        _rule("r3", 72, "may", aspect="reach", value=r.RuleValue(values=point(3), measure=_measure())),
        _rule(
            "r4",
            73,
            "need_not",
            scope=r.Scope(items=("peak", "cap"), excluding=("badge",), narrower=False, alternatives="one"),
            disables=("order/2024/r1",),
            repairs="order/2024/r1",
            non_derogable=True,
            residual=True,
            condition=AnyOf((Test("grade", choices("K1")), Test("winter", choices("yes")))),
        ),
        _rule(
            "r5",
            74,
            "must",
            aspect="position",
            value=r.RuleValue(values=choices("above-peak"), positions=(place, place)),
            condition=Test("grade", Choices(frozenset({"K1"}), complement=True)),
        ),
        _rule(
            "r6",
            75,
            "must",
            aspect="precedence",
            value=r.RuleValue(values=choices("yes"), order=("peak", "badge")),
        ),
    )


def _tolerance() -> r.Tolerance:
    return r.Tolerance(
        unit="mm",
        applies=Interval(Fraction(0), Fraction(254, 5)),
        allow=Fraction(127, 40),
        clause="order/2024/1/2",
        at=at(60),
    )


def _words() -> tuple[r.SuggestedWord, ...]:
    lid = r.WordOrigin(thesaurus="WordNet", version="3.0", sense="02954340-n")
    return (
        r.SuggestedWord(item="cap", word="lid", on=_DAY, origin=lid, meaning="A tight hat.", at=at(44)),
        r.SuggestedWord(item="cap", word="hat", on=_DAY, at=at(45)),
    )


def hand_made() -> r.RuleBase:
    """A small base that uses every record and every field."""
    return r.RuleBase(
        service=r.Service(
            id="sls",
            label="Skerry Light Service",
            other_labels=("SLS",),
            namespace="https://sls.example/",
            at=at(1),
        ),
        authorities=(
            r.Authority(id="board", label="Board of Lights", rank=0, at=at(3)),
            r.Authority(id="station", label="Station Keeper", rank=1, at=at(4)),
        ),
        facts=_facts(),
        groups=(
            r.Group(id="hands", label="hands", one="hand", fact="grade", members=("H1", "H2"), at=at(26)),
            r.Group(id="out", label="out and about", fact="place", members=("town", "ashore"), at=at(27)),
        ),
        aspects=_aspects(),
        items=_items(),
        books=(r.Book(id="order", label="Dress Order", authority="board", at=at(50)),),
        editions=(
            r.Edition(
                id="order/2019",
                label="Dress Order, first edition",
                book="order",
                valid_from=datetime.date(2019, 1, 1),
                valid_until=_DAY,
                at=at(51),
            ),
            r.Edition(
                id="order/2024", label="Dress Order, second edition", book="order", valid_from=_DAY, at=at(52)
            ),
        ),
        clauses=(
            _clause(
                "4.12",
                55,
                "Caps are worn.",
                edition="order/2019",
                kind="information",
                replaced_by="order/2024/4.12",
            ),
            _clause(
                "4.12", 56, 'A "cap"\nis worn\\.', heading="Caps", part="Heads", replaces=("order/2019/4.12",)
            ),
            _clause(
                "1/2",
                57,
                "About.",
                kind="definition",
                repeals=("order/2019/4.12",),
                note="New.",
                valid_until=datetime.date(2031, 1, 1),
            ),
        ),
        delegations=(
            r.Delegation(
                id="d1",
                clause="order/2024/4.12",
                to="station",
                clauses=("order/2024/4.12", "order/2019/4.12"),
                items=("cap",),
                allows="stricter",
                at=at(58),
            ),
        ),
        definitions=(
            r.Definition(
                term="winter", condition=Test("place", choices("ashore")), clause="order/2024/1/2", at=at(59)
            ),
        ),
        tolerances=(_tolerance(), msgspec.structs.replace(_tolerance(), applies=Interval(), at=at(61))),
        exclusions=(AllOf((Test("place", choices("town")), Test("winter", choices("no")))),),
        rules=_rules(),
        accepted_words=_words(),
    )
