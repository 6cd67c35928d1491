"""Everyday deeds and names of parts of the body are answered by the rule that has another word for them."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
NAMES = (
    "third", "eighth", "infirmary", "playhouse", "zoo", "hotel", "tramway", "school", "pool", "firebrigade",
    "museum", "racecourse",
)  # fmt: skip


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in NAMES}


@pytest.mark.parametrize(
    ("books", "question", "clause"),
    [
        # nails and hair by how they look
        ("hotel", "I'm a waiter. Can I have red nails?", "5.6"),
        # another verb than the clause's
        ("zoo", "May I wash my scrubs at home?", "7.2"),
        ("hotel", "Could I take the tailcoat to a dry cleaner in town?", "7.2"),
        ("firebrigade", "Can't I just lift the visor for a second while the saw is running?", "2.8"),
        ("pool", "Can I zip up my lido coat on watch?", "2.3"),
        ("tramway", "Can I roll my sleeves up at the lathe?", "5.4"),
        ("tramway", "Can I keep my gloves on while I use the drill?", "5.4"),
        ("school", "Can I keep my gloves on at the lathe while it's running?", "5.3"),
        ("playhouse", "i can put the dinner jacket thru the washing machine cant i", "7.3"),
        # what is told around it
        ("tramway", "Can I go for a pint in my tunic?", "1.4"),
        ("pool", "Can I pop to the pub in my guard shirt?", "1.5"),
        ("pool", "I've lost my pool shoes. Can I borrow flip-flops for the poolside?", "3.1"),
        (
            "museum",
            "A Conservator walked through the gallery carrying her mobile and says she may. Is she right?",
            "2",
        ),
    ],
)
def test_what_is_asked_by_another_word_is_not_allowed(
    bases: dict[str, KnowledgeBase], books: str, question: str, clause: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.headline.startswith("No")
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("books", "question", "said"),
    [
        ("zoo", "Can I wash my scrubs at the zoo?", "Yes"),
        ("pool", "Can I have my lido coat open on watch?", "Yes"),
        ("firebrigade", "Is the visor lowered when the saw is running?", "Yes"),
        ("museum", "A guard walked through the gallery in a hurry. Is she right?", ""),
        ("zoo", "Can I take my scrubs home?", ""),  # nothing is said of washing them
        ("hotel", "Can I take my tailcoat home?", ""),
    ],
)
def test_what_is_so_or_says_too_little_gets_no_such_no(
    bases: dict[str, KnowledgeBase], books: str, question: str, said: str
) -> None:
    headlines = [answer.headline for answer in bases[books].ask(question, as_of=DAY)]
    assert all(headline.startswith(said) and not headline.startswith("No") for headline in headlines)


@pytest.mark.parametrize("books", ["pool", "museum", "hotel"])
def test_hoops_are_no_studs(bases: dict[str, KnowledgeBase], books: str) -> None:
    """Where a book calls its studs earrings, or says that they must be studs."""
    for question in ("Are hoops allowed?", "May I wear small hoop earrings?"):
        (answer,) = bases[books].ask(question, as_of=DAY)
        assert answer.headline.startswith("No.")


def test_a_closed_class_is_closed_to_small_ones(bases: dict[str, KnowledgeBase]) -> None:
    (answer,) = bases["tramway"].ask("May I wear small hoop earrings?", as_of=DAY)
    assert (answer.verdict, answer.reading.unused) == ("prohibited", ("small",))
    (asked,) = bases["pool"].ask("May I wear tiny ear studs?", as_of=DAY)  # they have a size
    assert asked.outcome == "ask"
