"""`clothbound audit`: what is wrong in the rule books, for people and for a writer's own checks."""

from __future__ import annotations

import shlex
from typing import TYPE_CHECKING

import kb
from shell.dates import as_date
from shell.output import make_output, safe_json, write_bytes
from shell.plain import hang

if TYPE_CHECKING:
    from kb import AuditReport, Finding
    from shell.quick import Arguments

_WRAP = 72


def audit_screen(arguments: Arguments) -> int:
    """Audit and print; 3 if there is an error, or with --strict a warning, else 0."""
    as_of = as_date(arguments.as_of) if arguments.as_of else None
    report = kb.audit_books(arguments.books, as_of=as_of)
    shown = [f for f in report.findings if f.severity != "note" or arguments.notes]
    if arguments.json:
        write_bytes(safe_json(kb.audit_to_json(report, notes=arguments.notes).decode()).encode())
    else:
        output = make_output(arguments.plain)
        width = max(output.width, _WRAP)
        books = f" --books {shlex.quote(str(arguments.books))}" if arguments.books else ""
        lines = [line for finding in shown for line in _lines(finding, width, books)]
        summary = [part for line in _summary(report, arguments.notes) for part in hang("", line, width)]
        output.write("\n".join([*lines, *summary]))
    failing = ("error", "warning") if arguments.strict else ("error",)
    failed = any(finding.severity in failing for finding in report.findings)
    return kb.InvalidDataError.exit_code if failed else 0


def _lines(finding: Finding, width: int, books: str) -> list[str]:
    """Place and code on the first line, as compilers write them, the rest indented."""
    head = f"{finding.at}: {finding.severity} [{finding.code}]"
    lines = [kb.visible(head), *hang("  ", kb.visible(finding.message), width)]
    lines += hang("  > ", kb.visible(finding.suggestion), width)
    if finding.example:
        lines.append(f"  $ {kb.visible(finding.example)}{kb.visible(books)}")
    return [*lines, ""]


def _summary(report: AuditReport, notes: bool) -> list[str]:
    counts = [(name, len(report.of(name))) for name in ("error", "warning", "note")]
    said = ", ".join(f"{number} {name}{'s' * (number != 1)}" for name, number in counts)
    more = " (--notes shows them)" if counts[2][1] and not notes else ""
    if not report.complete:
        return [f"{said}. The books have errors; mend them, then audit again."]
    first, last = report.days[0].isoformat(), report.days[-1].isoformat()
    spells = f"on {first}" if first == last else f"from {first}, with every change up to {last}"
    return [f"{said}{more}; {report.rules} rules, {spells}."]
