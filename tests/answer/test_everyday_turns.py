"""Everyday turns of phrase over many books: what is answered, and by which clauses.

Decided from the clause texts; every answer is checked apart from the reasoner.
"""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask

TURNS = [
    # "Any length" claims that it may be longer than the rules have it at most
    ("patrol", "Beards can be any length, true?", "No. The length of the beard must be at most 30", "5.1"),
    (
        "museum",
        "With a faith waiver my beard can be any length. True?",
        "Yes. The length of the beard may be more than 25 mm.",
        "6.5",
    ),
    (
        "creamery",
        "Somebody told me a beard can be any length as long as you wear the snood. True?",
        "No. The length of the beard must not be more than 25 mm",
        "3.2",
    ),
    # What goes with the thing that is asked about, and is left off
    (
        "hotel",
        "Can I wear the skirt without tights?",
        "It depends on the air temperature and the occasion: the stockings must be worn with the black skirt",
        "3.4",
    ),
    (
        "hotel",
        "Can I wear the tailcoat without a bow tie in evening livery?",
        "No: the black bow tie must be worn with the claret tailcoat.",
        "2.3",
    ),
    # Who has a beard asks whether it may stay
    # Put to be denied
    (
        "undertakers",
        "Sunglasses when the family is there: not on, are they?",
        "No. The sunglasses must",
        "7.5",
    ),
    ("museum", "Sandals in the workshop: that's no good, is it?", "No. The sandals must not be worn", "5.2"),
    # Without a verb, the act that the rule on the place is of; instead of what its clause names
    (
        "cathedral",
        "rucksack going up the tower stair, thats no good is it",
        "No. The rucksack must not be w",
        "5.4",
    ),
    ("patrol", "airbag pack on a chairlift?", "No. The airbag pack must not be worn.", "2"),
    ("forest", "Sun cap on fire watch instead of the hat?", "Yes. The sun cap may be worn", "3"),
    # Let off it
    ("quarry", "Do I get let off the hard hat inside a closed cab?", "Yes. The hard hat need not be", "3.1"),
    ("patrol", "Do drivers get let off the name badge in cab dress?", "Yes. The name badge need not", "3.3"),
    # A little of it, an hour, a post
    (
        "infirmary",
        "night porter here, trainers are still fine after nine aren't they?",
        "No. The train",
        "A2",
    ),
    ("quarry", "Do I need the vest out of doors after ten at night?", "Yes. The high-visibility vest", "3.2"),
    ("museum", "I'm doing the loading bay, lorries moving. Do I need the vest?", "Yes. The high-vis", "5.5"),
    (
        "zoo",
        "I'm a regular Volunteer, not a Lead Volunteer. Can I wear the otter pin?",
        "Yes. The otter",
        "2",
    ),
    # What goes on for it, and where on the body
    (
        "airferry",
        "What do I put on to refuel?",
        "Refuelling, the goggles and the anti-static coat must",
        "6.5",
    ),
    (
        "forest",
        "What do I put on to use a chainsaw?",
        "Working with a chainsaw, the forester's helmet",
        "2.2",
    ),
]


@pytest.mark.parametrize(("name", "question", "headline", "clause"), TURNS, ids=[t[1] for t in TURNS])
def test_it_is_answered_as_it_is_meant(
    ask: Ask, name: str, question: str, headline: str, clause: str
) -> None:
    answer = ask(name, question)
    assert answer.outcome == "answer"
    assert answer.headline.startswith(headline)
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("name", "question", "clause"),
    [
        # Who gives the leave under which a thing may be left off
        ("museum", "Who can let us take ties off in hot weather?", "6.6"),
        ("firebrigade", "Who can say the tie comes off when it's roasting?", "6.6"),
        # When what was issued is due back
        # Who bears the cost, where a clause says who finds it or issues it
        ("museum", "Who pays for my black shoes, me or the museum?", "6.1"),
    ],
)
def test_the_clause_is_shown(ask: Ask, name: str, question: str, clause: str) -> None:
    answer = ask(name, question)
    assert answer.outcome == "answer"
    assert [citation.number for citation in answer.citations] == [clause]


def test_any_length_is_not_lost_beside_what_else_is_said(ask: Ask) -> None:
    answer = ask("forest", "My beard can be any length as long as it's neat, right?")
    assert answer.outcome == "abstain"
