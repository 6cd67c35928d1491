"""What a silence says where clauses speak of other cases, and which case of a table leads."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask

SILENT, TABLE = "silent", "conditional"


@pytest.mark.parametrize(
    ("book", "text", "verdict", "headline"),
    [
        # "Eye protection must be worn in the sluice while the bedpan washer is running."
        (
            "infirmary",
            "Bedpan washer isn't running. Still need eye protection in the sluice?",
            SILENT,
            "No clause requires it in this case. The eye protection must be worn in the sluice when",
        ),
        # "A training school badge may be worn by staff nurses and above"
        (
            "infirmary",
            "May a healthcare assistant wear the training school badge?",
            SILENT,
            "No clause allows it in this case, and none forbids it. Staff nurse and above may wear the "
            "training school badge (Dress and Uniform Book (2025) 4.3).",
        ),
        # of what no rule permits nothing is said of leave: "Musicians and stage crew wear no scent ..."
        (
            "playhouse",
            "Must an usher wear perfume in the auditorium?",
            SILENT,
            "The books are silent on this case. ",
        ),
        # "may be worn on queue duty between 1 November and 31 March, but not inside the house"
        (
            "playhouse",
            "House overcoat on queue duty on 15 October?",
            TABLE,
            "No. The house overcoat must not be worn when the wearer is inside the "
            "house; otherwise no clause allows it here. The house overcoat may be worn between",
        ),
        # "an inspector may carry an umbrella at a street stop", and nobody in service dress
        (
            "tramway",
            "May a conductor carry an umbrella at a stop in the rain?",
            TABLE,
            "No. The umbrella must not be carried when the wearer is in winter service or summer service "
            "dress; otherwise no clause allows it here. An Inspector may carry",
        ),
        # "Rigging gloves shall be worn when handling wire rope ...; off when working a powered winch"
        (
            "playhouse",
            "I'm not handling wire rope or counterweights. Rigging gloves?",
            TABLE,
            "No clause requires it in this case: the rigging gloves must not be worn when the wearer is",
        ),
        # "on the tower stair below stonework in progress", and on scaffolding anywhere
        (
            "cathedral",
            "No stone being moved, I'm in the ringing chamber. Hard hat needed?",
            TABLE,
            "No clause requires it in this case, unless the wearer is on scaffolding: then the safety",
        ),
        # a duty of other people than who asks is no news of what is at hand
        ("creamery", "Must a tour guest wear the hi-vis vest in the tanker yard?", TABLE, "Only when"),
        # leave that only excepts a fitter from the ban does not make other beards a matter of leave
        ("tramway", "Conductor. Beard ok?", TABLE, "It depends on the activity: the beard must not be worn"),
        # "Ramp crew must not wear a pin-on name badge on the apron": the leave of others is not theirs
        (
            "airferry",
            "May ramp agents wear a name badge?",
            TABLE,
            "It depends on the place: the name badge must not be worn when the wearer is on the apron; "
            "otherwise no clause allows or forbids it here.",
        ),
        # no clause speaks of it at all
        (
            "hotel",
            "What colour are the clogs?",
            SILENT,
            "The books are silent: no clause addresses the colour",
        ),
    ],
)
def test_a_silence_says_what_clauses_say_of_other_cases(
    ask: Ask, book: str, text: str, verdict: str, headline: str
) -> None:
    answer = ask(book, text)
    assert answer.verdict == verdict
    assert answer.headline.startswith(headline)


def test_the_clauses_of_other_cases_are_to_be_read_and_carry_nothing(ask: Ask) -> None:
    answer = ask("infirmary", "I'm a porter in the ambulance bay at 8 degrees. Must I wear work gloves?")
    assert answer.headline.startswith(
        "No clause requires it in this case. A porter must wear the work gloves"
    )
    assert [citation.number for citation in answer.speaking] == ["6.5"]
    assert answer.citations == ()


@pytest.mark.parametrize(
    ("book", "text", "read", "headline"),
    [
        # "A poppy may be worn from 1 November to 11 November, except in the operating theatre and ..."
        (
            "infirmary",
            "May I wear a poppy on 5 November?",
            "on 5 November 2026?",
            "Yes. The poppy may be",
        ),
        (
            "infirmary",
            "May I wear a poppy on 12 November?",
            "on 12 November 2026?",
            "No. The poppy must not be worn when the wearer is in the operating theatre",
        ),
        ("infirmary", "Poppy in December?", "month December?", "No. The poppy must not be worn when"),
        ("infirmary", "Poppy in November?", "month November?", "It depends on the place and whether"),
        (
            "infirmary",
            "May I wear a poppy?",
            "wear the poppy?",
            "It depends on the place and whether",
        ),
    ],
)
def test_a_day_settles_a_circumstance_called_by_days_of_the_year(
    ask: Ask, book: str, text: str, read: str, headline: str
) -> None:
    answer = ask(book, text)
    assert answer.reading.text.endswith(read)
    assert answer.headline.startswith(headline)


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        # who asks is one of the staff: "Staff wear a name badge"; a visitor says so
        (
            "creamery",
            "do i need a name badge in the shop",
            "Yes, in shop dress. The name badge must be",
        ),
        # nobody is near a saw who does not say so
        (
            "forest",
            "Raining, on mounted patrol. Cape over my riding dress all right?",
            "Yes. The waterproof cape may be worn, unless one of these is out of the ordinary: the distance",
        ),
        # on shift is on duty by another name
        (
            "creamery",
            "Earphones in the making room?",
            "No. The earphones must not be worn when",
        ),
        # "When the temperature in the foyer reaches 24 degrees the Duty Manager may declare ..."
        (
            "playhouse",
            "The Duty Manager has declared the heat dispensation. Can an usher leave the house tie off?",
            "Yes: the grey house tie may be left off, unless the temperature in the foyer is below 24 °C",
        ),
        ("playhouse", "Can an usher leave the house tie off?", "It depends on"),
        # who asks of medals has one
        (
            "forest",
            "May I wear medals at a funeral?",
            "Yes: the medals must be worn when",
        ),
        # the colour of hair is that of its dye, where that alone has a rule
        ("forest", "Can I dye my hair purple?", "No. The colour of the hair dye must be natural colour."),
        ("tramway", "Can I dye my hair purple?", "The books are silent"),
    ],
)
def test_what_goes_without_saying_leads(ask: Ask, book: str, text: str, headline: str) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize(
    "text",
    [
        "What's the fine if I turn up without my name badge?",
        "Is there a fine for not wearing the name badge?",
    ],
)
def test_what_it_costs_is_not_whether_it_is_fine(ask: Ask, text: str) -> None:
    answer = ask("hotel", text)
    assert answer.outcome == "abstain"
    assert [citation.number for citation in answer.speaking] == ["4.1", "4.2", "4.4"]


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        # "In the kitchen it need not be worn"; duties of other cases, and none of this one
        (
            "hotel",
            "Porter on the forecourt, exactly 5 °C. Greatcoat compulsory?",
            "No clause requires it in this case: the greatcoat may be worn when the weather is not fine",
        ),
        (
            "cadets",
            "Do recruits have to wear rank slides?",
            "No clause requires it in this case: the rank slides need not be worn when",
        ),
        # "Members wear the name badge on duty, except at a funeral": going without it is asked
        (
            "ambulance",
            "Funeral on Friday, no name badge, is that right?",
            "No clause requires the name badge in this case. The name badge must be worn on duty, except",
        ),
        # what protects is never said to be allowed by no clause
        (
            "racecourse",
            "Mower running, but I'm in a closed cab. Ear defenders?",
            "No clause requires it in this case, and none forbids it. A member of the ground staff must",
        ),
        # tied by hand is not clipped or buttoned on, but fastened
        ("hotel", "Bow tie undone ok?", "No: the bow tie must be tied by hand."),
        ("hotel", "Is the bow tie fastened?", "The bow tie must be tied by hand."),
        # a place that the books have as a thing, too
        (
            "shipyard",
            "Going into the paint hall. Can I keep my mobile phone?",
            "No. The mobile phone",
        ),
        ("shipyard", "Can I take my phone into the paint hall?", "No. The mobile phone must not be carried."),
        (
            "shipyard",
            "Must a visitor enter the paint hall?",
            "No clause requires it in this case: the paint hall",
        ),
        # which of them, and not whether
        (
            "creamery",
            "Which pens are allowed in the making room?",
            "In the making room, the detectable pen",
        ),
        ("creamery", "Are pens allowed in the making room?", "No. Any pen other than the detectable pen"),
    ],
)
def test_what_was_asked_is_what_leads(ask: Ask, book: str, text: str, headline: str) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize("text", ["Clip-on bow tie do, or not?", "Bow tie zipped ok?"])
def test_another_means_of_fastening_is_not_the_one_that_is_told(ask: Ask, text: str) -> None:
    assert ask("hotel", text).outcome == "abstain"


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        # "A welder at hot work shall wear a welding helmet, leather gauntlets, a leather apron and ..."
        (
            "shipyard",
            "What do I wear for hot work?",
            "At hot work, ordinarily the yard pass must be worn; when the wearer is of the welders branch, "
            "also the flame-retardant overalls, the welding helmet, the leather gauntlets and the",
        ),
        # of who is told where nothing else is
        (
            "racecourse",
            "What does a steward wear?",
            "For a steward, the silver badge must be worn, and ordinarily the course pass; when it is on a "
            "race day, also the officials' suit; when the wearer is in the paddock, also the bowler hat; ",
        ),
    ],
)
def test_a_list_names_what_duties_have_of_just_what_was_told(
    ask: Ask, book: str, text: str, headline: str
) -> None:
    assert ask(book, text).headline.startswith(headline)
