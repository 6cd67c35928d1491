"""Sets of values of a fact in words.

Different sets never get the same words as long as the labels of a fact's values and groups differ.
"""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices, Ranges, ValueSet, contains
from kb.wording.english import definite, is_adverbial, listing, with_shared_end
from kb.wording.labels import GRADE, value_name
from kb.wording.quantities import say_bounds, say_days


def members_of(lookup: Lookup, fact: str, values: Choices) -> tuple[str, ...]:
    """The values of a finite fact that are in the set, in the order of the sources."""
    domain = lookup.order(fact) or ("yes", "no")
    return tuple(value for value in domain if contains(values, value))


def say_values(lookup: Lookup, fact: str, values: ValueSet) -> str:
    """The values of a fact in words: "K5 and above", "ashore", "fair or foul weather", "above 30 °C"."""
    record = lookup.facts[fact]
    if isinstance(values, Ranges):
        return say_ranges(record, values)
    if record.kind == "yes_no":
        return listing(members_of(lookup, fact, values), "or") or "neither yes nor no"
    if record.family == "authorisation":
        return _say_grant(lookup, fact, values)
    if is_ordered(record):
        return say_ordered(lookup, fact, values)
    return say_choices(lookup, fact, values)


def is_ordered(record: Fact) -> bool:
    return record.family == GRADE or (record.kind == "scale" and record.family != "authorisation")


def say_ranges(record: Fact, values: Ranges) -> str:
    say = say_days if record.kind == "date" else lambda i: say_bounds(i, record.unit or "1")
    return listing([say(interval) for interval in values.intervals], "or") or "none"


# Ordered facts: grades and scales


def say_ordered(lookup: Lookup, fact: str, values: Choices, word: str = "and") -> str:
    """A set of values of one order: the group it is, else the shortest true way to name it."""
    order = lookup.order(fact)
    chosen = frozenset(members_of(lookup, fact, values))
    everything = "everyone" if lookup.facts[fact].family == GRADE else f"any {lookup.facts[fact].label}"
    if len(chosen) == len(order):
        return everything
    if not chosen:
        return "no one" if lookup.facts[fact].family == GRADE else "none"
    if len(chosen) == 1:
        return value_name(lookup, fact, *chosen)
    bases = {frozenset(order): everything, **_groups(lookup, fact)}
    if chosen in bases:
        return bases[chosen]
    hull = _hull(order, chosen)
    if hull != chosen:
        bases.setdefault(hull, _say_run(lookup, fact, [v for v in order if v in hull], word))
    found = [_union(lookup, fact, chosen, word)]
    found += [
        f"{text} except {_union(lookup, fact, base - chosen, 'and')}"
        for base, text in bases.items()
        if chosen < base
    ]
    return min(found, key=lambda text: (len(text), text))


def _groups(lookup: Lookup, fact: str) -> dict[frozenset[str], str]:
    """The named groups of a fact with more than one member; the first of equal ones names them."""
    found: dict[frozenset[str], str] = {}
    for group in lookup.base.groups:
        if group.fact == fact and len(group.members) > 1:
            found.setdefault(closed(lookup, fact, group.members), group.label)
    return found


def closed(lookup: Lookup, fact: str, members: Sequence[str]) -> frozenset[str]:
    """Values of a fact and all narrower ones."""
    found = frozenset(members)
    while True:
        narrower = {value.id for value in lookup.facts[fact].values if value.within in found}
        if narrower <= found:
            return found
        found |= narrower


def _hull(order: Sequence[str], chosen: frozenset[str]) -> frozenset[str]:
    places = [index for index, value in enumerate(order) if value in chosen]
    return frozenset(order[places[0] : places[-1] + 1])


def _runs(order: Sequence[str], chosen: frozenset[str]) -> list[list[str]]:
    runs: list[list[str]] = []
    previous = False
    for value in order:
        if value in chosen and previous:
            runs[-1].append(value)
        elif value in chosen:
            runs.append([value])
        previous = value in chosen
    return runs


def _union(lookup: Lookup, fact: str, chosen: frozenset[str], word: str) -> str:
    groups = _groups(lookup, fact)
    parts: list[str] = []
    for run in _runs(lookup.order(fact), chosen):
        if frozenset(run) in groups:
            parts.append(groups[frozenset(run)])
        elif len(run) == 2 and not _bottom(lookup, fact, run) and run[-1] != lookup.order(fact)[-1]:
            parts += [value_name(lookup, fact, value) for value in run]
        else:
            parts.append(_say_run(lookup, fact, run, word))
    return listing(parts, word)


def _bottom(lookup: Lookup, fact: str, run: Sequence[str]) -> bool:
    """Whether a run takes the lower end of the order and more than a part of its lowest ladder."""
    if run[0] != lookup.order(fact)[0]:
        return False
    ladder = {value.id: value.group for value in lookup.facts[fact].values}
    return ladder[run[0]] is None or ladder[run[0]] != ladder[run[-1]]


