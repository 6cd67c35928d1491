"""Headlines of long tables over several services: yes or no first, then what it turns on beyond the ordinary."""

# ruff: noqa: E501  headlines read better on one line
from __future__ import annotations

import datetime

import pytest

from kb.model.values import NO, YES, choices
from kb.wording.presumed import has_two_sides, implied, must_be_worn, place_of
from kb.wording.unless import usually
from tests.opening import opened

NOVEMBER, JULY = datetime.date(2026, 11, 25), datetime.date(2026, 7, 10)


HEADLINES = [
    # What nobody mentions (orders, waivers, grants, danger) is told after the word that holds without it.
    ("fifth", "May I wear the field cap indoors?", NOVEMBER,
     "No. The field cap must not be worn, unless the wearer is armed or under orders to keep head-dress on; it then depends on the rig, the season and 9 more facts."),
    ("third", "Do I have to put a tie on with cabin dress?", NOVEMBER,
     "Yes. The grey tie must be worn, unless the wearer is in the winding room or on the platform, or hot-day dress has been granted by the Chief of Service or a higher authority; it then depends on the wind and whether the machines are running."),
    ("third", "trainers hall dress", NOVEMBER,
     "No. The sports shoes must not be worn, unless the wearer holds the medical waiver; it then depends on whether the wearer is out of doors and whether there is snow on the ground."),
    ("fourth", "Must cadets wear hi-vis on the road?", NOVEMBER,
     "Yes. The hi-vis tabard must be worn, unless the wearer is off duty, or is in fire kit and breathing apparatus is worn."),
    # The day tells the season.
    ("fifth", "Can I roll my sleeves up in Order C?", NOVEMBER,
     "No. The shirt sleeves must not be rolled, unless the season is summer; it then depends on whether the wearer is in an empty, parked and locked vehicle, whether the wearer is in a space where a detained person is or may be and the place."),
    ("fifth", "Can I roll my sleeves up in Order C?", JULY,
     "Yes. The shirt sleeves may be rolled, unless the season is winter, the wearer is in a space where a detained person is or may be, or the wearer is in the cell compartment; it then depends on whether the wearer is in an empty, parked and locked vehicle."),
    # A short table is said whole where nothing in it is ordinary.
    ("demo", "Do I need storm trousers on the boat deck in boat rig?", NOVEMBER,
     "It depends on the weather and the sea state: the storm trousers must be worn when the weather is foul and the sea state is rough or above; they may be when the weather is foul and the sea state is moderate or below; otherwise the books are silent."),
    ("second", "Hall tie in hall rig: do I have to wear it?", NOVEMBER,
     "It depends on the wearer's grade: the hall tie must be worn when the wearer is a warden; otherwise it may be."),
    # Who asks is on duty, and who tells the weather is out in it, unless something else is said.
    ("fifth", "Are false eyelashes allowed?", NOVEMBER,
     "No. The false eyelashes must not be worn when the wearer is on duty; otherwise the books are silent."),
    ("fifth", "May I wear the rain jacket in Order C in sleet?", NOVEMBER,
     "Yes: the rain jacket must be worn when the wearer is out of doors; otherwise the books are silent."),
    # By day is no rare case, though it is one of three: "no, unless it is day" is not said.
    ("demo", "Am I allowed sunglasses?", NOVEMBER,
     "It depends on whether the wearer is indoors, the light and 2 more facts: the sunglasses may be worn when the wearer is not indoors, it is day, the wearer is none of on parade, attending a funeral or at inspection, and the weather is not fog; otherwise they must not be."),
    # too many facts for "unless ..." to name them all, but for the months
    ("airferry", "Cabin attendant, skirt today. Must I wear tights?", NOVEMBER,
     "Yes. The tights must be worn with the teal skirt, unless the wearer wears the navy greatcoat, the wearer wears plain clothes, or one of these is out of the ordinary: the place, the duty and 4 more facts."),
    ("airferry", "Pilot, just going through the terminal, can I take the jacket off?", NOVEMBER,
     "No: the navy jacket must be worn, unless the month is none of January, February, March, November or December, the wearer wears plain clothes, or one of these is out of the ordinary: the activity, whether the wearer holds the medical waiver and whether the wearer holds the religious waiver."),
    # what may be worn in its place is named
    ("airferry", "Must a purser wear a skirt?", NOVEMBER,
     "Yes. The teal skirt must be worn, unless the wearer wears the navy trousers, the wearer wears plain clothes, the wearer wears the navy greatcoat, or one of these is out of the ordinary: the place, the activity and 3 more facts."),
    # another station than the one that the books name is the ordinary one, and the sun shines out of doors
    ("forest", "Sunglasses ok on patrol in bright sun?", NOVEMBER,
     "Yes. The sunglasses may be worn, unless the wearer is indoors, the station is Blackholt or the wearer is speaking with the public; it then depends on the place and whether the wearer holds the waiver of doctor's prescription for sunglasses."),
]  # fmt: skip


