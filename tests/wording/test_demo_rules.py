"""The demo's rules in words, read through and kept."""

from __future__ import annotations

from tests.wording.demo_rules import KEPT, demo_sentences
from tests.wording.test_properties import check


def test_the_sentences_of_the_demo_are_those_that_were_read_through() -> None:
    assert demo_sentences() == KEPT.read_text(encoding="utf-8"), (
        "The demo or its wording has changed: python -m tests.wording.demo_rules, then read the difference."
    )


def test_every_sentence_of_the_demo_is_whole() -> None:
    for line in demo_sentences().splitlines():
        reference, _, text = line.partition(": ")
        assert "(" in reference
        check(text)
