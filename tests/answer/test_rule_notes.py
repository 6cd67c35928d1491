"""What is remarked on a rule is shown with the answer that it carries, and with its clause."""

from __future__ import annotations

import json

import pytest

from kb import answer_to_json
from shell.clauses import clause_blocks
from shell.layout import arrange
from shell.markdown import render_markdown
from shell.plain import render_plain
from tests.opening import opened


@pytest.mark.parametrize(
    ("books", "question", "remark"),
    [
        ("demo", "May I wear spectacles?", "Dress Order (2024) 6.2: By anyone who needs them."),
        ("demo", "May a K2 wear the keeper's pin in boat rig?", "is a reading of the clause."),
        ("demo", "Where must the service cap be carried?", "Under the left arm."),
        ("fifth", "Must I return order F?", "Within seven days."),
    ],
)
def test_the_remark_stands_with_the_answer(books: str, question: str, remark: str) -> None:
    base = opened(books)
    (answer,) = base.ask(question)
    assert [note for note in answer.notes if remark in note]
    assert remark in " ".join(json.loads(answer_to_json(answer))["notes"])
    for chain in (False, True):
        blocks = arrange(answer, base, chain=chain)
        assert remark in " ".join(render_plain(blocks, 1000).split())
        assert remark.split(":")[-1].strip() in render_markdown(blocks)


def test_a_rule_that_carries_nothing_is_not_remarked_on() -> None:
    (answer,) = opened("demo").ask("Must spectacles be worn over the goggles?")
    assert not [note for note in answer.notes if "who needs them" in note]
    (answer,) = opened("demo").ask("May a K2 wear the keeper's pin in shore rig?")
    assert not [note for note in answer.notes if "reading of the clause" in note]


def test_the_clause_shows_it_under_its_rule() -> None:
    shown = render_plain(clause_blocks("dress-order/2024 6.21", opened("demo")), 200)
    assert "Cosmetics may be worn. Note: If they are discreet." in " ".join(shown.split())
