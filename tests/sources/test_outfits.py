"""A rig that a rule names as what is worn: an item of its name, tied to the rig, and found in lists."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase
from kb.model.conditions import evaluate
from kb.model.values import NO, YES, choices
from kb.sources import LoadResult, load_rule_base

DAY = datetime.date(2026, 11, 25)
BOOK = """
service: {id: loft, label: Bell Ringers, namespace: "https://loft.example/"}
authorities: [{id: master, label: Tower Master}]
ladders:
  - id: ringers
    label: ringers
    grades: [{id: R1, label: learner}, {id: R2, label: ringer}]
rigs:
  - {id: plain-rig, label: plain rig}
  - {id: feast-rig, label: feast rig, other labels: [best rig]}
facts:
  - id: occasion
    label: occasion
    ask: What is the occasion?
    values: [{id: practice, label: practice}, {id: wedding, label: wedding}]
items:
  - {id: sash, label: red sash, kind of: accessory}
  - {id: smock, label: brown smock, kind of: garment}
book: {id: loft-rules, title: Rules of the Loft, authority: master}
edition: {id: "2026", in force from: 2026-01-01}
clauses:
  - clause: "1"
    text: Feast rig is worn for weddings. It is the red sash. Plain rig is the brown smock.
    rules:
      - {must: RIG, when: {occasion: wedding}}
      - {must: sash, rig: feast-rig}
      - {must: smock, rig: plain-rig}
"""


def load(folder: Path, outfit: str = "feast-rig") -> LoadResult:
    (folder / "loft.yaml").write_text(BOOK.replace("RIG", outfit), encoding="utf-8")
    return load_rule_base(folder)


def test_a_rig_that_a_rule_names_is_an_item_too(tmp_path: Path) -> None:
    result = load(tmp_path)
    assert result.problems == ()
    assert result.base is not None
    items = {item.id: item for item in result.base.items}
    assert (items["feast-rig"].label, items["feast-rig"].other_labels) == ("feast rig", ("best rig",))
    assert "plain-rig" not in items
    (excluded,) = result.base.exclusions
    known = {"worn:feast-rig": YES, "rig": choices("feast-rig")}
    assert evaluate(excluded, known.get) is False
    assert evaluate(excluded, {**known, "rig": choices("plain-rig")}.get) is True
    assert evaluate(excluded, {**known, "worn:feast-rig": NO}.get) is False


def test_what_is_no_rig_and_no_item_is_still_a_mistake(tmp_path: Path) -> None:
    result = load(tmp_path, "feast-rog")
    assert [problem.code for problem in result.problems] == ["unknown-item"]


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        ("Do I have to wear feast rig at a wedding?", "Yes. The feast rig must be worn."),
        ("Do I have to wear best rig at a wedding?", "Yes. The feast rig must be worn."),
        (
            "Do I have to wear feast rig at practice?",
            "No clause requires it in this case. The feast rig must be worn when the occasion is wedding",
        ),
        ("When is feast rig worn?", "The feast rig must be worn when the occasion is wedding."),
        # the list names the outfit and what it consists of
        (
            "What do I wear at a wedding?",
            "When the occasion is wedding, the red sash and the feast rig",
        ),
        ("What do I wear in feast rig?", "In feast rig, the red sash must be worn"),
        (
            "Red sash at a wedding, must I?",
            "Yes, in feast rig. The red sash must be worn; in any other rig the",
        ),
    ],
)
def test_it_is_asked_about_like_any_item(tmp_path: Path, text: str, headline: str) -> None:
    load(tmp_path)
    (answer,) = KnowledgeBase.open(tmp_path, tmp_path / "cache").ask(text, as_of=DAY)
    assert answer.headline.startswith(headline)
