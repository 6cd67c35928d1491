"""The rule books that are asked questions, each opened once by every worker of a run of the tests."""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path

from kb import KnowledgeBase
from tests.reading.sheets import BOOKS

FOLDER = "CLOTHBOUND_TEST_BOOKS"
"""The variable with the folder in which the first worker that needs some books builds them for all."""


@cache
def opened(name: str) -> KnowledgeBase:
    """The books of one of `BOOKS`."""
    return KnowledgeBase.open(BOOKS[name], Path(os.environ[FOLDER]))
