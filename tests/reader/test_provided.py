"""What is claimed or asked of procedure and provisions: the one clause on it is shown, without yes or no.

What no clause says, or what several say as well, stays refused.
"""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened
from tests.reading.sheets import BOOKS

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in BOOKS}


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("eighth", "The foreman says standing by at home is duty. Is that so?", "1.3"),
        ("eighth", "Weights get measured as well, right?", "1.7"),
        ("eighth", "Is a medical waiver good for two years?", "8.4"),
        ("eighth", "Until the Wardrobe Keeper decides, may I carry on as before?", "8.1"),
        ("eighth", "Contracters are bound by the whole book, yes?", "1.1"),
        (
            "eighth",
            "Can a manager allow less protective clothing than the Line Safety Office has ordered?",
            "2.6",
        ),
        ("seventh", "The kit steward told me a cadet can be charged 60 crowns a year. Right?", "9.2"),
        ("seventh", "Does my son's waiver card have to say why he has it?", "8.4"),
        ("seventh", "Our local order has eight clauses. Is that all right?", "1.6"),
        ("seventh", "I was told that a refusal must be given within six weeks", "8.3"),
        ("seventh", "Are parents bound by the regulations?", "1.1"),
        ("seventh", "Who may see my waiver card?", "8.4"),
        ("seventh", "Who appoints the Dress Officer?", "1.4"),
        ("seventh", "How long does a religious waiver last now?", "10.7"),
        ("sixth", "A warm notice goes up at 26 degrees, right?", "N.3"),
        ("sixth", "I was told a second lost name plate in the same year is at my own cost", "N.8"),
        ("sixth", "I don't need anybody's leave to grow a beard any more, right?", "N.5"),
        ("sixth", "Does a medical waiver have to say why?", "9.2"),
        ("sixth", "Does a waiver free me from Part 8?", "9.3"),
        ("sixth", "What may I keep when I'm discharged?", "10.5"),
        ("fifth", "I don't need the Section Keeper's leave to grow a beard any more, right?", "3"),
        ("fifth", "A religious exemption runs out after six months, right?", "10.6"),
        ("fifth", "I was told a First Aid badge may stay up after the certificate lapses", "4.8"),
        ("fourth", "Waivers last two years, don't they?", "9.5"),
        ("fourth", "How long does a waiver last?", "9.5"),
        ("fourth", "Can my station commander relax the beard rule by local order?", "1.7"),
        ("fourth", "By when do I have to hand my kit back after leaving?", "10.5"),
        ("third", "The Chief grants religious waivers, right?", "57"),
        ("demo", "Is a religious waiver for life?", "9.1"),
        ("demo", "A medical waiver lasts three years, correct?", "9.1"),
        ("demo", "Is the first edition still in force?", "1.16"),
        ("eighth", "What happens if I lose my house mark?", "9.3"),
        ("eighth", 'What does "about" mean with a length of 60 mm?', "1.7"),
        ("demo", "What does K6 mean?", "1.2"),
        ("demo", "what does W4 stand for", "1.2"),
        ("fifth", "what's O4?", "1.2"),
        ("sixth", "what does HL mean", "2.1"),
        ("eighth", "What does L3 mean?", "2.1"),
    ],
)
def test_the_clause_on_it_is_shown(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome == "answer"
    assert answer.verdict is None
    assert clause in {citation.number for citation in answer.citations}


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("demo", "Is the mess open on Sundays?"),
        ("demo", "Is the diver's badge worth money?"),
        ("demo", "I'm a Commodore. White gloves with parade rig?"),  # no grade of the books
        ("demo", "What does W9 mean?"),
        ("seventh", "Can I wear a body warmer over Daily Dress?"),  # no such thing is in the books
        ("second", "Does the keeper of Cold Pike grant waivers?"),  # of whom no clause says so
        ("third", "Do passengers pay on towers?"),
        ("fourth", "Can the bandmaster sack me?"),
        ("fifth", "The Chief Marshal drives a van, right?"),
        ("sixth", "Does the Infirmary Sister work on Mondays?"),
        ("sixth", "Are guests fined for noise in the hall?"),
        ("seventh", "Do cadets get paid for gliding?"),
        ("eighth", "Do guests pay for the bus to the station?"),
        ("eighth", "Does the Line Superintendent live at Tarnhead?"),
    ],
)
def test_what_no_clause_provides_for_is_refused(
    bases: dict[str, KnowledgeBase], books: str, question: str
) -> None:
    answers = bases[books].ask(question, as_of=DAY)
    assert "answer" not in {answer.outcome for answer in answers}


def test_a_talk_goes_on_from_what_was_spoken_of_before_the_clause(bases: dict[str, KnowledgeBase]) -> None:
    base = bases["demo"]
    (first,) = base.ask("Which smock goes with the boat rig these days?", as_of=DAY)
    (shown,) = base.ask("so my old tarred one's no good any more?", as_of=DAY, previous=first.reading)
    assert [citation.number for citation in shown.citations] == ["2.7"]
    assert shown.reading.frame is not None
    (after,) = base.ask("And the new one, do I have to tar that?", as_of=DAY, previous=shown.reading)
    assert after.verdict == "prohibited"
