"""References at the head of guidance: books, editions and when they are in force."""

from __future__ import annotations

import datetime

import pytest

from tests.guidance.check_desk import SECOND, check, desk_of

TRUE = "The knit cap must be worn in boat rig (ref. (a), 3.4)."
DATES = "Effective date: {day}\n\nExpiry: {end}\n"


def codes(
    reference: str, day: str, end: str, body: str = "", second: bool = False
) -> list[tuple[int, str, str]]:
    text = f"(a) {reference}\n\n{DATES.format(day=day, end=end)}\n{body}\n"
    report = check(text, desk_of(SECOND if second else None), datetime.date(2024, 1, 1))
    return [(finding.line, finding.severity, finding.code) for finding in report.findings]


@pytest.mark.parametrize(
    ("reference", "day", "end", "found"),
    [
        # Dress Order, second edition, is in force from 1 March 2024.
        ("Dress Order, second edition, in force from 1 March 2024", "2024-04-01", "2025-01-01", []),
        ("Dress Order, second edition, in force from 1 March 2024", "2024-01-10", "2025-01-01", []),
        (
            "Dress Order, second edition",
            "2024-01-10",
            "2025-01-01",
            [(1, "warning", "begins-later")],
        ),
        (
            "Dress Order, second edition, in force from 1 March 2024",
            "2024-01-10",
            "2024-02-01",
            [(1, "error", "not-in-force")],
        ),
        (
            "Dress Order, first edition, in force from 1 May 2019",
            "2024-04-01",
            "2025-01-01",
            [(1, "error", "expired-edition")],
        ),
        (
            "Dres Order, second edition, in force from 1 March 2024",
            "2024-04-01",
            "2025-01-01",
            [(1, "error", "unknown-book")],
        ),
        (
            "Station Order of Gannet Ness, 2026, in force from 1 June 2025",
            "2025-07-01",
            "2026-01-01",
            [(1, "error", "unknown-edition")],
        ),
    ],
)
def test_a_reference_is_held_against_the_time_of_the_guidance(
    reference: str, day: str, end: str, found: list[tuple[int, str, str]]
) -> None:
    assert codes(reference, day, end) == found


def test_a_sentence_for_the_time_of_an_edition_to_come_is_read_with_that_edition() -> None:
    reference = "Dress Order, second edition, in force from 1 March 2024"
    later = f"From 1 March 2024, {TRUE[0].lower()}{TRUE[1:]}"
    assert codes(reference, "2024-01-10", "2025-01-01", later) == []
    now = codes(reference, "2024-01-10", "2025-01-01", TRUE)
    assert ("error", "not-in-force") in {(severity, code) for _, severity, code in now}


def test_a_misspelt_book_is_told_once_and_meant_all_the_same() -> None:
    body = "The fell trousers must be worn in fell rig (ref. (a), 2.1)."
    found = codes("Fel Book, second edition", "2026-01-01", "2026-12-31", body, second=True)
    assert found == [(1, "error", "unknown-book")]
