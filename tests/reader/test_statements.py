"""Statements about oneself, and single facts by name and value."""

from __future__ import annotations

import pytest

from kb.errors import UsageError
from kb.model.questions import Abstain
from kb.model.values import NO, YES, Choices, Interval, choices, ranges
from kb.reader import parse_fact, read_statement
from kb.reader.names.spelling import near_labels
from tests.reader.conftest import Base
from tests.reader.notation import write_facts

STATEMENTS = [
    ("I am an S2 in gala dress", "grade=S2 rig=gala"),
    ("I'm an S2, in the nave", "grade=S2 venue=nave"),
    ("we are outdoors, drizzle, cuffs turned back", "cuffs=turned sky=wet venue=orchard,outdoors"),
    ("I hold the soloist's badge", "holds:soloist=yes"),
    ("I hold the soloist qualification", "holds:soloist=yes"),
    ("I am a qualified soloist", "holds:soloist=yes"),
    ("I am not a soloist", "holds:soloist=no"),
    ("I have an allergy waiver", "holds:allergy=yes"),
    ("I do not hold an allergy waiver", "holds:allergy=no"),
    ("I am wearing the long robe", "worn:long-robe=yes"),
    ("I am not wearing the long robe", "worn:long-robe=no"),
    ("with the long robe, without the sash", "worn:long-robe=yes worn:sash=no"),
    ("no longer outdoors", "venue=indoors,loft,nave"),
    ("not carrying candles", "candles=no"),
    ("it is 12 °C", "warmth=12..12"),
    ("the loudness is middling", "loudness=middling"),
    ("I joined on 1 May 2021", "joined-on=737911..<737912"),
    ("I sing bass", "!sing"),
    ("I am a K5", "!K5"),
    ("hello", "!"),
    ("", "!"),
    ("?!", "!"),
]


@pytest.mark.parametrize(("text", "expected"), STATEMENTS)
def test_statement(choir: Base, text: str, expected: str) -> None:
    found = read_statement(text, lexicon=choir.lexicon, lookup=choir.lookup)
    if expected.startswith("!"):
        assert isinstance(found, Abstain)
        assert ", ".join(found.words) == expected[1:]
    else:
        assert not isinstance(found, Abstain), found
        assert write_facts(found) == expected


OF_OTHERS = [
    ("I'm the officer of the day, the warden is off", "holds:officer-of-the-day=yes"),
    ("I'm a K2, and the coxswain is on leave", "grade=K2"),
    ("I'm a K2, my coat is off", "!"),
    ("the warden is off", "grade=W1,W2,W3,W4"),
]


@pytest.mark.parametrize(("text", "expected"), OF_OTHERS)
def test_where_somebody_else_is_says_nothing_of_oneself(demo: Base, text: str, expected: str) -> None:
    found = read_statement(text, lexicon=demo.lexicon, lookup=demo.lookup)
    if expected == "!":
        assert isinstance(found, Abstain)
    else:
        assert not isinstance(found, Abstain)
        assert write_facts(found) == expected


PUT_ON = [
    ("I've got the brassard on", "worn:day-brassard=yes"),
    ("I'm officer of the day, got the brassard on", "holds:officer-of-the-day=yes worn:day-brassard=yes"),
    ("I hold the pilot's badge, got the brassard on", "holds:pilot=yes worn:day-brassard=yes"),
    ("I've got the brassard", "holds:officer-of-the-day=yes"),
    ("I have the brassard on parade", "activity=parade holds:officer-of-the-day=yes"),
]


@pytest.mark.parametrize(("text", "expected"), PUT_ON)
def test_a_badge_that_is_on_is_worn(demo: Base, text: str, expected: str) -> None:
    """A badge stands for what it shows, except where it is said to be on."""
    found = read_statement(text, lexicon=demo.lexicon, lookup=demo.lookup)
    assert not isinstance(found, Abstain)
    assert write_facts(found) == expected


