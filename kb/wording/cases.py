"""Facts, cases and what a verdict depends on, in words."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.conditions import Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.model.months import beyond_month
from kb.model.records import Case
from kb.model.values import YES, Choices, ValueSet
from kb.wording.conditions import follow, say_condition, take_apart
from kb.wording.english import be, definite, is_adverbial, is_participial, is_plural, listing, phrase
from kb.wording.holders import say_subject
from kb.wording.labels import GRADE
from kb.wording.phrases import WEARER
from kb.wording.testing import phrase_of

Facts = Sequence[tuple[str, ValueSet]]


def say_facts(lookup: Lookup, facts: Facts) -> str:
    """A row of a decision table as clauses: "the weather is foul and the wearer is ashore"."""
    return say_condition(lookup, all_of(Test(fact, values) for fact, values in facts), lead="")


def say_holders(lookup: Lookup, facts: Facts) -> str:
    """The people that facts about grade, branch and holdings pick out: "K5 and above of the boat branch"."""
    holder, rest = _split(lookup, facts)
    who = say_subject(lookup, holder, "everyone")
    return phrase(who, say_condition(lookup, all_of(rest))) if rest else who


def _split(lookup: Lookup, facts: Facts) -> tuple[list[Test], list[Test]]:
    tests = [Test(fact, values) for fact, values in facts]
    holder = [test for test in tests if phrase_of(lookup, test).holder]
    return sorted(holder, key=lambda t: phrase_of(lookup, t).place), [t for t in tests if t not in holder]


def case_points(lookup: Lookup, facts: Facts, leads: bool = False) -> list[str]:
    """Facts of the situation as short phrases, the attached ones first: "in boat rig", "foul weather".

    `leads`: a sentence begins with them, "when the weather is foul" where the first could not stand there.
    """
    phrases = [phrase_of(lookup, test) for test in _split(lookup, beyond_month(facts, lookup))[1]]
    phrases.sort(key=lambda p: p.place)
    points = [p.noun or p.clause for p in phrases]
    if leads and points and not (is_adverbial(points[0]) or is_participial(points[0])):
        points[0] = f"when {phrases[0].clause}"
    return points


def say_who(lookup: Lookup, facts: Facts) -> str:
    """The person of a case: "a K5 of the boat branch", "someone" where nothing is known."""
    holder, _ = _split(lookup, facts)
    if holder and lookup.facts[holder[0].fact].family != GRADE:
        return phrase("someone", *(phrase_of(lookup, test).attached or "" for test in holder))
    return say_subject(lookup, holder, "someone")


def say_case(lookup: Lookup, case: Case) -> str:
    """ "a K5 in boat rig, ashore, foul weather, sleeves down, with the storm coat, nothing else worn"."""
    points = case_points(lookup, case.facts)
    who = say_who(lookup, case.facts)
    if points and points[0].startswith("in "):
        who, points = f"{who} {points[0]}", points[1:]
    return ", ".join([who, *points, *(["nothing else worn"] if case.alone else [])])


def say_audience(lookup: Lookup, condition: Condition) -> str:
    """ "K1 to K5 of the boat branch in boat or storm rig when it is winter", "everyone in boat rig".

    Three circumstances or more are set apart, so that each can be read by itself.
    """
    parts = take_apart(lookup, condition)
    subject = say_subject(lookup, parts.holder, "everyone")
    if len(parts.when) < 3:
        return phrase(subject, follow(parts))
    when = [f"when {part.clause}" for part in parts.when]
    return phrase(subject, follow(parts._replace(when=())), f"{'; '.join(when[:-1])}; and {when[-1]}")


def say_fact(lookup: Lookup, fact: str) -> str:
    """What may be unknown: "the weather", "whether the wearer is hauling lines", "the wearer's grade"."""
    record = lookup.facts[fact]
    if record.family in (GRADE, "branch", "rig"):
        return f"{WEARER}'s {record.label}" if record.family != "rig" else definite(record.label)
    if record.kind == "yes_no":
        return f"whether {phrase_of(lookup, Test(fact, YES)).clause}"
    if record.family == "authorisation":
        return f"who, if anyone, has granted {record.label}"
    labels = [value.label for value in record.values]
    if is_plural(record.label) and 1 < len(labels) < 4:
        return f"whether {_which(lookup, fact)}"
    if labels and all(is_adverbial(label) or is_participial(label) for label in labels) and len(labels) == 2:
        return f"whether {WEARER} is {listing(labels, 'or')}"
    return definite(record.label)


def _one(value: str) -> ValueSet:
    return Choices(frozenset({value}))


def _which(lookup: Lookup, fact: str) -> str:
    """ "the sleeves are down or up"."""
    record = lookup.facts[fact]
    clauses = [phrase_of(lookup, Test(fact, _one(value.id))).clause for value in record.values]
    start = f"{definite(record.label)} {be(record.label)} "
    return start + listing([clause.removeprefix(start) for clause in clauses], "or")


_MOST_NAMED = 3


def say_depends(lookup: Lookup, facts: Sequence[str]) -> str:
    """ "the weather and whether the sleeves are down or up"; of many facts two, and how many more."""
    found = tuple(dict.fromkeys(facts))
    if len(found) > _MOST_NAMED:
        named = [say_fact(lookup, fact) for fact in found[: _MOST_NAMED - 1]]
        return f"{', '.join(named)} and {len(found) - len(named)} more facts"
    named = [say_fact(lookup, fact) for fact in found]
    return " and ".join(part for part in (", ".join(named[:-1]), named[-1]) if part) if named else "nothing"
