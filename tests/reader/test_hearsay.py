"""Whose claim it is, what is claimed, and how it is put in doubt: the claim is read as a question of its own.

All of it is common English, no source, of things of four services.
"""

from __future__ import annotations

import pytest

from kb.reader.stories.hearsay import claims_in, doubts, with_doubts
from kb.reader.words.tokens import tokenize
from tests.reader.conftest import Base

WARDENS = "Must wardens wear the neck cloth, on parade?"
LENT = "Is it prohibited for anyone to lend the flotation vest?"
LINER = "May anyone wear the quilted liner, with nothing else worn?"
HEEL = "Is it prohibited that the height of the footwear be 1 1/2 in (38.1 mm)?"
BELT = "Is it prohibited that the width of the belt be 2 in (50.8 mm)?"
WATCH = "May anyone wear the wristwatch, in rope rig?"
GLOVES = "Must an A4 wear the white gloves, in full dress?"
CLAIMED = [
    # who claims it, and how
    ("demo", "My deputy insists that wardens have to wear the neck cloth on parade. I don't think so. Which?",
     WARDENS),
    ("demo", "Half the crew were saying that the liner may be worn alone. I have my doubts.", LINER),
    ("demo", "In the mess the other night somebody swore the liner may be worn alone. Can it?", LINER),
    ("demo", "My aunt, who knows such things, says that the liner may be worn alone. Is she right?", LINER),
    ("demo", "According to the old cook the liner may be worn alone. I don't believe it.", LINER),
    ("demo", "It's going round that the liner may be worn alone.", LINER),
    ("demo", "Rumour has it that the liner may be worn alone, is there anything in it?", LINER),
    ("demo", "I was taught that the liner may be worn alone. Which is it?", LINER),
    ("demo", "Was I wrong to think that the liner may be worn alone?",
     "Is it prohibited for anyone to wear the quilted liner, with nothing else worn?"),
    ("demo", "Am I right in thinking that nobody lends a flotation vest, not even for ten minutes?", LENT),
    ("demo", "The lads swear that nobody ever lends a flotation vest. Can that be?", LENT),
    ("demo", "The inspector says my shoe heel is too high at an inch and a half, is he right?", HEEL),
    ("demo", "The stores say the belt is too wide at two inches. Are they right?", BELT),
    ("demo", "Lads at the bar were saying you can carry a rucksack with watch rig. Can you?",
     "May anyone carry the rucksack, in watch rig?"),
    ("third", "Our trainer insists that a rucksack is forbidden in the ticket hall. I don't buy it. Which?",
     "Is it prohibited for anyone to carry the rucksack, in the ticket hall?"),
    ("third", "I thought the fleece could be worn with full dress?",
     "May anyone wear the fleece, in full dress?"),
    ("second", "The old guide is adamant that a wristwatch is fine in rope rig. I'm not so sure.", WATCH),
    ("second", "It's said that a wristwatch is fine in rope rig. Any truth in that?", WATCH),
    ("fifth", "There's a rumour that the knotted tie is allowed with Order B.",
     "May anyone wear the knotted tie, in Order B?"),
    # a standing of who claims it is that of "he"
    ("demo", "A K3 I know insists he may grow a beard. I doubt it.", "May a K3 wear the beard?"),
    ("demo", "The old hands say they may grow a beard. Can they?", "May deck hands wear the beard?"),
    # what is to be settled
    ("demo", "They are arguing about whether a K2 can wear the keeper's pin. Put an end to it, please.",
     "May a K2 wear the keeper's pin?"),
    ("demo", "Two of my men disagree. May the liner be worn alone?", LINER),
    ("third", "They're quarrelling about whether a lead attendant must wear white gloves with full dress. "
     "Please settle it.", GLOVES),
    ("second", "We can't agree whether a wristwatch is allowed in rope rig. Please decide.", WATCH),
    # what one was told to do, and what nobody is to say
    ("demo", "My father always told me to wear the neck cloth on parade. Is that still so?",
     "Must anyone wear the neck cloth, on parade?"),
    ("demo", "The bosun told me not to wear sunglasses at inspection. Is that a rule?",
     "May anyone wear the sunglasses, at inspection?"),
    ("fifth", "My driver told us to wear the name plate in court. Do we have to?",
     "Must anyone wear the name plate, in the court building?"),
    ("demo", "Nobody's going to tell me I can't carry an umbrella in boat rig, are they?",
     "May anyone carry the umbrella, in boat rig?"),
    ("demo", "You can't tell me I have to wear the service cap in the workshop rig, can you?",
     "Must anyone wear the service cap, in workshop rig?"),
    ("demo", "What's this nonsense about not tarring the lined smock?",
     "Is it prohibited for anyone to tar the lined smock?"),
    ("demo", "What's all this talk about having to wear the flotation vest in boat rig?",
     "Must anyone wear the flotation vest, in boat rig?"),
    # what was done, and whether it was right
    ("demo", "I tarred my lined smock on purpose. Was that a mistake?",
     "Is it prohibited for anyone to tar the lined smock?"),
    ("demo", "I wore my knit cap through town with my watch rig and no one minded. Is it forbidden?",
     "Is it prohibited for anyone to wear the knit cap, in watch rig, in town?"),
    # what two claims are of
    # the other side than that of the rule
    ("fifth", "I gather that the beret is pulled to the left. Is it?",
     "May the fit of the beret not be “pulled to the right”?"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "text", "read_back"), CLAIMED, ids=[text for _, text, _ in CLAIMED])
