"""Answers as files: the same words in each form, and nothing in a text that its reader takes for markup."""

from __future__ import annotations

import html
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

import kb
from shell.blocks import Block, Cell, Chain, Grid, Headline, Next, Node, Points, Quote, Said
from shell.layout import arrange
from shell.markdown import render_markdown
from shell.saving import FORMS, saved_form
from tests.shell import fakes

READER = MarkdownIt("commonmark").enable("table")
TEXTS = st.text(st.sampled_from("aZ 09.)-+#=*_`[]()<>|~&!\\\\$:;\"'/\u00e9\t"), min_size=1).map(
    lambda text: f"x{text}x"
) | st.sampled_from(
    ["1. one", "- one", "# one", "=== x", "+ a", "2) b", "&amp;", "<b>x</b>", "[a](b)", "***"]
)


def words_of(text: str) -> str:
    """The text that a reader of the Markdown sees, without white space."""
    found: list[str] = []
    for token in READER.parse(text):
        for child in token.children or ():
            assert child.type in ("text", "text_special", "softbreak", "html_inline") or child.nesting, child
            if child.type == "html_inline":
                assert child.content == "<br>"
            elif not child.nesting:
                found.append(child.content)
    return "".join("".join(found).split())


def blocks_with(text: str) -> tuple[Block, ...]:
    return (
        Headline(text, text),
        Said(text, text),
        Points(text, (text, text)),
        Grid(text, (text, text), ((Cell(text), Cell(f"{text}\n{text}")),)),
        Chain(text, (Node(text, (Node(text),)), Node(text))),
        Quote(text, text),
        Next(text, (text,)),
    )


@given(TEXTS)
def test_no_text_is_taken_for_markup(text: str) -> None:
    bare = "".join(text.split())
    found = words_of(render_markdown(blocks_with(text))).replace(f"{bare}-{bare}", bare * 2, 1)
    assert found.replace(f"{bare}:", bare, 1) == bare * 21


def test_markdown_has_headings_lists_tables_and_quotes(base: Any) -> None:
    text = render_markdown(arrange(fakes.conditional("May I wear the liner?"), base, chain=True))
    kinds = {token.type for token in READER.parse(text)}
    assert {"heading_open", "table_open", "bullet_list_open", "blockquote_open"} <= kinds
    assert text.startswith("## **IT DEPENDS** - On the weather.")


@pytest.mark.parametrize("form", FORMS)
def test_every_form_has_the_verdict_the_way_and_the_clause(form: str, base: Any) -> None:
    answer = fakes.prohibited("May I wear the liner ashore?")
    text = saved_form(Path(f"x{form.upper()}"), (answer,), base).decode()
    if form == ".json":
        assert json.loads(text)["verdict"] == "prohibited"
        return
    for part in ("PROHIBITED", "whole", "4.12", "visitors"):
        assert part in text


def test_several_answers_are_one_object_a_line(base: Any) -> None:
    text = saved_form(Path("x.json"), (fakes.silent("a"), fakes.conflict("b")), base).decode()
    assert [json.loads(line)["question"] for line in text.splitlines()] == ["a", "b"]


@pytest.mark.parametrize("form", FORMS)
def test_hostile_texts_are_harmless_in_every_form(form: str, base: Any) -> None:
    text = saved_form(Path(f"x{form}"), (fakes.hostile("\x1b[31m\u202e"),), base).decode()
    assert "\x1b" not in text
    assert "\u202e" not in text


@pytest.mark.parametrize("name", ["x", "x.pdf", ".md", "x.md.exe"])
def test_another_ending_is_a_usage_error(name: str, base: Any) -> None:
    with pytest.raises(kb.UsageError, match="has to end in"):
        saved_form(Path(name), (fakes.silent("a"),), base)


@pytest.mark.parametrize("form", [form for form in FORMS if form != ".json"])  # that has both as fields
def test_every_form_has_the_question_as_it_was_typed_and_the_day(form: str, base: Any) -> None:
    answer = fakes.prohibited("may i wear THE liner ashore")
    text = html.unescape(saved_form(Path(f"x{form}"), (answer,), base).decode()).replace("\xa0", " ")
    assert "may i wear THE liner ashore" in text
    assert "25 November 2026" in text
