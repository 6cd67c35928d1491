"""What is kept from the question before, from the profile, and from what was asked back."""

from __future__ import annotations

import pytest

from kb.errors import UsageError
from kb.model.questions import Ask
from kb.model.records import Case
from kb.model.values import choices
from kb.reader import parse_fact, read_reply
from tests.reader.conftest import HERE, Base
from tests.reader.notation import TODAY, read_cases, write_facts, write_reading

CONTINUED = [
    ("May an S2 wear the sash?", "and for cantors?", "may sash grade=C1,C2"),
    ("May an S2 wear the sash?", "what about outdoors?", "may sash grade=S2 venue=orchard,outdoors"),
    ("May an S2 wear the sash?", "and the choir scarf?", "may choir-scarf grade=S2"),
    ("May an S2 wear the sash?", "indoors?", "may sash grade=S2 venue=indoors,loft,nave"),
    ("Must I wear the robe hood?", "alone?", "must robe-hood alone"),
    ("Must I wear the robe hood?", "with the long robe?", "must robe-hood worn:long-robe=yes"),
    ("Where is the lark brooch worn?", "and the soloist's badge?", "where soloist-badge aspect:position"),
    ("May an S2 wear the sash?", "Must I wear the choir scarf?", "must choir-scarf"),
    ("May an S2 wear the sash?", "Must I wear it outdoors?", "must sash venue=orchard,outdoors"),
    ("How wide is the choir scarf?", "what colour is it?", "how choir-scarf aspect:colour"),
    ("May an S2 wear the sash?", "and a cape?", "abstain cape"),
    ("May an S2 wear the sash?", "hello", "abstain -"),
]


@pytest.mark.parametrize(("first", "second", "expected"), CONTINUED)
def test_continued(choir: Base, first: str, second: str, expected: str) -> None:
    assert write_reading(choir.read(second, previous=choir.read(first))) == expected


ANSWERED = [
    ("May I wear the hood outdoors?", "rain hood", "may rain-hood venue=orchard,outdoors"),
    ("May I wear the hood outdoors?", "rain-hood", "may rain-hood venue=orchard,outdoors"),
    ("May I wear velvet candle gloves?", "without it", "may candle-gloves"),
    ("May I wear velvet candle gloves?", "yes", "may candle-gloves"),
    ("May I wear velvet candle gloves?", "Yes, without it.", "may candle-gloves"),
    ("May I wear velvet candle gloves?", "go ahead", "may candle-gloves"),
    ("May I not wear the sash?", "May anyone go without the sash?", "may sash not"),
    ("May I wear the felt gloves or the linen gloves?", "candle gloves", "may candle-gloves"),
]


@pytest.mark.parametrize(("first", "reply", "expected"), ANSWERED)
def test_answered(choir: Base, first: str, reply: str, expected: str) -> None:
    asked = choir.read(first)
    assert asked.ask is not None
    assert write_reading(choir.read(reply, previous=asked)) == expected


def test_profile_is_carried_and_named(choir: Base) -> None:
    case = Case(as_of=TODAY, facts=(("grade", choices("S2")), ("rig", choices("gala"))))
    reading = choir.read("May a novice wear the sash?", case)
    assert write_reading(reading) == "may sash grade=N1,N2 rig=gala"
    assert reading.carried == ("rig",)


def test_facts_of_the_question_before_are_carried_and_named(choir: Base) -> None:
    reading = choir.read("and the choir scarf?", previous=choir.read("May an S2 wear the sash?"))
    assert reading.carried == ("grade",)


SECOND_TALK = [
    ("May I wear the boots with the hall coat?", ("hall boots",), "may hall-boots worn:hall-coat=yes"),
    ("May I leave off the boots?", ("the winter ones",), "may winter-boots not"),
    ("May I leave off the boots?", ("2",), "may winter-boots not"),
    ("May I leave off the boots?", ("the last",), "may hall-boots not"),
    ("May I wear the trousers with the boots?", ("hall ones", "fell boots"),
     "may hall-trousers worn:fell-boots=yes"),
    ("May I wear the orange smock in 2020?", ("5 March 2020",), "may orange-smock as-of:2020-03-05"),
    ("May I wear the orange smock in 2020?", ("31 December 2020",), "may orange-smock as-of:2020-12-31"),
    ("May I wear a velvet scarf?", ("yes",), "may scarf"),
    ("May an R2 wear the scarf?", ("why not?",), "why scarf grade=R2"),
    ("May an R2 wear the scarf?", ("and without it?",), "may scarf grade=R2 not"),
    ("May an R2 wear the scarf?", ("and in hall rig?", "and for wardens?"),
     "may scarf grade=W1,W2,W3,W4 rig=hall-rig"),
    ("According to the Fell Book, may I wear the scarf?", ("yes",), "may scarf"),
    ("May I wear the long service pin if I joined in 2012?", ("and in 2016?",),
     "may long-service-pin joined-on=735964..<736330"),
    ("May I wear the scarf and the neck gaiter in fell rig?", ("just the scarf?",), "may scarf rig=fell-rig"),
    ("Can I have a beard?", ("with a waiver?",), "may beard holds:beard-waiver=yes"),
    ("How long is the name tape?", ("what's the tolerance?",), "source clause:fell-book/2025/1.4"),
    ("Must I wear the helmet in rope rig?", ("not rope rig, fell rig", "does that go for a novice?"),
     "must helmet grade=R1 rig=fell-rig"),
]  # fmt: skip


