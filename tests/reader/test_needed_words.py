"""No pattern of the reader is left out for a text that it matches."""

from __future__ import annotations

import gc
import importlib
import pkgutil
import re

import pytest

import kb.reader
from kb.text import Pattern, lacks, needed_words
from tests.reading.sheets import BOOKS, dialogues, questions

NEEDED = [
    (r"\b(?:put|make) (?:any )?(?:pins|a hole) (?:in|into)\b", [["put make", "pins a_hole"]]),
    (r"[,;]?\s+and\s+(?=(?:may|can))", [["and"]]),
    (r"colou?r", [["colo"]]),
    (r"red|blue", [["red"], ["blue"]]),
    (r"red|b.ue", []),
    (r"^(.*?)\b(?:has )?(?:left|forgot) (?:his|her) ", [["left forgot", "his her"]]),
    (r"[^.,;:?!\n]*$", []),
    (r"abcd{0,2}", [["abc"]]),
    (r"(?:foo|bar)? x", []),
    (r"foo(?!barn|bazaar)", [["foo"]]),
    (r"(?<!foobar)bar", [["bar"]]),
    (r"x[]abc]?y\(ttt\)(?P<n>zzzz|wwww)", [["ttt"]]),
]


@pytest.mark.parametrize(("source", "needed"), NEEDED)
def test_needed_words(source: str, needed: list[list[str]]) -> None:
    ways = tuple(
        tuple(tuple(w.replace("_", " ") for w in words.split()) for words in groups) for groups in needed
    )
    assert needed_words(source) == ways


def test_what_a_pattern_matches_has_a_word_that_it_needs() -> None:
    for module in pkgutil.walk_packages(kb.reader.__path__, "kb.reader."):
        importlib.import_module(module.name)
    from kb.reader.meaning import rephrase

    for first in (True, False):
        rephrase.rephrased("May I?", first=first)
    texts = [one.text for name in BOOKS for one in questions(name, "open")]
    texts += [turn.text for talk in dialogues("open") for turn in talk.turns]
    lower = [text.lower() for text in texts]
    patterns = [thing for thing in gc.get_objects() if type(thing) is Pattern]
    needing = [(p, needed_words(p._source)) for p in patterns if not p._flags & re.VERBOSE]
    needing = [(pattern, words) for pattern, words in needing if words]
    assert len(needing) > 50, "most of what is guarded is found"
    for pattern, words in needing:
        for text, low in zip(texts, lower, strict=True):
            if lacks(low, words):
                assert pattern.compiled.search(text) is None, (pattern._source, text)
