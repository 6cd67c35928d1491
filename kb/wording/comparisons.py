"""Two sides of a comparison in words: what sets them apart, what each says, and how much differs."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.conditions import Condition
from kb.model.lookup import Lookup
from kb.model.questions import Difference, Query, Verdict
from kb.model.records import Case, Scope
from kb.wording.aspects import of_item
from kb.wording.cases import Facts, case_points, say_depends, say_facts, say_who
from kb.wording.conditions import say_condition
from kb.wording.english import be, listing, sentence
from kb.wording.labels import book_name, item_label, the_item
from kb.wording.manners import is_manner
from kb.wording.quantities import say_date
from kb.wording.scopes import say_scope

COMPARED = "compared with"
_MOST_ROWS = 2
_MOST_OWN = 10
Own = Sequence[tuple[Sequence[str], bool]]
_WORDS: dict[Verdict, str] = {"not_required": "not required", "silent": "not addressed"}


def say_sides(lookup: Lookup, left: Case, right: Case) -> tuple[str, str]:
    """What is so on each side and not on the other: "in boat rig" and "in watch rig", "a K5" and "an H2"."""
    return _say_side(lookup, left, right), _say_side(lookup, right, left)


def _say_side(lookup: Lookup, case: Case, other: Case) -> str:
    known = dict(other.facts)
    own = tuple((fact, values) for fact, values in case.facts if known.get(fact) != values)
    who = say_who(lookup, own)
    points = [who.removeprefix("someone").strip()] if who != "someone" else []
    points += case_points(lookup, own)
    if case.alone and not other.alone:
        points.append("with nothing else worn")
    if case.as_of != other.as_of:
        points.append(f"on {say_date(case.as_of)}")
    return ", ".join(points) or "otherwise"


def shared_case(query: Query) -> Case:
    """What both sides of a comparison have in common."""
    other = query.other or query.case
    facts = tuple(entry for entry in query.case.facts if entry in other.facts)
    return Case(as_of=query.case.as_of, facts=facts, alone=query.case.alone and other.alone)


def say_matter(
    lookup: Lookup, item: str, aspect: str, alone: bool = False, scope: Scope | None = None
) -> str:
    """What a line of a comparison is about: "knit cap", "the height of the name strip", "knit cap, carried".

    With `alone` the act of wearing goes without saying.
    """
    record = lookup.aspects[aspect]
    name = item_label(lookup, item) if scope is None else say_scope(lookup, scope)
    if is_manner(record):
        return f"{of_item(lookup, aspect, item)}: “{record.label}”"
    if record.kind == "act":
        return name if aspect == "wear" and alone else f"{name}, {record.done or record.label}"
    if record.kind == "position":
        return f"where {the_item(lookup, item)} {be(item_label(lookup, item))} worn"
    return of_item(lookup, aspect, item)


def say_table(lookup: Lookup, table: Sequence[tuple[Facts, Verdict, str]]) -> str:
    """A table in a few words; each row has its facts, its verdict and the values that it leaves open."""
    if len(table) == 1:
        return _outcome(*table[0][1:])
    if len(table) > _MOST_ROWS:
        ranked = sorted(table, key=lambda row: row[1] == "silent")
        said = dict.fromkeys(_outcome(verdict, values) for _, verdict, values in ranked)
        facts = list(dict.fromkeys(fact for when, _, _ in table for fact, _ in when))
        return f"{' or '.join(said)}, depending on {say_depends(lookup, facts)}"
    return "; ".join(
        f"{_outcome(verdict, values)} when {say_facts(lookup, when)}" for when, verdict, values in table
    )


def _outcome(verdict: Verdict, values: str) -> str:
    return values if values and verdict not in ("silent", "conflict") else _WORDS.get(verdict, verdict)


def say_class_line(lookup: Lookup, verdict: Verdict, condition: Condition | None) -> str:
    """A prohibition of everything of a kind but some on one side, with the cases that are still open."""
    said = _WORDS.get(verdict, verdict)
    return said if condition is None else f"prohibited {say_condition(lookup, condition)}"


def say_open_alike(count: int) -> str:
    """How much is the same on both sides without being settled by what was said."""
    depend = "depends" if count == 1 else "depend"
    return f"Of what is the same, {count} {depend} on further facts, in the same way on both sides."


def say_comparison(lookup: Lookup, query: Query, sides: Sequence[str], count: int, alike: int) -> str:
    """The headline: how much differs, and how much is the same."""
    between = f"between {listing(sides)}" if query.other is None else f"{sides[0]} {COMPARED} {sides[1]}"
    who = say_who(lookup, shared_case(query).facts)
    between = between if who == "someone" else f"for {who.replace('someone', 'anyone', 1)}, {between}"
    between = f"by {book_name(lookup, query.book)}, {between}" if query.book else between
    things = "point" if query.items or query.aspect == "wear" else "thing"
    if not count and not alike:
        return sentence(f"the books are silent on both sides, {between}")
    same = f"{alike} {things}{'s' * (alike != 1)} {'is' if alike == 1 else 'are'} the same"
    if not count:
        return sentence(f"nothing differs, {between}: {same}")
    told = f"{count} {things}{'s differ' if count > 1 else ' differs'}, {between}"
    return sentence(told) + (f" {sentence(same)}" if alike else "")


def say_lead(lookup: Lookup, query: Query, own: Own, told: Sequence[Difference]) -> str:
    """What must be worn in one outfit and never in the other; of one point alone that differs, how."""
    if query.other is None:
        return ""
    sides = say_sides(lookup, query.case, query.other)
    said = []
    if len(told) == 1 and all(side.text for side in told[0].sides):
        ways = (f"{side.text} ({name})" for side, name in zip(told[0].sides, sides, strict=True))
        return sentence(f"{told[0].label}: {', '.join(ways)}") + " "
    outfits = all(side.startswith("in ") for side in sides)
    for side, other, (things, always) in zip(sides, sides[::-1], own, strict=True) if outfits and own else ():
        names = [item_label(lookup, item) for item in things[:_MOST_OWN]]
        names += [f"{len(things) - _MOST_OWN} more"] if len(things) > _MOST_OWN else []
        some = "" if always else ", some of it only in some cases"
        said += [f"Required {side} and not {other}{some}: {listing(names)}. "] if names else []
    return "".join(said)
