"""Beside an answer: a companion that may not be worn, what a case asks for, what has replaced a clause."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def ask(demo: KnowledgeBase, question: str) -> Answer:
    (answer,) = demo.ask(question, as_of=DAY)
    assert demo.verify(json.loads(answer_to_json(answer))) is None
    return answer


def test_a_companion_that_may_not_be_carried_is_named(demo: KnowledgeBase) -> None:
    aloft = ask(demo, "Climbing harness with the satchel aloft?")
    assert aloft.headline.endswith("But the satchel must not be carried here (Dress Order (2024) 7.13).")
    ashore = ask(demo, "Day shirt with the satchel in shore rig?")
    assert "But" not in ashore.headline


def test_a_companion_that_may_not_be_worn_itself_is_named(demo: KnowledgeBase) -> None:
    liner = "May I wear the liner with the storm coat in {} when the weather is foul?"
    answer = ask(demo, liner.format("boat rig"))
    assert answer.verdict == "permitted"
    assert "But the storm coat must not be worn here (Dress Order (2024) 3.5)." in answer.headline
    assert "But" not in ask(demo, liner.format("storm rig")).headline


@pytest.mark.parametrize(
    ("question", "note"),
    [
        (
            "May a K6 have a 3/4 in beard?",
            "Whether the beard may be worn at all: Yes. The beard may be worn, unless",
        ),
        ("How tall is the storm hat?", "speak of the storm hat, but no rule says this."),
        ("May a K5 wear the beard when diving?", ""),
        (
            "What does clause 2.15 say?",
            "was replaced by Interim Notice to the Dress Order (2026) 3 on 1 June 2026.",
        ),
        ("What does clause 2.2 say?", ""),
    ],
)
def test_notes(demo: KnowledgeBase, question: str, note: str) -> None:
    notes = ask(demo, question).notes
    assert any(note in text for text in notes) if note else not notes


def test_changes_ahead_have_their_day(demo: KnowledgeBase) -> None:
    (note,) = ask(demo, "May I wear the canvas belt in watch rig?").notes
    assert note.startswith("Changes ahead: From 1 April 2027, the canvas belt must not be worn.")


def test_what_is_not_listed_is_told_where_it_is() -> None:
    fourth = opened("fourth")
    (answer,) = fourth.ask("May I wear the knitted cap in fire kit at 3 degrees, without BA?", as_of=DAY)
    assert fourth.verify(json.loads(answer_to_json(answer))) is None
    assert answer.verdict == "prohibited"
    assert [citation.number for citation in answer.citations] == ["1.10", "3.9"]
    assert answer.notes[0].startswith("The knitted cap may be worn if the temperature is below 0 °C")


def test_who_must_ordinarily_not_is_told_so_first(demo: KnowledgeBase) -> None:
    said = ask(demo, "Must I wear the service cap indoors in watch rig?").headline
    assert said == (
        "No, this is prohibited: the service cap must not be worn, "
        "unless the wearer is on parade or holds the appointment of officer of the day."
    )


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("May I wear the parade tunic without the day shirt in parade rig?",
         "No: the day shirt must be worn with the parade tunic."),
        ("Spectacles without the eyewear cord on an open deck?",
         "No: the eyewear cord must be worn with the spectacles."),
        ("Hot work in the leather apron but without gauntlets?",
         "No: the heat gauntlets must be worn with the leather apron."),
        ("May I wear the service jersey without the day shirt in workshop rig?",
         "Yes: the service jersey must be worn, unless extreme heat dress has been granted by the District "
         "Superintendent or a higher authority."),
        ("May I wear the liner alone?", "No. The quilted liner must not be worn alone."),
    ],
)  # fmt: skip
def test_what_is_left_off_must_not_be_missing(demo: KnowledgeBase, question: str, headline: str) -> None:
    assert ask(demo, question).headline == headline


def test_what_is_said_to_be_left_off_is_told_when_it_must_be_worn(demo: KnowledgeBase) -> None:
    turban = ask(demo, "Turban instead of the helmet with a religious waiver?")
    assert any(
        note.startswith("Whether the boat helmet must be worn:") and "7.9" in note for note in turban.notes
    )
    knit = ask(demo, "Knit cap instead of the service cap in the watch rig in winter?")
    assert not any("must be worn" in note for note in knit.notes)


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("May I have a tattoo at a funeral?", "Yes. The tattoo may be worn, but must be covered."),
        ("May I have a tattoo?", "Yes. The tattoo may be worn."),
        (
            "Can I wear the work jacket in workshop rig where machinery is running?",
            "Yes. The work jacket may be worn, but must be closed.",
        ),
    ],
)
def test_a_duty_that_what_was_told_brings_stands_in_the_first_line(
    demo: KnowledgeBase, question: str, headline: str
) -> None:
    answer = ask(demo, question)
    assert answer.headline == headline
    assert not any("must be" in note for note in answer.notes)


def test_a_duty_that_was_asked_about_is_told_once(demo: KnowledgeBase) -> None:
    answer = ask(demo, "Carrying guests of the Board, may my tattoo be covered?")
    assert answer.headline == "Yes: the tattoo must be covered."
