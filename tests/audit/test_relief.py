"""Clauses that free from a duty where another forbids whatever nothing permits."""

from __future__ import annotations

from tests.audit.test_vocabulary import VOCABULARY, audit_texts, book

DUTY = "{id: always, must: hat}"
RELIEF = "{need not: hat, when: {place: afloat, weather: foul}, exception to: always}"
REST = "{must not: anything, residual: yes}"


def test_a_freed_thing_that_nothing_permits_is_named_with_a_case() -> None:
    report = audit_texts(VOCABULARY, book(f"{DUTY}, {RELIEF}, {REST}"))
    (found,) = [f for f in report.findings if f.code == "freed-but-forbidden"]
    assert (found.severity, len(found.rules)) == ("warning", 2)
    assert found.example == (
        'clothbound ask "May anyone wear the round hat?" --fact weather=rain --fact place=afloat'
    )
    assert "add a “may”" in found.suggestion


def test_what_is_permitted_as_well_or_not_closed_is_not_named() -> None:
    permitted = "{may: hat, when: {place: afloat}}"
    for rules in (f"{DUTY}, {RELIEF}, {REST}, {permitted}", f"{DUTY}, {RELIEF}", f"{DUTY}, {REST}"):
        report = audit_texts(VOCABULARY, book(rules))
        assert not [f for f in report.findings if f.code == "freed-but-forbidden"], rules
