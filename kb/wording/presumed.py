"""What goes without saying once something is said: the season by the day, the rig by what is worn with it.

All of it follows from the books' own records: what they say can never be together, in which rigs a thing has
its place, and which situations they tell from their contraries. It chooses what a headline leads with; what
holds otherwise is said all the same.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache, reduce

from kb.model.conditions import AllOf, Condition, NotOf, Test, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.records import Rule, is_in_force
from kb.model.values import NO, YES, Choices, ValueSet, intersect, is_empty, subtract, unite
from kb.wording.labels import GRADE, is_place
from kb.wording.situations import WORN
from kb.wording.surroundings import is_under_a_roof

RIG = "rig"
_SIDE = 4  # a situation has two sides where a quarter or more of the tests of it are for "no"


def implied(lookup: Lookup, known: Mapping[str, ValueSet]) -> dict[str, ValueSet]:
    """Facts that what is known leaves no choice of: in November it is not summer, so that it is winter."""
    found: dict[str, ValueSet] = {}
    for exclusion in lookup.base.exclusions:
        parts = exclusion.parts if isinstance(exclusion, AllOf) else (exclusion,)
        left = [part for part in parts if evaluate(part, known.get) is not True]
        out = as_test(lookup, left[0]) if len(left) == 1 else None
        if out is None or out.fact in known or out.fact.startswith(WORN):
            continue
        rest = subtract(found.get(out.fact, lookup.domain(out.fact)), out.values)
        if isinstance(rest, Choices) and not is_empty(rest):
            found[out.fact] = rest
    return found


def as_test(lookup: Lookup, part: Condition) -> Test | None:
    """A part of an exclusion as a test, if it is one or the denial of one."""
    if isinstance(part, NotOf) and isinstance(part.part, Test):
        return Test(part.part.fact, subtract(lookup.domain(part.part.fact), part.part.values))
    return part if isinstance(part, Test) else None


def has_two_sides(lookup: Lookup, fact: str) -> bool:
    """Whether rules say of a situation as such what holds when it is not so: on duty, indoors.

    Then neither side of it is out of the ordinary. Of others ("pregnant", "left-handed") rules say only what
    holds when it is so, or only what holds unless it is ("not in a crew that stays for less than an hour").
    """
    if lookup.facts[fact].family not in ("situation", "term") or lookup.facts[fact].kind != "yes_no":
        return False
    found = [test.values == NO for r in lookup.base.rules for test in tests(r.condition) if test.fact == fact]
    return 0 < sum(found) < len(found) <= sum(found) * _SIDE


_OTHERS = frozenset({"another", "other", "elsewhere", "none", "neither", "no", "nothing", "nowhere"})
_AT = frozenset({"at", "in", "on", "of", "the", "an", "a"})
_ORDINARY = frozenset({"ordinary", "normal", "usual", "everyday"})


@lru_cache(maxsize=1024)
def the_rest(lookup: Lookup, fact: str) -> frozenset[str]:
    """The values of a choice that stand for all that the books do not name: "another station", "no occasion".

    Of several places none goes without saying: who asks is not "elsewhere" rather than in a ward.
    """
    record = lookup.facts[fact]
    if record.kind != "choice" or record.family != "situation":
        return frozenset()
    words = _ORDINARY if is_place(lookup, fact) and len(record.values) > _PAIR else _OTHERS | _ORDINARY
    said = {value.id: value.label.casefold().split() for value in record.values}
    return frozenset(
        one for one, label in said.items() if next((w for w in label if w not in _AT), "") in words
    )


def place_of(lookup: Lookup, items: Iterable[str], day: datetime.date | None) -> dict[str, ValueSet]:
    """The facts under which alone all of the things have their place: in which rig, where, by whose leave.

    A thing has its place where a rule says that it, or its kind, must or may be worn. Who is told to wear a
    parade tunic is in parade rig, though no clause forbids it in another, and who wears the shorts that take
    leave has it.
    """
    rules = [r for r in lookup.base.rules if r.aspect == "wear" and r.modality in ("must", "may")]
    found: dict[str, ValueSet] = {}
    for item in items:
        wider = set(lookup.broader(item))
        given = [r.condition for r in rules if _in_force(r, day) and wider.intersection(r.scope.items)]
        for fact in {test.fact for condition in given for test in tests(condition)}:
            domain = lookup.domain(fact)
            if fact.startswith(WORN) or not isinstance(domain, Choices):
                continue
            either: ValueSet = Choices(frozenset())
            for condition in given:
                either = unite(either, needed(condition, fact, domain))
            found[fact] = intersect(found.get(fact, domain), either)
    return {
        fact: values
        for fact, values in found.items()
        if not is_empty(values) and values != lookup.domain(fact)
    }


def grade_of(
    lookup: Lookup, facts: Iterable[tuple[str, ValueSet]], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The grades that alone are told anything of what somebody holds: of cellists, the musicians."""
    known = dict(facts)
    if GRADE in known:
        return {}
    domain = lookup.domain(GRADE) if GRADE in lookup.facts else None
    held = [f for f, v in known.items() if lookup.facts[f].family in _HELD and v == YES]
    if not isinstance(domain, Choices) or not held:
        return {}
    turning = [
        rule.condition
        for rule in lookup.base.rules
        if _in_force(rule, day)
        and any(test.fact in held and test.values == YES for test in tests(rule.condition))
    ]
    none: ValueSet = Choices(frozenset())
    either = reduce(unite, (needed(condition, GRADE, domain) for condition in turning), none)
    return {} if is_empty(either) or either == domain else {GRADE: either}


