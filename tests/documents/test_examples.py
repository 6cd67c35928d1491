"""Every fenced example of the README and of the page for developers is run, in the order of the page."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.documents.pages import DEVELOPERS, README, fences_of
from tests.documents.running import (
    INSTALLS,
    environment,
    fits,
    run_command,
    run_console,
    run_python,
    write_file,
)

LANGUAGES = {"sh", "yaml", "console", "pycon"}


@pytest.mark.parametrize("page", [README, DEVELOPERS], ids=lambda page: page.name)
def test_every_example_does_what_the_page_says(page: Path, tmp_path: Path) -> None:
    folder = tmp_path / "work"
    folder.mkdir()
    env = environment(tmp_path / "cache")
    if page is DEVELOPERS:  # it goes on with the rule books of the README
        for fence in fences_of(README):
            if fence.language == "yaml":
                write_file(fence, folder)
    wrong: list[str] = []
    for fence in fences_of(page):
        assert fence.language in LANGUAGES, f"line {fence.line}: nothing runs a {fence.language} example"
        if fence.language == "yaml":
            write_file(fence, folder)
        elif fence.language == "console":
            wrong += run_console(fence, folder, env)
        elif fence.language == "pycon":
            wrong += run_python(fence, folder, env)
    assert not wrong, "\n".join(wrong)


def test_the_readme_has_two_lines_for_a_fresh_machine_and_nothing_else_to_type_unseen() -> None:
    lines = [
        line for fence in fences_of(README) if fence.language == "sh" for line in fence.text.splitlines()
    ]
    assert len(lines) == 2
    assert all(line.startswith(INSTALLS) for line in lines)
    run, test = lines
    assert ".venv/bin/clothbound ask" in run
    assert "pytest" not in run
    assert "'.[test]'" in test
    assert ".venv/bin/python -m pytest" in test
    assert not [fence for fence in fences_of(DEVELOPERS) if fence.language == "sh"]


SMALLEST = """
service: {id: club, label: Club, namespace: "https://club.example/"}
authorities: [{id: club-board, label: Club Board}]
items: [{id: cape, label: cape, kind of: garment}]
book: {id: club-rules, title: Club Rules, authority: club-board}
edition: {id: "2026", title: Club Rules of 2026, in force from: 2026-01-01}
clauses: [{clause: "1", text: The cape is worn., rules: [must: cape]}]
"""


def test_rule_books_need_no_grades_rigs_or_facts(tmp_path: Path) -> None:
    (tmp_path / "club").mkdir()
    (tmp_path / "club" / "rules.yaml").write_text(SMALLEST, encoding="utf-8")
    env = environment(tmp_path / "cache")
    assert "0  grades" in run_command("clothbound build --books club", tmp_path, env)
    assert "REQUIRED" in run_command('clothbound ask --books club "Must I wear the cape?"', tmp_path, env)


@pytest.mark.parametrize(
    ("shown", "real", "same"),
    [
        ("a\nb\n", "a\nb\n\n", True),
        ("a\n...\nd\n", "a\nb\nc\nd\n", True),
        ("a\n...\n", "a\n", True),
        ("a\n...\nd\n", "a\nb\nc\n", False),
        ("a\n", "a\nb\n", False),
        ("a ... c\n", "a b c\n", True),
        ("a ... c\n", "a b\nc\n", False),
        ("a.c\n", "abc\n", False),
        ("", "anything\n", False),
    ],
)
def test_output_is_compared_line_by_line(shown: str, real: str, same: bool) -> None:
    assert fits(shown, real) is same
