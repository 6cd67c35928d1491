"""What a thing is of, whose it was, why it is wanted, what is done with it, where books say nothing of that.

Such words are left out and named where no rule turns on them, and stop the question where one may.
"""

from __future__ import annotations

import pytest

from tests.opening import opened
from tests.reading.sheets import TODAY

ANSWERED = [
    ("hotel", "Can I wear a thin gold neck chain under my shirt?", "Yes. The neck chain may", "thin"),
    ("hotel", "Can I wear my grandad's watch with the gala livery?", "No. The wristwatch must", "grandad's"),
    ("hotel", "Can I wear my gran's ring in the kitchen?", "Yes. The finger ring may", "gran's"),
    ("forest", "Can I wear my late grandad's medals?", "No. The medals must not", ""),
    ("cadets", "Can I wear my dad's medals with parade rig?", "No. The medals must not", ""),
    ("demo", "May I wear my grandfather's rescue medal in parade rig?", "No. The rescue medal must", ""),
    ("demo", "May I wear my brother's rescue medal at the market?", "No. The rescue medal must", "market"),
    ("shipyard", "Can I carry a lighter at hot work, it's only small?", "No. The lighter", "small"),
    (
        "shipyard",
        "Can I have my lighter with me in a confined space because it was my grandad's?",
        "No. The lighter",
        "grandad's",
    ),
    ("shipyard", "Do I need a hard hat on the slips, it's only for a sec?", "Yes. The hard hat", "sec"),
    (
        "shipyard",
        "Can I leave off the hard hat on the slips, it's only five minutes?",
        "No: the hard",
        "only",
    ),
    ("quarry", "Can I have my phone on me in the saw shed if it's switched off?", "No. The mobile", "off"),
    ("museum", "Can I wear sandals on duty, they're only flat ones?", "No. The sandals", "flat"),
    ("quarry", "Can I wear sandals past the car park?", "No. The sandals", ""),
    ("shipyard", "Can I clip a union badge on my reefer jacket?", "Yes. The society or union badge", ""),
    ("firebrigade", "Do I need the high-vis?", "It depends", ""),
    ("demo", "How often does an undershirt have to be washed?", "The books are silent", "often"),
    (
        "museum",
        "Can I have my blazer sleeves rolled?",
        "No: the slate blazer must be worn with the sleeves",
        "",
    ),
    (
        "museum",
        "Must the blazer sleeves be unrolled?",
        "Yes. The slate blazer must be worn with the slee",
        "",
    ),
]


@pytest.mark.parametrize(("books", "question", "headline", "gone"), ANSWERED)
def test_is_answered_without(books: str, question: str, headline: str, gone: str) -> None:
    (answer,) = opened(books).ask(question, as_of=TODAY)
    assert answer.headline.startswith(headline)
    assert not gone or any(gone in words for words in answer.reading.unused)


STOPPED = [
    ("demo", "Can I wear my wife's scarf?", "it is none of the uniform"),
    ("demo", "May I wear thin gloves on watch?", "by a word for more than one"),
    ("third", "May I carry a small knife in the hall?", "its blade is measured"),
    ("demo", "May I wear white gloves with the watch rig, they're too small?", "of another size"),
    ("demo", "For medical reasons, may I wear earrings in parade rig?", "they may be excused"),
    ("undertakers", "Can I wear a thin yellow tie?", "the rules have a black one and a coloured one"),
    ("undertakers", "Do I have to hold the top hat at the committal?", "it is held, though not worn"),
    ("ambulance", "Can I wear my grandad's medals with parade dress?", "no rule tells whose they must be"),
    ("zoo", "Can I wear a thin plastic bracelet?", "it is one of plain metal that may be worn"),
    (
        "shipyard",
        "Can I carry a lighter at hot work instead of matches, it's only small?",
        "of something else",
    ),
    ("zoo", "Can I wear a bracelet because my daughter made it?", "where it may be worn depends"),
    ("shipyard", "How small may a lighter be at hot work, it's only a wee one?", "asks for no yes or no"),
]


@pytest.mark.parametrize(
    ("books", "question"), [line[:2] for line in STOPPED], ids=[line[2] for line in STOPPED]
)
def test_is_not_answered_so(books: str, question: str) -> None:
    answers = opened(books).ask(question, as_of=TODAY)
    assert all(not answer.headline.startswith(("Yes", "No")) for answer in answers)
