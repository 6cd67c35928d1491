"""A circumstance is said as the question that asks for it has it."""

from __future__ import annotations

import msgspec
import pytest

from kb.model.records import Fact
from kb.wording.positions import grouped_places
from kb.wording.situations import yes_no_phrase
from tests.wording.bases import words

LOOKUP = words()

ASKED = [
    ("hair tied up", "Is the hair gathered up?", "the hair is gathered up", "the hair is not gathered up"),
    ("above a net", "Has a net been hung?", "the wearer is above a net", "the wearer is not above a net"),
    (
        "lapsed certificate",
        "Has the certificate lapsed?",
        "the certificate has lapsed",
        "the certificate has not lapsed",
    ),
    (
        "no longer in the squadron",
        "Have you left the squadron?",
        "the wearer has left the squadron",
        "the wearer has not left the squadron",
    ),
    (
        "invited to the table",
        "Have you been invited, and taken your seat?",
        "the wearer is invited to the table",
        "the wearer is not invited to the table",
    ),
    (
        "a porter of the houses",
        "Are you a porter of one of the houses?",
        "the wearer is a porter of the houses",
        "the wearer is not a porter of the houses",
    ),
    (
        "kit of one's own",
        "Do you carry a lamp of your own?",
        "the wearer carries a lamp of the wearer's own",
        "the wearer does not carry a lamp of the wearer's own",
    ),
    (
        "while spraying is going on",
        "Is spraying going on?",
        "spraying is going on",
        "spraying is not going on",
    ),
    (
        "pacemaker",
        "Do you wear a pacemaker?",
        "the wearer wears a pacemaker",
        "the wearer does not wear a pacemaker",
    ),
    ("watch", "Do you go on watch?", "the wearer goes on watch", "the wearer does not go on watch"),
    (
        "beard longer than the thumb",
        "Is the beard longer than the thumb?",
        "the beard is longer than the thumb",
        "the beard is not longer than the thumb",
    ),
    (
        "from 1 November to 11 November",
        "Is it between 1 November and 11 November?",
        "the day is from 1 November to 11 November",
        "the day is not from 1 November to 11 November",
    ),
    ("lapel", "Does the garment have a lapel?", "the case is one of lapel", "the case is not one of lapel"),
]


@pytest.mark.parametrize(("label", "asked", "yes", "no"), ASKED, ids=[asked for _, asked, _, _ in ASKED])
def test_a_circumstance_is_said_as_it_is_asked(label: str, asked: str, yes: str, no: str) -> None:
    one = next(fact for fact in LOOKUP.base.facts if fact.kind == "yes_no" and fact.family == "situation")
    fact: Fact = msgspec.structs.replace(one, label=label, ask=asked)
    assert yes_no_phrase(LOOKUP, fact, frozenset({"yes"})).clause == yes
    assert yes_no_phrase(LOOKUP, fact, frozenset({"no"})).clause == no


def test_garments_that_share_a_place_are_said_together() -> None:
    smock, coat = (
        "on the smock, on the left side, 9 in from the throat",
        "on the coat, on the left side, 9 in from the throat",
    )
    assert grouped_places((smock, coat)) == [
        "on the smock or the coat, on the left side, 9 in from the throat"
    ]
    other = "on the coat, on the right side"
    assert grouped_places((smock, other)) == [smock, other]
    beside = (
        "beside the tab on the smock, on the left side",
        "beside the flap on the coat, on the left side",
    )
    assert grouped_places(beside) == list(beside)
    assert grouped_places(("at the throat", "anywhere")) == ["at the throat", "anywhere"]
