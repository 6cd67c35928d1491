"""A day in a question says its month, however the question is read."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from kb.model.values import Choices


@pytest.mark.parametrize(
    "text",
    [
        "On 10 March 2025, could the collar of the watch coat be turned up?",
        "May I wear the service jersey on 10 March 2025?",
        "How big was the name strip on 10 March 2025?",
    ],
)
def test_a_day_says_its_month(text: str, demo: Any) -> None:
    query = demo.read(text).query
    assert query is not None
    assert query.case.as_of == datetime.date(2025, 3, 10)
    assert dict(query.case.facts)["month"] == Choices(frozenset({"march"}))
