"""Rules that say nothing new: another rule, of the same or a higher authority, says as much already."""

from __future__ import annotations

from collections.abc import Collection

from kb.audit.conflicts import opposed
from kb.audit.findings import Finding
from kb.audit.law import Law, View
from kb.model.conditions import tests
from kb.model.records import Rule
from kb.reasoner import WORN, Norm
from kb.reasoner.norms import covered_items
from kb.reasoner.space import implies
from kb.wording import clause_reference, say_rule, sentence

Placed = tuple[Norm, int]


class Repeats:
    """Finds for a rule one that makes it superfluous on one day."""

    def __init__(self, law: Law, dead: Collection[str]) -> None:
        self.law = law
        self._dead = dead
        self._order = {rule.id: i for i, rule in enumerate(law.rules)}
        self._linked = {d for rule in law.rules if rule.repairs for d in (rule.id, rule.repairs)}
        self._excluded = {t.fact for exclusion in law.engine.exclusions() for t in tests(exclusion)}

    def found(self) -> dict[str, str]:
        """For each superfluous rule the rule that says as much."""
        lookup = self.law.lookup
        waiting: dict[str, set[str]] = {}
        for rule in self.law.rules:
            if self._may_be_superfluous(rule):
                view = self.law.view(rule.scope.items[0], rule.aspect)
                found = {other.id for other in self._rivals(view, rule)}
                if found:
                    waiting[rule.id] = found
        result: dict[str, str] = {}
        for name, others in waiting.items():
            rule = lookup.rules[name]
            covered = covered_items(lookup, rule.scope)
            for other in sorted(others, key=self._order.__getitem__):
                if all(self._adds_nothing(self.law.view(i, rule.aspect), name, other) for i in covered):
                    result[name] = other
                    break
        return result

    def _may_be_superfluous(self, rule: Rule) -> bool:
        return (
            rule.id not in self._dead
            and not rule.disables
            and rule.id not in self._linked
            and rule.scope.alternatives is None
            and not rule.residual
        )

    def _rivals(self, view: View, rule: Rule) -> list[Rule]:
        """Rules of no lower rank that hold whenever this one does; of two that are equal only the earlier."""
        law, lookup = self.law, self.law.lookup
        ranks = lookup.authorities
        found = []
        mine = [(n, m) for n, m in view.norms() if n.rule == rule.id]
        for norm, mask in view.norms():
            other = lookup.rules[norm.rule]
            if norm.rule == rule.id or norm.key != norm.rule or not mine or norm.residual:
                continue
            same_way = norm.closes == mine[0][0].closes and not mine[0][1] & ~mask
            if not same_way or ranks[other.authority].rank > ranks[rule.authority].rank or other.repairs:
                continue
            if (
                law.engine.disablers(other.id)
                or other.id in self._dead
                or not self._implies(rule.id, other.id)
            ):
                continue
            same = mine[0][1] == mask and self._twins(rule, other)
            if same and self._order[other.id] > self._order[rule.id]:
                continue
            found.append(other)
        return found

    def _twins(self, rule: Rule, other: Rule) -> bool:
        """Whether two rules of one rank cover the same items in the same cases."""
        lookup = self.law.lookup
        ranks = lookup.authorities
        return (
            ranks[other.authority].rank == ranks[rule.authority].rank
            and covered_items(lookup, rule.scope) == covered_items(lookup, other.scope)
            and self._implies(other.id, rule.id)
        )

    def _implies(self, one: str, other: str) -> bool:
        condition = self.law.engine.condition
        left, right = condition(one), condition(other)
        known = {test.fact for test in tests(left)}
        needed = self.law.hull(other, right)
        free = [f for f in needed if f not in known and f not in self._excluded and not f.startswith(WORN)]
        if any(needed[fact] != self.law.lookup.domain(fact) for fact in free):
            return False
        return implies(left, right, self.law.lookup, self.law.engine.exclusions())

    def _adds_nothing(self, view: View, rule: str, other: str) -> bool:
        """Whether on one item the other rule is alive and beats wherever this one does."""
        norms = {norm.key: (norm, mask) for norm, mask in view.norms()}
        if rule not in norms or other not in norms:
            return False
        mine, theirs = norms[rule], norms[other]
        if mine[1] & ~theirs[1] or opposed(view, mine, theirs):
            return False
        if (
            view.residual
            and mine[0].frees
            and mine != theirs
            and not (theirs[0].frees and mine[1] == theirs[1])
        ):
            return False  # what need not be so is not forbidden by a residual rule
        thirds = [t for t in norms.values() if t[0].rule not in (rule, other) and not t[0].residual]
        return all(
            self._fares_alike(view, mine, theirs, third)
            for third in thirds
            if self.law.together(mine[0], third[0])
        )

    def _fares_alike(self, view: View, mine: Placed, theirs: Placed, third: Placed) -> bool:
        """Whether the other norm wins over a third wherever this one does, and loses nowhere else."""
        beats = self.law.engine.precedence.beats
        rule, other, key = mine[0].key, theirs[0].key, third[0].key
        if opposed(view, mine, third):
            return (beats(other, key) or not beats(rule, key)) and (beats(key, rule) or not beats(key, other))
        # A duty that leaves less open can be put out as a whole by a rule that this one has no quarrel with.
        both_close = theirs[0].closes and third[0].closes
        return not (both_close and opposed(view, theirs, third) and beats(key, other))


def repeat_findings(law: Law, found: dict[str, str]) -> list[Finding]:
    """One warning for each entry of which every rule is superfluous."""
    lookup = law.lookup
    entries: dict[object, list[Rule]] = {}
    for rule in law.rules:
        entries.setdefault(rule.at, []).append(rule)
    findings = []
    for rules in entries.values():
        if not all(rule.id in found for rule in rules):
            continue
        rule, other = rules[0], lookup.rules[found[rules[0].id]]
        names = [clause_reference(lookup, r.clause) for r in (rule, other)]
        findings.append(
            Finding(
                at=rule.at,
                code="repeats",
                severity="warning",
                clause=rule.clause,
                reference=names[0],
                rules=(rule.id, other.id),
                message=sentence(
                    f"{names[0]} says only what {names[1]} says already: “{say_rule(lookup, other)}”"
                ),
                suggestion="Remove the rule and refer to the other clause, or say what is different here.",
            )
        )
    return findings
