# ruff: noqa: E501  tables read better on one line
"""Read-backs, headlines and chains: what a question and its answer become in words."""

from __future__ import annotations

import datetime
from fractions import Fraction

import msgspec
import pytest

from kb.model.conditions import Test
from kb.model.questions import (
    ListEntry,
    OpenValue,
    Principle,
    Query,
    QuestionKind,
    RuleStatus,
    RuleStep,
    Verdict,
)
from kb.model.records import Case, Rule
from kb.model.values import YES, Interval, Ranges, choices, point
from kb.wording import (
    say_list_headline,
    say_principle,
    say_query,
    say_rule,
    say_verdict,
)
from tests.wording.bases import AT, EDITION, is_, rule, words, yes
from tests.wording.test_rules import m

LOOKUP = words()
K5, BOAT, ASHORE = is_("grade", "K5"), is_("rig", "boat"), is_("place", "ashore", "town", "pier")


def query(
    kind: QuestionKind, *items: str, facts: tuple[Test, ...] = (), alone: bool = False, **more: object
) -> Query:
    known = tuple((test.fact, test.values) for test in facts)
    case = Case(as_of=datetime.date(2026, 11, 25), facts=known, alone=alone)
    return Query(kind=kind, items=items, case=case, **more)  # type: ignore[arg-type]


QUERIES = [
    (query("may", "gloves", facts=(K5, BOAT, ASHORE)), "May a K5 wear the deck gloves, in boat rig, ashore?"),
    (query("may", "liner", alone=True), "May anyone wear the quilted liner, with nothing else worn?"),
    (query("may", "liner", "storm-coat"), "May anyone wear the quilted liner with the storm coat?"),
    (query("may", "cap", polarity="not"), "May anyone go without the service cap?"),
    (query("may", "cap", aspect="possession", polarity="not"), "May anyone choose not to own the service cap?"),
    (query("must", "cap", facts=(is_("grade", "H1", "H2", "H3"),)), "Must deck hands wear the service cap?"),
    (query("must", "cap", facts=(is_("branch", "boats"), yes("holds:diver"))),
     "Must anyone of the boat branch with the diver qualification wear the service cap?"),
    (query("may", "device", aspect="height", value=point(Fraction(254, 5))),
     "May the height of the cap device be 2 in (50.8 mm)?"),
    (query("may", "pin", aspect="colour", value=choices("gilt"), facts=(K5,)),
     "May the colour of the keeper's pin be gilt, for a K5?"),
    (query("where", "device", facts=(is_("grade", "W1", "W2", "W3", "W4"),)),
     "Where must the cap device be worn, by officers?"),
    (query("how", "jersey", aspect="care"), "What must the care of the jersey be?"),
    (query("how", "jersey"), "How must the jersey be worn?"),
    (query("how_many", "ring", aspect="count"), "How many finger rings may be worn?"),
    (query("who", "pin"), "Who may wear the keeper's pin?"),
    (query("who", "pin", modalities=("required",), facts=(ASHORE,)), "Who must wear the keeper's pin, ashore?"),
    (query("when", "cap"), "When may anyone wear the service cap?"),
    (query("list", modalities=("required",), facts=(is_("grade", "H2"), BOAT)), "What must an H2 wear, in boat rig?"),
    (query("list", modalities=("prohibited",), facts=(K5,)), "What must a K5 not wear?"),
    (query("list", modalities=("required", "permitted")), "What may people wear?"),
    (query("why", "cap", facts=(ASHORE,)), "Why, or why not, may anyone wear the service cap, ashore?"),
    (query("compare", "storm-coat", "smock"), "How do the rules for the storm coat and the tarred smock compare?"),
    (query("source", clause=f"{EDITION}/4.12"), "What does clause Dress Order (2024) 4.12 say?"),
    (query("source", "cap"), "Which clauses speak of the service cap?"),
]  # fmt: skip


@pytest.mark.parametrize(("asked", "expected"), QUERIES, ids=[text for _, text in QUERIES])
def test_read_backs(asked: Query, expected: str) -> None:
    assert say_query(LOOKUP, asked) == expected


MAY, MUST = query("may", "cap"), query("must", "cap")
MAY_NOT, MUST_NOT = query("may", "cap", polarity="not"), query("must", "cap", polarity="not")

