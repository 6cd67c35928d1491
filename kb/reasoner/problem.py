"""One item and aspect under known facts: what becomes of it over all completions of the facts."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, TypeVar

from kb.errors import UsageError
from kb.model.conditions import Condition
from kb.model.questions import ValueStatus, Verdict
from kb.model.values import Choices, ValueSet, intersect, is_empty
from kb.reasoner.decide import Decision, Fate, status_of
from kb.reasoner.diagram import Diagram
from kb.reasoner.norms import Norm
from kb.reasoner.outlook import Prospect, act_regions, prospects, value_regions
from kb.reasoner.regions import FALSE, Within
from kb.reasoner.tree import Branch, Leaf, Tree

if TYPE_CHECKING:
    from kb.reasoner.engine import Engine, Group

Key = TypeVar("Key", bound=Hashable)
Facts = Mapping[str, ValueSet]
Statuses = tuple[ValueStatus, ...]

MOST_ROWS = 48  # a table that takes more says of its last rows that they depend on further facts


class Problem:
    """One group under known facts: its decisions over all completions; `UsageError` where there is none."""

    def __init__(
        self,
        engine: Engine,
        group: Group,
        conditions: dict[str, Condition],
        diagram: Diagram,
    ) -> None:
        self.engine = engine
        self.group = group
        self.conditions = conditions
        self._diagram = diagram
        self._holds = dict(zip(conditions, diagram.watched, strict=True))
        self._applying: dict[str, int] = {}
        self._verdicts: dict[tuple[str, ...], Tree[Verdict]] = {}

    @property
    def facts(self) -> tuple[str, ...]:
        """The facts that its conditions, and the limits between them, test."""
        return self._diagram.facts

    def truth(self, vector: Sequence[bool]) -> dict[str, bool]:
        """Truth by rule (or norm) for a vector of truths."""
        return dict(zip(self.conditions, vector, strict=True))

    # -- regions ----------------------------------------------------------------------------------------

    def _applies(self, rule: str) -> int:
        """Where a rule applies: `Engine.applies` for all cases."""
        if rule not in self._applying:
            regions = self._diagram.regions
            found = self._holds.get(rule, FALSE)
            if found != FALSE:
                others = regions.any(self._applies(other) for other in self.engine.disablers(rule))
                found = regions.without(found, others)
            duty = self.engine.lookup.rules[rule].repairs
            if duty is not None and found != FALSE:
                found = regions.both(found, self._stands(duty))
            self._applying[rule] = found
        return self._applying[rule]

    def _stands(self, duty: str) -> int:
        """Where a duty applies and is alive at what it closes, without what rests on its being broken."""
        record = self.engine.lookup.rules[duty]
        group = self.engine.group(record.scope.items[0], record.aspect)
        found = self._prospects(group, duty)
        alive = (region for one in found for rule, region in one.closed_by if rule == duty)
        return self._diagram.regions.any(alive)

    def _prospects(self, group: Group, without: str | None = None) -> tuple[Prospect, ...]:
        engine, regions = self.engine, self._diagram.regions

        def applies(norm: Norm) -> int:
            if without is not None and engine.rests_on(norm.rule, without):
                return FALSE
            holds = self._holds.get(norm.key, FALSE)
            return holds if holds == FALSE else regions.both(holds, self._applies(norm.rule))

        return prospects(group.norms, len(group.classes), applies, engine.precedence.winner, regions)

    @cached_property
    def _outlook(self) -> tuple[Prospect, ...]:
        return self._prospects(self.group)

    @cached_property
    def _by_verdict(self) -> dict[Verdict, int]:
        """The possible cases that have each verdict, without verdicts that none has."""
        regions = self._diagram.regions
        if self._is_act:
            found = act_regions(self._outlook[self._at("yes")], self._outlook[self._at("no")], regions)
        else:
            found = value_regions(self._outlook, regions)
        possible = {verdict: regions.both(where, self._diagram.possible) for verdict, where in found.items()}
        return {verdict: where for verdict, where in possible.items() if where != FALSE}

    @property
    def _is_act(self) -> bool:
        return self.engine.lookup.aspects[self.group.aspect].kind == "act"

    def _at(self, value: str) -> int:
        return next(
            i for i, s in enumerate(self.group.classes) if isinstance(s, Choices) and value in s.members
        )

    @cached_property
    def _alive(self) -> dict[str, list[tuple[int, int]]]:
        """Where each rule is alive, in the order of the rules: regions of which each two are to be joined."""
        found: dict[str, list[tuple[int, int]]] = {}
        for one in self._outlook:
            for rule, region in (*one.closed_by, *one.supported_by):
                found.setdefault(rule, []).append((region, self._diagram.possible))
        return {rule: found[rule] for rule in self.group.rules if rule in found}

    @cached_property
    def _decisive(self) -> dict[str, list[tuple[int, int]]]:
        """Where each rule carries an act's verdict, as `answer.common.decisive`; in the form of `_alive`."""
        if not self._is_act:
            return self._alive
        done, not_done = self._outlook[self._at("yes")], self._outlook[self._at("no")]
        both = (*done.closed_by, *done.supported_by, *not_done.closed_by, *not_done.supported_by)
        carried: tuple[tuple[Verdict, tuple[tuple[str, int], ...]], ...] = (
            ("required", not_done.closed_by),
            ("prohibited", done.closed_by),
            ("permitted", (*done.supported_by, *not_done.supported_by)),
            ("not_required", not_done.supported_by),
            ("conflict", both),
        )
        found: dict[str, list[tuple[int, int]]] = {rule: [] for rule in self._alive}
        for verdict, rules in carried:
            where = self._by_verdict.get(verdict, FALSE)
            for rule, region in rules if where != FALSE else ():
                found[rule].append((region, where))
        return found

    # -- what is asked of it ----------------------------------------------------------------------------

    def _within(self, facts: Facts | None) -> Within:
        return self._diagram.within(facts or {})

    def said(self, within: Facts | None = None) -> frozenset[Verdict]:
        """The verdicts of all cases within further facts; none where no case is possible."""
        near = self._within(within)
        return frozenset(verdict for verdict, where in self._by_verdict.items() if near.meets(where))

    def always(self, verdict: Verdict) -> bool:
        """Whether every possible case has a verdict, and there is one."""
        return tuple(self._by_verdict) == (verdict,)

    def decisive_rules(self, within: Facts | None = None) -> tuple[str, ...]:
        """The rules that carry an act's verdict in some case within further facts, as `_in_order`."""
        return self._in_order(self._decisive, within)

    def alive_rules(self, within: Facts | None = None) -> tuple[str, ...]:
        """The rules that are alive at some value, in some case within further facts, as `_in_order`."""
        return self._in_order(self._alive, within)

    def _in_order(
        self, rules: Mapping[str, Sequence[tuple[int, int]]], within: Facts | None
    ) -> tuple[str, ...]:
        """The rules that have a case within further facts; those that have them all come first."""
        near, regions = self._within(within), self._diagram.regions
        found = [rule for rule, pairs in rules.items() if any(near.meets(*pair) for pair in pairs)]
        if len(found) > 1:
            others = {
                rule: [regions.opposite(region) for region, where in rules[rule] if near.meets(where)]
                for rule in found
            }
            found.sort(key=lambda rule: near.meets(self._diagram.possible, *others[rule]))
        return tuple(found)

    def carrying_rules(self, within: Facts | None = None) -> tuple[tuple[str, ...], ...]:
        """Sets of rules of which one each is enough to carry an act's verdict in all cases within facts.

        One set where a rule does so alone; else single rules that have every case between them.
        """
        near, regions = self._within(within), self._diagram.regions
        outside = {
            rule: [regions.opposite(region) for region, where in pairs if near.meets(where)]
            for rule, pairs in self._decisive.items()
            if any(near.meets(*pair) for pair in pairs)
        }
        alone = tuple(rule for rule, rest in outside.items() if not near.meets(self._diagram.possible, *rest))
        if alone:
            return (alone,)
        kept = list(outside)
        for rule in reversed(tuple(outside)):
            without = [region for other in kept if other != rule for region in outside[other]]
            if not near.meets(self._diagram.possible, *without):
                kept.remove(rule)
        return tuple((rule,) for rule in kept)

    def always_closed(self, values: ValueSet) -> bool:
        """Whether all classes that have one of the values are closed in every possible case."""
        regions = self._diagram.regions
        closed = (
            regions.without(one.closed, one.supported)
            for piece, one in zip(self.group.classes, self._outlook, strict=True)
            if not is_empty(intersect(piece, values))
        )
        return regions.without(self._diagram.possible, regions.all(closed)) == FALSE

    def statuses(self) -> Statuses | None:
        """What becomes of each class of values, where it is the same in every case."""
        regions, possible = self._diagram.regions, self._diagram.possible
        found = []
        for one in self._outlook:
            parts = [regions.both(side, possible) for side in (one.closed, one.supported)]
            if any(part not in (FALSE, possible) for part in parts):
                return None
            found.append(status_of(parts[0] != FALSE, parts[1] != FALSE))
        return tuple(found)

    def verdicts(self, first: Sequence[str] = ()) -> Tree[Verdict]:
        """The smallest tree of verdicts found, worked out once; `first` keeps facts at the top.

        What takes too many rows is folded into rows that say `conditional`: there the verdict depends on
        further facts.
        """
        order = tuple(first)
        if order not in self._verdicts:
            names = tuple(self._by_verdict)
            self._verdicts[order] = self._table(
                tuple(self._by_verdict.values()),
                lambda truths: names[truths.index(True)],
                "conditional",
                order,
            )
        return self._verdicts[order]

    def values(self, key: Callable[[Statuses, bool], Key], rest: Key, duties: bool = False) -> Tree[Key]:
        """The smallest tree found of what `key` makes of the statuses of the classes of values.

        With `duties` it is also told whether a duty (a `must`) is alive. `rest` is for folded rows.
        """
        rules = self.engine.lookup.rules
        roots = [side for one in self._outlook for side in (one.closed, one.supported)]
        if duties:
            closing = (entry for one in self._outlook for entry in one.closed_by)
            must = (region for rule, region in closing if rules[rule].modality == "must")
            roots.append(self._diagram.regions.any(must))

        def outcome(truths: tuple[bool, ...]) -> Key:
            sides = truths[: 2 * len(self._outlook)]
            statuses = tuple(map(status_of, sides[::2], sides[1::2]))
            return key(statuses, duties and truths[-1])

        return self._table(tuple(roots), outcome, rest, ())

    def _table(
        self,
        roots: tuple[int, ...],
        outcome: Callable[[tuple[bool, ...]], Key],
        rest: Key,
        first: Sequence[str],
    ) -> Tree[Key]:
        function = self._diagram.function(roots, outcome, rest)
        tree = function.smallest(rest, MOST_ROWS, first)
        if tree is not None and function.is_cut:
            tree = self._settled(tree, {}, roots, outcome, rest)
        if tree is None:
            raise _exclusive()
        return tree

    def _settled(
        self,
        tree: Tree[Key],
        facts: Facts,
        roots: tuple[int, ...],
        outcome: Callable[[tuple[bool, ...]], Key],
        rest: Key,
    ) -> Tree[Key] | None:
        """The tree with each folded row looked at: it may be impossible, or have one outcome after all."""
        if isinstance(tree, Branch):
            found = [
                (values, child)
                for values, below in tree.children
                if (child := self._settled(below, {**facts, tree.fact: values}, roots, outcome, rest))
            ]
            return Branch(tree.fact, tuple(found)) if len(found) > 1 else found[0][1] if found else None
        if tree.outcome != rest:
            return tree
        regions, possible, near = self._diagram.regions, self._diagram.possible, self._within(facts)
        if not near.meets(possible):
            return None
        inside = [near.meets(regions.both(root, possible)) for root in roots]
        outside = [near.meets(regions.without(possible, root)) for root in roots]
        open_ones = any(map(all, zip(inside, outside, strict=True)))
        return tree if open_ones else Leaf(outcome(tuple(inside)))

    # -- whole decisions --------------------------------------------------------------------------------

    def tree(self, key: Callable[[Decision], Key], rest: Key) -> Tree[Key]:
        """What `key` makes of whole decisions, over all completions, with equal parts shared.

        `rest` stands where there are too many decisions to follow.
        """
        roots = tuple(region for one in self._outlook for _, region in (*one.closed_by, *one.supported_by))
        function = self._diagram.function(roots, lambda truths: key(self._decision(truths)), rest)
        tree = function.tree()
        if tree is None:
            raise _exclusive()
        return tree

    def decisions(self, within: Facts | None = None) -> tuple[Decision, ...]:
        """Every decision that some case within further facts has: of n independent rules up to 2 ** n."""
        roots = tuple(region for one in self._outlook for _, region in (*one.closed_by, *one.supported_by))
        found = self._diagram.truths(roots, within or {})
        return tuple(dict.fromkeys(map(self._decision, found)))

    def only_decision(self) -> Decision | None:
        """The decision of every possible case, where it is the same in all, down to the rules."""
        regions, possible = self._diagram.regions, self._diagram.possible
        truths = []
        for one in self._outlook:
            for _, region in (*one.closed_by, *one.supported_by):
                where = regions.both(region, possible)
                if where not in (FALSE, possible):
                    return None
                truths.append(where == possible)
        return None if possible == FALSE else self._decision(truths)

    def _decision(self, truths: Sequence[bool]) -> Decision:
        left = iter(truths)
        fates = []
        for one in self._outlook:
            closed = tuple(rule for rule, _ in one.closed_by if next(left))
            supported = tuple(rule for rule, _ in one.supported_by if next(left))
            fates.append(Fate(status_of(bool(closed), bool(supported)), closed, supported))
        statuses = tuple(fate.status for fate in fates)
        return Decision(self.engine.verdict(self.group, statuses), tuple(fates))

    def example(self, within: Facts | None = None) -> tuple[dict[str, ValueSet], dict[str, bool]]:
        """One case within further facts that decides everything: the facts added, and the truths."""
        found = self._diagram.example(within)
        if found is None:
            raise _exclusive()
        return found[0], self.truth(found[1])


def _exclusive() -> UsageError:
    return UsageError("These facts exclude each other; take one of them back.")
