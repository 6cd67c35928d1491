"""A question as a saved answer records it: the facts it takes for granted, and what it asks for."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Any

from kb.model.grants import ungranted
from kb.model.lookup import Lookup
from kb.model.records import OWNED_ASPECTS, Rule, leaves_room
from kb.model.values import (
    NO,
    OTHER,
    YES,
    Choices,
    Interval,
    Ranges,
    ValueSet,
    intersect,
    is_empty,
    is_subset,
    others_in,
)
from kb.plain.cases import WORN, Known, restrict
from kb.plain.ranging import Range
from kb.plain.saved import facts_from_json, values_from_json
from kb.plain.weighing import Fate, meaning_of

Kind = tuple[str, tuple[str, ...]]  # a verdict, and what becomes of the values
VERDICTS = ("conflict", "prohibited", "conditional", "silent", "not_required", "permitted", "required")


KINDS = ("may", "must", "where", "how", "how_many", "who", "when", "list", "why", "compare", "source")


def is_sound(reading: Any, lookup: Lookup) -> bool:
    """Whether a reading names only what there is; one without a kind says nothing at all."""
    kind, value, clause = reading["kind"], reading["value"], reading["clause"]
    rest = [reading[key] for key in ("items", "facts", "verdicts", "alone", "aspect", "polarity", "as_such")]
    if kind is None:
        others = (value, clause, reading["book"], reading["other"])
        return not any(rest) and all(one is None for one in others)
    return (
        kind in KINDS
        and all(item in lookup.items for item in reading["items"])
        and (bool(reading["items"]) or kind in ("list", "source") or reading["other"] is not None)
        and _is_sound_case(reading["other"], kind, reading["items"], lookup)
        and all(fact in lookup.facts for fact in reading["facts"])
        and all(verdict in VERDICTS for verdict in reading["verdicts"])
        and reading["aspect"] in lookup.aspects
        and reading["polarity"] in ("do", "not")
        and isinstance(reading["as_such"], bool)
        and (value is None or _is_sound_value(values_from_json(value), reading["aspect"], lookup))
        and (clause is None or (kind == "source" and clause in lookup.clauses))
        and (
            reading["book"] is None
            or (kind in ("source", "compare") and reading["book"] in {*lookup.books, *lookup.editions})
        )
    )


def _is_sound_value(values: ValueSet, aspect: str, lookup: Lookup) -> bool:
    """Whether every value of a choice is one that the books name, or marked as one that they do not name."""
    named = lookup.aspects[aspect].values
    if lookup.aspects[aspect].kind != "choice" or not named:
        return True
    labels = {label.casefold() for value in named for label in (value.id, value.label, *value.other_labels)}
    others = {other.removeprefix(OTHER).casefold().replace("-", " ") for other in others_in(values)}
    known = {*others_in(values), *(value.id for value in named)}
    return (
        isinstance(values, Choices) and values.members <= known and "" not in others and not others & labels
    )


def _is_sound_case(other: Any, kind: str, items: Any, lookup: Lookup) -> bool:
    """Whether the second case of a reading is one; a comparison without it is of two items."""
    if other is None:
        return kind != "compare" or len(items) == 2
    return kind == "compare" and all(fact in lookup.facts for fact in other["facts"])


class Question:
    """The `reading` of an answer over the meaning of the rules on a day."""

    def __init__(self, reading: Any, lookup: Lookup, day: datetime.date) -> None:
        value = None if reading["value"] is None else values_from_json(reading["value"])
        self.reading, self.lookup = reading, lookup
        self.meaning = meaning_of(lookup, day, others_in(value), reading["as_such"])
        self.items: list[str] = reading["items"]
        self.aspect: str = reading["aspect"]
        self.kind: str | None = reading["kind"]
        aspect = lookup.aspects.get(self.aspect)
        values = self.kind in ("where", "how", "how_many") or (aspect is not None and aspect.kind != "act")
        self.acts = self.kind not in ("list", "source", "compare") and not values

    def known(self, item: str, aspect: str) -> dict[str, ValueSet]:
        """The facts that the question states or takes for granted, for one item and aspect."""
        wearing = aspect != self.aspect if self.acts else self.aspect not in OWNED_ASPECTS
        items = [] if self.kind == "list" else self.items  # a list is narrowed by its items
        worn = [one for one in items if wearing or one != item]
        facts = facts_from_json(self.reading["facts"]) | {WORN + one: YES for one in worn}
        return self.meaning.taken(facts, items if self.reading["alone"] else None)

    def said(self, item: str, aspect: str, fates: list[Fate]) -> tuple[str, set[str]]:
        """The verdict that a row must have, and the rules that decide it."""
        rules = {rule for fate in fates for rule in fate.closed_by | fate.supported_by}
        verdict = self.meaning.verdict(aspect, fates)
        if self.acts and aspect != self.aspect:  # a limit on the number of things worn together
            worn = {f.removeprefix(WORN) for f, v in self.known(item, aspect).items() if v == YES}
            number = len(worn & {*self.lookup.narrower(item)})
            bound = Ranges((Interval(low=Fraction(number)),))
            closed = [f.status == "closed" for f in fates if not is_empty(intersect(f.values, bound))]
            return ("prohibited" if all(closed) and number > 1 else verdict), rules
        if self.acts or self.kind == "list":
            done, not_done = (next(f for f in fates if is_subset(v, f.values)) for v in (YES, NO))
            decisive = {
                "required": not_done.closed_by,
                "prohibited": done.closed_by,
                "permitted": done.supported_by | not_done.supported_by,
                "not_required": not_done.supported_by,
                "silent": set(),
            }
            return verdict, decisive.get(verdict, rules)
        if self.reading["value"] is None:
            return verdict, rules
        claim = values_from_json(self.reading["value"])
        statuses = {fate.status for fate in fates if not is_empty(intersect(fate.values, claim))}
        if "contested" in statuses:
            return "conflict", rules
        if self.lookup.aspects[aspect].kind == "position" and statuses != {"closed"}:
            statuses = statuses & {"supported"} or {"unaddressed"}  # of places that words fit one is enough
        part_closed = self.kind == "must" and "closed" in statuses and statuses != {"closed"}
        if "closed" in statuses and not part_closed:
            return "prohibited", rules
        duty = any(self.lookup.rules[r].modality == "must" for fate in fates for r in fate.closed_by)
        beside = {fate.status for fate in fates if not is_subset(fate.values, claim)}
        if part_closed:  # "at most 7 in", where another rule says "more than 5 in"
            return ("required" if duty and beside <= {"closed"} else "prohibited"), rules
        if not duty:
            return ("permitted" if statuses == {"supported"} else "silent"), rules
        room = leaves_room(claim, self.lookup.base.rules)
        return ("required" if beside <= {"closed"} and not room else "permitted"), rules

    @property
    def aspects(self) -> tuple[str, ...]:
        """The aspects that a question about values asks for."""
        if self.aspect == "wear":
            return tuple(a.id for a in self.lookup.base.aspects if a.kind != "act" or a.within)
        return self.lookup.aspects_within(self.aspect)

    @property
    def _decides(self) -> bool:
        """Whether a verdict on an act is asked for, whatever else becomes of the values."""
        return self.acts or self.kind == "list"

    def outcomes(self, item: str, aspect: str, known: Known) -> tuple[set[str], set[str]]:
        """Every verdict that some case has for an act on an item, and the rules that decide them."""
        found = Range(self.meaning, item, aspect, known)
        kinds, rules = self.kinds(found, found.sets.possible)
        return {verdict for verdict, _ in kinds}, rules

    def kinds(self, found: Range, cases: int) -> tuple[set[Kind], set[str]]:
        """What is said in some of the cases, and the rules that decide it.

        Of an aspect with values each verdict comes with what becomes of them; two ways are enough there.
        """
        kinds, rules = set[Kind](), set[str]()
        for fates in found.patterns(cases):
            verdict, deciding = self.said(found.item, found.aspect, fates)
            kinds.add((verdict, () if self._decides else tuple(fate.status for fate in fates)))
            rules |= deciding
            if len(kinds) > 1 and not self._decides:
                break
        return kinds, rules if self._decides else found.alive(cases)

    def verdicts(self, item: str, aspect: str) -> set[str]:
        return self.outcomes(item, aspect, self.known(item, aspect))[0]

    def is_silent(self, item: str, aspect: str) -> bool:
        """Whether the rules say nothing of an item and aspect in any case."""
        found = Range(self.meaning, item, aspect, self.known(item, aspect))
        ways = found.patterns(found.sets.possible)
        return all(self.said(item, aspect, fates)[0] == "silent" for fates in ways)

    def is_duty(self, rule: Rule) -> bool:
        """Whether a rule orders or forbids, in every case, a further act on what is asked to be allowed."""
        item = self.items[0] if self.items else ""
        further = rule.aspect != self.aspect and self.lookup.aspects[rule.aspect].kind == "act"
        if self.kind != "may" or not further or not self.meaning.covers(rule.scope, item):
            return False
        found = Range(self.meaning, item, rule.aspect, self.known(item, rule.aspect))
        ways = found.patterns(found.sets.possible)
        verdicts = {self.meaning.verdict(rule.aspect, fates) for fates in ways}
        return verdicts in ({"required"}, {"prohibited"}) and rule.id in found.alive(found.sets.possible)

    # -- lists ------------------------------------------------------------------------------------------

    def named(self) -> list[str]:
        """The items that a list looks at: those that a rule in force names."""
        rules = [r for r in self.meaning.rules.values() if r.aspect == self.aspect and not r.residual]
        return list(dict.fromkeys(item for r in rules if not r.scope.excluding for item in r.scope.items))

    def listed(self, *others: Question) -> dict[str, ValueSet]:
        """What is known for a list: a grant that no side states is not given, if that can be so on each."""
        sides = (self, *others)
        stated = [side.reading["facts"] for side in sides]
        grants = ungranted(self.lookup, self.aspect, self.items, *stated)
        known = [{**side.known("", side.aspect), **grants} for side in sides]
        fits = all(side.meaning.outcomes((), one) for side, one in zip(sides, known, strict=True))
        return known[0] if fits else self.known("", self.aspect)

    def entries(
        self, also: Iterable[str] = (), others: Sequence[Question] = ()
    ) -> set[tuple[str, str, frozenset[str]]]:
        """What a list must hold: item, verdict and deciding rules; what is required counts as worn.

        The same of the items in `also`, which do not count as worn; `others` are lists it is compared with.
        """
        above = self.lookup.broader
        known = self.listed(*others)
        rules = [r for r in self.meaning.rules.values() if r.aspect == self.aspect and not r.residual]
        items = self.named()
        while True:
            found = {item: self.outcomes(item, self.aspect, known) for item in items}
            worn = [item for item, (verdicts, _) in found.items() if verdicts == {"required"}]
            more = {WORN + broad: YES for item in worn for broad in self.lookup.broader(item)}
            more = {
                fact: yes for fact, yes in more.items() if fact in self.lookup.facts and fact not in known
            }
            if self.aspect != "wear" or not more or not self.meaning.outcomes((), {**known, **more}):
                break
            known |= more
        found |= {item: self.outcomes(item, self.aspect, known) for item in also if item not in found}
        wanted = {*self.reading["verdicts"]} or {*VERDICTS} - {"silent"}
        lines = {
            (item, verdicts.pop() if len(verdicts) == 1 else "conditional", frozenset(deciding))
            for item, (verdicts, deciding) in found.items()
            if verdicts & wanted
        } | self._of_a_kind([r for r in rules if r.scope.excluding], known, wanted)
        return {line for line in lines if not self.items or {*above(line[0])} & {*self.items}}

    def _of_a_kind(
        self, rules: list[Rule], known: Known, wanted: set[str]
    ) -> set[tuple[str, str, frozenset[str]]]:
        """Prohibitions of everything of a kind but some."""
        found = set()
        for rule in rules:
            truth = restrict(self.meaning.written(rule.condition), known)
            verdict = "prohibited" if truth is True else "conditional"
            if (
                rule.modality == "must_not"
                and truth is not False
                and (truth is not True or verdict in wanted)
            ):
                found.add((rule.scope.items[0], verdict, frozenset({rule.id})))
        return found
