"""Asking over the books of a name, every answer verified."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable

import pytest

from kb import Answer, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
Ask = Callable[[str, str], Answer]


@pytest.fixture(scope="session")
def ask() -> Ask:
    """The last answer to a question over the books of a name, checked apart from the reasoner."""

    def asked(name: str, text: str) -> Answer:
        answer = opened(name).ask(text, as_of=DAY)[-1]
        assert opened(name).verify(json.loads(answer_to_json(answer))) is None
        return answer

    return asked
