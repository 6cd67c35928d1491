"""What is said beside the question: a colour of what is worn with it, where a rule is from, how it was."""

from __future__ import annotations

import pytest

from tests.reader.conftest import HERE, Base, load
from tests.reader.notation import write_reading

DEMO = (
    # a colour that only says which thing is meant, or what another thing is like
    (
        "Is the yellow high-visibility vest needed in town at night?",
        "must bright-vest light=night place=town",
    ),
    ("Is the orange flotation vest needed on deck?", "must flotation-vest place=boat-deck,skiff,tender-deck"),
    ("Must the high-visibility vest be yellow?", "must bright-vest aspect:colour value:yellow"),
    ("Is a yellow high-visibility vest ok?", "may bright-vest aspect:colour value:yellow"),
    ("Must it be the white service cap in July?", "must service-cap aspect:colour month=july value:white"),
    ("May I wear the knit cap with a red scarf?", "ask reading May I wear the knit cap with a scarf?"),
    (
        "With a red scarf on, may I wear the knit cap?",
        "ask reading With a scarf on, may I wear the knit cap?",
    ),
    (
        "May I wear the storm coat if I have a white cap on?",
        "ask reading May I wear the storm coat if I have a cap on?",
    ),
    # no need of it
    ("No slip-on tab needed in boat rig?", "must slip-on-tab rig=boat-rig"),
    ("So no high-visibility vest needed on the slipway?", "must bright-vest place=slipway"),
    # leave that is denied, not what is done
    (
        "I'm not allowed to turn the collar of the watch coat up in October, am I?",
        "may watch-coat aspect:fit:the-collar-turned-down month=october not",
    ),
    ("I'm not allowed to tuck my jersey in, am I?", "may jersey aspect:fit:worn-outside-the-trousers not"),
    ("May I not tuck my jersey in?", "may jersey aspect:fit:worn-outside-the-trousers"),
    # where a rule is from, and how it was, say no day that is asked about
    ("The liner may be worn alone in the mess, that's from the old order isn't it?", "abstain old, order"),
    (
        "May the liner be worn alone in the mess? It was in the old order.",
        "may storm-coat-liner alone place=mess",
    ),
    (
        "May the liner be worn alone in the mess in the old order?",
        "may storm-coat-liner alone as-of:2024-02-29 place=mess",
    ),
    ("Is the wool scarf allowed over the neck cloth? Last year it was.", "may scarf worn:neck-cloth=yes"),
    # how a thing is carried is not left out
    ("Off watch, can I carry my phone in my hand?", "abstain hand"),
    ("Off watch, can I carry my phone with me?", "may telephone aspect:carrying on-watch=no"),
    # a question of its own sentence is not of what is not worn
    (
        "I'm without a watch coat. Where is the name strip?",
        "where name-strip aspect:position worn:watch-coat=no",
    ),
    # a time, not a length
    ("May I wear the white lanyard, and for how long?", "abstain how long"),
)
SEVENTH = (
    (
        "Do I need the tabard on the quay road at Brindlemouth if I've an orange buoyancy vest on?",
        "must yellow-tabard bright-vest=yes place=quay-road unit=at-brindlemouth worn:buoyancy-vest=yes",
    ),
    (
        "I'm wearing a yellow buoyancy vest. Do I need a tabard?",
        "must yellow-tabard bright-vest=yes worn:buoyancy-vest=yes",
    ),
    (
        "I'm on the quay road at Brindlemouth in my orange buoyancy vest, so no tabard needed?",
        "must yellow-tabard bright-vest=yes place=quay-road unit=at-brindlemouth worn:buoyancy-vest=yes",
    ),
    (
        "With a red buoyancy vest, do I need the tabard?",
        "ask reading With a buoyancy vest, do I need the tabard?",
    ),
    ("May I wear the peaked cap with red gloves?", "ask reading May I wear the peaked cap with gloves?"),
    ("May I wear an orange buoyancy vest?", "may buoyancy-vest aspect:colour value:orange"),
    ("I'm not allowed to clip my phone to my belt, am I?", "may phone aspect:fit:not-clipped-to-a-belt not"),
    (
        "We are not allowed to clip phones to a belt, are we?",
        "may phone aspect:fit:not-clipped-to-a-belt not",
    ),
    ("Phones can't be clipped to a belt, right?", "may phone aspect:fit:not-clipped-to-a-belt not"),
    ("May I clip my phone to my belt?", "may phone aspect:fit:not-clipped-to-a-belt not"),
    ("The top of the woven unit badge is at 60 mm. Is that wrong?", "abstain -"),
    ("My hair is 160 mm, going in the workshop. What about it?", "abstain -"),
    ("Peaked cap on the firing point, I've nothing else with me", "may peaked-cap place=firing-point"),
    ("Peaked cap on the firing point with nothing else on?", "may peaked-cap alone place=firing-point"),
    ("A Cadet Leader, how many bars and how wide?", "abstain how wide"),
    ("Is a bun of 115 mm across ok? Last year it was not.", "may bun aspect:width value:115..115"),
)


@pytest.fixture(scope="session")
def seventh() -> Base:
    return load(HERE.parent / "seventh" / "books")


@pytest.mark.parametrize(("text", "expected"), DEMO, ids=[text for text, _ in DEMO])
def test_demo(demo: Base, text: str, expected: str) -> None:
    assert write_reading(demo.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), SEVENTH, ids=[text for text, _ in SEVENTH])
def test_seventh(seventh: Base, text: str, expected: str) -> None:
    assert write_reading(seventh.read(text)) == expected
