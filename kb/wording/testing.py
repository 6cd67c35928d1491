"""One test of a fact as a phrase, by the family and kind of its fact."""

from __future__ import annotations

from functools import lru_cache

from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import ALL_NUMBERS, Choices, Ranges
from kb.wording.english import be, definite, indefinite
from kb.wording.labels import GRADE, value_name
from kb.wording.phrases import WEARER, Phrase
from kb.wording.selections import choice_phrase, scale_phrase
from kb.wording.sets import is_ordered, members_of, say_ordered, say_ranges
from kb.wording.situations import grant_phrase, yes_no_phrase


@lru_cache(maxsize=2048)
def phrase_of(lookup: Lookup, test: Test) -> Phrase:
    """The phrase of a test, by the family and kind of its fact."""
    fact = lookup.facts[test.fact]
    if isinstance(test.values, Ranges):
        return _range_phrase(fact, test.values)
    chosen = frozenset(members_of(lookup, test.fact, test.values))
    if fact.kind == "yes_no":
        return yes_no_phrase(lookup, fact, chosen)
    if fact.family == "authorisation":
        return grant_phrase(lookup, fact, test.values)
    if fact.family == GRADE:
        return _grade_phrase(lookup, test.values)
    if is_ordered(fact):
        return scale_phrase(lookup, fact, test.values)
    return choice_phrase(lookup, fact, chosen)


def _range_phrase(fact: Fact, values: Ranges) -> Phrase:
    text = say_ranges(fact, values)
    subject = definite(fact.label)
    if values == ALL_NUMBERS:
        return Phrase(f"{subject} may be anything", noun=f"any {fact.label}")
    return Phrase(f"{subject} {be(fact.label)} {text}", noun=f"{fact.label} {text}")


def grade_noun(lookup: Lookup, values: Choices) -> str | None:
    """ "a K5" for one grade, "an officer" for a group that says what one of its members is called."""
    chosen = members_of(lookup, GRADE, values)
    if len(chosen) == 1:
        return indefinite(value_name(lookup, GRADE, chosen[0]))
    for group in lookup.base.groups:
        if group.fact == GRADE and set(group.members) == set(chosen) and group.one:
            return indefinite(group.one)
    return None


def _grade_phrase(lookup: Lookup, values: Choices) -> Phrase:
    text = say_ordered(lookup, GRADE, values)
    noun = grade_noun(lookup, values)
    if noun:
        clause = f"{WEARER} is {noun}"
    else:
        order = lookup.order(GRADE)
        rest = Choices(frozenset(order) - frozenset(members_of(lookup, GRADE, values)))
        other = grade_noun(lookup, rest) if rest.members else None
        grades = say_ordered(lookup, GRADE, values, "or")
        clause = f"{WEARER} is not {other}" if other else _among(lookup, text, grades)
    return Phrase(clause, None, f"for {text}", noun=noun or text, place=0, holder=True)


def _among(lookup: Lookup, text: str, grades: str) -> str:
    if _only_grades(lookup, grades):
        return f"{WEARER}'s grade is {grades}"
    if text.startswith("everyone except "):
        return f"{WEARER} is not one of {text.removeprefix('everyone except ')}"
    return f"{WEARER} is one of {text if text[0].isupper() else definite(text)}"


def _only_grades(lookup: Lookup, text: str) -> bool:
    """Whether a set of grades is said by grades alone, without the name of a group."""
    return not any(g.label in text for g in lookup.base.groups if g.fact == GRADE) and "everyone" not in text
