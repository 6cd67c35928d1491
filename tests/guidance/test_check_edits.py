"""A good draft, edited: every edit that makes it false is found on its line, none that leaves it true is.

The draft is the program's own; the edits are invented. From memory of how orders go wrong, no source.
"""

from __future__ import annotations

import pytest

from tests.guidance import harmless_edits, hostile_edits
from tests.guidance.check_desk import check, good


def edited(before: str, after: str) -> tuple[str, int]:
    """The draft with an edit, and the line that it is on."""
    text = good()
    assert text.count(before) >= 1, before
    changed = text.replace(before, after, 1)
    return changed, text[: text.index(before)].count("\n") + 1


def test_the_draft_is_in_order() -> None:
    report = check(good())
    assert (report.findings, report.unread, report.changed) == ((), (), False)
    assert report.confirmed > 60
    assert report.quotations >= 2


@pytest.mark.parametrize(
    ("name", "before", "after", "code"), hostile_edits.EDITS, ids=lambda value: value[:40]
)
def test_a_hostile_edit_is_found_on_its_line(name: str, before: str, after: str, code: str) -> None:
    text, line = edited(before, after)
    errors = check(text).errors
    found = [finding for finding in errors if finding.line == line]
    assert code in {finding.code for finding in found}
    elsewhere = {finding.code for finding in errors if finding.line != line}
    assert elsewhere <= ({"stale-date"} if "date" in name or "expiry" in name else set())
    assert all(finding.message and finding.place.startswith(f"line {line}") for finding in found)


def test_there_are_hostile_edits_of_every_kind() -> None:
    assert len(hostile_edits.EDITS) >= 50
    assert {
        "wrong-clause",
        "not-verbatim",
        "contradicts",
        "expired-edition",
        "wrong-measure",
        "wrong-grade",
        "dropped-exception",
        "dropped-condition",
        "invented-clause",
        "stale-date",
        "no-delegation",
        "outside-delegation",
        "units-disagree",
    } <= {code for *_, code in hostile_edits.EDITS}


@pytest.mark.parametrize(("name", "before", "after"), harmless_edits.EDITS, ids=lambda value: value[:40])
def test_a_harmless_edit_is_not_called_false(name: str, before: str, after: str) -> None:
    del name
    text, _ = edited(before, after)
    report = check(text)
    assert report.findings == ()
    assert report.unread == ()


def test_what_is_not_understood_is_listed_and_not_called_false() -> None:
    text, line = edited("The identity disc must be worn (", "The identity disc must be cherished (")
    report = check(text)
    assert report.findings == ()
    assert [(unread.line, "cherished" in unread.text) for unread in report.unread] == [(line, True)]


def test_a_caution_that_was_taken_out_is_told_once() -> None:
    lines = [line for line in good().splitlines() if not line.startswith("1.7 Caution")]
    (finding,) = check("\n".join(lines)).findings
    assert (finding.severity, finding.code, finding.line) == ("warning", "no-caution", 17)


def test_a_finding_says_what_the_book_says_and_what_to_write() -> None:
    text, line = edited(
        "The width of any belt must be 1 1/2 in (38 mm)", "The width of any belt must be 2 in (51 mm)"
    )
    (finding,) = check(text).findings
    assert (finding.line, finding.code, finding.severity) == (line, "wrong-measure", "error")
    assert finding.clause == "Interim Notice to the Dress Order (2026) 3"
    assert "1 1/2 in (38 mm) wide" in finding.quotation
    assert finding.suggestion.startswith("Any belt must be 1 1/2 in (38 mm) wide")