@pytest.mark.parametrize(("name", "question", "day", "headline"), HEADLINES)
def test_the_ordinary_verdict_leads(name: str, question: str, day: datetime.date, headline: str) -> None:
    (answer,) = opened(name).ask(question, as_of=day)
    assert answer.verdict == "conditional"
    assert answer.headline == headline


def test_the_open_air_follows_from_the_weather_and_duty_from_asking() -> None:
    third, seventh = opened("third").lookup, opened("seventh").lookup
    told = usually(third, None, [("weather", choices("rain"))])
    assert told == {"on-duty": YES, "outdoors": YES}
    assert usually(seventh, None, [("snow", YES)]) == {"indoors": NO, "duty": choices("on-duty")}
    assert "duty" not in usually(seventh, None, [("duty", choices("off-duty"))])
    in_a_cabin = usually(third, None, [("weather", choices("rain")), ("place", choices("cabin"))])
    assert "outdoors" not in in_a_cabin
    assert "outdoors" not in usually(third, None, [("snow-lying", NO)])
    assert "outdoors" not in usually(third, None, [("temperature", third.domain("temperature"))])
    assert "on-duty" not in usually(third, None, [("activity", choices("travelling"))])
    assert "on-duty" not in usually(third, None, [("on-duty", NO)])
    for place, inside in (("workshop", YES), ("boathouse", YES), ("slipway", NO)):
        assert usually(seventh, None, [("place", choices(place))])["indoors"] == inside
    assert "indoors" not in usually(seventh, None, [("place", choices("cockpit"))])
    assert "indoors" not in usually(seventh, None, [("place", choices("workshop", "slipway"))])
    assert "indoors" not in usually(seventh, None, [("place", choices("workshop")), ("indoors", NO)])


def test_the_rig_follows_from_a_situation_of_its_name() -> None:
    seventh = opened("seventh").lookup
    assert usually(seventh, None, [("on-parade", YES)])["rig"] == choices("parade")
    assert "rig" not in usually(seventh, None, [("on-parade", NO)])
    assert "rig" not in usually(seventh, None, [("guard", YES)])


def test_the_season_follows_from_the_month_where_the_books_let_no_other_be() -> None:
    for name in ("fourth", "fifth"):
        lookup = opened(name).lookup
        assert implied(lookup, {"month": choices("november")}) == {"season": choices("winter")}
        assert "season" not in usually(lookup, NOVEMBER, [("season", choices("summer"))])
    assert implied(opened("fifth").lookup, {"month": choices("october")}) == {}  # it holds both


def test_what_is_worn_tells_the_place_that_it_has() -> None:
    demo, second = opened("demo").lookup, opened("second").lookup
    assert place_of(demo, ["lined-smock"], NOVEMBER) == {"rig": choices("boat-rig")}
    assert place_of(demo, ["storm-coat"], NOVEMBER) == {"rig": choices("storm-rig", "watch-rig")}
    assert place_of(demo, ["shorts"], NOVEMBER)["granted:extreme-heat"] == choices("superintendent", "board")
    assert place_of(demo, ["spectacles"], NOVEMBER) == {}
    assert "rig" not in usually(
        second, NOVEMBER, [("worn:wool-hat", YES), ("worn:hall-tie", YES)]
    )  # none for both


@pytest.mark.parametrize(
    ("name", "two", "one"),
    [
        ("demo", ("indoors", "on-watch"), ("hauling", "hot-work", "holds:coxswain")),
        ("third", ("on-duty",), ("with-dog", "holds:medical-waiver")),
        ("fourth", ("indoors", "breathing-apparatus"), ("band-member", "holds:religious")),
        ("fifth", ("on-duty", "secure-side"), ("pregnant", "left-handed", "praying")),
    ],
)
def test_situations_that_rules_tell_from_their_contraries_have_two_sides(
    name: str, two: tuple[str, ...], one: tuple[str, ...]
) -> None:
    lookup = opened(name).lookup
    assert all(has_two_sides(lookup, fact) for fact in two)
    assert not any(has_two_sides(lookup, fact) for fact in one)


