"""Mistakes in a plan: each with line, column, what is wrong, and what to write; all of them in one run."""

from __future__ import annotations

import pytest

from kb.errors import InvalidDataError, Problem
from kb.guidance.compose import compose
from tests.guidance.draft_cases import opened, plan_text


def problems(text: str) -> list[Problem]:
    with pytest.raises(InvalidDataError) as caught:
        opened(text)
    return list(caught.value.problems)


GOOD = plan_text("rigs: boat-rig")

# A change of a good plan (what is replaced, by what), the code, the line.
BAD = [
    ("plan: little\n", "", "missing-plan", 1),
    ("plan: little", "plan: so little", "bad-id", 1),
    ("subject: Little guidance\n", "", "missing-subject", 1),
    ("purpose: To try what is written.\n", "purpose:\n", "missing-purpose", 1),
    ("authority: station", "authority: captain", "unknown-authority", 4),
    ("effective: 2026-12-01", "effective: soon", "bad-date", 5),
    ("effective: 2026-12-01", "effective: 2027-01-05", "reversed-dates", 6),
    ("review: 2026-12-31", "review: 2027-01-05", "review-outside", 7),
    ("review: 2026-12-31\n", "", "missing-review", 1),
    ("rigs: boat-rig", "rigs: boat rigg", "unknown-value", 8),
    ("rigs: boat-rig", "rig: boat-rig", "unknown-key", 8),
    ("rigs: boat-rig", "audience: everybody", "wrong-kind", 8),
    ("rigs: boat-rig", "audience: {grades: K9}", "unknown-grade", 8),
    ("rigs: boat-rig", "audience: {grade: K1}", "unknown-key", 8),
    ("rigs: boat-rig", "situation: {weathr: foul}", "unknown-fact", 8),
    ("rigs: boat-rig", "situation: {any of: [{weather: foul}, {place: town}]}", "not-a-fact", 8),
    ("rigs: boat-rig", "rigs: boat-rig\nsituation: {rig: storm-rig}", "no-value", 9),
    ("rigs: boat-rig", "topics: [headgear, boatts]", "unknown-item", 8),
    ("rigs: boat-rig", "arrange: at random", "unknown-word", 8),
    ("rigs: boat-rig", "kit: maybe", "not-yes-or-no", 8),
    ("rigs: boat-rig", "items: [{id: cape, label: cape, kind of: garment}]", "unused-items", 8),
    ("rigs: boat-rig", "rigs: *anchor", "alias", 8),
    ("rigs: boat-rig", "situation: {place: afloat, activity: parade}", "facts-exclude", 1),
    ("rigs: boat-rig", 'clauses:\n  - clause: "1"\n    text: No rules.', "no-rules", 9),
    (
        "rigs: boat-rig",
        'clauses:\n  - clause: "1"\n    text: A.\n    rules: [must: capp]',
        "unknown-item",
        11,
    ),
    (
        "rigs: boat-rig",
        'clauses:\n  - clause: "1"\n    text: A.\n    rules: [{must: jersey, under: dress-order/2024/no}]',
        "unknown-delegation",
        11,
    ),
]


@pytest.mark.parametrize(("old", "new", "code", "line"), BAD)
def test_a_mistake_is_told_with_its_place(old: str, new: str, code: str, line: int) -> None:
    assert old in GOOD
    if code == "facts-exclude":
        plan = opened(GOOD.replace(old, new))
        with pytest.raises(InvalidDataError) as caught:
            compose(plan, "0" * 64)
        found = list(caught.value.problems)
    else:
        found = problems(GOOD.replace(old, new))
    assert (code, line) in {(p.code, p.at.line) for p in found}, found
    assert all(p.at.file == "little.plan" and p.message and p.remedy for p in found)


def test_all_mistakes_are_told_at_once() -> None:
    text = GOOD.replace("authority: station", "authority: captain").replace("boat-rig", "no-rig")
    assert {p.code for p in problems(text)} == {"unknown-authority", "unknown-value"}


@pytest.mark.parametrize(
    "text", ["", "- a\n- b\n", "plan", "plan: {a: b}\n", "\x00", "a: [\n", "clauses: []\n"]
)
def test_what_is_no_plan_is_refused(text: str) -> None:
    assert problems(text)


def test_a_plan_may_leave_out_what_it_does_not_narrow() -> None:
    document = compose(opened(plan_text()), "0" * 64)
    assert document.applicability == "This guidance applies to everyone."
    assert len(document.sentences) > 200


def test_items_of_the_station_may_be_spoken_of_by_its_clauses() -> None:
    text = plan_text(
        "items:",
        "  - {id: deck-cape, label: deck cape, kind of: garment}",
        "topics: [deck-cape, work-jacket]",
        "clauses:",
        '  - clause: "1"',
        "    text: A.",
        "    rules: [{may: deck-cape, rig: workshop-rig, under: dress-order/2024/local-working-dress}]",
    )
    assert "deck-cape" in opened(text).lookup.items