_HELD = frozenset({"qualification", "appointment"})


def circumstances_of(
    lookup: Lookup, facts: Iterable[tuple[str, ValueSet]], day: datetime.date | None
) -> dict[str, ValueSet]:
    """The circumstances in which alone leave that was granted has any effect, and the grades it is for.

    Who says that heat leave was granted need not say that it is as hot as that takes.
    """
    known = dict(facts)
    found: dict[str, ValueSet] = {}
    for leave in [f for f in known if lookup.facts[f].family == "authorisation"]:
        nobody: ValueSet = Choices(frozenset(lookup.order(leave)[:1]))
        if not is_empty(intersect(known[leave], nobody)):
            continue
        turning = [
            rule.condition
            for rule in lookup.base.rules
            if _in_force(rule, day) and any(test.fact == leave for test in tests(rule.condition))
        ]
        shared = [{test.fact for test in tests(one)} for one in turning]
        for fact in set.intersection(*shared) - known.keys() if shared else ():
            domain = lookup.domain(fact)
            either = reduce(unite, [needed(one, fact, domain) for one in turning])
            apart = fact == GRADE or lookup.facts[fact].family == "situation"
            if apart and either != domain and not is_empty(either):
                found[fact] = either
    return found


def award_of(lookup: Lookup, items: Iterable[str]) -> dict[str, ValueSet]:
    """That who asks about a thing which is itself an award has it: "the award of a medal", of medals."""
    found: dict[str, ValueSet] = {}
    for item in items:
        own = {word.removesuffix("s") for word in lookup.items[item].label.casefold().split()}
        for fact in lookup.base.facts:
            words = {word.removesuffix("s") for word in fact.label.casefold().split()}
            if fact.family == "qualification" and words >= own | {"award"}:
                found[fact.id] = YES
    return found


def must_be_worn(
    lookup: Lookup, facts: Iterable[tuple[str, ValueSet]], items: Sequence[str], day: datetime.date | None
) -> dict[str, ValueSet]:
    """What has to be worn with what is told, so that the wearer has it on: in storm rig the storm coat.

    Of the things that are asked about it is not known, nor of one that need not be worn with them. What must
    be only if another is not worn, either of which will do, goes without saying of neither.
    """
    known, asked = dict(facts), {WORN + item for item in items}
    if RIG not in known or len(items) > 1 or any(fact.startswith(WORN) for fact in known):
        return {}  # in any rig it tells none from another, and who names what else is on may depart from it
    spared = {
        item
        for rule in lookup.base.rules
        if rule.modality in ("need_not", "must_not") and rule.aspect == "wear" and _in_force(rule, day)
        if any(test.fact in asked for test in tests(rule.condition))
        for item in rule.scope.items
    }
    found: dict[str, ValueSet] = {}
    for rule in lookup.base.rules:
        duty = rule.aspect == "wear" and rule.modality == "must" and rule.scope.alternatives is None
        if not duty or not _in_force(rule, day):
            continue
        for item in rule.scope.items:
            alone = (
                item not in items
                and item not in spared
                and WORN + item not in known
                and len(lookup.narrower(item)) == 1
            )
            if alone and evaluate(rule.condition, known.get) is True:
                found[WORN + item] = YES
    return found


def needed(condition: Condition, fact: str, domain: ValueSet) -> ValueSet:
    """The values of a fact with which a condition can hold, whatever else is so."""
    if isinstance(condition, Test):
        return intersect(domain, condition.values) if condition.fact == fact else domain
    if isinstance(condition, NotOf):
        denied = condition.part
        return subtract(domain, denied.values) if isinstance(denied, Test) and denied.fact == fact else domain
    parts = [needed(part, fact, domain) for part in condition.parts]
    if isinstance(condition, AllOf):
        return reduce(intersect, parts, domain)
    return reduce(unite, parts) if parts else domain


def _in_force(rule: Rule, day: datetime.date | None) -> bool:
    return day is None or is_in_force(rule, day)


_ON_DUTY = "on duty"
_OUTDOORS, _INDOORS = ("out of doors", "outdoors", "outside"), ("indoors", "inside")
_WEATHERS = frozenset(
    {
        "weather",
        "sun",
        "sunshine",
        "sunlight",
        "rain",
        "raining",
        "snow",
        "snowfall",
        "sleet",
        "hail",
        "fog",
        "wind",
        "spray",
    }
)
_AWAY = frozenset({"way", "leave", "off", "home"})
_TO_AND_FROM = frozenset({"travelling", "to", "from"})