VERDICTS: list[tuple[Query, Verdict, str]] = [
    (MAY, "required", "Yes: the service cap must be worn."),
    (MAY, "permitted", "Yes. The service cap may be worn."),
    (MAY, "prohibited", "No. The service cap must not be worn."),
    (MAY, "not_required", "The books do not say: the service cap need not be worn, "
     "and no clause permits or forbids it."),
    (MAY, "silent", "The books are silent: no clause addresses whether the service cap may be worn."),
    (MAY, "conflict", "Conflict: the clauses disagree on whether the service cap may be worn."),
    (MAY_NOT, "required", "No: the service cap must be worn."),
    (MAY_NOT, "permitted", "Yes. The service cap may be worn, but need not be."),
    (MAY_NOT, "prohibited", "Yes: the service cap must not be worn."),
    (MUST, "required", "Yes. The service cap must be worn."),
    (MUST, "permitted", "No. The service cap may be worn, but need not be."),
    (MUST, "prohibited", "No, this is prohibited: the service cap must not be worn."),
    (MUST, "not_required", "No. The service cap need not be worn."),
    (MUST_NOT, "required", "No: the service cap must be worn."),
    (MUST_NOT, "prohibited", "Yes. The service cap must not be worn."),
    (query("may", "liner", alone=True), "prohibited", "No. The quilted liner must not be worn alone."),
    (query("may", "liner", "storm-coat", alone=True), "permitted",
     "Yes. The quilted liner may be worn with nothing but the storm coat."),
    (query("may", "liner", facts=(yes("worn:storm-coat"),)), "permitted",
     "Yes. The quilted liner may be worn with the storm coat."),
    (query("may", "storm-coat", aspect="piercing"), "prohibited", "No. The storm coat must not be pierced."),
    (query("why", "cap"), "required", "The service cap must be worn."),
    (query("may", "device", aspect="height", value=point(Fraction(254, 5))), "prohibited",
     "No. The height of the cap device must not be 2 in (50.8 mm)."),
    (query("may", "device", aspect="height"), "silent",
     "The books are silent: no clause addresses the height of the cap device."),
]  # fmt: skip


@pytest.mark.parametrize(("asked", "verdict", "expected"), VERDICTS)
def test_headlines(asked: Query, verdict: Verdict, expected: str) -> None:
    assert say_verdict(LOOKUP, verdict, asked) == expected


def test_a_conditional_headline_names_what_it_depends_on() -> None:
    assert say_verdict(LOOKUP, "conditional", MAY, open_facts=("weather", "sleeves")) == (
        "It depends on the weather and whether the sleeves are down or up."
    )
    many = ("weather", "sleeves", "grade", "rig", "hauling")
    assert say_verdict(LOOKUP, "conditional", MAY, open_facts=many).endswith("and 3 more facts.")


def test_a_conflict_names_both_clauses() -> None:
    lookup = words(rule("must", "cap", name="a"), rule("must_not", "cap", name="b", clause="local/2025/5.1"))
    assert say_verdict(lookup, "conflict", MAY, rules=(f"{EDITION}/a", f"{EDITION}/b")) == (
        "Conflict: Dress Order (2024) 4.12 and Local Order (2025) 5.1 disagree on whether the service cap may be worn."
    )


def _open(aspect: str, label: str, required: bool = True, status: str = "supported") -> OpenValue:
    return OpenValue(
        item="device", aspect=aspect, label=label, values=YES, status=status, required=required  # type: ignore[arg-type]
    )  # fmt: skip


def test_values_left_open_make_the_headline() -> None:
    where = query("where", "device")
    one = (_open("position", "centred on the service cap"),)
    assert say_verdict(LOOKUP, "required", where, values=one) == (
        "The cap device must be worn centred on the service cap."
    )
    colours = (_open("colour", "gilt", False), _open("colour", "silver", False))
    asked = query("how", "device", aspect="colour")
    assert say_verdict(LOOKUP, "required", asked, values=colours) == (
        "The colour of the cap device must be either gilt or silver."
    )
    manners = (_open("fit:square", "square on the head"), _open("care:hand", "wash by hand", False, "closed"))
    assert say_verdict(LOOKUP, "required", query("how", "device"), values=manners) == (
        "The cap device must be square on the head. The cap device must not be washed by hand."
    )


def _entry(item: str, label: str, verdict: Verdict) -> ListEntry:
    return ListEntry(item=item, label=label, verdict=verdict)


