"""Guidance under later books and on later days: what is affected, why, what it would say now."""

from __future__ import annotations

import datetime
import shutil
from pathlib import Path

import pytest

from kb.files import data_folder
from kb.guidance.checking import Desk
from tests.guidance.check_desk import check, desk_of, good

LATER = """
book: {id: second-notice, title: Second Notice, authority: board}
edition: {id: "2026b", title: "Second Notice of 2026", in force from: 2026-11-15}
part: Amendments
clauses:
  - clause: "1"
    heading: The knit cap
    replaces: dress-order/2024 clause 4.10
    text: The knit cap is black, with a turn-up 2 1/2 in (64 mm) deep.
    rules:
      - must: knit-cap
        colour: black
        height: {measure: 2 1/2 in (64 mm), from: lower edge of the cap, to: upper edge of the turn-up}
  - clause: "2"
    heading: The knit cap under water
    text: Whoever is diving need not wear the knit cap in the boat rig.
    rules:
      - need not: knit-cap
        rig: boat-rig
        when: {activity: diving}
        exception to: dress-order/2024 clause 3.4
  - clause: "3"
    heading: Umbrellas
    kind: procedure
    repeals: dress-order/2024 clause 6.10
    text: Clause 6.10 of the Dress Order ends.
"""


@pytest.fixture(scope="module")
def later(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """The demo's books with a notice that came after the draft was made."""
    folder = tmp_path_factory.mktemp("later") / "books"
    shutil.copytree(data_folder("demo_facts"), folder)
    (folder / "second-notice.yaml").write_text(LATER, encoding="utf-8")
    return desk_of(folder, "6" * 64)


def line_of(text: str) -> int:
    found = good()
    return found[: found.index(text)].count("\n") + 1


def test_later_books_say_what_is_affected_and_why(later: Desk) -> None:
    report = check(good(), later)
    cap, umbrella = line_of("The knit cap must be worn"), line_of("The umbrella must not")
    assert report.changed
    assert {finding.line for finding in report.findings} == {cap, umbrella}
    assert len(report.affected) == 2
    causes = {finding.text.partition(" (ref")[0]: finding for finding in report.errors}
    worn = causes["The knit cap must be worn in boat rig"]
    assert worn.code == "dropped-exception"
    assert worn.suggestion.startswith("The knit cap must be worn in boat rig, unless diving (")
    colour = causes["The colour of the knit cap must be navy blue"]
    assert "Second Notice (2026b) 1 replaced it on 15 November 2026" in colour.cause
    assert colour.suggestion.startswith("The knit cap must be black (")
    assert "The knit cap is black" in colour.quotation
    carried = causes["The umbrella must not be carried"]
    assert "repealed it on 15 November 2026" in carried.cause


def test_books_that_changed_elsewhere_leave_it_in_order() -> None:
    report = check(good(), desk_of(None, "7" * 64))
    assert report.changed
    assert report.findings == ()
    assert report.affected == ()


def test_what_will_change_before_the_guidance_expires_is_a_warning() -> None:
    text = good().replace("**Expiry:** 31 March 2027", "**Expiry:** 30 June 2027")
    report = check(text)
    assert report.errors == ()
    (found,) = report.warnings
    assert (found.code, found.since) == ("changes", datetime.date(2027, 4, 1))
    assert "canvas belt" in found.text


def test_what_has_changed_by_today_is_false() -> None:
    text = good().replace("**Expiry:** 31 March 2027", "**Expiry:** 30 June 2027")
    report = check(text, today=datetime.date(2027, 5, 1))
    assert [finding.code for finding in report.errors] == ["changes"]
    assert {finding.code for finding in report.warnings} == {"review-due"}


def test_a_day_stands_in_for_an_effective_date_that_is_not_given() -> None:
    text = "The tarred smock may be worn in boat rig (Dress Order 3.5).\n"
    assert check(text, today=datetime.date(2026, 12, 1)).errors != ()
    sentence = "From 1 October 2026, the tarred smock must not be worn (Dress Order 2.7).\n"
    for day in (datetime.date(2026, 5, 1), datetime.date(2026, 12, 1)):
        report = check(sentence, today=day)
        assert (report.findings, report.confirmed) == ((), 1)


def test_drafts_stay_next_to_the_books_they_are_checked_with(tmp_path: Path) -> None:
    del tmp_path
    report = check(
        "Made from rule books " + "a" * 64 + "\n\nThe umbrella must not be carried in boat rig (6.10).\n"
    )
    assert report.made_from == "a" * 64
    assert report.changed