def goes_on(lookup: Lookup, facts: Iterable[tuple[str, ValueSet]]) -> dict[str, ValueSet]:
    """Who asks what to wear is on duty, who tells the weather out in it, and who is in a library indoors.

    Nothing of it where anything else is said.
    """
    stated = dict(facts)
    said = {fact: _words_of(lookup, fact, values) for fact, values in stated.items()}
    away = any(words & _AWAY or words >= _TO_AND_FROM for words in said.values())
    out = any(_is_weather(lookup, fact) and words for fact, words in said.items())
    places = [fact for fact in stated if _is_place(lookup, fact)]
    named = [label for fact in places for label in _named(lookup, fact, stated[fact], widest=True)]
    roof = is_under_a_roof(named) if places else False if out else None
    found: dict[str, ValueSet] = {}
    for fact in lookup.base.facts:
        if fact.id in stated:
            continue
        label, names = fact.label.casefold(), [name.casefold() for name in (fact.label, *fact.other_labels)]
        on = [value.id for value in fact.values if value.label.casefold() == _ON_DUTY]
        if on and not away:
            found[fact.id] = Choices(frozenset(on))
        elif fact.kind != "yes_no":
            continue
        elif _ON_DUTY in names and not away:
            found[fact.id] = YES
        elif roof is not None and label in (*_OUTDOORS, *_INDOORS):
            found[fact.id] = YES if (label in _INDOORS) == roof else NO
    return found


def _words_of(lookup: Lookup, fact: str, values: ValueSet) -> set[str]:
    """The words of what is said to be so of a situation; none of what is denied."""
    record = lookup.facts[fact]
    if record.family not in ("situation", "term") or values == NO:
        return set()
    if not isinstance(values, Choices) or record.kind == "yes_no":
        return set(record.label.casefold().split())
    labels = (label.casefold().removeprefix("off the ") for label in _named(lookup, fact, values))
    return {word for label in labels for word in label.split()}  # "off the road" is not off duty


def _named(lookup: Lookup, fact: str, values: ValueSet, *, widest: bool = False) -> list[str]:
    """The labels of the values that are said to be so, of a yard perhaps without the sheds in it.

    None of what is said by what it is not.
    """
    if not isinstance(values, Choices) or values.complement:
        return []
    chosen = [value for value in lookup.facts[fact].values if value.id in values.members]
    return [value.label for value in chosen if not widest or value.within not in values.members]


def _is_weather(lookup: Lookup, fact: str) -> bool:
    record = lookup.facts[fact]
    names = (record.label, *(value.label for value in record.values))
    return not _WEATHERS.isdisjoint(word for name in names for word in name.casefold().split())


def _is_place(lookup: Lookup, fact: str) -> bool:
    """What somebody does is none, though it may be said like one ("on patrol")."""
    record = lookup.facts[fact]
    return record.kind == "choice" and record.label.casefold() != "activity" and is_place(lookup, fact)


def rig_named(lookup: Lookup, facts: Iterable[tuple[str, ValueSet]]) -> dict[str, ValueSet]:
    """The rig that goes by the name of a situation: on parade it is the parade rig."""
    rig = lookup.facts.get(RIG)
    rigs = {value.id: set(value.label.casefold().split()) for value in rig.values} if rig is not None else {}
    said = list(rigs.values())
    for fact, values in facts:
        record = lookup.facts[fact]
        if record.family != "situation" or not isinstance(values, Choices) or values.complement:
            continue
        values_named = [value.label for value in record.values if value.id in values.members]
        values_named = [record.label] if values == YES and record.kind == "yes_no" else values_named
        names = [set(name.casefold().split()) for name in values_named]
        own = [
            one
            for one, words in rigs.items()
            if names and all(words & name - _shared(said) for name in names)
        ]
        if len(own) == 1:
            return {RIG: Choices(frozenset(own))}
    return {}


_PAIR = 2
_OWN = frozenset({"private", "civilian", "plain", "own", "personal", "everyday"})
_CLOTHES = frozenset({"clothes", "clothing"})
_MUFTI = frozenset({"mufti", "civvies"})


def out_of_uniform(lookup: Lookup) -> Choices:
    """The values of the rig that are none: own clothes. Who asks of uniform is not in them."""
    record = lookup.facts.get(RIG)
    words = {value.id: set(value.label.casefold().split()) for value in record.values} if record else {}
    return Choices(
        frozenset(one for one, said in words.items() if said & _MUFTI or (said & _OWN and said & _CLOTHES))
    )


def _shared(names: Sequence[set[str]]) -> set[str]:
    """The words that several names have: "rig", "dress"."""
    return {word for words in names for word in words if sum(word in other for other in names) > 1}


def worn_in(lookup: Lookup, facts: Iterable[tuple[str, ValueSet]]) -> list[str]:
    """The things that facts say are worn."""
    worn = [fact.removeprefix(WORN) for fact, values in facts if fact.startswith(WORN) and values == YES]
    return [item for item in worn if item in lookup.items]
