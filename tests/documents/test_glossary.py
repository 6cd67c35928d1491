"""One word for each idea: the glossary and the code use the same ones."""

from __future__ import annotations

import re

import pytest

from tests.documents.code import kinds, record_names, words_of_the_code
from tests.documents.pages import DEVELOPERS, rows_of, section_of


def _code(cell: str) -> list[str]:
    return re.findall(r"`([^`]+)`", cell)


ROWS = rows_of(section_of(DEVELOPERS, "Glossary"))
TERMS = [term for row in ROWS for term in _code(row[0])]


def test_every_code_term_is_in_the_code() -> None:
    named = [*TERMS, *(word for row in ROWS for word in _code(row[1]))]
    assert len(named) > 100
    assert sorted({word for word in named if word not in words_of_the_code()}) == []


def test_no_term_is_explained_twice() -> None:
    terms = [term.strip(" `") for row in ROWS for term in row[0].split(",")]
    assert sorted({term for term in terms if terms.count(term) > 1}) == []


def test_every_public_record_of_the_model_is_explained() -> None:
    assert len(record_names()) > 30
    assert sorted(record_names() - set(TERMS)) == []


@pytest.mark.parametrize("name", sorted(kinds()))
def test_every_kind_has_all_its_values(name: str) -> None:
    rows = {_code(row[0])[0]: row[1] for row in rows_of(section_of(DEVELOPERS, "Kinds"))}
    assert tuple(_code(rows[name])) == kinds()[name]


def test_every_verdict_of_a_screen_is_explained_in_the_readme() -> None:
    from shell.words import VERDICTS
    from tests.documents.pages import README

    told = {row[0] for row in rows_of(section_of(README, "Asking"))}
    assert {word for word, _ in VERDICTS.values()} <= told
