"""One small book for each kind of finding, with the one fault it has.

The first lines of a book say code, severity and line of what is wrong in it; a book without a fault has "# ".
"""

from __future__ import annotations

import datetime
import re
from pathlib import Path

import pytest

from kb.audit import AuditReport, audit_base
from kb.sources.loading import load_texts

BOOKS = Path(__file__).parent / "books"
DAY = datetime.date(2026, 11, 25)
SINGLE = sorted(path for path in BOOKS.glob("*.yaml") if path.name != "vocabulary.yaml")
LOCAL = sorted(path for path in (BOOKS / "local").glob("*.yaml") if path.name != "council.yaml")
EXPECTED = re.compile(r"^# ([a-z-]+) (error|warning|note) (\d+)$", re.MULTILINE)


def audit_files(*paths: Path) -> AuditReport:
    loaded = load_texts({path.name: path.read_text("utf-8") for path in paths})
    assert loaded.base is not None, loaded.problems
    return audit_base(loaded.base, DAY, loaded.problems)


def found_in(report: AuditReport, name: str, notes: bool) -> list[tuple[str, str, int]]:
    return [
        (finding.code, finding.severity, finding.at.line)
        for finding in report.findings
        if finding.at.file == name and (notes or finding.severity != "note")
    ]


def expected_in(path: Path) -> list[tuple[str, str, int]]:
    found = EXPECTED.findall(path.read_text("utf-8"))
    return [(code, severity, int(line)) for code, severity, line in found]


@pytest.mark.parametrize("path", [*SINGLE, *LOCAL], ids=lambda path: path.stem)
def test_the_fault_is_found_at_its_place_and_nothing_else(path: Path) -> None:
    beside = [BOOKS / "local" / "council.yaml"] if path in LOCAL else []
    report = audit_files(BOOKS / "vocabulary.yaml", *beside, path)
    expected = expected_in(path)
    notes = any(severity == "note" for _, severity, _ in expected)
    assert found_in(report, path.name, notes) == expected
    for other in beside:
        assert found_in(report, other.name, notes=False) == []
    for finding in report.findings:
        assert finding.message.endswith((".", "”"))
        assert finding.message.lstrip('"“')[0].isupper()
        assert finding.suggestion.endswith(".")


def test_no_grade_stands_between_those_of_two_ladders() -> None:
    """A nurse and a cook have the card, and porters, who are written between them, do not."""
    books = Path(__file__).parents[1] / "small" / "infirmary" / "books"
    report = audit_files(*sorted(books.glob("*.yaml")))
    assert not [finding for finding in report.findings if finding.code == "grade-gap"]
