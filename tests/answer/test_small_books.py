"""Every answer over books that nobody worked on stands up to the checker, apart from the reasoner."""

from __future__ import annotations

import json

import pytest

from kb import answer_to_json
from tests.opening import opened
from tests.reading.sheets import SMALL, questions


@pytest.mark.slow
@pytest.mark.parametrize("name", [*SMALL, "eighth"])
def test_what_is_answered_is_verified(name: str) -> None:
    base, refused = opened(name), []
    for asked in questions(name, "open"):
        for answer in base.ask(asked.text, as_of=asked.as_of):
            saved = json.loads(answer_to_json(answer))
            if answer.outcome == "answer" and (why := base.verify(saved)) is not None:
                refused.append((asked.text, *why))
    assert refused == []
