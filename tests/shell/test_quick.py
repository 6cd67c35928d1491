"""A question without options is read as the parser reads it."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shell.arguments import make_parser
from shell.quick import bare_question

WORDS = st.lists(st.text(max_size=12), max_size=4)


@given(words=WORDS)
def test_what_needs_no_parser_is_what_the_parser_says(words: list[str]) -> None:
    argv = ["ask", *words]
    bare = bare_question(argv)
    if bare is not None:
        said = vars(make_parser(argv).parse_args(argv))
        assert {**vars(bare), "fact": list(bare.fact)} == said


@pytest.mark.parametrize(
    "argv", [["ask", "May I wear the cap?"], ["ask", "may", "I", "wear", "it"], ["ask", ""]]
)
def test_a_question_alone_needs_no_parser(argv: Sequence[str]) -> None:
    bare = bare_question(argv)
    assert bare is not None
    assert bare.text == argv[1:]


@pytest.mark.parametrize(
    "argv", [[], ["ask"], ["ask", "-"], ["ask", "--json", "x"], ["ask", "x", "--why"], ["build"]]
)
def test_anything_else_does(argv: Sequence[str]) -> None:
    assert bare_question(argv) is None
