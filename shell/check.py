"""`clothbound check`: what is false or left out in guidance, for its writer and before it is signed."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Any

import kb
from shell.dates import as_date
from shell.output import make_output, safe_json, write_bytes
from shell.plain import hang

if TYPE_CHECKING:
    from kb import KnowledgeBase

    CheckReport = Any  # what `KnowledgeBase.check` gives; `kb` exports no more names than it must
    CheckFinding = Any

_WRAP = 72
_SHOWN = 300


def check_guidance(arguments: Any, base: KnowledgeBase, facts: tuple[tuple[str, Any], ...]) -> int:
    """Check and print; 3 if something is false, with --strict also for what else is found, else 0."""
    today = as_date(arguments.as_of) if arguments.as_of else datetime.date.today()
    report = base.check(arguments.guidance, today=today, facts=facts)
    if arguments.json:
        write_bytes(safe_json(report.to_json()).encode())
    else:
        output = make_output(arguments.plain)
        width = max(output.width, _WRAP)
        output.write("\n".join(_screen(report, width)))
    failed = report.errors or (arguments.strict and (report.warnings or report.unread))
    return kb.InvalidDataError.exit_code if failed else 0


def _screen(report: CheckReport, width: int) -> list[str]:
    lines = [kb.visible(_verdict(report)), ""]
    for finding in report.findings:
        lines += _finding(report.name, finding, width)
    if report.unread:
        lines += ["Not understood, so not checked:", ""]
        for unread in report.unread:
            lines += hang(f"  {unread.place}: ", kb.visible(f"{_cut(unread.text)} [{unread.reason}]"), width)
        lines.append("")
    return [*lines, *hang("", _summary(report), width)]


def _verdict(report: CheckReport) -> str:
    """The first line: whether it may be signed as far as this check goes."""
    changed = ""
    if report.changed:
        where = f", which affects {', '.join(report.affected)}" if report.affected else ""
        changed = f" The rule books have changed since it was made{where}."
    if report.errors:
        number = len(report.errors)
        return f"Not in order: {number} thing{'s' * (number != 1)} to mend.{changed}"
    if report.unread and not (report.warnings or report.confirmed):
        return f"Nothing was checked: no sentence was understood; see what follows.{changed}"
    if report.warnings or report.unread:
        return f"Nothing false was found; see what follows.{changed}"
    if not report.confirmed:
        return "There is nothing to check: no sentence states a rule, and none quotes a clause."
    return f"In order: nothing is false, and every rule in it was understood.{changed}"


def _finding(name: str, finding: CheckFinding, width: int) -> list[str]:
    """Place and code on the first line, as compilers write them, the rest indented."""
    number = finding.place.partition(" ")[2].removeprefix(str(finding.line))
    where = f"{name}:{finding.line}" if finding.place.startswith("line") else f"{name}, {finding.place}"
    where += f"{number}" if finding.place.startswith("line") else ""
    lines = [kb.visible(f"{where}: {finding.severity} [{finding.code}]")]
    lines += hang("  ", kb.visible(_cut(finding.text)), width)
    lines += hang("  ", kb.visible(finding.message), width)
    if finding.cause and finding.cause not in finding.message:
        lines += hang("  Why: ", kb.visible(f"{finding.cause}."), width)
    if finding.quotation:
        of = f"{finding.clause}: " if finding.clause else ""
        lines += hang("  | ", kb.visible(f"{of}“{finding.quotation}”"), width)
    if finding.suggestion:
        lines += hang("  > ", kb.visible(finding.suggestion), width)
    return [*lines, ""]


def _cut(text: str) -> str:
    return text if len(text) <= _SHOWN else f"{text[:_SHOWN]} ..."


def _summary(report: CheckReport) -> str:
    def count(number: int, name: str) -> str:
        return f"{number} {name}{'s' * (number != 1)}"

    parts = [
        f"{count(report.sentences, 'sentence')}, {report.confirmed} borne out by the books",
        f"{count(len(report.errors), 'error')}, {count(len(report.warnings), 'warning')}",
        f"{len(report.unread)} not understood",
        f"{count(report.citations, 'citation')}, {count(report.quotations, 'quotation')}",
    ]
    until = f" to {report.expires.isoformat()}" if report.expires else ""
    return f"{'; '.join(parts)}; for {report.day.isoformat()}{until}."