@pytest.mark.parametrize(("first", "replies", "expected"), SECOND_TALK)
def test_talk(second: Base, first: str, replies: tuple[str, ...], expected: str) -> None:
    reading = second.read(first)
    for reply in replies:
        reading = second.read(reply, previous=reading)
    assert write_reading(reading) == expected


DEMO_TALK = read_cases(HERE / "talk-demo.txt")


@pytest.mark.parametrize(("turns", "expected"), DEMO_TALK, ids=[turns for turns, _ in DEMO_TALK])
def test_talk_over_the_demo(demo: Base, turns: str, expected: str) -> None:
    reading = None
    for turn in turns.split(" >> "):
        reading = demo.read(turn, previous=reading)
    assert reading is not None
    assert write_reading(reading) == expected


THIRD_TALK = read_cases(HERE / "talk-third.txt")


@pytest.mark.parametrize(("turns", "expected"), THIRD_TALK, ids=[turns for turns, _ in THIRD_TALK])
def test_talk_over_the_third(third: Base, turns: str, expected: str) -> None:
    test_talk_over_the_demo(third, turns, expected)


FOURTH_TALK = read_cases(HERE / "talk-fourth.txt")


@pytest.mark.parametrize(("turns", "expected"), FOURTH_TALK, ids=[turns for turns, _ in FOURTH_TALK])
def test_talk_over_the_fourth(fourth: Base, turns: str, expected: str) -> None:
    test_talk_over_the_demo(fourth, turns, expected)


PROFILED = [
    (("weather", "clear"), "May I wear gaiters when it is not raining?", "may gaiters weather=clear"),
    (("weather", "rain"), "May I wear gaiters when it is not raining?", "may gaiters weather=clear,snow"),
    (("place", "village"), "May I wear gaiters in the valley?", "may gaiters place=village"),
    (("place", "crag"), "May I wear gaiters in the valley?", "may gaiters place=roadside,valley,village"),
    (("temperature", "8"), "May I wear gaiters above 5 degrees?", "may gaiters temperature=8..8"),
    (("temperature", "2"), "May I wear gaiters above 5 degrees?", "may gaiters temperature=5<.."),
    (("grade", "W2"), "May wardens wear gaiters?", "may gaiters grade=W1,W2,W3,W4"),
]


@pytest.mark.parametrize(("known", "question", "expected"), PROFILED)
def test_what_is_said_narrows_what_is_known(
    second: Base, known: tuple[str, str], question: str, expected: str
) -> None:
    case = Case(as_of=TODAY, facts=(parse_fact(second.lookup, *known),))
    assert write_reading(second.read(question, case)) == expected


REPLIES = [
    ("temperature", "4 degrees", "temperature=4..4"),
    ("temperature", "minus 4", "temperature=-4..-4"),
    ("temperature", "41 F", "temperature=5..5"),
    ("temperature", "with rope gloves", "worn:rope-gloves=yes"),
    ("load", "20", "load=20000..20000"),
    ("wind", "36", "wind=10..10"),
    ("joined-on", "2014", "joined-on=735234..<735599"),
    ("temperature", "4 degrees and dark", "dark=yes temperature=4..4"),
    ("dark", "it isn't, and with rope gloves", "dark=no worn:rope-gloves=yes"),
    ("dark", "No, and I'm in rope rig", "dark=no rig=rope-rig"),
]


@pytest.mark.parametrize(("fact", "text", "expected"), REPLIES)
def test_reply(second: Base, fact: str, text: str, expected: str) -> None:
    ask = Ask(fact=fact, prompt="")
    assert write_facts(read_reply(ask, text, lexicon=second.lexicon, lookup=second.lookup)) == expected


