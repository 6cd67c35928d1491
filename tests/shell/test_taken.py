"""Which words are told to have been taken for others: corrected ones, and everyday words for other names."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from kb.model.questions import Reading, Span
from kb.model.values import choices
from shell.layout import arrange
from shell.markdown import render_markdown
from shell.plain import render_plain
from shell.taken import taken
from tests.shell import fakes


def answered(*linked: tuple[str, str, str, str], question: str = "") -> Any:
    """An answer to a question of these stretches: text, role, target, and how it was found."""
    answer = fakes.permitted(question or " ".join(text for text, *_ in linked))
    spans: list[Span] = []
    for text, role, target, how in linked:
        start = answer.question.find(text)
        one: dict[str, Any] = {"start": start, "end": start + len(text), "text": text, "role": role}
        spans.append(Span(**one, target=target, how=how))  # type: ignore[arg-type]
    query = answer.reading.query
    facts = (("grade", choices("K5")), ("rig", choices("boat-rig")), ("weather", choices("foul")))
    query = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    reading = msgspec.structs.replace(
        answer.reading, question=answer.question, spans=tuple(spans), query=query
    )
    return msgspec.structs.replace(answer, reading=reading)


TOLD = [
    (("stomr coat", "item", "coat", "spelling"), "stomr coat as storm coat"),
    (("the linr", "item", "liner", "spelling"), "linr as quilted liner"),
    (("oilskins", "item", "liner", "everyday"), "oilskins as quilted liner"),
    (("mittens", "item", "gloves", "index"), "mittens as deck gloves"),
    (("in boatt rig", "fact", "rig", "spelling"), "boatt rig as boat rig"),
    (("uper keper", "grade", "grade", "spelling"), "uper keper as Upper Keeper"),
    (("colur", "aspect", "colour", "spelling"), "colur as colour"),
]
PLAIN = [
    ("storm coat", "item", "coat", "label"),
    ("liner", "item", "liner", "everyday"),
    ("the liners", "item", "liner", "everyday"),
    ("Liner's", "item", "liner", "everyday"),
    ("oilskin", "item", "coat", "everyday"),
    ("old storm coat", "item", "coat", "everyday"),
    ("five", "grade", "grade", "label"),
    ("rain", "fact", "weather", "everyday"),
    ("allowd", "structure", "", "spelling"),
    ("florgle", "item", "gone", "everyday"),
    ("May I wear what my uncle had on", "item", "liner", "index"),
]


@pytest.mark.parametrize(("linked", "said"), TOLD)
def test_what_is_told(linked: tuple[str, str, str, str], said: str, base: Any) -> None:
    assert taken(answered(linked), base) == said


@pytest.mark.parametrize("linked", PLAIN)
def test_of_plain_words_nothing_is_told(linked: tuple[str, str, str, str], base: Any) -> None:
    answer = answered(linked)
    assert taken(answer, base) == ""
    assert "Taken" not in render_plain(arrange(answer, base), 80)


def test_it_stands_on_a_line_of_its_own_below_the_read_back(base: Any) -> None:
    blocks = arrange(answered(TOLD[0][0], TOLD[4][0]), base)
    lines = render_plain(blocks, 60).splitlines()
    assert lines[1].startswith("Read as: ")
    assert lines[2] == "Taken: stomr coat as storm coat; boatt rig as boat rig"
    assert "stomr coat as storm coat" in render_markdown(blocks)


def test_a_word_is_told_once_and_none_that_was_not_written(base: Any) -> None:
    one = ("oilskins", "item", "liner", "everyday")
    assert taken(answered(one, one), base) == "oilskins as quilted liner"
    assert taken(answered(one, question="May I wear the macs?"), base) == ""


def test_of_a_question_that_is_not_answered_nothing_is_told(base: Any) -> None:
    answer = answered(TOLD[0][0])
    missed = fakes.abstained(answer.question)
    reading = Reading(question=answer.question, abstain=missed.abstain, spans=answer.reading.spans)
    missed = msgspec.structs.replace(missed, reading=reading)
    assert "Taken" not in render_plain(arrange(missed, base), 80)


def test_a_label_cannot_steer_the_terminal(base: Any) -> None:
    answer = answered((f"x{fakes.HOSTILE}", "item", "liner", "spelling"))
    assert taken(answer, base) == "" or taken(answer, base).isprintable()
