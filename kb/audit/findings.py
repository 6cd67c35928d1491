"""What an audit reports: findings with a place, a severity and a suggestion, in a fixed order."""

from __future__ import annotations

import datetime
from typing import Literal

import msgspec

from kb.errors import Location

Severity = Literal["error", "warning", "note"]
SEVERITIES: tuple[Severity, ...] = ("error", "warning", "note")


class Finding(msgspec.Struct, frozen=True, kw_only=True):
    """One finding. `code` is a stable short name.

    `clause` and `rules` are ids, `reference` is the clause in words.
    `message` and `suggestion` are whole sentences. `example` is a command line that shows the matter in one
    concrete case, `settled_by` the label of the authority that could settle it; both are empty where
    there is none.
    """

    at: Location
    code: str
    severity: Severity
    clause: str = ""
    reference: str = ""
    rules: tuple[str, ...] = ()
    message: str
    suggestion: str
    example: str = ""
    settled_by: str = ""


class AuditReport(msgspec.Struct, frozen=True, kw_only=True):
    """All findings, errors first. `days` are the first days of the spells that were audited, from `as_of` on.

    `complete` is false where the sources have errors: then only those are reported.
    """

    as_of: datetime.date
    days: tuple[datetime.date, ...]
    findings: tuple[Finding, ...]
    rules: int
    complete: bool = True

    def of(self, *severities: Severity) -> tuple[Finding, ...]:
        return tuple(finding for finding in self.findings if finding.severity in severities)


def in_order(findings: list[Finding]) -> tuple[Finding, ...]:
    """Errors before warnings before notes, then by place; each finding once."""
    return tuple(
        sorted(
            dict.fromkeys(findings),
            key=lambda f: (SEVERITIES.index(f.severity), f.at, f.code, f.rules, f.message),
        )
    )


def audit_to_json(report: AuditReport, notes: bool = True) -> bytes:
    """The report as one JSON object (format 1), indented; counts are of all findings, whatever is shown."""
    severities = SEVERITIES if notes else SEVERITIES[:2]
    counts = {severity: len(report.of(severity)) for severity in SEVERITIES}
    shown = [
        {
            "code": finding.code,
            "severity": finding.severity,
            "file": finding.at.file,
            "line": finding.at.line,
            "column": finding.at.column,
            "clause": finding.clause or None,
            "reference": finding.reference or None,
            "rules": list(finding.rules),
            "message": finding.message,
            "suggestion": finding.suggestion,
            "example": finding.example or None,
            "settled_by": finding.settled_by or None,
        }
        for finding in report.of(*severities)
    ]
    document = {
        "format": 1,
        "as_of": report.as_of.isoformat(),
        "days": [day.isoformat() for day in report.days],
        "complete": report.complete,
        "rules": report.rules,
        "counts": counts,
        "findings": shown,
    }
    return msgspec.json.format(msgspec.json.encode(document), indent=2) + b"\n"
