"""What no clause mentions is asked about as one of the class that a rule closes: a charity pin, a hoodie."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("name", "question", "clause"),
    [
        # "Badges, pins and stickers that this book does not mention are not worn."
        ("zoo", "May I have a rainbow badge on my shirt?", "4.4"),
        ("zoo", "Can I wear a poppy badge on duty?", "4.4"),
        # "Badges and jewellery that this book does not provide for are not worn on duty."
        ("pool", "Can I wear a charity badge on duty?", "1.3"),
        # "Badges, pins and favours which this Book does not mention are not worn on duty."
        ("museum", "charity pin on the blazer?", "1.4"),
        # "No badge, ribbon, pin or jewellery that this Book does not mention is worn at a service."
        ("cathedral", "Can I wear a little charity pin at Evensong?", "1.4"),
        # "no garment and no adornment is worn that this Book does not name"
        ("school", "Can I put a hoodie on under my jacket in day dress?", "1.5"),
        # "In full mourning nothing is worn that these rules do not mention."
        ("undertakers", "May I wear a cravat in full mourning?", "1.3"),
        ("undertakers", "May I wear a pocket watch on a chain in full mourning?", "1.3"),
        ("seventh", "Can I wear jeans with Work Dress?", "3.1"),
    ],
)
def test_it_may_not_be_worn(ask: Ask, name: str, question: str, clause: str) -> None:
    answer = ask(name, question)
    assert answer.headline.startswith("No. Any other ")
    assert "that no rule names" in answer.reading.text
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("name", "question", "read"),
    [
        # these are mentioned, under a name or in the words of a clause
        ("shipyard", "Can I wear a union badge on my reefer jacket?", "the society or union badge"),
        ("playhouse", "Can I wear a poppy on 5 November?", "the remembrance poppy"),
        ("eighth", "Can I wear a charity badge?", "the badge of a union, charity or club"),
        ("demo", "Can I wear a scarf with the watch coat?", "the wool scarf"),
    ],
)
def test_what_is_mentioned_is_that(ask: Ask, name: str, question: str, read: str) -> None:
    assert read in ask(name, question).reading.text


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("second", "Can I wear a kilt in hall rig?"),  # which is not to be guessed
        ("zoo", "Can I wear a poppy on duty?"),
        ("forest", "May I wear my deerstalker on patrol?"),
    ],
)
def test_what_may_be_something_else_is_not_understood(ask: Ask, name: str, question: str) -> None:
    assert ask(name, question).outcome == "abstain"


@pytest.mark.parametrize("name", ["racecourse", "cadets", "demo"])
def test_where_no_rule_closes_garments_a_hoodie_is_not_understood(ask: Ask, name: str) -> None:
    answer = ask(name, "Can I wear a hoodie?")
    assert answer.reading.abstain is not None
    assert answer.reading.abstain.words == ("hoodie",)
