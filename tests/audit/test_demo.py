"""The faults planted in the demo's station order are all found, and nothing else is called an error."""

from __future__ import annotations

import datetime
import re
import shlex
from pathlib import Path

import pytest

from kb import KnowledgeBase, demo_folder
from kb.audit import AuditReport, Finding, audit_base
from kb.sources import load_rule_base
from shell.arguments import make_parser
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
README = (demo_folder() / "README.md").read_text("utf-8")
PLANTED = [f"station-order/2025/{name}" for name in re.findall(r"^\| \d+ \| `([a-z-]+)` \|", README, re.M)]
CODES = {
    "slipway-without-vest": "non-derogable",
    "headphones-at-the-lamp": "stricter-only",
    "earrings-in-mess": "no-delegation",
    "cap-outdoors-again": "repeats",
    "scarf-on-parade-afloat": "never-applies",
    "patch-size": "units-disagree",
    "canvas-in-town": "no-delegation",
}
UNSETTLED = ("dress-order/2024/lanyard-with-guests", "dress-order/2024/lanyard-in-wet")
BOOKS = Path(__file__).parent / "books"


@pytest.fixture(scope="module")
def report() -> AuditReport:
    loaded = load_rule_base(demo_folder())
    assert loaded.base is not None
    return audit_base(loaded.base, DAY, loaded.problems)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def test_every_planted_fault_is_found_as_what_it_is(report: AuditReport) -> None:
    assert len(PLANTED) == len(CODES)
    found = {(f.rules[0].rpartition("/")[2], f.code) for f in report.of("error", "warning") if f.rules}
    assert set(CODES.items()) <= found


def test_nothing_else_is_called_an_error(report: AuditReport) -> None:
    errors = {
        finding.rules if finding.code == "unsettled" else finding.rules[0] for finding in report.of("error")
    }
    assert UNSETTLED in errors
    assert errors - {UNSETTLED} <= set(PLANTED)


def test_the_open_pair_names_who_can_settle_it(report: AuditReport) -> None:
    (finding,) = [f for f in report.findings if f.code == "unsettled"]
    assert finding.settled_by == "Board of Lights"
    assert finding.reference == "Dress Order (2024) 6.9"
    assert "6.8 and Dress Order (2024) 6.9 oppose each other" in finding.message


def verdict_of(base: KnowledgeBase, finding: Finding) -> str | None:
    """The verdict that the finding's own command line gives."""
    words = shlex.split(finding.example)
    assert words[0] == "clothbound"
    arguments = make_parser().parse_args(words[1:])
    facts = tuple(base.fact(*text.split("=", 1)) for text in arguments.fact)
    (answer,) = base.ask(" ".join(arguments.text), facts=facts, as_of=DAY)
    assert answer.outcome == "answer", (finding.example, answer.ask, answer.abstain)
    return answer.verdict


def test_every_example_can_be_asked_and_shows_its_matter(report: AuditReport, demo: KnowledgeBase) -> None:
    examples = [finding for finding in report.findings if finding.example]
    assert len(examples) >= 4
    for finding in examples:
        verdict = verdict_of(demo, finding)
        assert (verdict == "conflict") == (finding.code == "unsettled"), finding.example
        assert verdict != "conditional" or finding.code != "unsettled"


@pytest.mark.parametrize("name", ["unsettled", "unsettled-values", "unsettled-three", "unsettled-choice"])
def test_the_example_of_a_conflict_is_answered_with_a_conflict(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "books"
    folder.mkdir()
    for path in (BOOKS / "vocabulary.yaml", BOOKS / f"{name}.yaml"):
        (folder / path.name).write_bytes(path.read_bytes())
    loaded = load_rule_base(folder)
    assert loaded.base is not None
    found = [f for f in audit_base(loaded.base, DAY).findings if f.code == "unsettled"]
    base = KnowledgeBase.open(folder, tmp_path / "cache")
    assert found
    assert {verdict_of(base, finding) for finding in found} == {"conflict"}


def test_overlaps_that_are_settled_are_notes(report: AuditReport) -> None:
    overlaps = [finding for finding in report.findings if finding.code == "overlap"]
    assert {finding.severity for finding in overlaps} == {"note"}
    assert len({finding.rules for finding in overlaps}) == len(overlaps) > 40
    assert any("an exception to it" in finding.message for finding in overlaps)
    assert any("more specific" in finding.message for finding in overlaps)


def test_the_audit_is_the_same_every_time(report: AuditReport) -> None:
    loaded = load_rule_base(demo_folder())
    assert loaded.base is not None
    assert audit_base(loaded.base, DAY, loaded.problems) == report


def test_no_finding_says_the_same_twice(report: AuditReport) -> None:
    said = [(finding.code, finding.at, finding.rules) for finding in report.findings]
    assert len(set(said)) == len(said)
