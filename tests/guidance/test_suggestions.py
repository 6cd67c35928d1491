"""The sentence that the check suggests is that of the rule which was edited, not of another of its clause.

Every third rule of two services, turned, moved to another grade or rig, or stripped of its conditions. What
is as near to another rule as to its own (a rig that another names) may be put right either way. No source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from tests.guidance.check_desk import SECOND, check, desk_of
from tests.guidance.test_check_sweep import sentences, turned

pytestmark = pytest.mark.slow

_OTHER = (
    ("left", "right"), ("right", "left"), ("navy blue", "black"), ("black", "white"), ("1/4", "3/4"),
    ("at most", "at least"), ("two", "three"), ("one", "two"),
)  # fmt: skip
_RIGS = ("watch", "boat", "hall")


def edited(text: str) -> Iterator[str]:
    """A rule's sentence with its modality turned, or its grade, rig, value or conditions changed."""
    yield from turned(text)
    grade = re.search(r"\b([HKR])(\d)\b", text)
    if grade:
        yield f"{text[: grade.start()]}{grade[1]}{int(grade[2]) % 6 + 1}{text[grade.end() :]}"
    rig = re.search(r" in (\w+) rig", text)
    if rig:
        other = next(one for one in _RIGS if one != rig[1])
        yield f"{text[: rig.start()]} in {other} rig{text[rig.end() :]}"
    for mark in (r",? (unless|except) ", " when "):
        found = re.search(mark, text)
        if found:
            yield text[: found.start()]
    for old, new in _OTHER:
        if re.search(rf"\b{old}\b", text):
            yield re.sub(rf"\b{old}\b", new, text, count=1)
            return


def test_a_suggested_sentence_is_of_the_rule_that_was_edited() -> None:
    tried, other = 0, []
    for folder in (None, SECOND):
        for _, text, citation in list(sentences(folder))[::3]:
            for changed in edited(text):
                for finding in check(f"{changed} {citation}.\n", desk_of(folder)).errors:
                    said = finding.suggestion
                    if said and finding.code != "overruled" and not said.startswith(("Cite", "Take")):
                        tried += 1
                        other += [] if said.startswith(text) else [(changed, said)]
    assert tried > 400
    assert len(other) * 40 <= tried, other


@pytest.mark.parametrize(
    ("sentence", "suggestion"),
    [
        # Dress Order 2.13: an edit of what it says of the two together; 3.11 has the neck cloth as well.
        (
            "The neck cloth must be worn with the wool scarf (Dress Order, 2024 edition, 2.13).",
            "The neck cloth must not be worn with the wool scarf",
        ),
        # Dress Order 6.11: the exception was taken out of the one, the other stands as it was.
        (
            "The rucksack must not be carried in watch or shore rig (Dress Order, 2024 edition, 6.11).",
            "The rucksack must not be carried in watch or shore rig, unless travelling on duty",
        ),
        # Dress Order 6.10: what forbids all of it is shown, whatever it was made from.
        (
            "The umbrella may be carried in boat rig (Dress Order, 2024 edition, 6.10).",
            "The umbrella must not be carried in boat, parade or storm rig",
        ),
    ],
)
def test_the_suggestion_for_an_edit(sentence: str, suggestion: str) -> None:
    (finding,) = check(f"{sentence}\n").errors
    assert finding.suggestion.startswith(suggestion)