def test_a_correction_is_no_reply(second: Base) -> None:
    with pytest.raises(UsageError):
        read_reply(
            Ask(fact="dark", prompt=""), "No, the rope gloves.", lexicon=second.lexicon, lookup=second.lookup
        )


def test_an_item_is_no_reply_to_a_temperature(second: Base) -> None:
    with pytest.raises(UsageError):
        read_reply(
            Ask(fact="temperature", prompt=""), "rope gloves", lexicon=second.lexicon, lookup=second.lookup
        )


SAID = [
    ("may the name tape be 30 mm wide", "May the width of the name tape be 30 mm?"),
    ("why must I wear the helmet", "Why must people wear the helmet?"),
    ("why can't R1s wear grade bars", "Why may an R1 not wear the grade bars?"),
    ("who may wear the hall tie", "Who may wear the hall tie?"),
    ("who does not wear grade bars", "Who must not wear the grade bars?"),
]


@pytest.mark.parametrize(("question", "said"), SAID)
def test_read_back(second: Base, question: str, said: str) -> None:
    assert second.read(question).text == said


DENIED = [
    ("weather", (("rain", "rain"), ("snow", "snow")), "neither", "weather=fair,fog,foul,spray"),
    ("light", (("day", "by day"), ("night", "at night")), "none of them", "light=twilight"),
    ("granted:extreme-heat", (("superintendent", "District Superintendent"),), "nobody",
     "granted:extreme-heat=none"),
    ("grade", (), "5s and up", "grade=K5,K6,K7,W1,W2,W3,W4"),
]  # fmt: skip


@pytest.mark.parametrize(("fact", "offered", "text", "expected"), DENIED)
def test_none_of_what_was_offered(
    demo: Base, fact: str, offered: tuple[tuple[str, str], ...], text: str, expected: str
) -> None:
    ask = Ask(fact=fact, prompt="", choices=offered)
    said = write_facts(read_reply(ask, text, lexicon=demo.lexicon, lookup=demo.lookup))
    assert said == expected


@pytest.mark.parametrize(
    ("fact", "text"), [("indoors", "neither"), ("indoors", "don't know"), ("temperature", "none")]
)
def test_a_reply_that_gives_nothing(demo: Base, fact: str, text: str) -> None:
    ask = Ask(fact=fact, prompt="", choices=(("yes", "yes"), ("no", "no")) if fact == "indoors" else ())
    with pytest.raises(UsageError):
        read_reply(ask, text, lexicon=demo.lexicon, lookup=demo.lookup)


@pytest.mark.parametrize(
    ("text", "reason"), [("neither", "in other words"), ("don't know", "which is meant")]
)
def test_nothing_of_what_was_asked_is_meant(demo: Base, text: str, reason: str) -> None:
    asked = demo.read("May I wear the cap?")
    assert asked.ask is not None
    reading = demo.read(text, previous=asked)
    assert reading.abstain is not None
    assert reason in reading.abstain.reason
    with pytest.raises(UsageError, match=reason):
        read_reply(asked.ask, text, lexicon=demo.lexicon, lookup=demo.lookup)


TOLD = [
    ("hauling", "I'm not hauling today, the others are", "hauling=no"),
    ("hauling", "we are hauling lines", "hauling=yes"),
    ("on-watch", "no, I'm not on watch, my mate is", "on-watch=no"),
    ("holds:officer-of-the-day", "I'm not the officer of the day, the warden is",
     "holds:officer-of-the-day=no"),
    ("hauling", "we aren't hauling at the moment", "hauling=no"),
]  # fmt: skip


@pytest.mark.parametrize(("fact", "text", "expected"), TOLD)
def test_a_sentence_that_says_whether(demo: Base, fact: str, text: str, expected: str) -> None:
    ask = Ask(fact=fact, prompt="")
    assert write_facts(read_reply(ask, text, lexicon=demo.lexicon, lookup=demo.lookup)) == expected


@pytest.mark.parametrize(
    ("fact", "text"),
    [
        ("holds:officer-of-the-day", "I'm not in a good mood"),
        ("hauling", "I'm not hauling if the others are"),
        ("heavy-work", "I'm heavy"),
        ("hot-work", "I'm hot"),
    ],
)
def test_a_sentence_that_does_not_say_whether(demo: Base, fact: str, text: str) -> None:
    with pytest.raises(UsageError):
        read_reply(Ask(fact=fact, prompt=""), text, lexicon=demo.lexicon, lookup=demo.lookup)
