"""Who a sentence is about: "K5 and above of the boat branch with the diver qualification"."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.wording.english import phrase
from kb.wording.labels import GRADE
from kb.wording.sets import say_ordered
from kb.wording.testing import grade_noun, phrase_of

EVERY_MEMBER = "every member"


def say_subject(lookup: Lookup, tests: Sequence[Test], anyone: str = "") -> str:
    """The holders that tests of grade, branch and what is held name; empty (or `anyone`) without any.

    One grade is "a K5", several are "K5 and above"; without a grade it is "members of the boat branch".
    """
    if not tests:
        return anyone
    grades = [test for test in tests if lookup.facts[test.fact].family == GRADE]
    others = [phrase_of(lookup, t).attached or "" for t in tests if lookup.facts[t.fact].family != GRADE]
    who, link, without = _grades(lookup, grades).partition(" except ")
    return phrase(who, *_linked(others), f"except {without}" if link else "")


def _grades(lookup: Lookup, tests: Sequence[Test]) -> str:
    texts: list[str] = []
    for test in tests:
        assert isinstance(test.values, Choices)
        noun = grade_noun(lookup, test.values)
        said = say_ordered(lookup, test.fact, test.values)
        texts.append(noun if noun and _is_single(lookup, test) else said)
    if not texts:
        return "members"
    first, rest = texts[0], texts[1:]
    first = f"those {first}" if first.startswith("below ") else first
    return phrase(first, *(f"who are also {other}" for other in rest))


def _is_single(lookup: Lookup, test: Test) -> bool:
    values = test.values
    return isinstance(values, Choices) and sum((v in values.members) != values.complement
                                               for v in lookup.order(test.fact)) == 1  # fmt: skip


def _linked(others: Sequence[str]) -> list[str]:
    """ "of the boat branch", "with the diver qualification and without the waiver"."""
    if len(others) < 2:
        return list(others)
    branch = [other for other in others if not other.startswith(("with ", "without "))]
    held = [other for other in others if other.startswith(("with ", "without "))]
    return [*branch, " and ".join(held)]
