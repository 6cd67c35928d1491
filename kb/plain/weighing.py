"""What applies, what beats what, and which values are left: the written meaning of rules, line by line."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.model.values import NO, YES, ValueSet, intersect, is_empty, is_subset, unite
from kb.plain.cases import CaseSpace, Effect

Truth = dict[str, bool]


class Fate(NamedTuple):
    values: ValueSet
    status: str
    closed_by: set[str]
    supported_by: set[str]


class Meaning(CaseSpace):
    """What the rules mean on one day; `more` are values that a question names and no book does."""

    def __init__(
        self, lookup: Lookup, day: datetime.date, more: frozenset[str] = frozenset(), as_such: bool = False
    ) -> None:
        super().__init__(lookup, day, more, as_such)
        self._wins: dict[tuple[str, str], tuple[str, str]] = {}

    def inside_of(self, effect: Effect, pieces: Sequence[ValueSet]) -> set[int]:
        """The places of the pieces of values that an effect closes or supports."""
        return {place for place, piece in enumerate(pieces) if is_subset(piece, effect.values)}

    def applies(self, rule: str, truth: Truth) -> bool:
        if not truth[rule] or any(self.applies(other.id, truth) for other in self.disablers(rule)):
            return False
        if self.lookup.rules[rule].repairs is None:
            return True
        duty = self.lookup.rules[self.lookup.rules[rule].repairs or ""]
        fates = self.fates(duty.scope.items[0], duty.aspect, truth, without=duty.id)
        return any(duty.id in fate.closed_by for fate in fates)

    def rests_on(self, rule: str, duty: str) -> bool:
        """Whether a rule repairs a duty, or repairs one that does: then it has no say in the duty."""
        repaired = self.lookup.rules[rule].repairs
        return repaired is not None and (repaired == duty or self.rests_on(repaired, duty))

    def live(self, item: str, aspect: str, truth: Truth, without: str = "") -> list[Effect]:
        effects = [e for e in self.effects_on(item, aspect) if not self.rests_on(e.rule.id, without)]
        return [e for e in effects if truth[e.key] and self.applies(e.rule.id, truth)]

    def fates(self, item: str, aspect: str, truth: Truth, without: str = "") -> list[Fate]:
        """What becomes of each piece of the values, and the rules that are alive there."""
        live, pieces = self.live(item, aspect, truth, without), self.pieces(item, aspect)
        closing = [e for e in live if e.closes and not e.rule.residual]
        out = {
            e.key
            for e in closing
            for o in closing
            if self.win(e, o)[0] == o.key
            and not any(is_empty(intersect(p, unite(e.values, o.values))) for p in pieces)
        }
        found = []
        for piece in pieces:
            closers = [e for e in closing if is_subset(piece, e.values)]
            supporters = [e for e in live if not e.closes and is_subset(piece, e.values)]
            alive = {e.rule.id for e in closers if e.key not in out and not self.beaten(e, supporters)}
            held = {e.rule.id for e in supporters if not self.beaten(e, closers)}
            names = ("contested", "closed") if alive else ("supported", "unaddressed")
            found.append(Fate(piece, names[not held], alive, held))
        left = [fate.values for fate in found if fate.status != "closed"]
        rest = [
            e for e in live if e.closes and e.rule.residual and not all(is_subset(v, e.values) for v in left)
        ]
        freed = [e.values for e in live if any(e.rule.id in f.supported_by for f in found) and frees(e.rule)]
        for n, fate in enumerate(found):
            by = {e.rule.id for e in rest if is_subset(fate.values, e.values)}
            spoken = any(not is_subset(fate.values, values) for values in freed)
            if by and fate.status == "unaddressed" and not spoken:
                found[n] = Fate(fate.values, "closed", by, set())
        return found

    # -- precedence -------------------------------------------------------------------------------------

    def beaten(self, one: Effect, others: list[Effect]) -> bool:
        return any(self.win(one, other)[0] == other.key for other in others)

    def win(self, one: Effect, other: Effect) -> tuple[str, str]:
        """The winner and the line of the order of precedence that decides; empty for a tie."""
        if (one.key, other.key) not in self._wins:
            self._wins[one.key, other.key] = self._wins[other.key, one.key] = self._weigh(one, other)
        return self._wins[one.key, other.key]

    def _weigh(self, one: Effect, other: Effect) -> tuple[str, str]:
        if one.rule.id == other.rule.id:
            return "", ""
        ways, look = ((one, other), (other, one)), self.lookup
        rank = {e.key: look.authorities[e.rule.authority].rank for e in ways[0]}
        date = {e.key: look.editions[look.clauses[e.rule.clause].edition].valid_from for e in ways[0]}
        excepted = [
            a.key
            for a, b in ways
            if b.rule.id in a.rule.exception_to
            and (rank[a.key] <= rank[b.key] or self.departs(a.rule, b.rule))
        ]
        departing = [a.key for a, b in ways if self.departs(a.rule, b.rule)]
        for line, winners in (("exception", excepted), ("delegation", departing)):
            if len(winners) == 1:  # where each may depart from the other, the line does not decide
                return winners[0], line
        if rank[one.key] != rank[other.key]:
            return min(rank, key=lambda key: rank[key]), "authority"
        early, late = sorted(ways[0], key=lambda e: date[e.key])
        later = one.rule.authority == other.rule.authority and date[early.key] < date[late.key]
        if later and not self.inside(early, late):
            return late.key, "edition"
        return next(((a.key, "specificity") for a, b in ways if self.inside(a, b)), ("", ""))

    def inside(self, one: Effect, other: Effect) -> bool:
        """Whether the cases of one effect lie strictly inside those of the other."""
        if not (one.items <= other.items and self.implies(one.condition, other.condition)):
            return False
        return one.items != other.items or not self.implies(other.condition, one.condition)

    def departs(self, one: Rule, other: Rule) -> bool:
        """Whether a rule is made under a delegation that covers its departing from the other."""
        if one.delegation is None or other.non_derogable:
            return False
        look, given = self.lookup, self.lookup.delegations[one.delegation]
        source = look.clauses[given.clause]
        giver = look.books[look.editions[source.edition].book].authority
        rank = {name: authority.rank for name, authority in look.authorities.items()}
        line = [other.clause]
        for clause in line:
            line += look.clauses[clause].replaces
        return (
            self.in_force(source)
            and (not given.clauses or bool({*line} & {*given.clauses}))
            and (given.allows == "anything" or one.modality.startswith("must"))
            and rank[giver] <= rank[other.authority]
            and rank[one.authority] <= rank[given.to]
            and all(not given.items or {*given.items} & {*look.broader(i)} for i in one.scope.items)
        )

    def verdict(self, aspect: str, fates: list[Fate]) -> str:
        statuses = [fate.status for fate in fates]
        if "contested" in statuses or all(status == "closed" for status in statuses):
            return "conflict"
        if self.lookup.aspects[aspect].kind != "act":
            return (
                "required" if "closed" in statuses else "permitted" if "supported" in statuses else "silent"
            )
        done, not_done = (next(f.status for f in fates if is_subset(v, f.values)) for v in (YES, NO))
        if "closed" in (done, not_done):
            return "required" if not_done == "closed" else "prohibited"
        if done == "supported":
            return "permitted"
        return "not_required" if not_done == "supported" else "silent"


@lru_cache(maxsize=16)
def meaning_of(lookup: Lookup, day: datetime.date, more: frozenset[str], as_such: bool) -> Meaning:
    """The one `Meaning` of a day that all questions of a check share, with what it has worked out."""
    return Meaning(lookup, day, more, as_such)


def frees(rule: Rule) -> bool:
    """Whether a rule says that something need not be so: no residual rule forbids it then."""
    return rule.modality == "need_not"


def opposed(one: Effect, other: Effect, pieces: Sequence[ValueSet]) -> bool:
    """Whether two effects pull a value in opposite directions, or together leave none open."""
    inside = [(is_subset(p, one.values), is_subset(p, other.values)) for p in pieces]
    return any(map(all, inside)) if one.closes != other.closes else one.closes and all(map(any, inside))
