"""What differs between two sides, in the ways of asking it, and a clause that tells them apart in words."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask

CASES = """
zoo: What's the difference between helpers and staff when it comes to mobiles?
    What differs for the mobile telephone, helpers compared with staff?
forest: What's the difference between a trainee warden's neckerchief and mine? I'm a Senior Warden.
    What differs for the neckerchief, a Trainee Warden compared with a Senior Warden?
demo: What's the difference between the summer cap and the winter cap?
    What differs for the service cap and the knit cap, not winter compared with winter?
creamery: What do I have to put on to clean with acid?
    What must people wear, cleaning with acid or lye?
undertakers: What do I put on to wash the cars?
    What may people wear, washing a vehicle?
school: I start in the First Year in January. What do I wear for lessons?
    What may a First Year wear, in a lesson, month January?
hotel: phone in my pocket ok?
    May anyone carry the private telephone?
zoo: I'm a vet. Nobody minds if I pop across to the kiosk in my scrubs, do they?
    May anyone of the vets branch wear the scrubs, at the kiosk?
"""


def _cases() -> list[tuple[str, str, str]]:
    lines = CASES.strip().splitlines()
    return [
        (*asked.split(": ", 1), read.strip()) for asked, read in zip(lines[::2], lines[1::2], strict=True)
    ]


@pytest.mark.parametrize(("name", "question", "read"), _cases())
def test_is_read_as_meant(ask: Ask, name: str, question: str, read: str) -> None:
    assert ask(name, question).reading.text == read


def test_a_clause_that_tells_two_grades_apart_is_shown_where_no_rule_does(ask: Ask) -> None:
    # "... and a Crew Leader three. The bars are red; those of officers are silver"
    answer = ask("firebrigade", "What's the difference between a crew leader's rank slides and an officer's?")
    assert [citation.number for citation in answer.citations] == ["4.4"]
    assert not answer.headline.startswith("Nothing differs")


@pytest.mark.parametrize(
    ("name", "question"),
    [
        # "not even in the corridor to the chapel of rest"
        ("undertakers", "Can't I nip along the corridor to the chapel of rest in my scrubs?"),
        ("airferry", "What's the difference between Skerra and everywhere else for hi-vis in daylight?"),
    ],
)
def test_what_is_not_told_is_not_understood(ask: Ask, name: str, question: str) -> None:
    assert ask(name, question).outcome == "abstain"
