"""Short plain questions of new people: on which days, who says yes, how many of what was told.

The expected clause stands beside each; the questions are of the trades of several books.
"""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
NAMES = ("tramway", "creamery", "cadets", "hotel", "infirmary", "airferry", "forest", "playhouse")
ANSWERED = (
    ("cadets", "What dates are black gloves alowed?", "conditional", "2.5", "November"),
    ("cadets", "What hours do we need the sun hat on at camp?", "conditional", "2.8", "11:00"),
    ("infirmary", "What dates can I wear a poppy?", "conditional", "4.5", "1 November"),
    ("creamery", "What dates is the wool hat allowed?", None, "2.4", "clause 2.4"),
    ("airferry", "What dates can the skirt be worn without tights?", None, "2.6", "clause 2.6"),
    ("forest", "What months is the wool pullover allowed?", None, "2.8", "clause 2.8"),
    ("airferry", "two charity pins at once not a problem?", "prohibited", "3.5", "No"),
    ("playhouse", "three pins at once, no harm in that?", "prohibited", "3.4", "No"),
    ("tramway", "Two long service stars at once, not a problem?", "prohibited", "3.4", "No"),
    (
        "creamery",
        "Contractor here. Can I come into the making room in yard boots and not bother with overshoes?",
        "conditional",
        "2.8",
        "No",
    ),
    ("infirmary", "what temp do tunics get washed at", "required", "7.2", "60"),
    ("airferry", "what temp are hi-vis jackets washed at", "required", "7.2", "40"),
    ("airferry", "Who has to give permission for a poppy?", None, "3.5", "clause 3.5"),
    ("forest", "Who do I ask about wearing a charity pin?", None, "6.5", "clause 6.5"),
    ("airferry", "why do we have to wear hi vis on the apron", "conditional", "6.1", "waistcoat"),
    ("infirmary", "Can I wear nail varnish?", "conditional", "5.2", "grade"),
    ("infirmary", "cook, nail varnish ok?", "conditional", "5.2", "No"),
    (
        "tramway",
        "Driver here. Do I have to keep my cap on in the driving cab?",
        "prohibited",
        "2.3",
        "peaked",
    ),
    ("playhouse", "does a musician wear a tie at a matinee?", "prohibited", "4.6", "tie"),
    ("cadets", "Who can let a cadet off being clean-shaven for a medical reason?", None, "6.4", "clause 6.4"),
    ("cadets", "Who can excuse a cadet from being clean-shaven?", None, "6.4", "clause 6.4"),
    ("airferry", "how high can the heel be once im on board, cabin crew", "required", "2.7", "30 mm"),
    ("airferry", "how high can my heels be in the terminal", "required", "2.7", "60 mm"),
    ("tramway", "how wide can a union badge be", "required", "3.5", "25 mm"),
    ("creamery", "Cheesemaker in making whites. Can I roll my sleeves up?", "conditional", "2.2", "No"),
    ("tramway", "what coulour sox can i wear with service dress", "required", "2.5", "black or navy"),
    (
        "hotel",
        "It's minus three and I'm a porter out on the forecourt. Do I need the big coat?",
        "required",
        "2.8",
        "Yes",
    ),
    (
        "forest",
        "Why do we have to have the chainsaw boots? Mine weigh a ton.",
        "conditional",
        "5.2",
        "chainsaw",
    ),
    ("tramway", "How many shirts is a new driver issued with?", "required", "7.1", "5"),
)
ASKED_BACK = (
    ("tramway", "Do I have to wear my cap?"),  # the peaked cap, the workshop cap or the kepi
    ("cadets", "I'm a cadet, cap in the boat ok?"),  # the knitted cap may be worn there
    ("infirmary", "porter, nail varnish ok?"),  # clear varnish alone
    ("playhouse", "Ushers: tie on queue duty?"),
    ("airferry", "how high can my heels be"),  # those of the court shoes or of the cabin shoes
    ("tramway", "can I wear the big coat when it's 5 degrees"),  # the overcoat, or that of heritage dress
)
NOT_READ = (
    ("hotel", "I've three finger rings. All four ok?"),
    ("infirmary", "Two masks is not the problem, is it?"),
    ("creamery", "What temp do we hire for the cold store?"),
    ("cadets", "What dates does the season run?"),
    ("cadets", "Who can let a cadet off swimming?"),
    ("infirmary", "Who can let me off short clean nails?"),
    ("creamery", "Can I roll my trousers up?"),
)


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in NAMES}


@pytest.mark.parametrize(("books", "question", "verdict", "clause", "said"), ANSWERED)
def test_it_is_answered(
    bases: dict[str, KnowledgeBase], books: str, question: str, verdict: str | None, clause: str, said: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert (answer.outcome, answer.verdict) == ("answer", verdict)
    assert clause in [citation.number for citation in answer.citations]
    assert said in answer.headline


@pytest.mark.parametrize(("books", "question"), ASKED_BACK)
def test_it_is_asked_which(bases: dict[str, KnowledgeBase], books: str, question: str) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.outcome == "ask"


@pytest.mark.parametrize(("books", "question"), NOT_READ)
def test_it_is_not_answered(bases: dict[str, KnowledgeBase], books: str, question: str) -> None:
    assert all(answer.outcome != "answer" for answer in bases[books].ask(question, as_of=DAY))