def test_headlines_of_lists() -> None:
    asked = query("list", modalities=("required",), facts=(is_("grade", "H2"), BOAT))
    entries = (_entry("cap", "service cap", "required"), _entry("gloves", "deck gloves", "conditional"))
    assert say_list_headline(LOOKUP, asked, entries) == (
        "For an H2 in boat rig, the service cap must be worn and the deck gloves depend on further facts."
    )
    many = (*entries, *(_entry("cap", f"cap {n}", "required") for n in range(3)))
    assert say_list_headline(LOOKUP, asked, many) == (
        "For an H2 in boat rig, the service cap, the cap 0, the cap 1 and the cap 2 must be worn; 1 more depends"
        " on further facts."
    )
    usual = (*many[:1], *many[2:], msgspec.structs.replace(entries[1], usual="required"))
    assert say_list_headline(LOOKUP, asked, usual) == (
        "For an H2 in boat rig, the service cap, the cap 0, the cap 1 and the cap 2 must be worn, and ordinarily"
        " the deck gloves."
    )
    too_many = (*many, *(_entry("cap", f"cap {n}", "required") for n in range(3, 20)))
    assert say_list_headline(LOOKUP, asked, too_many) == (
        "For an H2 in boat rig, 21 things must be worn and 1 depends on further facts."
    )
    assert (
        say_list_headline(LOOKUP, asked, ())
        == "For an H2 in boat rig, no clause names anything that must be worn."
    )
    mostly = msgspec.structs.replace(entries[1], condition="required, unless it is hot")
    assert say_list_headline(LOOKUP, asked, (mostly,)) == (
        "For an H2 in boat rig, the deck gloves must be worn, unless it is hot."
    )
    when = (entries[0], msgspec.structs.replace(entries[1], condition="required when it is cold"))
    assert say_list_headline(LOOKUP, asked, when) == (
        "For an H2 in boat rig, the service cap must be worn; the deck gloves must be worn when it is cold."
    )
    depends = msgspec.structs.replace(entries[1], condition="ordinarily required, depending on the weather")
    assert say_list_headline(
        LOOKUP, asked, (when[1], msgspec.structs.replace(depends, item="mitts", usual="required"))
    ) == (
        "For an H2 in boat rig, the deck gloves must be worn when it is cold; ordinarily the deck gloves must be"
        " worn."
    )
    for said in ("required, depending on the weather", "required, unless it is hot; permitted when wet", ""):
        unclear = msgspec.structs.replace(entries[1], condition=said)
        assert say_list_headline(LOOKUP, asked, (unclear,)).endswith("depend on further facts.")
    people = (_entry("pin", "officers", "permitted"), _entry("pin", "deck hands", "prohibited"))
    assert say_list_headline(LOOKUP, query("who", "pin"), people) == (
        "Officers may wear the keeper's pin. Deck hands must not wear the keeper's pin."
    )
    assert (
        say_list_headline(LOOKUP, query("who", "pin"), ()) == "No clause says who may wear the keeper's pin."
    )


WINNER = rule("may", "cap", name="w", clause="local/2025/5.1", authority="station", delegation="local-gloves")
LOSER = rule("must_not", "cap", name="l", clause="dress-order/2019/4.12")
PRINCIPLES: list[tuple[Principle, str]] = [
    ("exception", "an exception to it"),
    ("delegation", "made under the delegation of Dress Order (2024) 5.1 to the Station Keeper"),
    ("authority", "higher authority: Station Keeper over Board of Lights"),
    ("edition", "later edition: Local Order (2025) over Dress Order (2019)"),
    ("specificity", "more specific: all of its cases lie inside those of the other"),
]


@pytest.mark.parametrize(("principle", "expected"), PRINCIPLES)
def test_why_a_rule_gives_way(principle: Principle, expected: str) -> None:
    assert say_principle(words(WINNER, LOSER), principle, WINNER.id, LOSER.id) == expected


def _step(
    record: Rule, status: RuleStatus, facts: tuple[Test, ...] = (), by: tuple[str, ...] = ()
) -> RuleStep:
    return RuleStep(
        rule=record.id,
        modality=record.modality,
        statement=say_rule(words(record), record),
        status=status,
        alive=status == "applies",
        facts=tuple((test.fact, test.values) for test in facts),
        disabled_by=by,
        clause=record.clause,
        text="",
        authority=record.authority,
        at=AT,
    )


def test_a_length_is_claimed_in_the_unit_of_the_books() -> None:
    inches = Ranges((Interval(Fraction(127, 5), Fraction(127, 5)),))
    lookup = words(rule("must", "device", aspect="height", value=m("about 1 1/4 in")))
    asked = query("may", "device", aspect="height", value=inches)
    assert say_query(lookup, asked) == "May the height of the cap device be 1 in (25.4 mm)?"
