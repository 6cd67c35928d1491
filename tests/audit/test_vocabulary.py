"""Findings about the vocabulary, about time, and about books that do not load."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import pytest

import kb
from kb.audit import AuditReport, audit_base, audit_to_json
from kb.sources.loading import load_texts
from shell.main import main
from tests.audit.test_books import BOOKS, DAY

VOCABULARY = (BOOKS / "vocabulary.yaml").read_text("utf-8")
HEAD = "book: {id: pier-order, title: Pier Order, authority: council}\n"
EDITION = 'edition: {id: "1", title: First, in force from: 2024-01-01}\n'


def audit_texts(vocabulary: str, *books: str, day: datetime.date = DAY) -> AuditReport:
    texts = {"vocabulary.yaml": vocabulary, **{f"book-{i}.yaml": text for i, text in enumerate(books)}}
    loaded = load_texts(texts)
    assert loaded.base is not None, loaded.problems
    return audit_base(loaded.base, day, loaded.problems)


def book(rules: str, edition: str = EDITION) -> str:
    return f'{HEAD}{edition}clauses:\n  - clause: "1"\n    text: A rule.\n    rules: [{rules}]\n'


def messages(report: AuditReport, code: str) -> list[str]:
    return [finding.message for finding in report.findings if finding.code == code]


def test_facts_that_no_rule_uses_are_named() -> None:
    found = messages(
        audit_texts(VOCABULARY, book("{must: hat, when: {weather: foul, dark: yes}}")), "unused-fact"
    )
    named = {"place", "activity", "air temperature", "date of joining", "lamps lit", "swimmer qualification"}
    assert {
        name for name in named | {"weather", "dark"} if any(f"“{name}”" in text for text in found)
    } == named


def test_a_fact_that_only_a_used_term_tests_is_used() -> None:
    dark = (
        f'{HEAD}{EDITION}clauses:\n  - clause: "2"\n    kind: definition\n    text: Dark.\n'
        "    defines: [{term: dark, when: {lamps-lit: yes}}]\n"
    )
    unused = messages(audit_texts(VOCABULARY, book("{must: hat, when: {dark: yes}}"), dark), "unused-fact")
    assert not any("lamps lit" in text or "“dark”" in text for text in unused)
    unused = messages(audit_texts(VOCABULARY, book("{must: hat}"), dark), "unused-fact")
    assert any("lamps lit" in text for text in unused)
    assert any("“dark”" in text for text in unused)


def test_a_fact_that_is_never_together_with_one_in_use_is_used() -> None:
    """Common practice, no source: a month that tells the season changes what a rule on the season says."""
    unused = messages(audit_texts(VOCABULARY, book("{must: hat, when: {place: afloat}}")), "unused-fact")
    assert not any("“activity”" in text or "“place”" in text for text in unused)
    assert any("lamps lit" in text for text in unused)


def test_a_grade_that_no_rule_applies_to_is_named() -> None:
    found = messages(audit_texts(VOCABULARY, book("{must: hat, grades: P2 and above}")), "unreached-grade")
    assert found == ["No rule applies to the grade P1 in any case."]
    assert messages(audit_texts(VOCABULARY, book("{must: hat}")), "unreached-grade") == []


@pytest.mark.parametrize(
    ("item", "codes"),
    [
        ("{id: hats, label: Round-hats, kind of: garment}", ["warning"]),
        ("{id: cape, label: cape, kind of: garment, everyday words: [oilskins]}", ["note"]),
        ("{id: cape, label: cape, kind of: oilskin, everyday words: [oilskin]}", []),
        ("{id: cape, label: cape, kind of: garment, everyday words: [wrap]}", []),
    ],
)
def test_labels_that_read_alike_are_named(item: str, codes: list[str]) -> None:
    vocabulary = VOCABULARY.replace("rigs:\n", f"  - {item}\nrigs:\n")
    report = audit_texts(vocabulary, book("{must: hat}"))
    assert [f.severity for f in report.findings if f.code == "shared-label"] == codes


def test_the_one_kind_that_no_rule_speaks_of_is_named() -> None:
    rules = ", ".join(f"{{may: {item}}}" for item in ("coat", "oilskin", "hat", "boots"))
    report = audit_texts(VOCABULARY, book(rules))
    assert [f.severity for f in report.findings if f.code == "item-gap"] == ["note"]
    assert "the clogs" in messages(report, "item-gap")[0]


def test_a_conflict_of_the_future_is_found_with_its_day() -> None:
    later = book("{must not: hat, when: {weather: foul}, from: 2030-05-01}", EDITION).replace(
        '"1"\n    t', '"2"\n    t'
    )
    report = audit_texts(VOCABULARY, book("{must: hat, when: {place: ashore}}"), later)
    assert report.days == (DAY, datetime.date(2030, 5, 1))
    (finding,) = [f for f in report.findings if f.code == "unsettled"]
    assert finding.example.endswith("--as-of 2030-05-01")


def test_a_conflict_of_the_past_is_history() -> None:
    past = book("{must not: hat, when: {weather: foul}, until: 2025-05-01}", EDITION).replace(
        '"1"\n    t', '"2"\n    t'
    )
    books = (book("{must: hat, when: {place: ashore}}"), past)
    assert messages(audit_texts(VOCABULARY, *books), "unsettled") == []
    assert messages(audit_texts(VOCABULARY, *books, day=datetime.date(2025, 1, 1)), "unsettled")


def test_a_rule_that_is_beaten_only_until_another_ends_is_not_dead() -> None:
    rules = (
        "{id: bare, must not: hat, until: 2030-01-01, exception to: capped}, "
        "{id: capped, may: hat, when: {weather: foul}}"
    )
    assert messages(audit_texts(VOCABULARY, book(rules)), "never-prevails") == []
    assert messages(audit_texts(VOCABULARY, book(rules.replace(", until: 2030-01-01", ""))), "never-prevails")


# The command


def books_at(folder: Path, *texts: str) -> Path:
    folder.mkdir()
    for number, text in enumerate((VOCABULARY, *texts)):
        (folder / f"{number}.yaml").write_text(text, "utf-8")
    return folder


def test_exit_codes_are_for_a_writers_own_checks(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    fine = str(books_at(tmp_path / "fine", book("{must: hat}")))
    wrong = str(books_at(tmp_path / "wrong", book("{may: hat, when: {place: afloat, activity: parade}}")))
    assert main(["audit", "--books", fine]) == 0
    assert main(["audit", "--books", fine, "--strict"]) == 3
    assert main(["audit", "--books", wrong]) == 3
    out = capsys.readouterr().out
    assert "1.yaml:6:13: error [never-applies]" in out
    assert "1 error, " in out


def test_notes_are_shown_when_asked_for(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rules = "{id: on, must: hat}, {need not: hat, when: {weather: foul}, exception to: on}"
    books = str(books_at(tmp_path / "books", book(rules)))
    main(["audit", "--books", books])
    assert "[overlap]" not in (before := capsys.readouterr().out)
    assert "1 note (--notes shows them)" in before
    main(["audit", "--books", books, "--notes"])
    assert "note [overlap]" in capsys.readouterr().out


def test_json_has_the_documented_keys(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    books = str(books_at(tmp_path / "books", book("{may: hat, when: {place: afloat, activity: parade}}")))
    assert main(["audit", "--books", books, "--json", "--as-of", "2026-11-25"]) == 3
    found = json.loads(capsys.readouterr().out)
    assert list(found) == ["format", "as_of", "days", "complete", "rules", "counts", "findings"]
    assert found["format"] == 1
    assert found["days"] == ["2026-11-25"]
    assert found["counts"]["error"] == 1
    first = found["findings"][0]
    assert (first["code"], first["file"], first["line"], first["column"]) == (
        "never-applies",
        "1.yaml",
        6,
        13,
    )
    assert first["clause"] == "pier-order/1/1"
    assert first["rules"] == ["pier-order/1/1-1"]


def test_books_that_do_not_load_give_their_problems_as_findings(tmp_path: Path) -> None:
    folder = books_at(tmp_path / "books", book("{must: hut}"))
    report = kb.audit_books(folder)
    assert not report.complete
    assert [finding.code for finding in report.of("error")] == ["unknown-item"]
    assert json.loads(audit_to_json(report))["complete"] is False
    assert main(["audit", "--books", str(folder)]) == 3


def test_the_report_is_in_order() -> None:
    never = "{may: hat, when: {place: afloat, activity: parade}}"
    badge = "{must: badge, width: 60 mm (2 1/2 in)}"
    rules = f"{never}, {badge}, {{must: hat}}"
    report = audit_texts(VOCABULARY, book(rules))
    ranks = ["error", "warning", "note"]
    keys = [(ranks.index(f.severity), f.at) for f in report.findings]
    assert keys == sorted(keys)
    assert {severity for severity, _ in keys} >= {0, 1}
