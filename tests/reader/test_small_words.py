"""Small words that limit nothing where they stand, and those that do; over several services."""

from __future__ import annotations

import pytest

from kb.reader import split_questions
from tests.reader.conftest import Base
from tests.reader.notation import write_reading

DEMO = (
    (
        "Either of us could be wrong, but doesn't the scarf come off near running machinery?",
        "may scarf machinery-running=yes not",
    ),
    ("Silly question, but may keepers wear the beard?", "may beard grade=K1,K2,K3,K4,K5,K6,K7"),
    (
        "I may well be wrong, but must the flotation vest be worn on deck?",
        "must flotation-vest place=boat-deck,skiff,tender-deck",
    ),
    ("Not quite sure, but may I wear the liner alone?", "may storm-coat-liner alone"),
    ("I hate to ask but may I wear the liner alone?", "may storm-coat-liner alone"),
    (
        "May I keep the ring on but under the glove when hauling lines?",
        "may ring hauling=yes worn:deck-gloves=yes",
    ),
    (
        "Storm coat but unbuttoned. OK?",
        "may storm-coat aspect:fastening:all-buttons-done-up-to-the-throat not",
    ),
    (
        "Everyone but the wardens must carry a whistle?",
        "must whistle aspect:carrying grade=H1,H2,H3,H4,K1,K2,K3,K4,K5,K6,K7",
    ),
    ("May I wear any cap but the knit cap?", "abstain but"),
    ("May I carry the umbrella but in rain?", "abstain but"),
    (
        "Where is the name strip when you've only got the jersey on?",
        "where name-strip aspect:position worn:jersey=yes",
    ),
    ("Deck gloves when hauling lines, just for warmth. Allowed?", "may deck-gloves hauling=yes"),
    ("May I wear the finger ring only for show?", "may ring"),
    ("Deck shoes in the engine room for five minutes only. OK?", "may deck-shoes place=engine-room"),
    ("Can I wear deck shoes if I only walk through the engine room?", "may deck-shoes place=engine-room"),
    ("May I wear the cap only in town?", "abstain only"),
    ("May I wear only the jersey?", "may jersey alone"),
    ("May I wear the liner when I'm only wearing the jersey?", "may storm-coat-liner alone worn:jersey=yes"),
    ("How many wristwatches, just the one?", "how_many wristwatch aspect:count"),
    ("How many rings may I wear, only one?", "how_many ring aspect:count"),
    ("Neck cloth in watch rig or none?", "may neck-cloth rig=watch-rig"),
    ("White gloves or nothing at the funeral?", "may white-gloves activity=funeral"),
    ("I'm hauling lines with a ring on. Nobody minds?", "may ring hauling=yes"),
    ("Ring on while hauling lines, and nobody has said anything. Is it allowed?", "may ring hauling=yes"),
    ("Nobody here remembers: may the liner be worn alone?", "may storm-coat-liner alone"),
    ("I have no whistle. Do I need one?", "must whistle aspect:carrying"),
    ("I was never given a storm hat. Do I need one in storm rig?", "must storm-hat rig=storm-rig"),
    ("I haven't got a whistle. Do I have to have one on watch?", "must whistle aspect:carrying on-watch=yes"),
    (
        "Storm coat open. Not allowed, I suppose?",
        "may storm-coat aspect:fastening:all-buttons-done-up-to-the-throat not",
    ),
    ("The jersey off in boat rig, it's warm enough. OK?", "may jersey not rig=boat-rig"),
    ("Sunglasses at inspection ok if its very bright?", "may sunglasses activity=inspection"),
    ("Is the beard forbidden or only discouraged?", "abstain only, discouraged"),
)
THIRD = (
    ("Nobody gave me a tie for the ticket hall. Do I need one there?", "must tie place=ticket-hall"),
    ("I have no tie for the ticket hall. Do I need one there?", "must tie place=ticket-hall"),
    ("I was never issued a tie. Do I need one in the ticket hall?", "must tie place=ticket-hall"),
    ("Daft question, but may I wear goggles?", "may goggles"),
    ("Could be wrong, but may I wear goggles?", "may goggles"),
    ("May I wear the helmet or none?", "may helmet"),
    ("May I wear the felt hat just for fun?", "may felt-hat"),
    ("Felt hat in the ticket hall. Nobody minds?", "may felt-hat place=ticket-hall"),
    ("May I wear the felt hat only in winter?", "abstain only, winter"),
    ("How many rings may I wear, just the one?", "how_many ring aspect:count"),
    ("Nobody here knows: may I wear the parka in the ticket hall?", "may parka place=ticket-hall"),
    ("We've no goggles. Do we need any on the glacier?", "must goggles place=glacier"),
    ("The tie off in the ticket hall, it's hot enough. OK?", "may tie not place=ticket-hall"),
    ("May I wear the sunglasses in the cabin for ten minutes only?", "may sunglasses place=cabin"),
    ("May I wear any hat but the felt hat?", "abstain but"),
)
FIFTH = (
    ("Sun hat in the yard, just for comfort. OK?", "may sun-hat place=yard"),
    ("Not sure, but may I wear the sun hat in the yard?", "may sun-hat place=yard"),
    ("May I wear the greatcoat but open?", "abstain but"),
    ("How many rings may I wear, only the one?", "how_many ring aspect:count"),
    ("I've no neck cloth. Do I need one?", "must neck-cloth"),
)

