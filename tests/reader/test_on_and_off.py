"""What a thing is by a particle: on or off, out, up or down, shown, taken along; over several services."""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base
from tests.reader.notation import write_reading

DEMO = (
    ("Thick fog on parade, sunglasses obviously off?", "must sunglasses activity=parade not weather=fog"),
    ("Off watch in town, headphones definitely off?", "must headphones not on-watch=no place=town"),
    ("Off with the sunglasses at inspection?", "must sunglasses activity=inspection not"),
    (
        "White lanyard in the rain on parade, I'm a K4. Off or on?",
        "may white-lanyard activity=parade grade=K4 weather=rain",
    ),
    ("Four rings on, do I take one off?", "may ring aspect:count value:4..4 verdicts:prohibited"),
    ("Two finger rings on, must I take one off?", "may ring aspect:count value:2..2 verdicts:prohibited"),
    ("Can I take up the sleeves of the storm coat?", "may sleeve aspect:shortening worn:storm-coat=yes"),
    ("May I take my sleeves up?", "may sleeve aspect:shortening"),
    ("Can I get my storm coat taken in so it fits better?", "may storm-coat aspect:alteration"),
    ("Off watch, phone stays with me?", "may telephone aspect:carrying on-watch=no"),
    ("Umbrella comes with me in the shore rig?", "may umbrella aspect:carrying rig=shore-rig"),
    ("My beard is staying. Anything against it?", "may beard verdicts:prohibited"),
    ("My beard is staying. Is that OK?", "may beard"),
    ("I have four qualification badges. How many may I show?", "how_many qualification-device aspect:count"),
    ("How many rings can be seen?", "how_many ring aspect:count"),
    ("Are earrings all right provided they can't be seen?", "may earrings aspect:fit:out-of-sight"),
    (
        "Is a neck chain fine as long as it isn't visible?",
        "may neck-chain aspect:fit:out-of-sight-under-the-shirt-or-jersey",
    ),
    (
        "Neck chain, can people see it?",
        "may neck-chain aspect:fit:out-of-sight-under-the-shirt-or-jersey not",
    ),
    ("On which shoulder the satchel hangs?", "where satchel aspect:position"),
    ("How low may my sideburns reach?", "where sideburns aspect:position"),
    ("Which end of the warden's slides points outwards?", "how shoulder-slides"),
    (
        "Sleeve on my storm coat is too long. Can I take it up myself?",
        "source clause:dress-order/2024/1.15 worn:storm-coat=yes",
    ),
    (
        "The sleeves of my watch coat are a bit too long, may I take them up?",
        "may sleeve aspect:shortening worn:watch-coat=yes",
    ),
    ("I keep forgetting the size of the turn-up on the knit cap.", "how knit-cap aspect:height"),
    ("I can never remember the width of the canvas belt.", "how canvas-belt aspect:width"),
    ("I wear earrings. Must I take them out in the mess?", "must earrings not place=mess"),
    (
        "Buttons undone on the tunic?",
        "may parade-tunic aspect:fastening:fastened-from-the-collar-to-the-waist not",
    ),
    ("My chain is showing, so what?", "may neck-chain aspect:fit:out-of-sight-under-the-shirt-or-jersey not"),
    ("Undershirt showing at the neck, is that allowed?", "abstain showing, neck"),
    ("May I carry my phone on watch if it's switched off?", "abstain switched, off"),
    ("Chin strap down on the quay?", "how chin-strap indoors=no"),
    ("Should the chin strap be up on the open deck?", "how chin-strap place=boat-deck,skiff,tender-deck"),
    ("May I wear the chin strap up on deck?", "how chin-strap place=boat-deck,skiff,tender-deck"),
    ("In fog, chin strap up or down?", "how chin-strap weather=fog"),
    ("Is the chin strap down to my chin?", "source clause:dress-order/2024/4.5"),
    ("The storm coat up?", "abstain up"),
    ("May I take my tools up?", "abstain take, tools, up"),
    ("My cap badge is a bit off. Is that a fault?", "abstain off, fault"),
    ("Lights off?", "abstain Lights, off"),
    ("Dog comes with me?", "abstain Dog, comes"),
    ("The kettle is staying. Anything against it?", "abstain kettle, staying"),
)
THIRD = (
    ("At which wind speed may the shell jacket's hood go up?", "when shell-hood"),
    ("My moustache is staying. Is that OK?", "may moustache"),
    ("My moustache is staying. Anything against it?", "may moustache verdicts:prohibited"),
    ("Is it ok to have my phone in the cabin if its off", "abstain off"),
    ("Sunglasses among passengers, off or on?", "may sunglasses passengers=yes"),
    ("In full dress, knitted hat definitely off?", "must knitted-hat not rig=full-dress"),
    ("Can people see my tattoo?", "may tattoo"),
)
FIFTH = (
    ("I've three qualification badges. How many may I show?", "how_many qualification-badge aspect:count"),
    ("May I have the light trousers taken in to make them tighter?", "may light-trousers aspect:tapering"),
    ("May I have the light trousers taken in so they fit better?", "may light-trousers aspect:alteration"),
    (
        "Three qualification badges up, do I take one down?",
        "may qualification-badge aspect:count value:3..3 verdicts:prohibited",
    ),
    ("Neck cloth in the Yard order, off or on?", "may neck-cloth rig=order-d"),
    ("Medals on the greatcoat, obviously off?", "abstain off"),
    ("Umbrella comes with me?", "may umbrella aspect:carrying"),
)


@pytest.mark.parametrize(("text", "expected"), DEMO, ids=[text for text, _ in DEMO])
def test_demo(demo: Base, text: str, expected: str) -> None:
    assert write_reading(demo.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), THIRD, ids=[text for text, _ in THIRD])
def test_third(third: Base, text: str, expected: str) -> None:
    assert write_reading(third.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), FIFTH, ids=[text for text, _ in FIFTH])
def test_fifth(fifth: Base, text: str, expected: str) -> None:
    assert write_reading(fifth.read(text)) == expected
