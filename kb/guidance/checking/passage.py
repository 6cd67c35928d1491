"""A sentence of guidance with what is around it, and what comes of checking it."""

from __future__ import annotations

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.findings import CheckFinding, Unread
from kb.model.conditions import Condition
from kb.model.records import Clause


class Passage(msgspec.Struct, frozen=True):
    """A sentence with its place, the readings to try in turn, the circumstances it may stand in."""

    text: str
    line: int
    place: str
    readings: tuple[str, ...]
    contexts: tuple[Condition, ...]


class Result(msgspec.Struct, frozen=True):
    """What came of one sentence: `claim` is the rule that it states, `within` where that was tried.

    `local` says that the sentence is a local rule, which the books themselves do not state.
    """

    findings: tuple[CheckFinding, ...] = ()
    unread: Unread | None = None
    confirmed: bool = False
    citations: int = 0
    quotations: int = 0
    claim: Claim | None = None
    within: Condition | None = None
    cited: tuple[Clause, ...] = ()
    local: bool = False
