# ruff: noqa: E501  tables read better on one line
"""Rules and the sentences that they become. The sentences were written down by reading them, as a person would."""

from __future__ import annotations

import datetime
from fractions import Fraction

import msgspec
import pytest

from kb.measures import parse_measure
from kb.model.conditions import AnyOf, NotOf, Test
from kb.model.records import Datum, Position, Rule, RuleValue
from kb.model.values import NO, Interval, Ranges, choices
from kb.wording import say_rule, say_value
from tests.wording.bases import EDITION, both, everything_but, is_, no, rule, span, words, yes


def m(text: str, **datum: str) -> RuleValue:
    """A measure as a rule writes it."""
    measure = parse_measure(text)
    if datum:
        measure = msgspec.structs.replace(measure, datum=Datum(**datum))
    return RuleValue(values=Ranges((measure.interval,)), measure=measure)


K2 = is_("grade", *(f"K{n}" for n in range(2, 8)), "W1", "W2", "W3", "W4")
foul, down, haul = is_("weather", "foul"), is_("sleeves", "down"), yes("hauling")
boat, ash = is_("rig", "boat"), is_("place", "ashore", "town", "pier")
EDGES = {"measured_from": "lower edge of the device", "measured_to": "upper edge of the visor"}
pos = Position(
    id="p1", relation="centred above", on="cap", feature="visor", offset=m("about 1 1/4 in", **EDGES).measure
)
pos2 = Position(
    id="p2", relation="on", on="storm-coat", side="left", orientation="horizontal", slot="primary"
)