FACTS = [
    ("grade", "S2", ("grade", choices("S2"))),
    ("Grade", "s2", ("grade", choices("S2"))),
    ("grade", "S3 and above", ("grade", choices("S3", "C1", "C2"))),
    ("grade", "novices", ("grade", choices("N1", "N2"))),
    ("grade", "a novice", ("grade", choices("N1", "N2"))),
    ("rig", "gala dress", ("rig", choices("gala"))),
    ("rig", "gala", ("rig", choices("gala"))),
    ("rig", "concert", ("rig", choices("gala"))),
    ("venue", "indoors", ("venue", choices("indoors", "nave", "loft"))),
    ("venue", "not indoors", ("venue", choices("outdoors", "orchard"))),
    ("candles", "yes", ("candles", YES)),
    ("carrying candles", "no", ("candles", NO)),
    ("soloist", "yes", ("holds:soloist", YES)),
    ("holds:soloist", "no", ("holds:soloist", NO)),
    ("loudness", "middling and above", ("loudness", choices("middling", "roaring"))),
    ("warmth", "above 20 °C", ("warmth", ranges([Interval(20, None, low_open=True)]))),
    ("warmth", "9", ("warmth", ranges([Interval(9, 9)]))),
    ("warmth", "-3", ("warmth", ranges([Interval(-3, -3)]))),
    ("warmth", "ten", ("warmth", ranges([Interval(10, 10)]))),
    ("warmth", "below 8", ("warmth", ranges([Interval(None, 8, high_open=True)]))),
    ("warmth", "50 °F", ("warmth", ranges([Interval(10, 10)]))),
    ("joined-on", "2021-05-01", ("joined-on", ranges([Interval(737911, 737912, high_open=True)]))),
    ("shirtsleeves", "choirmaster", ("granted:shirtsleeves", choices("choirmaster"))),
    ("shirtsleeves", "no", ("granted:shirtsleeves", choices("none"))),
    ("shirtsleeves", "none", ("granted:shirtsleeves", choices("none"))),
]


def test_a_grant_by_anybody(choir: Base) -> None:
    (granted,) = [fact for fact in choir.lookup.base.facts if fact.id == "granted:shirtsleeves"]
    everybody = {value.id for value in granted.values} - {"none"}
    assert len(everybody) > 1
    assert parse_fact(choir.lookup, "shirtsleeves", "yes") == ("granted:shirtsleeves", choices(*everybody))


@pytest.mark.parametrize(("name", "value", "expected"), FACTS)
def test_fact(choir: Base, name: str, value: str, expected: tuple[str, Choices]) -> None:
    assert parse_fact(choir.lookup, name, value) == expected


@pytest.mark.parametrize(
    ("name", "value", "near"),
    [
        ("grad", "S2", "grade"),
        ("venue", "the knave", "nave"),
        ("venue", "the moon", "indoors"),
        ("candles", "perhaps", "yes or no"),
        ("warmth", "warm", "number"),
        ("warmth", "3 in", "does not measure"),
        ("joined-on", "yesterday", "2019-04-01"),
        ("grade", "S9", "S"),
        ("shoe size", "9", "no fact"),
    ],
)
def test_fact_that_is_none(choir: Base, name: str, value: str, near: str) -> None:
    with pytest.raises(UsageError, match=near):
        parse_fact(choir.lookup, name, value)


@pytest.mark.parametrize("value", ["xyz", "K", "S9", "the moon", "nav", "indors", "a"])
def test_no_more_than_three_values_are_offered_and_only_near_ones(choir: Base, value: str) -> None:
    for fact in choir.lookup.base.facts:
        if not fact.values:
            continue
        with pytest.raises(UsageError) as refused:
            parse_fact(choir.lookup, fact.id, f"{value} zz")
        said = str(refused.value)
        assert said.count(" or ") <= 2
        assert said.partition("Values are ")[2].count(", ") <= 2
        assert "Did you mean" not in said or "xyz" not in value


def test_only_what_is_written_nearly_alike_is_offered(choir: Base) -> None:
    labels = [label for item in choir.lookup.base.items for label in (item.label, *item.other_labels)]
    assert near_labels("help", choir.lookup) == ()
    assert near_labels("red", choir.lookup) == ()
    assert near_labels("thing that nobody had heard of before", choir.lookup) == ()
    for label in labels:
        word = max(label.split(), key=len)
        if len(word) > 6:
            found = near_labels(word[:3] + word[4:], choir.lookup)
            assert 1 <= len(found) <= 3
            names = [
                " ".join((i.label, *i.other_labels)) for i in choir.lookup.base.items if i.label in found
            ]
            assert any(word.casefold() in name.casefold() for name in names)


def test_an_amount_that_is_not_understood_has_an_example_in_the_unit_of_its_fact(choir: Base) -> None:
    with pytest.raises(UsageError, match="for example 10 °C"):
        parse_fact(choir.lookup, "warmth", "50F")