SIDES = (
    (
        "Must the hands have a band on too, or just the officers?",
        ("Must the hands have a band on?", "And the officers?"),
    ),
    (
        "Do hall staff need to own the parka too, or is it just the cabin branch?",
        ("Do hall staff need to own the parka?", "And the cabin branch?"),
    ),
    (
        "Can you wear a lid instead of the felt hat too, or just instead of the cap?",
        ("Can you wear a lid instead of the felt hat?", "Can you wear a lid instead of the cap?"),
    ),
    (
        "May stores staff wear shorts as well, or is it only us in the workshop?",
        ("May stores staff wear shorts?", "And in the workshop?"),
    ),
    (
        "Is it forbidden when the engine runs, or only when I'm close to it?",
        ("Is it forbidden when the engine runs?", "Is it forbidden when I'm close to it?"),
    ),
    (
        "I'm a K3. May I wear it in town, or only on parade?",
        ("I'm a K3. May I wear it in town?", "And on parade?"),
    ),
    (
        "May I wear it in the boat on watch, or only in town?",
        ("May I wear it in the boat on watch?", "And in town?"),
    ),
    ("Does a deck hand, or only a keeper?", ("Does a deck hand, or only a keeper?",)),
    ("Is the lanyard compulsory or just recommended?", ("Is the lanyard compulsory or just recommended?",)),
    ("Is the lanyard worn for work or just for show?", ("Is the lanyard worn for work or just for show?",)),
    ("May I wear one ring or only two?", ("May I wear one ring or only two?",)),
    ("Is it on both sleeves, or just the left?", ("Is it on both sleeves, or just the left?",)),
)


@pytest.mark.parametrize(("text", "expected"), SIDES, ids=[text for text, _ in SIDES])
def test_each_side_is_a_question(text: str, expected: tuple[str, ...]) -> None:
    assert split_questions(text) == expected


@pytest.mark.parametrize(("text", "expected"), DEMO, ids=[text for text, _ in DEMO])
def test_demo(demo: Base, text: str, expected: str) -> None:
    assert write_reading(demo.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), THIRD, ids=[text for text, _ in THIRD])
def test_third(third: Base, text: str, expected: str) -> None:
    assert write_reading(third.read(text)) == expected


@pytest.mark.parametrize(("text", "expected"), FIFTH, ids=[text for text, _ in FIFTH])
def test_fifth(fifth: Base, text: str, expected: str) -> None:
    assert write_reading(fifth.read(text)) == expected
