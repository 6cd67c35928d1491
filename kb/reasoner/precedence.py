"""Which rule beats which. The first line of the order of precedence that decides, decides.

Lex superior, lex posterior and lex specialis follow the doctrine of the same names; declared exceptions are
the superiority relation of defeasible logic. The order of the five lines is the design's.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence

import msgspec

from kb.model.conditions import Condition
from kb.model.lookup import Lookup
from kb.model.questions import Principle
from kb.model.records import Rule, is_in_force
from kb.reasoner.implications import Implications
from kb.reasoner.norms import covered_items, item_of, rule_of


class Win(msgspec.Struct, frozen=True):
    """`winner` beats the other rule by `principle`."""

    winner: str
    principle: Principle


class _Standing(msgspec.Struct, frozen=True):
    """What the order of precedence asks of a norm before its cases: its rule, its rank and its date."""

    rule: Rule
    rank: int
    date: datetime.date


class Precedence:
    """The order of precedence over the rules of one base on one day.

    `conditions` gives the condition of a rule with its defined terms written out, `exclusions` likewise those
    of the base.
    """

    def __init__(
        self,
        lookup: Lookup,
        as_of: datetime.date,
        conditions: dict[str, Condition],
        exclusions: Sequence[Condition] | None = None,
    ) -> None:
        self._lookup = lookup
        self._as_of = as_of
        self._conditions = conditions
        self._cases = Implications(lookup, exclusions)
        self._wins: dict[tuple[str, str], Win | None] = {}
        self._standings: dict[str, _Standing] = {}
        self._covered: dict[str, frozenset[str]] = {}

    def win(self, left: str, right: str) -> Win | None:
        """Who wins between two rules (or norms, by their keys), and by which principle; None is a tie."""
        key = (left, right) if left < right else (right, left)
        if key not in self._wins:
            self._wins[key] = self._decide(*key)
        return self._wins[key]

    def beats(self, winner: str, loser: str) -> bool:
        return self.winner(winner, loser) == winner

    def winner(self, left: str, right: str) -> str | None:
        """The one of two norms that beats the other; two of one rule are on no opposite sides."""
        if self._standing(left).rule is self._standing(right).rule:
            return None
        found = self.win(left, right)
        return None if found is None else found.winner

    def _standing(self, key: str) -> _Standing:
        found = self._standings.get(key)
        if found is None:
            lookup, rule = self._lookup, self._lookup.rules[rule_of(key)]
            rank = lookup.authorities[rule.authority].rank
            date = lookup.editions[lookup.clauses[rule.clause].edition].valid_from
            found = self._standings[key] = _Standing(rule, rank, date)
        return found

    def _decide(self, left: str, right: str) -> Win | None:
        one, other = self._standing(left), self._standing(right)
        if one.rule.exception_to or other.rule.exception_to:
            found = self._line(left, right, "exception", self._is_exception)
            if found is not None:
                return found
        if one.rule.delegation is not None or other.rule.delegation is not None:
            found = self._line(left, right, "delegation", self._departs)
            if found is not None:
                return found
        if one.rank != other.rank:
            return Win(left if one.rank < other.rank else right, "authority")
        if one.date != other.date and one.rule.authority == other.rule.authority:
            early, late = (left, right) if one.date < other.date else (right, left)
            if not self.more_specific(early, late):
                return Win(late, "edition")
        if self.more_specific(left, right):
            return Win(left, "specificity")
        return Win(right, "specificity") if self.more_specific(right, left) else None

    def _line(
        self, left: str, right: str, principle: Principle, holds: Callable[[Rule, Rule], bool]
    ) -> Win | None:
        """The winner on a line; where each may depart from the other, it does not decide."""
        one, other = self._standing(left).rule, self._standing(right).rule
        ways = holds(one, other), holds(other, one)
        return Win(left if ways[0] else right, principle) if ways[0] is not ways[1] else None

    def _stands_for(self, clause: str, named: tuple[str, ...]) -> bool:
        """Whether a clause is one of those named, or has come in the place of one of them."""
        replaced = self._lookup.clauses[clause].replaces
        return clause in named or any(self._stands_for(earlier, named) for earlier in replaced)

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
        if not is_in_force(source, self._as_of):
            return False
        if delegation.clauses and not self._stands_for(other.clause, delegation.clauses):
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

    def more_specific(self, one: str, other: str) -> bool:
        """Whether the cases of `one` (items and facts) lie strictly inside those of `other`."""
        return self._is_inside(one, other) and not self._is_inside(other, one)

    def _items(self, rule: str) -> frozenset[str]:
        if rule not in self._covered:
            item = item_of(rule)
            scope = self._lookup.rules[rule_of(rule)].scope
            self._covered[rule] = (
                covered_items(self._lookup, scope) if item is None else frozenset(self._lookup.narrower(item))
            )
        return self._covered[rule]

    def _is_inside(self, one: str, other: str) -> bool:
        if not self._items(one) <= self._items(other):
            return False
        return self._cases.implies(self._conditions[one], self._conditions[other])
