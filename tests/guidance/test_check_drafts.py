"""Real drafts of several plans, in Markdown and Word: the check finds nothing in what the program wrote."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.files import data_folder
from kb.guidance.checking import check_document, read_document
from kb.guidance.drafting import make_draft
from tests.guidance.check_desk import DIGEST, SECOND, TODAY, desk_of

COMMON = """
purpose: To be checked.
effective: 2026-12-01
expires: 2027-10-31
review: 2027-06-15
"""
PLANS = {
    "everyone": "kit: yes",
    "wardens": "audience: {grades: K6 and above}\nrigs: [parade-rig, watch-rig]\narrange: by topic",
    "workshop": "audience: {grades: H1 to K5}\nrigs: workshop-rig\nsituation: {place: on-station}",
    "boats": "audience: {branch: boats}\nrigs: boat-rig\nsituation: {winter: yes, place: afloat}",
}


def plan_of(folder: Path, name: str, more: str, authority: str) -> Path:
    path = folder / f"{name}.plan"
    path.write_text(f"plan: {name}\nsubject: Dress\nauthority: {authority}{COMMON}{more}\n", encoding="utf-8")
    return path


@pytest.mark.parametrize("form", ["markdown", "word"])
@pytest.mark.parametrize("name", list(PLANS))
def test_a_draft_is_in_order(name: str, form: str, tmp_path: Path) -> None:
    if form == "word" and name != "workshop":
        pytest.skip("one plan is enough for a second format")
    plan = plan_of(tmp_path, name, PLANS[name], "station")
    draft = make_draft(plan, data_folder("demo_facts"), DIGEST, "markdown" if form == "markdown" else "word")
    path = tmp_path / ("draft.md" if form == "markdown" else "draft.docx")
    path.write_bytes(draft.data)
    report = check_document(read_document(path), desk_of(), TODAY)
    assert [(f.place, f.code, f.text, f.message) for f in report.findings] == []
    assert [(u.place, u.text) for u in report.unread] == []
    assert report.confirmed > 100


def test_a_draft_of_a_second_service_is_in_order(tmp_path: Path) -> None:
    plan = plan_of(tmp_path, "hut", "kit: yes", "cold-pike-keeper")
    (tmp_path / "draft.md").write_bytes(make_draft(plan, SECOND, DIGEST, "markdown").data)
    report = check_document(read_document(tmp_path / "draft.md"), desk_of(SECOND), TODAY)
    assert [(f.place, f.code, f.text, f.message) for f in report.findings] == []
    assert [(u.place, u.text) for u in report.unread] == []
    assert report.confirmed > 60
