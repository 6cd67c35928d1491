"""Leave that was granted, bare degrees, decibels, deeds at home, who starts where, and what differs."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask

CASES = """
firebrigade: I've been granted a faith waiver and I keep a beard. So I'm fine for breathing apparatus, yes?
    May anyone with the faith waiver wear the beard, with the breathing apparatus?
zoo: I've been granted a faith letter. Can I wear a turban?
    May anyone with the faith letter waiver wear the turban?
zoo: Woolly hat outdoors when it's 6?
    May anyone wear the woolly hat, out of doors, air temperature 6 °C?
zoo: Woolly hat outdoors at +6?
    May anyone wear the woolly hat, out of doors, air temperature 6 °C?
patrol: Neck tube in Black Corrie when it's +3 and no wind?
    May anyone wear the neck tube, air temperature 3 °C, wind speed 0 km/h, area Black Corrie?
cathedral: its 10 and dry can the probationers keep there cloaks on outside
    May a Probationer wear the choir cloak, place out of doors, dry weather, air temperature 10 °C?
school: Machine's running at 80 dB. Are ear defenders a must?
    Must anyone wear the ear defenders, near running machinery, not in noise of 85 dB or more?
school: Noise is 85 dB. Ear defenders?
    May anyone wear the ear defenders, in noise of 85 dB or more?
school: My trousers are too long. Can I take them up?
    May anyone shorten the grey trousers?
zoo: A necklace on duty, harmless enough, surely?
    May anyone wear the necklace, on duty?
forest: What's the difference between a trainee warden's neckerchief and mine? I'm a Senior Warden.
    What differs for the neckerchief, a Trainee Warden compared with a Senior Warden?
undertakers: What do I put on to wash the cars?
    What may people wear, washing a vehicle?
school: I start in the First Year in January. What do I wear for lessons?
    What may a First Year wear, in a lesson, month January?
hotel: phone in my pocket ok?
    May anyone carry the private telephone?
"""


def _cases() -> list[tuple[str, str, str]]:
    lines = CASES.strip().splitlines()
    return [
        (*asked.split(": ", 1), read.strip()) for asked, read in zip(lines[::2], lines[1::2], strict=True)
    ]


@pytest.mark.parametrize(("name", "question", "read"), _cases())
def test_is_read_as_meant(ask: Ask, name: str, question: str, read: str) -> None:
    assert ask(name, question).reading.text == read


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("zoo", "I'm a +1 guest. Woolly hat outdoors?"),  # no degrees
        ("zoo", "It's 3 of us. Woolly hat outdoors?"),
        ("school", "Can my mum wear my house scarf?"),  # who wears it must be known
        ("creamery", "Can my husband wear my white coat?"),
        ("hotel", "The General Manager's cat granted me a faith waiver. Can I wear a turban?"),
        # "not even in the corridor to the chapel of rest"
        ("undertakers", "Can't I nip along the corridor to the chapel of rest in my scrubs?"),
        ("airferry", "What's the difference between Skerra and everywhere else for hi-vis in daylight?"),
    ],
)
def test_what_is_not_told_is_not_understood(ask: Ask, name: str, question: str) -> None:
    assert ask(name, question).outcome == "abstain"


def test_a_clause_that_tells_two_grades_apart_is_shown_where_no_rule_does(ask: Ask) -> None:
    # "... and a Crew Leader three. The bars are red; those of officers are silver"
    answer = ask("firebrigade", "What's the difference between a crew leader's rank slides and an officer's?")
    assert [citation.number for citation in answer.citations] == ["4.4"]
    assert not answer.headline.startswith("Nothing differs")
