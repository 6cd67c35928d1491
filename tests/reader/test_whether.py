"""A yes or no right after a fact belongs to that fact; one that belongs to nothing stops the question."""

from __future__ import annotations

import datetime

import pytest

from kb.model.lookup import Lookup
from kb.model.values import NO, YES
from kb.reader import split_questions
from shell.session import Session
from shell.turns import take_line
from tests.opening import opened
from tests.reader.conftest import Base

_TODAY = datetime.date(2026, 11, 25)
_SAID = ("? {0}", ": {0}", " - {0}", " {0}", "? {0}.", ": {0}, please")
_WORDS = {"no": NO, "nope": NO, "nah": NO, "never": NO, "yes": YES, "yep": YES}


def _facts(lookup: Lookup) -> list[tuple[str, str]]:
    """The yes-or-no facts of the situation, with what they are called."""
    return [
        (fact.id, name)
        for fact in lookup.base.facts
        if fact.family == "situation" and fact.kind == "yes_no"
        for name in (fact.label, *fact.other_labels)
    ]


@pytest.mark.parametrize("books", ["demo", "second", "third"])
def test_no_fact_is_turned_round(demo: Base, second: Base, third: Base, books: str) -> None:
    base = {"demo": demo, "second": second, "third": third}[books]
    labels = (i.label for i in base.lookup.base.items if len(base.lookup.narrower(i.id)) == 1)
    item = next(label for label in labels if base.read(f"{label}?").query is not None)
    wrong, right = [], 0
    for fact, name in _facts(base.lookup):
        for form in _SAID:
            for word, meant in _WORDS.items():
                text = f"{item}, {name}{form.format(word)}"
                parts = split_questions(text)
                query = base.read(text).query if len(parts) == 1 else None
                said = dict(query.case.facts).get(fact) if query is not None else None
                wrong += [(text, parts)] if query is not None and said != meant else []
                right += said == meant
    assert not wrong
    assert right or not _facts(base.lookup)


@pytest.mark.parametrize(
    "text",
    [
        "May I wear the headphones on watch? No.",  # answers the question, or says that there is no watch
        "gloves, hauling: no gloves",
        "the cap? no, the scarf",
        "May I wear the scarf at 5 degrees? no",
        "May I wear the scarf, hauling, no",
        "The scarf, not hauling? no",
        "The scarf, hauling: n/a",
        "The scarf, hauling? we aren't",
        "The scarf, hauling? I am not",
        "The scarf, hauling? not today",
    ],
)  # fmt: skip
def test_a_no_that_belongs_to_nothing_stops_the_question(demo: Base, text: str) -> None:
    assert demo.read(text).query is None


TALKS = [
    (("Gloves in the rain?", "no hauling", "sleeves: down"),
     "May anyone wear the deck gloves, not hauling lines, rain, sleeves down?"),
    (("Gloves in the rain?", "hauling lines - no"),
     "May anyone wear the deck gloves, not hauling lines, rain?"),
    (("Gloves in the rain?", "hauling? no"), "May anyone wear the deck gloves, not hauling lines, rain?"),
    (("Headphones travelling on duty?", "in town? nope", "on watch: no"),
     "May anyone wear the headphones, not in town, not on watch, travelling on duty?"),
    (("headphones travelling on duty. on watch? no. in town? no.",),
     "May anyone wear the headphones, not in town, not on watch, travelling on duty?"),
    (("The scarf in shore rig?", "no machinery", "neck cloth: no"),
     "May anyone wear the wool scarf, in shore rig, not machinery running, without the neck cloth?"),
    (("May a K5 wear the liner in boat rig?", "storm coat? yes"),
     "May a K5 wear the quilted liner, in boat rig, with the storm coat?"),
    (("Gloves in the rain?", "nope, sleeves down"),
     "May anyone wear the deck gloves, not hauling lines, rain, sleeves down?"),
    (("Gloves in the rain?", "no, hauling"), "May anyone wear the deck gloves, hauling lines, rain?"),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "expected"), TALKS)
def test_replies_with_yes_or_no(lines: tuple[str, ...], expected: str) -> None:
    base = opened("demo")
    session = Session(as_of=_TODAY)
    for line in lines:
        session, _ = take_line(session, line, base)
    assert session.answers[-1].reading.text == expected


@pytest.mark.parametrize(
    "line", ["no sleeves up", "no in town", "hauling n", "I'm hauling. no", "hauling? no no"]
)
def test_a_reply_whose_no_is_not_clear_changes_nothing(line: str) -> None:
    base = opened("demo")
    session, _ = take_line(Session(as_of=_TODAY), "Gloves in the rain?", base)
    after, reply = take_line(session, line, base)
    assert reply.complaint or after.missed is not None  # the line itself was not understood
    assert after.answers == session.answers
    assert after.replies == session.replies
    assert after.profile == session.profile


def test_a_no_that_nothing_asks_for_is_of_nothing_worn() -> None:
    base = opened("demo")
    session, _ = take_line(Session(as_of=_TODAY), "May I carry the umbrella in boat rig?", base)
    after, _ = take_line(session, "no", base)
    assert after.missed is not None
    assert after.answers == session.answers
