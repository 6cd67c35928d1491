"""Right and wrong said of a claim that denies something; headlines as one says them."""

from __future__ import annotations

import datetime
import json
import re
from pathlib import Path

import pytest

from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
BOOKS = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("Nobody below K2 may wear the keeper's pin, true?", "Right. The keeper's pin must not be worn."),
        ("He says a Third Hand can't wear the cap device. Is he right?",
         "Right. The cap device must not be worn."),
        ("Is it true that a Third Hand may not wear the cap device?",
         "Right. The cap device must not be worn."),
        ("True or false: a Third Hand may not wear the cap device.",
         "Right. The cap device must not be worn."),
        ("I can't carry an umbrella with the shore rig, is that right?",
         "Wrong. The umbrella may be carried."),
        ("You don't have to wear a cap outdoors in shore rig, true or false?",
         "Right. The service cap may be worn, but need not be."),
        ("I can't go without the identity disc, right?", "Right: the identity disc must be worn."),
        # what is stated is put by its mark alone
        ("So I don't need goggles for welding?", "Wrong. The goggles must be worn."),
        ("Goggles aren't necessary when painting", "Wrong. The goggles must be worn."),
        ("So a Third Hand can't wear the cap device?", "Right. The cap device must not be worn."),
        ("I don't need goggles for welding, do I?", "Yes. The goggles must be worn."),
        ("I don't have a scarf, must I wear goggles for welding?", "Yes. The goggles must be worn."),
        ("and is the umbrella forbidden in parade rig?", "Yes. The umbrella must not be carried."),
        # what is no denial, and is put to nobody
        ("He says he can carry an umbrella in parade rig. Is he right?",
         "No. The umbrella must not be carried."),
        ("Can't I carry an umbrella in parade rig, right?", "No. The umbrella must not be carried."),
        ("A Third Hand can't wear the cap device, can he?", "No. The cap device must not be worn."),
        ("You may carry an umbrella in shore rig when you can't see, right?", ""),
        # of a thing alone
        ("Is the storm hat alone enough in storm rig?",
         "Yes, but not by itself: the storm hat must be worn."),
        ("Can I haul lines with only wool gloves on?", "No. The wool gloves must not be worn."),
        ("May I wear the liner alone?", "No. The quilted liner must not be worn alone."),
        # what is told of a thing beside is no part of what is asked
        ("Could I be done for not wearing the service cap out of doors in watch rig with the knit cap on, in"
         " town?", "No. The service cap need not be worn with the knit cap. But the knit cap must not be worn"
         " here (Dress Order (2024) 4.10)."),
        # as one says it
        ("Am I in trouble if my sea boot trousers are outside the boots?",
         "Yes: the sea boots must have the trousers inside."),
        ("May I wear more than two rings?", "No. The number of finger rings worn must be at most 2."),
        ("May I wear the storm hood with the watch coat?",
         "No. The storm hood must not be worn with the watch coat. Dress Order (2024) 2.4 leaves no room for"
         " the storm coat as well."),
    ],
)  # fmt: skip
def test_first_word(base: KnowledgeBase, question: str, headline: str) -> None:
    (answer,) = base.ask(question, as_of=DAY)
    assert answer.headline == headline or (not headline and not answer.headline.startswith("Wrong"))


@pytest.mark.parametrize(
    ("books", "question", "headline"),
    [
        # "not tucked in" is said of what must not be, not as what must be
        ("sixth", "Can I tuck the oven gloves in the apron string?",
         "No: the oven gloves must not be tucked in the apron string."),
        ("fifth", "Is a watch as well as a step counter okay?",
         "No. The wrist watch must not be worn with the wrist device that counts steps or pulse."),
        ("seventh", "Would I get told off for wearing a necklace that shows?",
         "Yes: the necklace must be out of sight."),
    ],
)  # fmt: skip
def test_of_other_services(books: str, question: str, headline: str) -> None:
    base = opened(books)
    (answer,) = base.ask(question, as_of=DAY)
    assert answer.headline == headline


@pytest.mark.parametrize(
    ("books", "question", "first"),
    [
        # what is banned, put to be confirmed: yes is said of the ban
        ("infirmary", "Is it true that sandals are banned?", "Yes"),
        ("infirmary", "Is it correct that sandals are prohibited?", "Yes"),
        ("infirmary", "Is it a fact that wearing sandals is forbidden?", "Yes"),
        ("infirmary", "Is it right that sandals are not to be worn?", "Right"),
        ("infirmary", "The sandals are not to be worn, is that right?", "Right"),
        ("infirmary", "Sandals are out, right?", "Right"),
        ("infirmary", "Is it true that a lanyard is banned on the ward?", "Yes"),
        ("infirmary", "Is it so that wristwatches are forbidden in clinical areas?", "Yes"),
        ("playhouse", "Is it right that white gloves are not to be worn?", "Right"),
        # which is a denial again where it is said not to be
        ("infirmary", "Is it true that sandals are not banned?", "Wrong"),
        ("infirmary", "Is it correct that sandals aren't prohibited?", "Wrong"),
        ("infirmary", "Is it true that stud earrings are not banned in the corridor?", "Right"),
        # of what may be worn
        ("infirmary", "Is it correct that stud earrings are prohibited in the corridor?", "No"),
        ("infirmary", "Stud earrings are not to be worn in the corridor, right?", "Wrong"),
        ("infirmary", "Is it true that the porters' jacket may be worn out in the street?", "Yes"),
        # of what one is free to do
        ("infirmary", "Is it true that a name badge is optional?", "No"),
        # nothing of this is a claim that is denied
        ("infirmary", "Is it right to wear sandals?", "No"),
        ("infirmary", "Are sandals banned?", "Yes"),
        ("infirmary", "Is it true that one does not wear sandals?", "Yes"),
    ],
)
def test_bans_put_to_be_confirmed(books: str, question: str, first: str) -> None:
    base = opened(books)
    (answer,) = base.ask(question, as_of=DAY)
    assert re.split(r"[ .:,]", answer.headline)[0] == first


def test_of_a_thing_said_to_be_banned_the_act_is_its_own() -> None:
    base = opened("infirmary")
    (answer,) = base.ask("Is it true that a shoulder bag is banned on duty?", as_of=DAY)
    assert answer.reading.text == "Is it prohibited for anyone to carry the shoulder bag, on duty?"


def test_what_is_confirmed_can_be_said_again(base: KnowledgeBase) -> None:
    (answer,) = base.ask("Nobody below K2 may wear the keeper's pin, true?", as_of=DAY)
    saved = json.loads(answer_to_json(answer))
    assert saved["headline"].startswith("Right.")
    assert base.verify(saved) is None
    assert base.verify({**saved, "headline": saved["headline"].replace("Right.", "Wrong.")}) is not None


def test_each_thing_that_may_be_meant_is_confirmed(base: KnowledgeBase) -> None:
    answers = base.ask("Nobody below K2 can wear the pin, is he right?", as_of=DAY)
    assert len(answers) == 2
    assert all(answer.headline.startswith("Right.") for answer in answers)
