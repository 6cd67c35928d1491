"""All books that are asked questions, each opened when first needed, and every answer verified."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from functools import cache

import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.reading.sheets import BOOKS, shared_cache

DAY = datetime.date(2026, 11, 25)
Ask = Callable[[str, str], Answer]


@pytest.fixture(scope="session")
def opened(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], KnowledgeBase]:
    folder = shared_cache(tmp_path_factory)
    return cache(lambda name: KnowledgeBase.open(BOOKS[name], folder))


@pytest.fixture(scope="session")
def ask(opened: Callable[[str], KnowledgeBase]) -> Ask:
    """The last answer to a question over the books of a name, checked apart from the reasoner."""

    def asked(name: str, text: str) -> Answer:
        answer = opened(name).ask(text, as_of=DAY)[-1]
        assert opened(name).verify(json.loads(answer_to_json(answer))) is None
        return answer

    return asked
