"""Questions that would be understood otherwise than they are meant, over several services."""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base
from tests.reader.notation import write_reading

DEMO = (
    ("Where I must put the station patch?", "where station-patch aspect:position"),
    ("Excuse me, which shoes I must wear in parade rig?", "list footwear rig=parade-rig verdicts:required"),
    ("What colour I must have for the mourning band?", "how mourning-band aspect:colour"),
    ("How I have to wear the chin strap on deck?", "how chin-strap place=boat-deck,skiff,tender-deck"),
    ("I work in town. May I wear the knit cap?", "may knit-cap place=town"),
    ("May I wear the knit cap for work?", "may knit-cap rig=workshop-rig"),
    (
        "Can I choose between the storm coat and the watch coat in watch rig?",
        "ask item storm-coat ; watch-coat",
    ),
    (
        "Is there a choice between dress trousers and the dress skirt in parade rig?",
        "ask item dress-trousers ; dress-skirt",
    ),
    ("Why no rings in the lamp room?", "why ring place=lamp-room verdicts:prohibited"),
    ("Why no longer the tarred smock?", "abstain no longer"),
    ("White gloves, who?", "who white-gloves verdicts:required,permitted"),
    ("Umbrella, when?", "when umbrella aspect:carrying"),
    ("I forgot when", "abstain forgot"),
    (
        "The thermometer says 4.5 and I'm on an open deck. May I wear the immersion suit?",
        "may immersion-suit place=boat-deck,skiff,tender-deck temperature=4.5..4.5",
    ),
    ("My thermometer reads minus 2. May I wear wool gloves?", "may wool-gloves temperature=-2..-2"),
    ("We have 4.5 here. May I wear the immersion suit?", "abstain 4.5"),
    ("What does 4.5 say about the chin strap?", "source clause:dress-order/2024/4.5"),
    ("Does 4.7 let me wear deck shoes in the mess?", "source clause:dress-order/2024/4.7"),
    ("Service strip on the smock: above the tab or under it?", "where service-strip aspect:position"),
    ("We always carried the cap in the right hand. Who changed that?", "abstain right, changed"),
    ("Who can change the rule on gloves for a ceremony?", "source clause:dress-order/2024/1.11"),
    ("How long may I wear the mourning band?", "abstain how long"),
    ("How long may my beard be worn by a warden?", "how beard aspect:length grade=W1,W2,W3,W4"),
    ("The watch coat or the storm coat?", "list watch-coat,storm-coat verdicts:required,permitted"),
    ("Must the yellow high-visibility vest be worn in town?", "must bright-vest place=town"),
    (
        "Must the green high-visibility vest be worn in town?",
        "must bright-vest aspect:colour place=town value:other:green",
    ),
    ("Is a yellow high-visibility vest ok?", "may bright-vest aspect:colour value:yellow"),
    (
        "In my day the belt was two inches wide. Still is, I take it?",
        "may belt aspect:width value:50.8..50.8",
    ),
    ("May I wear sunglasses by day?", "may sunglasses light=day"),
    ("Boat branch kit list please.", "list aspect:possession branch=boats verdicts:required"),
    ("I have a wedding ring. Must it come off in the lamp room?", "must ring not place=lamp-room"),
)
THIRD = (
    (
        "Please, what shoes I must wear with cabin dress?",
        "list low-shoes,sports-shoes rig=cabin-dress verdicts:required",
    ),
    ("Why no belt on the towers?", "why belt place=tower verdicts:prohibited"),
    ("Sun hat: when, with what?", "when sun-hat"),
    ("Hood up or down, snow", "may shell-hood weather=snowfall"),
    (
        "May rescuers have the hood up at 35 km/h if it's dry?",
        "may shell-hood grade=R1,R2,R3,R4 wind=9.722222222222221..9.722222222222221",
    ),
    ("May I have my phone in the cabin if it's off?", "abstain off"),
    ("May I have my tie off in the cabin?", "may tie not place=cabin"),
    ("Do I dry the shell jacket?", "source clause:dress-regulations/2025/55"),
    (
        "Grey shirt or white one for hall dress?",
        "list grey-shirt,white-shirt rig=hall-dress verdicts:required,permitted",
    ),
)
FIFTH = (
    ("Which order is for vehicle crews?", "abstain Which order"),
    ("In which order are the medals worn?", "how medals aspect:precedence"),
    ("What do the wheels mean on a Conveyor's shoulder?", "abstain shoulder"),
    ("Am I entitled to refuse a religious exemption?", "abstain refuse"),
    ("The bracelet, I can keep it?", "abstain keep"),
    ("May keepers wear the black bow tie?", "may bow-tie grade=S1,S2"),
    ("Where does the sun hat have to come off?", "when sun-hat verdicts:prohibited"),
    ("Neck cloth: which colours, and in or out of the shirt?", "abstain out of"),
    ("The Section Keeper can clear Order E. True?", "abstain clear, True"),
    ("May the nail varnish be clear?", "may varnish aspect:colour value:clear"),
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
