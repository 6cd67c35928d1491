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
from kb.model.records import Rule
from kb.reasoner.norms import covered_items, item_of, rule_of
from kb.reasoner.space import implies


class Win(msgspec.Struct, frozen=True):
    """`winner` beats the other rule by `principle`."""

    winner: str
    principle: Principle


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
        self._exclusions = exclusions
        self._wins: dict[tuple[str, str], Win | None] = {}
        self._inside: dict[tuple[str, str], bool] = {}
        self._covered: dict[str, frozenset[str]] = {}

    def win(self, left: str, right: str) -> Win | None:
        """Who wins between two rules (or norms, by their keys), and by which principle; None is a tie."""
        key = (left, right) if left < right else (right, left)
        if key not in self._wins:
            self._wins[key] = self._decide(*key)
        return self._wins[key]

    def beats(self, winner: str, loser: str) -> bool:
        if rule_of(winner) == rule_of(loser):
            return False
        found = self.win(winner, loser)
        return found is not None and found.winner == winner

    def _decide(self, left: str, right: str) -> Win | None:
        rules = {key: self._lookup.rules[rule_of(key)] for key in (left, right)}
        ways = ((left, right), (right, left))
        lines: tuple[tuple[Principle, Callable[[Rule, Rule], bool]], ...] = (
            ("exception", self._is_exception),
            ("delegation", self._departs),
        )
        for principle, holds in lines:
            winners = [one for one, other in ways if holds(rules[one], rules[other])]
            if len(winners) == 1:  # where each may depart from the other, the line does not decide
                return Win(winners[0], principle)
        ranks = {key: self._lookup.authorities[rule.authority].rank for key, rule in rules.items()}
        if ranks[left] != ranks[right]:
            return Win(min(ways[0], key=lambda key: ranks[key]), "authority")
        dates = {key: self._edition_date(rule) for key, rule in rules.items()}
        if rules[left].authority == rules[right].authority and dates[left] != dates[right]:
            early, late = sorted(ways[0], key=lambda key: dates[key])
            if not self.more_specific(early, late):
                return Win(late, "edition")
        for one, other in ways:
            if self.more_specific(one, other):
                return Win(one, "specificity")
        return None

    def _stands_for(self, clause: str, named: tuple[str, ...]) -> bool:
        """Whether a clause is one of those named, or has come in the place of one of them."""
        replaced = self._lookup.clauses[clause].replaces
        return clause in named or any(self._stands_for(earlier, named) for earlier in replaced)

    def _edition_date(self, rule: Rule) -> datetime.date:
        return self._lookup.editions[self._lookup.clauses[rule.clause].edition].valid_from

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
        if (one, other) not in self._inside:
            self._inside[one, other] = self._is_inside(one, other) and not self._is_inside(other, one)
        return self._inside[one, other]

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
        return implies(self._conditions[one], self._conditions[other], self._lookup, self._exclusions)


def in_force(start: datetime.date, end: datetime.date | None, day: datetime.date) -> bool:
    return start <= day and (end is None or day < end)
