"""Which rule beats which. The first line of the order of precedence that decides, decides.

Lex superior, lex posterior and lex specialis follow the doctrine of the same names; declared exceptions are
the superiority relation of defeasible logic. The order of the five lines is the design's.
"""

from __future__ import annotations

import datetime

import msgspec

from kb.model.conditions import Condition
from kb.model.lookup import Lookup
from kb.model.questions import Principle
from kb.model.records import Rule
from kb.reasoner.norms import covered_items
from kb.reasoner.space import implies


class Win(msgspec.Struct, frozen=True):
    """`winner` beats the other rule by `principle`."""

    winner: str
    principle: Principle


class Precedence:
    """The order of precedence over the rules of one base on one day.

    `conditions` gives the condition of a rule with its defined terms written out.
    """

    def __init__(self, lookup: Lookup, as_of: datetime.date, conditions: dict[str, Condition]) -> None:
        self._lookup = lookup
        self._as_of = as_of
        self._conditions = conditions
        self._wins: dict[tuple[str, str], Win | None] = {}
        self._inside: dict[tuple[str, str], bool] = {}
        self._covered: dict[str, frozenset[str]] = {}

    def win(self, left: str, right: str) -> Win | None:
        """Who wins between two rules, and by which principle; None is a tie."""
        key = (left, right) if left < right else (right, left)
        if key not in self._wins:
            self._wins[key] = self._decide(self._lookup.rules[key[0]], self._lookup.rules[key[1]])
        return self._wins[key]

    def beats(self, winner: str, loser: str) -> bool:
        if winner == loser:
            return False
        found = self.win(winner, loser)
        return found is not None and found.winner == winner

    def _decide(self, left: Rule, right: Rule) -> Win | None:
        for one, other in ((left, right), (right, left)):
            if self._is_exception(one, other):
                return Win(one.id, "exception")
        for one, other in ((left, right), (right, left)):
            if self._departs(one, other):
                return Win(one.id, "delegation")
        ranks = [self._lookup.authorities[rule.authority].rank for rule in (left, right)]
        if ranks[0] != ranks[1]:
            return Win((left if ranks[0] < ranks[1] else right).id, "authority")
        later = self._later(left, right)
        if later is not None:
            return Win(later.id, "edition")
        for one, other in ((left, right), (right, left)):
            if self.more_specific(one.id, other.id):
                return Win(one.id, "specificity")
        return None

    def _is_exception(self, one: Rule, other: Rule) -> bool:
        if other.id not in one.exception_to:
            return False
        ranks = [self._lookup.authorities[rule.authority].rank for rule in (one, other)]
        return ranks[0] <= ranks[1] or self._departs(one, other)

    def _departs(self, one: Rule, other: Rule) -> bool:
        """Whether `one` is made under a delegation that lets it depart from `other`."""
        if one.delegation is None or other.non_derogable:
            return False
        lookup = self._lookup
        delegation = lookup.delegations[one.delegation]
        source = lookup.clauses[delegation.clause]
        if not in_force(source.valid_from, source.valid_until, self._as_of):
            return False
        if delegation.clauses and other.clause not in delegation.clauses:
            return False
        if delegation.allows == "stricter" and one.modality not in ("must", "must_not"):
            return False
        rank = lookup.authorities
        giver = rank[lookup.books[lookup.editions[source.edition].book].authority].rank
        if giver > rank[other.authority].rank or rank[one.authority].rank > rank[delegation.to].rank:
            return False
        return not delegation.items or all(
            any(allowed in lookup.broader(item) for allowed in delegation.items) for item in one.scope.items
        )

    def _later(self, left: Rule, right: Rule) -> Rule | None:
        """The rule of the later edition, same authority, unless the earlier one is strictly more specific."""
        if left.authority != right.authority:
            return None
        lookup = self._lookup
        dates = [lookup.editions[lookup.clauses[rule.clause].edition].valid_from for rule in (left, right)]
        if dates[0] == dates[1]:
            return None
        late, early = (left, right) if dates[0] > dates[1] else (right, left)
        return None if self.more_specific(early.id, late.id) else late

    def more_specific(self, one: str, other: str) -> bool:
        """Whether the cases of `one` (items and facts) lie strictly inside those of `other`."""
        if (one, other) not in self._inside:
            self._inside[one, other] = self._is_inside(one, other) and not self._is_inside(other, one)
        return self._inside[one, other]

    def _items(self, rule: str) -> frozenset[str]:
        if rule not in self._covered:
            self._covered[rule] = covered_items(self._lookup, self._lookup.rules[rule].scope)
        return self._covered[rule]

    def _is_inside(self, one: str, other: str) -> bool:
        if not self._items(one) <= self._items(other):
            return False
        return implies(self._conditions[one], self._conditions[other], self._lookup)


def in_force(start: datetime.date, end: datetime.date | None, day: datetime.date) -> bool:
    return start <= day and (end is None or day < end)