def _say_run(lookup: Lookup, fact: str, run: Sequence[str], word: str) -> str:
    order = lookup.order(fact)
    first, last = (value_name(lookup, fact, value) for value in (run[0], run[-1]))
    if len(run) == 1:
        return first
    if run[-1] == order[-1]:
        return f"{first} {word} above"
    if _bottom(lookup, fact, run):
        following = lookup.facts[fact].values[order.index(run[-1]) + 1]
        here = lookup.facts[fact].values[order.index(run[-1])]
        if following.group != here.group:
            return f"below {value_name(lookup, fact, following.id)}"
        return f"{last} {word} below"
    return f"{first} {word} {last}" if len(run) == 2 else f"{first} to {last}"


# Choices


def say_choices(lookup: Lookup, fact: str, values: Choices) -> str:
    """A set of values of a choice: "ashore", "ashore but not in town", "not afloat"."""
    order = lookup.order(fact)
    chosen = frozenset(members_of(lookup, fact, values))
    label = lookup.facts[fact].label
    if len(chosen) == len(order):
        return f"any {label}"
    if not chosen:
        return f"no {label}"
    named = _groups(lookup, fact).get(chosen)
    direct = atoms(lookup, fact, chosen)
    others = atoms(lookup, fact, frozenset(order) - chosen)
    if named and len(direct) > 1:
        return named
    if len(direct) == 1 and not direct[0][1]:
        return lookup.value_label(fact, direct[0][0])
    if _weight(others) < _weight(direct):
        return negated(_say_atoms(lookup, fact, others, "or"), len(others) > 1)
    return _say_atoms(lookup, fact, direct, "or")


def negated(text: str, several: bool) -> str:
    """ "not ashore", "neither ashore nor afloat"."""
    if several and ", " not in text and text.count(" or ") == 1:
        first, second = text.split(" or ")
        return f"neither {first} nor {second}"
    return f"none of {text}" if several else f"not {text}"


Atom = tuple[str, tuple[str, ...]]


def _weight(found: Sequence[Atom]) -> int:
    return sum(1 + len(without) for _, without in found)


def atoms(lookup: Lookup, fact: str, chosen: frozenset[str]) -> list[Atom]:
    """A set as its broadest values, each less the broadest narrower values that are not in it."""
    order = lookup.order(fact)
    parents = {value.id: value.within for value in lookup.facts[fact].values}

    def top(value: str) -> str:
        parent = parents[value]
        return value if parent is None or parent not in chosen else top(parent)

    holes = [value for value in order if value not in chosen and parents[value] in chosen]
    tops = [value for value in order if value in chosen and top(value) == value]
    return [(value, tuple(hole for hole in holes if top(hole) == value)) for value in tops]


def _say_atoms(lookup: Lookup, fact: str, found: Sequence[Atom], word: str) -> str:
    if all(not without for _, without in found):
        return with_shared_end([lookup.value_label(fact, value) for value, _ in found], word)
    parts: list[str] = []
    for value, without in found:
        text = lookup.value_label(fact, value)
        if without:
            names = [lookup.value_label(fact, hole) for hole in without]
            but = "but not" if all(is_adverbial(name) for name in names) else "except"
            text = f"{text} {but} {listing(names, 'or')}"
        parts.append(text)
    return listing(parts, word)


# Authorisations


def grant_ranks(lookup: Lookup, fact: str, values: Choices) -> tuple[list[str], bool]:
    """The authorities in a set of grants, lowest first, and whether "not granted" is in the set."""
    inside = members_of(lookup, fact, values)
    granting = [value for value in inside if value in lookup.authorities]
    ranked = sorted(granting, key=lambda a: -lookup.authorities[a].rank)
    return ranked, len(granting) < len(inside)


def grantors(lookup: Lookup, fact: str) -> list[str]:
    """All authorities that can grant, lowest first."""
    everyone = [value for value in lookup.order(fact) if value in lookup.authorities]
    return sorted(everyone, key=lambda a: -lookup.authorities[a].rank)


def all_can_grant(lookup: Lookup, fact: str) -> bool:
    """Whether a grant by any of the authorities counts as one, so that it need not be said whose it is."""
    return set(grantors(lookup, fact)) <= valid_grants(lookup.facts[fact], lookup).members


def say_grantor(lookup: Lookup, fact: str, granting: list[str], higher: str = "or higher") -> str:
    """ "the District Superintendent or higher" when the set is an authority and all above it, else a list."""
    ladder = grantors(lookup, fact)
    names = [definite(lookup.authorities[authority].label) for authority in granting]
    top = lookup.authorities[granting[0]].rank
    upward = [a for a in ladder if lookup.authorities[a].rank <= top]
    equal = [a for a in granting if lookup.authorities[a].rank == top]
    if len(granting) > len(equal) and set(upward) == set(granting):
        named, last = ", ".join(names[: len(equal)]), higher.removeprefix("or ")
        return f"{named} or {last}"
    return listing(names, "or")


def _say_grant(lookup: Lookup, fact: str, values: Choices) -> str:
    granting, ungranted = grant_ranks(lookup, fact, values)
    if not ungranted:
        if len(granting) == len(grantors(lookup, fact)) and all_can_grant(lookup, fact):
            return "granted"
        return f"granted by {say_grantor(lookup, fact, granting)}" if granting else "neither granted nor not"
    missing = [authority for authority in grantors(lookup, fact) if authority not in granting]
    if not granting:
        return "not granted"
    return f"not granted by {say_grantor(lookup, fact, missing)}" if missing else "granted or not granted"