SENTENCES = [
    (
        rule("may", "gloves", when=both(K2, foul, down)),
        "K2 and above may wear the deck gloves when the weather is foul and the sleeves are down.",
    ),
    (
        rule("may", "gloves", when=both(K2, boat, ash, foul, down, NotOf(haul))),
        "K2 and above may wear the deck gloves in boat rig ashore when the weather is foul and the sleeves are down, unless hauling lines.",
    ),
    (rule("must", "cap"), "The service cap must be worn."),
    (rule("must_not", "cap", when=boat), "The service cap must not be worn in boat rig."),
    (rule("need_not", "cap", when=ash), "The service cap need not be worn ashore."),
    (rule("must", "cap", when=is_("grade", "H2")), "An H2 must wear the service cap."),
    (rule("must", "cap", when=is_("grade", "H1", "H2", "H3")), "Deck hands must wear the service cap."),
    (
        rule("must_not", "outer-garment", excluding=("storm-coat",), when=both(boat, foul)),
        "No outer garment other than the storm coat may be worn in boat rig when the weather is foul.",
    ),
    (
        rule("must_not", "outer-garment", excluding=("storm-coat", "smock"), when=is_("grade", "K5")),
        "A K5 must not wear any outer garment other than the storm coat or the tarred smock.",
    ),
    (rule("must_not", "anything", residual=True), "Nothing may be worn unless provided for."),
    (
        rule("must_not", "insignia", residual=True, when=boat),
        "In boat rig, no insignia may be worn unless provided for.",
    ),
    (
        rule("must_not", "anything", residual=True, when=is_("grade", "H1", "H2", "H3")),
        "Deck hands must not wear anything unless provided for.",
    ),
    (
        rule("must", "boots", "shoes", alternatives="one", when=boat),
        "In boat rig, either the sea boots or the black shoes must be worn, but not both.",
    ),
    (
        rule("must", "boots", "shoes", "clogs", alternatives="one", when=K2),
        "K2 and above must wear exactly one of the sea boots, the black shoes and the clogs.",
    ),
    (
        rule("must", "boots", "shoes", alternatives="any", when=foul),
        "When the weather is foul, the sea boots, the black shoes or both must be worn.",
    ),
    (
        rule("must", "boots", "shoes", "clogs", alternatives="any"),
        "At least one of the sea boots, the black shoes and the clogs must be worn.",
    ),
    (
        rule("may", "boots", "shoes", alternatives="any"),
        "The sea boots, the black shoes or both may be worn.",
    ),
    (rule("must_not", "boots", "shoes"), "Neither the sea boots nor the black shoes may be worn."),
    (
        rule("must_not", "boots", "shoes", "clogs"),
        "None of the sea boots, the black shoes and the clogs may be worn.",
    ),
    (
        rule("must", "jersey", "trousers", when=is_("grade", "H1", "H2")),
        "H1 and H2 must wear the jersey and the trousers.",
    ),
    (
        rule("need_not", "boots", "shoes", when=K2),
        "K2 and above need not wear the sea boots or the black shoes.",
    ),
    (
        rule("must_not", "scarf", when=yes("worn:storm-coat")),
        "The wool scarf must not be worn with the storm coat.",
    ),
    (
        rule("must_not", "liner", when=NotOf(yes("worn:storm-coat"))),
        "The quilted liner must not be worn without the storm coat.",
    ),
    (
        rule("must_not", "liner", when=no("worn:storm-coat")),
        "The quilted liner must not be worn without the storm coat.",
    ),
    (rule("must", "cap", aspect="possession", when=K2), "K2 and above must own the service cap."),
    (
        rule("must_not", "storm-coat", "smock", aspect="piercing"),
        "Neither the storm coat nor the tarred smock may be pierced.",
    ),
    (
        rule(
            "must",
            "device",
            aspect="height",
            value=m(
                "about 1 1/4 in",
                measured_from="lower edge of the device",
                measured_to="upper edge of the visor",
            ),
            when=is_("grade", "W1", "W2", "W3", "W4"),
        ),
        "For officers, the height of the cap device must be about 1 1/4 in (31.75 mm) from the lower edge of the device to the upper edge of the visor.",
    ),
    (
        rule(
            "must",
            "cuff",
            aspect="reach",
            value=m(
                "1/4 to 1/2 in", measured_from="cuff edge", measured_to="wrist bone", posture="arms hanging"
            ),
            when=foul,
        ),
        "When the weather is foul, the cuff of the storm coat must reach 1/4 to 1/2 in (6.35 to 12.7 mm) from the cuff edge to the wrist bone, arms hanging.",
    ),
    (
        rule("must", "device", aspect="letter-height", value=m("30 mm (1 3/16 in)")),
        "The height of the letters of the cap device must be 30 mm (1 3/16 in).",
    ),
    (
        rule("must", "ring", aspect="count", value=m("at most 2"), when=ash),
        "Ashore, no more than two finger rings may be worn.",
    ),
    (
        rule("must", "bar", aspect="count", value=m("1")),
        "Exactly one bar of merit must be worn.",
    ),
    (
        rule("may", "pin", aspect="stock", value=m("at least 3")),
        "The stock of keeper's pins may be at least 3.",
    ),
    (
        rule(
            "must",
            "pin",
            aspect="colour",
            value=choices("gilt", "silver"),
            when=both(is_("grade", "W1", "W2", "W3", "W4"), is_("rig", "parade")),
        ),
        "For officers in parade rig, the keeper's pin must be gilt or silver.",
    ),
    (
        rule("must", "jersey", aspect="colour", value=choices("navy")),
        "The jersey must be navy blue.",
    ),
    (
        rule("may", "outer-garment", aspect="colour", value=choices("navy")),
        "Any outer garment may be navy blue.",
    ),
    (rule("must", "cap", aspect="fit:square"), "The service cap must be square on the head."),
    (
        rule("must", "storm-coat", aspect="fit:buttoned", when=foul),
        "The storm coat must be buttoned to the throat when the weather is foul.",
    ),
    (
        rule("must", "jersey", aspect="care:hand", when=K2),
        "For K2 and above, the jersey must be washed by hand.",
    ),
    (
        rule("must_not", "jersey", aspect="care:hand", when=foul),
        "The jersey must not be washed by hand when the weather is foul.",
    ),
    (
        rule(
            "must",
            "device",
            aspect="position",
            value=RuleValue(values=choices("p1"), positions=(pos,)),
            when=is_("grade", "W1", "W2", "W3", "W4"),
        ),
        "Officers must wear the cap device centred above the visor of the service cap, about 1 1/4 in (31.75 mm) from the lower edge of the device to the upper edge of the visor.",
    ),
    (
        rule(
            "must",
            "device",
            aspect="position",
            value=RuleValue(values=choices("p1", "p2"), positions=(pos, pos2)),
            when=boat,
        ),
        "In boat rig, the cap device must be worn in one of these places: centred above the visor of the service cap, about 1 1/4 in (31.75 mm) from the lower edge of the device to the upper edge of the visor; or on the storm coat, on the left side, horizontal, in the primary place.",
    ),
    (
        rule("must", "visor", aspect="position", value=RuleValue(values=choices("p1"), positions=(pos2,))),
        "The visor must be placed on the storm coat, on the left side, horizontal, in the primary place.",
    ),
    (
        rule(
            "must",
            "insignia",
            aspect="precedence",
            value=RuleValue(values=choices("a"), order=("diver-badge", "pilot-badge")),
        ),
        "Insignia must be worn in this order of precedence, the senior first: the diver badge and the pilot badge.",
    ),
    (
        rule("may", "cap", when=both(yes("holds:diver"), is_("branch", "boats"))),
        "Members of the boat branch with the diver qualification may wear the service cap.",
    ),
    (
        rule(
            "may",
            "cap",
            when=both(
                K2,
                yes("holds:diver"),
                no("holds:beard"),
                is_("branch", "boats"),
                NotOf(yes("holds:coxswain")),
            ),
        ),
        "K2 and above of the boat branch with the diver qualification and without the beard waiver may wear the service cap unless holding the coxswain appointment.",
    ),
    (
        rule("may", "cap", when=AnyOf((both(foul, haul), ash))),
        "The service cap may be worn when the weather is foul and the wearer is hauling lines, or the wearer is ashore.",
    ),
    (
        rule("may", "cap", when=both(foul, AnyOf((haul, ash)))),
        "The service cap may be worn when the weather is foul, and the wearer is hauling lines or ashore.",
    ),
    (
        rule("may", "cap", when=both(foul, AnyOf((haul, down)))),
        "The service cap may be worn when the weather is foul, and either the wearer is hauling lines or the sleeves are down.",
    ),
    (
        rule("may", "cap", when=both(foul, AnyOf((haul, both(down, ash))))),
        "The service cap may be worn when the weather is foul, and either the wearer is hauling lines, or the sleeves are down and the wearer is ashore.",
    ),
    (
        rule("may", "cap", when=both(foul, AnyOf((haul, both(down, AnyOf((ash, boat))))))),
        "The service cap may be worn when the weather is foul, and at least one of these holds: (a) the wearer is hauling lines; (b) the sleeves are down, and the wearer is ashore or in boat rig.",
    ),
    (
        rule("may", "cap", when=NotOf(AnyOf((both(foul, haul), ash)))),
        "The service cap may be worn unless either the weather is foul and the wearer is hauling lines, or the wearer is ashore.",
    ),
    (
        rule("may", "cap", when=both(boat, NotOf(haul), NotOf(foul))),
        "The service cap may be worn in boat rig, unless the wearer is hauling lines or the weather is foul.",
    ),
    (
        rule("may", "cap", when=AnyOf((yes("worn:boots"), yes("worn:shoes")))),
        "The service cap may be worn with the sea boots or the black shoes.",
    ),
    (
        rule("must_not", "cap", when=NotOf(AnyOf((yes("worn:boots"), yes("worn:shoes"))))),
        "The service cap must not be worn without the sea boots or the black shoes.",
    ),
    (
        rule("may", "cap", when=AnyOf((K2, yes("holds:diver")))),
        "The service cap may be worn when the wearer's grade is K2 or above, or the wearer holds the diver qualification.",
    ),
    (
        rule("may", "cap", when=both(NotOf(K2), foul)),
        "The service cap may be worn when the weather is foul, except by K2 and above.",
    ),
    (
        rule("may", "cap", when=both(everything_but("grade", "K5"), foul)),
        "Everyone except K5 may wear the service cap when the weather is foul.",
    ),
    (rule("must", "the-sash"), "The Sash must be worn."),
    (rule("must_not", "own"), "No watch of one's own may be worn."),
    (
        rule("must", "u-pin", when=span("temperature", 10, 20)),
        "The Union pin (large) must be worn when the air temperature is from 10 °C to 20 °C.",
    ),
    (rule("may", "hair", aspect="colour", value=choices("silver")), "The hair may be silver."),
    (
        rule("must_not", "smock", valid_from=datetime.date(2026, 10, 1)),
        "From 1 October 2026, the tarred smock must not be worn.",
    ),
    (
        rule("may", "smock", valid_until=datetime.date(2026, 10, 1), when=K2),
        "Before 1 October 2026, K2 and above may wear the tarred smock.",
    ),
    (
        rule("must", "cap", repairs=f"{EDITION}/r"),
        "Where Dress Order (2024) 4.12 is not complied with, the service cap must be worn.",
    ),
    (
        rule("may", "cap", when=is_("granted:heat", "superintendent", "board")),
        "The service cap may be worn when extreme heat dress has been granted by the District Superintendent or a higher authority.",
    ),
    (
        rule("may", "cap", when=both(K2, NotOf(is_("granted:heat", "superintendent", "board")))),
        "K2 and above may wear the service cap unless extreme heat dress has been granted by the District Superintendent or a higher authority.",
    ),
    (
        rule("may", "cap", when=both(yes("winter"), yes("dark"))),
        "The service cap may be worn in the dark hours when it is winter.",
    ),
    (
        rule("may", "cap", when=both(yes("drill"), no("machinery"), haul)),
        "The service cap may be worn in the case of fire drill when machinery is not running and the wearer is hauling lines.",
    ),
    (rule("may", "cap", when=NotOf(yes("winter"))), "The service cap may be worn unless it is winter."),
    (rule("may", "cap", value=NO, when=boat), "The service cap need not be worn in boat rig."),
    (rule("must", "cap", value=NO), "The service cap must not be worn."),
    (
        rule(
            "may",
            "cap",
            when=Test(
                "awarded",
                Ranges((Interval(None, Fraction(datetime.date(2019, 4, 1).toordinal()), False, True),)),
            ),
        ),
        "The service cap may be worn when the date of award is before 1 April 2019.",
    ),
]


@pytest.mark.parametrize(("record", "expected"), SENTENCES, ids=[text[:60] for _, text in SENTENCES])
def test_a_rule_reads_as_a_person_would_write_it(record: Rule, expected: str) -> None:
    assert say_rule(words(record), record) == expected


def test_the_value_of_a_rule_without_the_rest_of_it() -> None:
    lookup = words()
    assert say_value(lookup, "height", m("about 1 1/4 in", **EDGES)) == (
        "about 1 1/4 in (31.75 mm) from the lower edge of the device to the upper edge of the visor"
    )
    assert say_value(lookup, "count", m("at most 2")) == "at most 2"
    assert say_value(lookup, "colour", RuleValue(values=choices("navy", "gilt"))) == "gilt or navy blue"
    order = RuleValue(values=choices("x"), order=("diver-badge", "pilot-badge"))
    assert say_value(lookup, "precedence", order) == "the diver badge, then the pilot badge"
    assert say_value(lookup, "wear", RuleValue(values=NO)) == "not worn"


def test_a_measure_in_two_units_is_said_as_written() -> None:
    assert say_value(words(), "height", m("about 4 in (102 mm)")) == "about 4 in (102 mm)"