STATED = [
    # What is asked for comes first, and when it holds; several values of one thing share their beginning.
    ("second", "How high are the letters on the name tape?",
     "The height of the letters of the name tape must be 12 mm, when the wearer is in fell or hall rig."),
    ("demo", "What colour is the branch flash?",
     "The colour of the branch flash must be navy blue, when the wearer is of the boat branch; yellow, when the wearer is of the lights branch; orange, when the wearer is of the workshop branch."),
    ("demo", "How long may the beard of an H2 be?",
     "The length of the beard must be at most 1/2 in (13 mm), when the wearer holds the medical waiver and does not hold the religious waiver."),
    ("demo", "How must the chin strap be worn?",
     "Unless the wearer is on deck: the chin strap must be worn above the visor of the service cap; the chin strap must not be under the chin. The chin strap must be under the chin, when the wearer is on deck."),
    ("fifth", "Where on the equipment belt does the restraint case go?",
     "The restraint case must be worn at the right of the back of the equipment belt, unless reversal of the belt has been granted and the wearer is left-handed. The restraint case may be worn at the left of the back of the equipment belt, when the wearer is left-handed and reversal of the belt has been granted."),
]  # fmt: skip


@pytest.mark.parametrize(("name", "question", "headline"), STATED)
def test_values_of_a_table_are_stated_with_when_they_hold(name: str, question: str, headline: str) -> None:
    (answer,) = opened(name).ask(question, as_of=NOVEMBER)
    assert answer.verdict == "conditional"
    assert answer.headline == headline


@pytest.mark.parametrize(
    ("name", "question", "headline"),
    [
        ("demo", "May I wear the storm coat in rain?",
         "Yes, in watch or storm rig: the storm coat may or must be worn, depending on the rig; in any other rig it must not be."),
        ("third", "minus fifteen. fleece with the cabin jacket?",
         "Yes, in cabin dress. The fleece may be worn with the cabin jacket; in any other rig it must not be."),
        ("fifth", "May I wear the roll-neck pullover with the coverall in February?",
         "Yes, in Order D. The roll-neck pullover may be worn with the drab coverall; in any other rig it depends on further facts."),
        ("second", "May I wear earrings?",
         "Yes, in hall rig. The earrings may be worn; in any other rig they must not be."),
        # Shorts are worn by leave alone: who wears them has it.
        ("demo", "Must the dress trousers be worn with the service shorts in watch rig?",
         "No. The dress trousers need not be worn with the service shorts when extreme heat dress has been granted by the District Superintendent or a higher authority; otherwise they must be."),
    ],
)  # fmt: skip
def test_what_is_worn_tells_the_rig_that_leads(name: str, question: str, headline: str) -> None:
    (answer,) = opened(name).ask(question, as_of=NOVEMBER)
    assert answer.headline == headline


@pytest.mark.parametrize(
    ("name", "question", "headline"),
    [
        # A claim about a measure speaks of a thing that is worn: the rules that say anything of it agree.
        ("second", "A 125 mm name tape is OK, isn't it?",
         "No. The width of the name tape must not be 125 mm, when the wearer is in fell or hall rig."),
        ("second", "May the name tape be 112 mm wide?",
         "Yes. The width of the name tape may be 112 mm, when the wearer is in fell or hall rig."),
        # Who asks why is told what holds first.
        ("third", "Why can't probationers have beards?",
         "The beard must not be worn, unless the wearer holds the religious waiver."),
        ("second", "Why is the reflecting armband banned on a crag?",
         "The reflecting armband must not be worn; but when the wearer holds the dog handler appointment and it is dark, the clauses disagree."),
    ],
)  # fmt: skip
def test_claims_and_reasons_lead_with_what_holds(name: str, question: str, headline: str) -> None:
    (answer,) = opened(name).ask(question, as_of=NOVEMBER)
    assert answer.verdict == "conditional"
    assert answer.headline == headline


@pytest.mark.parametrize(
    ("name", "question", "headline"),
    [
        # One of hat and hood must be worn: neither is prohibited but by wearing the other.
        ("demo", "Must I wear the storm hood in storm rig?",
         "Yes. The storm hood must be worn, unless the wearer does not wear the storm coat or wears the storm hat."),
        ("demo", "Must I wear the storm hat in storm rig?",
         "Yes. The storm hat must be worn, or the storm hood: one of the two must be, not both."),
        ("demo", "May a K4 wear the white lanyard in parade rig in the rain?",
         "No. The white lanyard must not be worn; but when the wearer holds the coxswain appointment and is carrying guests of the Board, the clauses disagree."),
    ],
)  # fmt: skip
def test_what_must_be_worn_with_it_is_on(name: str, question: str, headline: str) -> None:
    (answer,) = opened(name).ask(question, as_of=NOVEMBER)
    assert answer.headline.startswith(headline)


def test_what_is_one_of_two_is_not_taken_as_worn() -> None:
    lookup = opened("demo").lookup
    found = must_be_worn(lookup, (("rig", choices("storm-rig")),), ("storm-hood",), NOVEMBER)
    assert found["worn:storm-coat"] == YES
    assert not {"worn:storm-hat", "worn:storm-hood"} & set(found)
    assert must_be_worn(lookup, (), (), NOVEMBER) == {}
