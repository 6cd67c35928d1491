"""Guidance written by hand: sentences in many turns, read as claims and held against the clauses.

`by-hand.txt` says of each sentence what has to come of it, decided from the clause texts. No source.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.guidance.checking import CheckReport
from kb.model.records import is_in_force
from kb.reasoner.space import implies
from kb.wording import say_rule
from tests.guidance.check_desk import SECOND, TODAY, check, desk_of

LINES = [
    tuple(line.split(" | ", 1))
    for line in Path(__file__).with_name("by-hand.txt").read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


def outcome(report: CheckReport) -> str:
    """What came of the one sentence of a text."""
    if report.findings:
        return " ".join(f.code if f.severity == "error" else "left out" for f in report.findings)
    return "unread" if report.unread else "true" if report.confirmed else "nothing"


@pytest.mark.parametrize(("expected", "sentence"), LINES, ids=lambda value: value[:50])
def test_a_sentence_comes_out_as_the_clauses_have_it(expected: str, sentence: str) -> None:
    assert outcome(check(f"{sentence}\n")) == expected


@pytest.mark.parametrize("folder", [None, SECOND], ids=["demo", "second service"])
def test_the_sentence_of_every_rule_reads_back_as_the_rule(folder: Path | None) -> None:
    desk = desk_of(folder)
    read = 0
    for rule in desk.lookup.base.rules:
        claim = desk.claims.read(say_rule(desk.lookup, rule))
        if claim is None:  # precedence and duties once broken have forms of their own
            assert rule.repairs or desk.lookup.aspects[rule.aspect].kind == "order" or rule.residual
            continue
        read += 1
        assert claim.modality == rule.modality
        assert set(claim.scope.items) == set(rule.scope.items)
        assert (claim.scope.excluding, claim.scope.alternatives) == (
            rule.scope.excluding,
            rule.scope.alternatives,
        )
        assert (claim.aspect, claim.value.values) == (rule.aspect, rule.value.values)
        assert implies(claim.condition, rule.condition, desk.lookup)
        assert implies(rule.condition, claim.condition, desk.lookup)
    assert read > 100


@pytest.mark.parametrize("folder", [None, SECOND], ids=["demo", "second service"])
def test_no_sentence_of_a_rule_is_called_false(folder: Path | None) -> None:
    """Each rule in force, in its own words under its own clause: true, at most for what goes before it."""
    desk = desk_of(folder)
    lines = ["Effective date: 1 December 2026", ""]
    for edition in desk.lookup.base.editions:
        for rule in desk.lookup.base.rules:
            clause = desk.lookup.clauses[rule.clause]
            now = all(is_in_force(record, TODAY) for record in (rule, clause))
            if clause.edition == edition.id and now and rule.repairs is None:
                book = desk.lookup.books[edition.book].label
                name = edition.id.rpartition("/")[2]
                lines += [
                    f"{say_rule(desk.lookup, rule)[:-1]} ({book}, {name} edition, {clause.number}).",
                    "",
                ]
    report = check("\n".join(lines), desk)
    false = [f for f in report.errors if f.code != "overruled"]
    assert [(f.code, f.text, f.message) for f in false] == []
    assert report.confirmed > 50


def test_headings_and_lead_ins_set_the_scene() -> None:
    text = (
        "# Boat rig\n\nThe knit cap must be worn (Dress Order 3.4).\n\n"
        "The following must be worn:\n\n- undershirt (Dress Order 3.4)\n"
        "- the sea boots (Dress Order 3.4);\n\n"
        "# Watch rig\n\nThe sea boots must be worn (Dress Order 3.4).\n"
    )
    report = check(text)
    assert [(f.line, f.code) for f in report.errors] == [(12, "dropped-condition")]
    assert report.confirmed == 3


def test_a_table_is_read_row_by_row() -> None:
    text = (
        "| Grade | May wear | Clause |\n| --- | --- | --- |\n"
        "| K2 and above | the keeper's pin in watch rig | Dress Order 5.10 |\n"
        "| Deck hands | the keeper's pin in watch rig | Dress Order 5.10 |\n\n"
        "| Grade | The height of the letters of the name strip | The length of the beard |\n"
        "| --- | --- | --- |\n"
        "| K1 to K5 | about 5/8 in (16 mm) (the Notice, 2) | at most 1 in (25 mm) (Dress Order 6.18) |\n"
        "| K6 | about 7/8 in (22 mm) (the Notice, 2) | at most 1 in (25 mm) (Dress Order 6.18) |\n"
    )
    report = check(text)
    assert [(f.line, f.code) for f in report.errors] == [(4, "contradicts"), (9, "wrong-measure")]


@pytest.mark.parametrize(
    ("applies", "codes"),
    [
        ("Applicability: K2 to K5 in watch rig.", []),
        ("Applies to: all petty keepers, in watch rig, ashore", []),
        ("Applicability: This guidance applies to deck hands.", ["contradicts"]),
        ("Applicability: The crew of the Marigold.", []),
    ],
)
def test_a_sentence_is_true_for_those_it_is_for(applies: str, codes: list[str]) -> None:
    report = check(f"{applies}\n\nThe keeper's pin may be worn (Dress Order 5.10).\n")
    assert [finding.code for finding in report.errors] == codes
    if "Marigold" in applies:
        assert [unread.line for unread in report.unread] == [1, 3]


@pytest.mark.parametrize(
    "sentence",
    [
        "Headphones may be worn when travelling on duty.",
        "Headphones may be worn on watch.",
        "The umbrella is pink.",
        "Beards must be trimmed to at most 2 in (Dress Order 6.18).",
        "Earrings are fine on watch.",
    ],
)
def test_what_is_proposed_is_no_error_itself(sentence: str) -> None:
    """The station's clause on headphones goes beyond its authority, and never has an effect."""
    (finding,) = check(f"{sentence}\n").errors
    assert check(f"{finding.suggestion}\n").errors == ()


def test_in_place_of_a_rule_of_old_its_own_aspect_is_proposed() -> None:
    (finding,) = check("Name strips may be 6 1/2 in long at most (Dress Order 2024, clause 5.17).\n").errors
    assert finding.code == "not-in-force"
    assert " long " in finding.suggestion
