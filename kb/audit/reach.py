"""Gaps: grades, rigs and items that no rule reaches though their neighbours are reached."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.audit.findings import Finding
from kb.audit.law import Law
from kb.model.conditions import Test, tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices
from kb.reasoner.space import classes_of
from kb.wording import clause_reference, item_label, listing, the_item, value_name
from kb.wording.holders import say_subject

_FEWEST = 3


class Reach(msgspec.Struct, frozen=True):
    """Which grades a rule can apply to in each rig: one mask of grades for each rig."""

    grades: tuple[int, ...]

    def everywhere(self) -> int:
        union = 0
        for mask in self.grades:
            union |= mask
        return union


class Map:
    """What each rule of a day reaches; residual rules reach nothing, they only close what is left."""

    def __init__(self, law: Law) -> None:
        self.law = law
        lookup = law.lookup
        self.grades = _names(lookup, "grade")
        self.rigs = _names(lookup, "rig") or ("",)
        self.reach = {rule.id: self._reach(rule.id) for rule in law.rules if not rule.residual}

    def _reach(self, rule: str) -> Reach:
        condition = self.law.engine.condition(rule)
        tested = {test.fact for test in tests(condition)}
        everyone = (1 << len(self.grades)) - 1
        masks = []
        known: dict[tuple[str, ...], int] = {}
        for rig in self.rigs:
            inside = [t for t in tests(condition) if t.fact == "rig"]
            key = tuple(str(isinstance(t.values, Choices) and rig in t.values.members) for t in inside)
            if key not in known:
                at = [Test("rig", Choices(frozenset({rig})))] if rig else []
                known[key] = self._mask(rule, at, tested, everyone)
            masks.append(known[key])
        return Reach(tuple(masks))

    def _mask(self, rule: str, at: Sequence[Test], tested: set[str], everyone: int) -> int:
        condition = self.law.engine.condition(rule)
        if not self.grades:
            return everyone
        lookup = self.law.lookup
        every = lookup.domain("grade")
        found = 0
        for piece in classes_of("grade", every, (condition,), lookup) if "grade" in tested else (every,):
            assert isinstance(piece, Choices), "grades are named"
            if self.law.case((condition, *at, Test("grade", piece))) is not None:
                found |= sum(1 << i for i, grade in enumerate(self.grades) if grade in piece.members)
        return found


def _names(lookup: Lookup, fact: str) -> tuple[str, ...]:
    return lookup.order(fact) if fact in lookup.facts else ()


def gap_findings(law: Law) -> list[Finding]:
    """Holes in the grades, rigs and items that are passed over, and grades that no rule reaches."""
    found = Map(law)
    return [*_grade_holes(found), *_rig_gaps(found), *_item_gaps(law), *_unreached_grades(found)]


def _named_views(found: Map) -> Iterator[tuple[str, str, list[str]]]:
    """Items that a rule names, with the aspect and the rules that cover them."""
    law = found.law
    named = dict.fromkeys((item, rule.aspect) for rule in law.rules for item in rule.scope.items)
    today = set(found.reach)
    for item, aspect in named:
        rules = [rule for rule in law.index.get((item, aspect), ()) if rule in today]
        if rules:
            yield item, aspect, rules


def _holes(mask: int, size: int) -> Iterator[tuple[int, int]]:
    """Runs of grades that are not reached between two that are: first and last place."""
    reached = [i for i in range(size) if mask >> i & 1]
    for low, high in pairwise(reached):
        if high - low > 1:
            yield low + 1, high - 1


def _grade_holes(found: Map) -> Iterator[Finding]:
    lookup = found.law.lookup
    of = {value.id: value.group for value in lookup.facts["grade"].values} if "grade" in lookup.facts else {}
    ladders = [of.get(grade) for grade in found.grades]
    for item, aspect, rules in _named_views(found):
        holes: dict[tuple[int, int], list[str]] = {}
        for place, rig in enumerate(found.rigs):
            masks = [found.reach[rule].grades[place] for rule in rules]
            union = 0
            for mask in masks:
                union |= mask
            for first, last in _holes(union, len(found.grades)):
                ends = 1 << first - 1 | 1 << last + 1
                one_ladder = ladders[first - 1] == ladders[last + 1]  # or none is between
                if one_ladder and not any(mask & ends == ends for mask in masks):
                    holes.setdefault((first, last), []).append(rig)
        for (first, last), rigs in holes.items():
            missing = Choices(frozenset(found.grades[first : last + 1]))
            who = say_subject(lookup, [Test("grade", missing)], "nobody")
            where = "" if len(rigs) == len(found.rigs) else f" in {_rigs(lookup, rigs)}"
            beside = [
                rule for rule in rules if found.reach[rule].everywhere() & (1 << first - 1 | 1 << last + 1)
            ]
            yield _finding(
                found.law,
                beside[-1],
                "grade-gap",
                "warning",
                f"No rule reaches {who} as to {_matter(lookup, item, aspect)}{where}, though the grades "
                "just below and just above are reached.",
                "Widen one of the rules, or give those grades a rule of their own (a may or a need not).",
                tuple(beside),
            )


def _rigs(lookup: Lookup, rigs: Sequence[str]) -> str:
    return listing([value_name(lookup, "rig", rig) for rig in rigs], "or")


def _matter(lookup: Lookup, item: str, aspect: str) -> str:
    record = lookup.aspects[aspect]
    if aspect == "wear":
        return the_item(lookup, item)
    return f"{record.label} of {the_item(lookup, item)}"


def _rig_gaps(found: Map) -> Iterator[Finding]:
    """A rig that is passed over where all others are reached, by rules for single rigs."""
    lookup = found.law.lookup
    if len(found.rigs) < _FEWEST + 1:
        return
    for item, aspect, rules in _named_views(found):
        if aspect != "wear":
            continue
        unions = [0] * len(found.rigs)
        for rule in rules:
            for place, mask in enumerate(found.reach[rule].grades):
                unions[place] |= mask
        empty = [place for place, mask in enumerate(unions) if not mask]
        if len(empty) != 1:
            continue
        others = [place for place in range(len(found.rigs)) if place != empty[0]]
        if any(all(found.reach[rule].grades[place] for place in others) for rule in rules):
            continue
        yield _finding(
            found.law,
            rules[-1],
            "rig-gap",
            "note",
            f"No rule reaches {the_item(lookup, item)} in {_rigs(lookup, [found.rigs[empty[0]]])}, though it "
            "is reached in every other rig.",
            "Add a rule for that rig, or say in one rule which rigs are meant.",
            tuple(rules),
        )


def _item_gaps(law: Law) -> Iterator[Finding]:
    """The one kind of something of which no rule speaks, though rules speak of every other kind."""
    lookup = law.lookup
    addressed = {item for (item, _), rules in law.index.items() if _plain(law, rules)}
    used = _used_items(lookup)
    children: dict[str, list[str]] = {}
    for item in lookup.base.items:
        for parent in item.broader:
            children.setdefault(parent, []).append(item.id)
    for parent, kinds in children.items():
        silent = [kind for kind in kinds if kind not in addressed and len(lookup.narrower(kind)) == 1]
        if len(kinds) <= _FEWEST or len(silent) != 1 or silent[0] in used:
            continue
        record = lookup.items[silent[0]]
        yield Finding(
            at=record.at,
            code="item-gap",
            severity="note",
            message=f"No rule speaks of {the_item(lookup, record.id)}, though rules speak of every other "
            f"kind of {item_label(lookup, parent)}.",
            suggestion="Add a rule, or remove the item.",
        )


def _plain(law: Law, rules: Sequence[str]) -> bool:
    today = {rule.id for rule in law.rules}
    return any(rule in today and not law.lookup.rules[rule].residual for rule in rules)


def _used_items(lookup: Lookup) -> frozenset[str]:
    """Items that positions and conditions speak of."""
    found: set[str] = set()
    for rule in lookup.base.rules:
        for position in rule.value.positions:
            found.update(name for name in (position.on, position.feature) if name)
        found.update(t.fact.partition(":")[2] for t in tests(rule.condition) if t.fact.startswith("worn:"))
    found.update(item.part_of for item in lookup.base.items if item.part_of)
    return frozenset(found)


def _unreached_grades(found: Map) -> Iterator[Finding]:
    lookup = found.law.lookup
    union = 0
    for reach in found.reach.values():
        union |= reach.everywhere()
    if not found.reach:
        return
    fact: Fact | None = lookup.facts.get("grade")
    for place, value in enumerate(fact.values if fact else ()):
        if not union >> place & 1:
            yield Finding(
                at=value.at,
                code="unreached-grade",
                severity="warning",
                message=f"No rule applies to the grade {value_name(lookup, 'grade', value.id)} in any case.",
                suggestion="Widen a rule to the grade, or remove the grade.",
            )


def _finding(
    law: Law, rule: str, code: str, severity: str, message: str, suggestion: str, rules: tuple[str, ...]
) -> Finding:
    record = law.lookup.rules[rule]
    return Finding(
        at=record.at,
        code=code,
        severity=severity,  # type: ignore[arg-type]
        clause=record.clause,
        reference=clause_reference(law.lookup, record.clause),
        rules=rules,
        message=message,
        suggestion=suggestion,
    )
