"""Yes and no are said of what is asked: banned, optional, compulsory, allowed."""

from __future__ import annotations

import datetime
import json

import pytest

from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("Are earrings allowed?", "No. The earrings must not be worn."),
        ("Are earrings banned?", "Yes. The earrings must not be worn."),
        ("Aren't earrings forbidden?", "Yes. The earrings must not be worn."),
        ("Is there any rule against earrings?", "Yes. The earrings must not be worn."),
        ("There's no rule against earrings, is there?", "No. The earrings must not be worn."),
        ("Would it be wrong to wear earrings?", "Yes. The earrings must not be worn."),
        ("Is a red neck cloth banned?", "Yes. The colour of the neck cloth must be black."),
        ("Is a black neck cloth forbidden?", "No. The colour of the neck cloth must be black."),
        ("Is the flotation vest compulsory on the boat deck?", "Yes. The flotation vest must be worn."),
        ("Is the flotation vest optional on the boat deck?", "No. The flotation vest must be worn."),
        ("Is it forbidden to go without the flotation vest on the boat deck?",
         "Yes: the flotation vest must be worn."),
        ("Is the jersey compulsory in July in watch rig?",
         "No. The service jersey may be worn, but need not be."),
        ("Is the jersey optional in July in watch rig?",
         "Yes. The service jersey may be worn, but need not be."),
        ("Is the jersey forbidden in July in watch rig?", "No. The service jersey may be worn."),
        ("Is the storm coat optional in boat rig?",
         "No, this is prohibited: the storm coat must not be worn."),
    ],
)  # fmt: skip
def test_the_first_word_answers_what_is_asked(demo: KnowledgeBase, question: str, headline: str) -> None:
    (answer,) = demo.ask(question, as_of=DAY)
    assert answer.headline == headline
    assert demo.verify(json.loads(answer_to_json(answer))) is None
    (again,) = demo.ask(answer.reading.text, as_of=DAY)
    assert again.headline == headline
