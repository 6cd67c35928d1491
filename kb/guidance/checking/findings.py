"""What a check of guidance found, and its JSON form."""

from __future__ import annotations

import datetime
import json
from typing import Any, Literal, Protocol

import msgspec

Severity = Literal["error", "warning"]


class CheckFinding(msgspec.Struct, frozen=True, kw_only=True):
    """One thing to mend: the line (or paragraph), the sentence, what is wrong, what the book says and where.

    An `error` is false; a `warning` is true as far as it goes, but leaves something out or will not stay so.
    `cause` says what became of the books since the guidance was made, if that is why. `since` is the first
    day on which a sentence that is true on the effective date is not.
    """

    line: int
    place: str
    severity: Severity
    code: str
    text: str
    message: str
    clause: str = ""
    quotation: str = ""
    suggestion: str = ""
    cause: str = ""
    since: datetime.date | None = None


class Place(Protocol):
    """What stands in a line (or paragraph) of guidance: a sentence, a reference, a date."""

    @property
    def line(self) -> int: ...
    @property
    def place(self) -> str: ...
    @property
    def text(self) -> str: ...


def finding_at(
    at: Place,
    severity: Severity,
    code: str,
    message: str,
    suggestion: str = "",
    *,
    clause: str = "",
    quotation: str = "",
    cause: str = "",
    since: datetime.date | None = None,
) -> CheckFinding:
    """A finding about what stands somewhere."""
    return CheckFinding(
        line=at.line,
        place=at.place,
        severity=severity,
        code=code,
        text=at.text,
        message=message,
        clause=clause,
        quotation=quotation,
        suggestion=suggestion,
        cause=cause,
        since=since,
    )


class Unread(msgspec.Struct, frozen=True):
    """A sentence that may state a rule and was not understood, and why."""

    line: int
    place: str
    text: str
    reason: str


class CheckReport(msgspec.Struct, frozen=True, kw_only=True):
    """The whole: what was found, what was not read, and how much was checked.

    `day` is the day that the sentences were checked for. `made_from` is the digest that the guidance carries,
    `books` that of the books it was checked against; `affected` are the places that these no longer bear out.
    """

    name: str
    unit: Literal["line", "paragraph"]
    day: datetime.date
    expires: datetime.date | None
    made_from: str
    books: str
    audience: str
    findings: tuple[CheckFinding, ...]
    unread: tuple[Unread, ...]
    sentences: int
    confirmed: int
    citations: int
    quotations: int

    @property
    def changed(self) -> bool:
        """Whether the books are others than those the guidance was made from."""
        return bool(self.made_from) and self.made_from != self.books

    @property
    def errors(self) -> tuple[CheckFinding, ...]:
        return tuple(finding for finding in self.findings if finding.severity == "error")

    @property
    def warnings(self) -> tuple[CheckFinding, ...]:
        return tuple(finding for finding in self.findings if finding.severity == "warning")

    @property
    def affected(self) -> tuple[str, ...]:
        """The places with a finding that comes from a change of the books."""
        return tuple(
            dict.fromkeys(finding.place for finding in self.findings if finding.cause or finding.since)
        )

    def to_json(self) -> str:
        """The report as one JSON object, two spaces a level; `ok` is what a signature may rest on."""
        return json.dumps(_plain(self), ensure_ascii=False, indent=2) + "\n"


def _plain(report: CheckReport) -> dict[str, Any]:
    return {
        "format": 1,
        "file": report.name,
        "unit": report.unit,
        "ok": not report.errors,
        "effective": report.day.isoformat(),
        "expires": report.expires.isoformat() if report.expires else None,
        "books": report.books,
        "made_from": report.made_from or None,
        "books_changed": report.changed,
        "affected": list(report.affected),
        "audience": report.audience,
        "counts": {
            "sentences": report.sentences,
            "confirmed": report.confirmed,
            "unread": len(report.unread),
            "citations": report.citations,
            "quotations": report.quotations,
            "errors": len(report.errors),
            "warnings": len(report.warnings),
        },
        "findings": [_finding(finding) for finding in report.findings],
        "unread": [
            {"line": u.line, "place": u.place, "text": u.text, "reason": u.reason} for u in report.unread
        ],
    }


def _finding(finding: CheckFinding) -> dict[str, Any]:
    return {
        "line": finding.line,
        "place": finding.place,
        "severity": finding.severity,
        "code": finding.code,
        "text": finding.text,
        "message": finding.message,
        "clause": finding.clause or None,
        "quotation": finding.quotation or None,
        "suggestion": finding.suggestion or None,
        "cause": finding.cause or None,
        "since": finding.since.isoformat() if finding.since else None,
    }
