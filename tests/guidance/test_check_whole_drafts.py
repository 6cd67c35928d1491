"""Edits of whole drafts over two services: false ones are found on their line, true ones never called false.

The edits are invented: slips, bad faith, and what an editor does to prose. From memory, no source.
"""

from __future__ import annotations

import pytest

from tests.guidance.check_desk import check, desk_of
from tests.guidance.whole_drafts import BOOKS, Edit, draft, read_edits, report_on

HOSTILE = read_edits("hostile")
HARMLESS = read_edits("harmless")


@pytest.mark.parametrize("name", list(BOOKS))
def test_the_whole_draft_is_in_order(name: str) -> None:
    report = check(draft(name), desk_of(BOOKS[name]))
    assert (report.findings, report.unread) == ((), ())
    assert report.confirmed > 90


@pytest.mark.parametrize("edit", HOSTILE, ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_hostile_edit_is_found_on_its_line(edit: Edit) -> None:
    report, lines = report_on(edit)
    here = {finding.code for finding in report.errors if finding.line in lines}
    if edit.outcome == "unread":
        assert not here
        assert any(unread.line in lines for unread in report.unread)
        return
    assert edit.outcome in here
    elsewhere = {finding.code for finding in report.errors if finding.line not in lines}
    assert elsewhere <= ({"stale-date"} if "after expiry" in edit.name else set())


@pytest.mark.parametrize("edit", HARMLESS, ids=lambda edit: f"{edit.draft}: {edit.name}")
def test_a_harmless_edit_is_not_called_false(edit: Edit) -> None:
    report, _ = report_on(edit)
    assert [(finding.code, finding.text, finding.message) for finding in report.findings] == []
    assert bool(report.unread) is (edit.outcome == "unread"), report.unread


def test_nearly_every_edit_is_understood() -> None:
    """What is only listed is honest, but a writer has to look at it: that it is found counts."""
    assert len(HOSTILE) > 80
    assert sum(edit.outcome == "unread" for edit in HOSTILE) * 8 <= len(HOSTILE)
    assert len(HARMLESS) > 60
    assert sum(edit.outcome == "unread" for edit in HARMLESS) * 20 <= len(HARMLESS)
