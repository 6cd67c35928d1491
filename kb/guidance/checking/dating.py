"""The time that a sentence gives of itself: "From 1 October 2026", held against the books."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.passage import Passage
from kb.model.records import Clause
from kb.wording import clause_reference, say_date

if TYPE_CHECKING:
    from kb.guidance.checking.passages import Passages


class Dating:
    """Holds the time of sentences against the books of its days; `on_day` is that of `Passages`."""

    def __init__(self, checker: Passages) -> None:
        self.checker = checker

    def check(self, passage: Passage, claim: Claim, cited: Sequence[Clause]) -> Iterator[CheckFinding]:
        """The finding that a time which a sentence gives begins or ends on another day than in the books."""
        day, one = self.checker.books.day, datetime.timedelta(days=1)
        since, until = claim.since, claim.until
        wrong = ""
        if since is not None and since > day and self._holds(passage, claim, since - one, cited):
            wrong = f"already before {say_date(since)}"
        elif since is not None and since <= day and not self._held(passage, claim, since, cited):
            wrong = f"not yet on {say_date(since)}"
        elif until is not None and until > day and self._holds(passage, claim, until, cited):
            wrong = f"also from {say_date(until)} on"
        elif (
            until is not None
            and until - one > max(since or day, day)
            and not self._held(passage, claim, until - one, cited)
        ):
            wrong = f"only to a day before {say_date(until)}"
        if wrong:
            clause, quotation, suggestion = self._spell(passage, claim)
            yield finding_at(
                passage,
                "error",
                "stale-date",
                f"The books say this {wrong}.",
                clause=clause,
                quotation=quotation,
                suggestion=suggestion,
            )

    def _held(self, passage: Passage, claim: Claim, day: datetime.date, cited: Sequence[Clause]) -> bool:
        """Whether a rule says what a claim says on a day, though another may go before it."""
        there = self.checker.on_day(day)
        faithful = there.weighing.judge.faithful
        said = any(faithful(claim, within, there.weighing.rules) for within in passage.contexts)
        return said or self._holds(passage, claim, day, cited) or self._holds(passage, claim, day, ())

    def _holds(self, passage: Passage, claim: Claim, day: datetime.date, cited: Sequence[Clause]) -> bool:
        """Whether a claim is true on a day, by one of the cited clauses if there are any."""
        there = self.checker.on_day(day)
        current = [clause for clause in cited if there.books.is_current(clause)]
        if cited and not current:
            return False
        verdict, _ = there.weigh(claim, passage.contexts, current, passage.text)
        return verdict.kind == "true"

    def _spell(self, passage: Passage, claim: Claim) -> tuple[str, str, str]:
        """The clause that a dated sentence is about, its words, and its time."""
        rules = [r for r in self.checker.lookup.base.rules if self.checker.weighing.judge.says(r, claim)]
        near = self.checker.weighing.best(rules, passage.text)
        if near is None:
            return "", "", ""
        name = clause_reference(self.checker.lookup, near.clause)
        until = f" to {say_date(near.valid_until - datetime.timedelta(days=1))}" if near.valid_until else ""
        said = f"{name} is in force from {say_date(near.valid_from)}{until}."
        return name, self.checker.weighing.quoted(near, passage.text), said
