"""Who, when, how often, what does it cover: in other words than the books', read as what they come to."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "third", "fifth", "sixth", "seventh")}


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("demo", "How often should the climbing harness be looked at?", "8.10"),
        ("demo", "What does 'heavy work' cover?", "1.5"),
        ("third", 'What does "hard weather" include?', "2"),
        ("fifth", "What does “secure side” cover?", "1.5"),
        ("demo", "If I take the cap off outside, where do I put it?", "4.3"),
        ("demo", "Which hand or arm do I carry the cap in when I'm not wearing it outdoors?", "4.3"),
        ("demo", "How do I carry the service cap?", "4.3"),
        ("fifth", "When do I get my tunic and the peaked cap?", "10.1"),
        ("fifth", "who can turn down a religious exemption", "10.6"),
        ("fifth", "how many kilometers for the Long Road badge", "4.8"),
        ("third", "From which date does the new rule on the station parka hold?", "27"),
    ],
)
def test_a_clause_tells_it(bases: dict[str, KnowledgeBase], books: str, question: str, clause: str) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    ("books", "question", "read"),
    [
        ("third", "How many white shirts for each person?", "How many white shirts may be owned?"),
        (
            "demo",
            "Do I need the diver qualification for the diver's badge?",
            "Is it prohibited for anyone without the diver qualification to wear the diver's badge?",
        ),
        (
            "third",
            "I have bad feet. Must I have the medical waiver to wear sports shoes?",
            "Is it prohibited for anyone without the medical waiver to wear the sports shoes?",
        ),
        (
            "fifth",
            "does dog section need a medical note for zip-sided boots",
            "Is it prohibited for anyone of the Dog Section without the medical note waiver to wear the"
            " zip-sided boots?",
        ),
        ("demo", "Do I need the diver's badge?", "Must anyone wear the diver's badge?"),
        (
            "demo",
            "why hasn't a Third Hand got the knot on his sleeve",
            "Why, or why not, may an H1 wear the hands' knot?",
        ),
        (
            "third",
            "Why hasn't the tower branch got the belt?",
            "Why, or why not, may anyone of the tower branch wear the belt?",
        ),
        (
            "demo",
            "What do we all wear at a funeral to mark it?",
            "What may people wear, attending a funeral?",
        ),
    ],
)
def test_it_is_read_in_plain_words(
    bases: dict[str, KnowledgeBase], books: str, question: str, read: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.reading.text == read


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("demo", "Does my head covering go over the boat helmet or under it?"),  # not of its colour
        ("demo", "Are the wool gloves worn over or under the deck gloves?"),
        ("third", "Is the fleece worn over or under the shell jacket?"),
        ("demo", "If I take the storm coat off, where do I put it?"),  # not of how it is buttoned
        ("demo", "When I take the boots off, where should I leave them?"),
        ("demo", "When do I get my pay?"),
        ("demo", "What do I have to buy myself?"),  # what is owned may have been given
    ],
)
def test_what_no_rule_says_is_not_told_of_another_matter(
    bases: dict[str, KnowledgeBase], books: str, question: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome != "answer"


def test_what_goes_over_what_is_told_where_a_rule_says_it(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["demo"].ask("Does the boat helmet go over or under the knit cap?", as_of=DAY)
    assert answer.headline == "The boat helmet must be over the knit cap."


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        ("seventh", "Mum only pours the tea. Do the dress rules apply to her as a parent?", "1.1"),
        ("seventh", "do I have to renew my religious waiver now I'm in another unit?", "10.7"),
        ("seventh", "Can the instructor choose which four skill badges I wear?", "5.7"),
        (
            "seventh",
            "Is the skipper allowed to ask for a doctor's note for a medical waiver of six weeks?",
            "8.1",
        ),
        ("seventh", "Am I allowed to appeal against a refusal?", "8.3"),
        ("fifth", "Am I entitled to refuse a religious exemption as Depot Commandant?", "10.6"),
        ("fifth", "Is the senior member allowed to decide what foul weather is?", "1.4"),
        ("sixth", "Can I be fined for a fault?", "10.3"),
        ("sixth", "Can I lose pay if I can't wear protective clothing?", "9.3"),
        ("third", "Can a Section Master grant me a medical waiver?", "57"),
        ("third", "Do contractors follow Part Four?", "9"),
    ],
)
def test_the_clause_is_shown_of_what_is_done_but_not_worn(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome == "answer"
    assert answer.verdict is None
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    ("books", "question"),
    [
        ("seventh", "Do I have to pay for lunch in the canteen?"),
        ("seventh", "Do I have to return the library book by Friday?"),
        ("seventh", "Do I have to show my bus pass to staff?"),
        ("seventh", "May the instructor choose the songs we play?"),
        ("fifth", "Can the Marshal order us to work on Sundays?"),
        ("fifth", "Does the parking permit expire?"),
        ("sixth", "Can the cook order pizza?"),
        ("third", "Do I have to pay for a lost harness?"),
        ("third", "It's thirty degrees in the ticket hall. Can we have short sleeves?"),  # what is worn
    ],
)
def test_no_clause_is_shown_of_what_none_says(
    bases: dict[str, KnowledgeBase], books: str, question: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome != "answer"