def test_what_is_claimed_is_asked(
    name: str, text: str, read_back: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(" ".join(with_doubts([text])))
    assert reading.text == read_back, (reading.ask, reading.abstain)


# Who says so, before or after, and how it is put in doubt: around any claim the reading is that of the claim.
FRAMES = [
    "{}, I hear. Has that changed?",
    "{}, apparently. Still so?",
    "{}, one of the old cooks reckons. True?",
    "{} is what I was told. Is it right?",
    "{}, according to the cook. Right?",
    "Heard from a friend: {}. Can that be?",
    "Do I have it right that {}?",
    "The cook will have it that {}. Does he have a point?",
    "Everyone here thinks {}. Do the rules agree?",
    "We've been told that {}. Is that in the rules?",
    "It was put to me that {}. Right?",
]
IN_FRAMES = [
    ("demo", "the liner may be worn alone", LINER),
    ("demo", "rings are fine in the lamp room", "May anyone wear the finger ring, in the lamp room?"),
    ("third", "the fleece may be worn with full dress", "May anyone wear the fleece, in full dress?"),
]  # fmt: skip


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize(("name", "claim", "read_back"), IN_FRAMES, ids=[text for _, text, _ in IN_FRAMES])
def test_whoever_says_it_is_asked_alike(
    name: str, claim: str, read_back: str, frame: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    said = frame.format(claim)
    reading = base.read(" ".join(with_doubts([said[:1].upper() + said[1:]])))
    assert reading.text == read_back, (reading.ask, reading.abstain)


NOT_READ = [
    ("demo", "They say no to beards."),
    ("demo", "Wardens are in parade rig, I hear. Has that changed?"),  # nothing is claimed of a thing
    ("demo", "I needn't shave, according to my doctor. Is that so?"),  # whose word may count
    ("third", "I can wear the fleece, my doctor says. Right?"),
    ("demo", "The skipper says the liner may be worn alone, but only in the mess. I'm not so sure."),
    ("demo", "One of them says boots, the other says shoes. Which?"),
    ("demo", "In 2019 they said the liner may be worn alone. Is it so?"),  # what was so then
    ("demo", "The man with the liner says it may be worn alone. Can it?"),  # what "it" is
    ("demo", "My mate says the widget may be worn alone. Is he right?"),
    ("second", "He never said that the wristwatch is fine. Which?"),
    ("third", "Nobody told me whether the fleece suits me. I doubt it."),
]


@pytest.mark.parametrize(("name", "text"), NOT_READ, ids=[text for _, text in NOT_READ])
def test_what_is_not_clear_is_not_read(name: str, text: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(name)
    assert base.read(text).query is None


@pytest.mark.parametrize(
    ("text", "so"),
    [
        ("I don't think so", True), ("I'm not so sure about that", True), ("Which?", True),
        ("Can you?", True),
        ("Put an end to it, please", True), ("Settle this for us", True), ("Is there something in it?", True),
        ("What do I tell him?", True), ("Which belt?", False), ("What are the limits?", False),
        ("In what order do they go?", False), ("Can you wear it?", False), ("I'm sure it fits", False),
    ],
)  # fmt: skip
def test_what_only_puts_in_doubt(text: str, so: bool) -> None:
    assert doubts([token.low for token in tokenize(text)]) is so


def test_a_doubt_stays_with_its_claim_in_a_line() -> None:
    assert with_doubts(["She reckons the cap is white.", "I'm not so sure."]) == (
        "She reckons the cap is white. I'm not so sure.",
    )
    assert with_doubts(["Settle a quarrel.", "May I wear it?"]) == ("Settle a quarrel. May I wear it?",)
    assert with_doubts(["May I wear the cap?", "Which?"]) == ("May I wear the cap?", "Which?")
    assert with_doubts(["I wear the cap.", "Which?"]) == ("I wear the cap.", "Which?")


def test_what_is_wanted_or_asked_is_no_claim() -> None:
    for text in (
        "My mother wants to take my coat in. Can she?",
        "I want to explain the badges.",
        "Who said that?",
    ):
        assert not list(claims_in(text, tokenize(text))), text
