"""What a rule says need not be so has been spoken of: no residual rule forbids it."""

from __future__ import annotations

from tests.audit.test_vocabulary import VOCABULARY, audit_texts, book

DUTY = "{id: always, must: hat}"
RELIEF = "{need not: hat, when: {place: afloat, weather: foul}, exception to: always}"
REST = "{id: rest, must not: hat, residual: yes}"


def never_prevails(*rules: str) -> list[str]:
    report = audit_texts(VOCABULARY, book(", ".join(rules)))
    return [finding.rules[0] for finding in report.findings if finding.code == "never-prevails"]


def test_a_residual_rule_that_is_kept_off_in_every_case_never_prevails() -> None:
    relief = "{id: relief, need not: hat}"
    assert [rule.rpartition("/")[2] for rule in never_prevails(relief, REST)] == ["rest"]
    assert not never_prevails("{need not: hat, when: {place: afloat}}", REST)


def test_what_keeps_a_residual_rule_off_is_no_repeat_of_what_does_not() -> None:
    """ "May be left off" supports the same value and forbids nothing, but leaves the hat unspoken of."""
    relief = "{need not: hat, when: {place: afloat}}"
    report = audit_texts(VOCABULARY, book(f"{relief}, {{may: [hat], when: {{place: afloat}}}}, {REST}"))
    assert not [finding for finding in report.findings if finding.code == "repeats"]


def test_a_freed_thing_is_neither_forbidden_nor_a_finding() -> None:
    report = audit_texts(VOCABULARY, book(f"{DUTY}, {RELIEF}, {{must not: anything, residual: yes}}"))
    assert not [finding for finding in report.findings if finding.severity == "error"]
