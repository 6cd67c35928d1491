"""What the tests of the check share: the demo's books at hand, and a check of a text."""

from __future__ import annotations

import datetime
from functools import cache, lru_cache
from pathlib import Path

from kb.files import data_folder
from kb.guidance.checking import CheckReport, Desk, check_document
from kb.guidance.checking.markdown import read_markdown
from kb.model.lookup import Lookup
from kb.reader import Lexicon
from kb.reasoner import Engine
from kb.sources import load_rule_base

HERE = Path(__file__).parent
SECOND = HERE.parent / "second" / "books"
TODAY = datetime.date(2026, 12, 1)
DIGEST = "5" * 64


@lru_cache(maxsize=8)
def desk_of(folder: Path | None = None, digest: str = DIGEST) -> Desk:
    """The books of a folder (the demo's without one), with an engine for each day that is asked for."""
    base = load_rule_base(folder or data_folder("demo_facts")).base
    assert base is not None
    lookup = Lookup(base)

    @cache
    def engine(day: datetime.date) -> Engine:
        return Engine(lookup, day)

    return Desk(lookup, Lexicon.build(lookup), engine, digest)


def check(text: str, desk: Desk | None = None, today: datetime.date = TODAY) -> CheckReport:
    """The report on guidance in Markdown."""
    return check_document(read_markdown(text.encode(), "guidance.md"), desk or desk_of(), today)


def good() -> str:
    """A draft without a fault, as the program made it, made from the books of `desk_of`."""
    return (HERE / "good-draft.txt").read_text(encoding="utf-8").replace("DIGEST", DIGEST)
