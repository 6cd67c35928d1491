"""What is kept from the question before, from the profile, and from what was asked back."""

from __future__ import annotations

import pytest

from kb.model.records import Case
from kb.model.values import choices
from tests.reader.conftest import Base
from tests.reader.notation import TODAY, write_reading

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
    ("May I wear red candle gloves?", "without it", "may candle-gloves"),
    ("May I wear red candle gloves?", "yes", "may candle-gloves"),
    ("May I wear red candle gloves?", "Yes, without it.", "may candle-gloves"),
    ("May I wear red candle gloves?", "go ahead", "may candle-gloves"),
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
