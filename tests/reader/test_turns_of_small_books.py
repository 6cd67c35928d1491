"""Turns that rest on what one small book has: a place with rules of its own, a badge, a waiver."""

from __future__ import annotations

import pytest

from shell.session import Session
from shell.turns import take_line
from tests.opening import opened
from tests.reading.sheets import TODAY

TALKS = [
    (
        "hotel",
        ("Where does the name badge go?", "can I still use the pin one?"),
        "May anyone wear the pin badge?",
    ),
    (
        "infirmary",
        ("Does my hair have to be tied back on the ward?", "with a ribbon?"),
        "May anyone wear the hair ribbon, on the wards?",
    ),
    (
        "zoo",
        ("I'm the duty vet. Can I take my phone into an enclosure?", "and over an open tank?"),
        "May anyone with the duty vet appointment carry the mobile telephone, working over an open tank?",
    ),
    (
        "shipyard",
        ("Can I wear my wedding ring at moving machinery?", "and in the office?"),
        "May anyone wear the plain wedding ring, in the office?",
    ),
    (
        "playhouse",
        ("Can an usher carry an umbrella in the rain?", "and put it up under the canopy?"),
        "open the house umbrella, under the canopy, rain?",
    ),
    (
        "creamery",
        (
            "Do I need the thermal jacket in the cold store for five minutes?",
            "it'll take a quarter of an hour",
        ),
        "Must anyone wear the thermal jacket, in the cold store, length of the stay 15 min?",
    ),
    (
        "forest",
        ("Can I wear sunglasses while I'm talking to a visitor?", "even if they're prescribed?"),
        "May anyone with the waiver of doctor's prescription for sunglasses wear the sunglasses, "
        "speaking with the public?",
    ),
    (
        "racecourse",
        ("Must a stable lad wear the riding helmet?", "who could excuse me from it?"),
        "What does clause Dress and Turnout Book (2025) 6.3 say?",
    ),
    (
        "undertakers",
        (
            "28 degrees and the House Manager has given the summer order. Must I wear the waistcoat?",
            "how long does the order last?",
        ),
        "What does clause Staff Rules of Dress (2025) 8.4 say?",
    ),
    ("forest", ("It's May and I'm in long grass. Do I need gaiters?",), "time of year May?"),
    (
        "firebrigade",
        ("We're off to a road accident. What goes on?",),
        "What must people wear, at an accident on",
    ),
    (
        "museum",
        ("Can a gallery attendant leave off the blazer?", "the Site Manager said we could"),
        "hot weather order granted by the Site Manager?",
    ),
    (
        "forest",
        ("Can I wear a charity pin on the tunic?", "yes, the Head Warden has said yes"),
        "permission for a charity pin granted",
    ),
    (
        "airferry",
        ("Can I wear a charity pin?", "my mate said I could"),
        "May anyone wear the charity pin?",
    ),
    (
        "tramway",
        ("Where does the long service star go?", "I've only eight years in. Can I wear it?"),
        "years of service 8 yr?",
    ),
    (
        "infirmary",
        ("I'm a visitors' escort. Can I carry a bag on the wards in an outbreak?", "who declares it?"),
        "What does clause Dress and Uniform Book (2025) 3.7 say?",
    ),
    (
        "forest",
        ("Going out with the chainsaw. What do I have to put on?", "why do I need the boots?"),
        "Why must people wear the chainsaw boots, working with a chainsaw?",
    ),
    (
        "museum",
        ("How is the black suit cleaned?", "and the studio coat, can I do that at home?"),
        "May the care of the white studio coat be “wash at home”?",
    ),
    (
        "airferry",
        (
            "I'm a captain. What do I wear on the apron?",
            "and the cadet pilot flying with me, what does he wear?",
        ),
        "What may a cadet pilot wear",
    ),
    (
        "infirmary",
        (
            "I'm a ward sister. What do I wear on the ward?",
            "and the porter helping me, what does he wear?",
            "can he wear a fob watch?",
        ),
        "May a porter wear the fob watch?",
    ),
    (
        "quarry",
        ("How are overalls washed?", "can my mate do it?"),
        "What must the care of the orange overall be?",
    ),
    (
        "cathedral",
        ("How are the surplices cleaned?", "how often do the ruffs need it?"),
        "What must the care of the ruff be?",
    ),
    (
        "quarry",
        ("Can I ring my wife from the saw shed?",),
        "May anyone use the mobile phone, in the saw shed?",
    ),
    (
        "infirmary",
        ("Do I get the ward shoes given to me?",),
        "What does clause Dress and Uniform Book (2025) 7.1 say?",
    ),
    (
        "airferry",
        ("I'm ramp crew handling baggage. What do I wear?", "gloves as well?"),
        "May ramp crew wear the grip gloves, handling baggage?",
    ),
    (
        "forest",
        (
            "Going out with the chainsaw. What do I have to put on?",
            "why do I need the trousers?",
            "my watch?",
        ),
        "May anyone wear the wristwatch, working with a chainsaw?",
    ),
    (
        "infirmary",
        ("I'm a porter taking a patient into the operating theatre. What do I put on?",),
        "What may a porter wear, in the operating theatre?",
    ),
]


@pytest.mark.parametrize(("name", "turns", "read"), TALKS, ids=[turns[-1] for _, turns, _ in TALKS])
def test_a_turn_is_read(name: str, turns: tuple[str, ...], read: str) -> None:
    session = Session(as_of=TODAY)
    for turn in turns:
        session, _ = take_line(session, turn, opened(name))
    assert read in session.answers[-1].reading.text
