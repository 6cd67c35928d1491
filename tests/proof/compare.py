"""The reasoner against the answer-set program, on one base: every item, aspect and possible case."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Sequence

import msgspec

from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.model.questions import Verdict
from kb.model.records import Case, RuleBase
from kb.model.values import Choices, Interval, ValueSet, ranges
from kb.reasoner import Decision, Engine, Facts, Group, possible_facts, rows
from tests.proof.encode import Encoding, Full
from tests.proof.points import Point, member
from tests.proof.random_bases import Chooser
from tests.proof.solver import Verdicts, completions_of, decide, encode

LARGEST_SPACE = 1500
Table = tuple[tuple[Facts, Decision], ...]


class Partial(msgspec.Struct, frozen=True):
    """What a question says: facts, whether the item asked about is worn, and whether it is worn alone."""

    facts: dict[str, frozenset[Point]]
    wearing: bool = False
    alone: bool = False


class Compared(msgspec.Struct):
    """How many cases were compared, and what was found wrong."""

    cases: int = 0
    tables: int = 0
    wins: int = 0
    seen: Counter[str] = msgspec.field(default_factory=Counter)
    wrong: list[str] = msgspec.field(default_factory=list)


def pairs_of(base: RuleBase) -> list[tuple[str, str]]:
    aspects = dict.fromkeys(rule.aspect for rule in base.rules)
    return [(item.id, aspect) for item in base.items for aspect in aspects]


def in_row(when: Facts, full: Full) -> bool:
    return all(member(full[fact], values) for fact, values in when)


def class_at(point: Point, classes: Sequence[ValueSet]) -> int:
    (place,) = [i for i, values in enumerate(classes) if member(point, values)]
    return place


class Comparison:
    """One base on one day: what the program says of the whole case space, against the reasoner."""

    def __init__(self, base: RuleBase, day: datetime.date, found: Compared) -> None:
        self.base, self.day, self.found = base, day, found
        self.encoding = encode(base, day)
        self.lookup = Lookup(base)
        self.engine = Engine(self.lookup, day)

    def fits(self) -> bool:
        """Whether the space is small enough to be tried whole."""
        size = 1
        for points in self.encoding.space.values():
            size *= len(points)
        return size <= LARGEST_SPACE

    def run(self, chooser: Chooser | None = None) -> None:
        """Compare the whole space; with a chooser also the tables under one random partial case."""
        pairs = [(i, a) for i, a in pairs_of(self.base) if a in self.encoding.values]
        completions = completions_of(self.encoding)
        said = decide(self.encoding, pairs, completions)
        possible = {number: completions[number] for number in sorted(said.possible)}
        for item, aspect in pairs:
            self.check_table(said, possible, item, aspect, {})
        self.check_wins(said)
        self.found.seen.update((*said.verdict.values(), *said.won.values(), *said.seen))
        if self.encoding.disputed:
            self.found.seen["disputed term"] += 1
        if chooser is not None and possible and pairs:
            self.check_partial(chooser, said, possible, pairs)

    def check_table(
        self, said: Verdicts, cases: dict[int, Full], item: str, aspect: str, known: dict[str, ValueSet]
    ) -> None:
        """Every case in exactly one row of each table, with its verdict, fates and rules; no idle row."""
        group = self.engine.group(item, aspect)
        try:
            problem = self.engine.problem(group, known)
            details: Table = rows(problem.tree(lambda decision: decision, None))
            verdicts: tuple[tuple[Facts, Verdict], ...] = rows(problem.verdicts())
        except UsageError:
            if cases:
                self.wrong(item, aspect, "is said to be impossible, but has possible cases")
            return
        self.found.tables += 1
        used: set[int] = set()
        for number, full in cases.items():
            self.found.cases += 1
            places = [place for place, (when, _) in enumerate(verdicts) if in_row(when, full)]
            if len(places) != 1:
                self.wrong(item, aspect, f"has {len(places)} rows for {full}")
                continue
            used.add(places[0])
            expected = said.verdict[number, item, aspect]
            if verdicts[places[0]][1] != expected:
                self.wrong(item, aspect, f"{verdicts[places[0]][1]}, not {expected}, in {full}")
            decisions = [decision for when, decision in details if in_row(when, full)]
            if len(decisions) != 1:
                self.wrong(item, aspect, f"has {len(decisions)} detailed rows for {full}")
            else:
                self.check_decision(said, (number, item, aspect), group, decisions[0], full)
        if cases and len(used) != len(verdicts):
            self.wrong(item, aspect, "has a row that no possible case reaches")

    def check_decision(
        self, said: Verdicts, key: tuple[int, str, str], group: Group, decision: Decision, full: Full
    ) -> None:
        fates = said.fates[key]
        closed, supported = said.closed_by.get(key, {}), said.supported_by.get(key, {})
        for point in self.encoding.values[group.aspect]:
            name = self.encoding.value(group.aspect, point)
            fate = decision.fates[class_at(point, group.classes)]
            if fate.status != fates[name]:
                self.wrong(key[1], key[2], f"{point} is {fate.status}, not {fates[name]}, in {full}")
            if set(fate.closed_by) != closed.get(name, set()):
                self.wrong(
                    key[1], key[2], f"{point} closed by {fate.closed_by}, not {closed.get(name)}, in {full}"
                )
            if set(fate.supported_by) != supported.get(name, set()):
                self.wrong(
                    key[1],
                    key[2],
                    f"{point} held by {fate.supported_by}, not {supported.get(name)}, in {full}",
                )

    def check_wins(self, said: Verdicts) -> None:
        """The principle on which each rule beats each other."""
        for (winner, loser), principle in said.won.items():
            self.found.wins += 1
            win = self.engine.precedence.win(winner, loser)
            if win is None or (win.winner, win.principle) != (winner, principle):
                self.found.wrong.append(f"{winner} beats {loser} by {principle}; the reasoner says {win}")

    def check_partial(
        self, chooser: Chooser, said: Verdicts, possible: dict[int, Full], pairs: Sequence[tuple[str, str]]
    ) -> None:
        """The tables of one item under facts that a question states, among them terms with a definition."""
        item, aspect = chooser.pick(pairs)
        partial = random_partial(chooser, self.encoding, item)
        stated = frozenset(partial.facts) & set(self.encoding.meanings)
        narrower = "\n".join(f"narrower({a},{b})." for a, b in said.narrower)
        # what a stated term means no longer counts, but its facts keep their points
        meanings = [self.encoding.meanings[term] for term in sorted(stated)]
        encoding = encode(self.base, self.day, stated, meanings) if stated else self.encoding
        if stated:
            completions = completions_of(encoding)
            said = decide(encoding, pairs, completions, narrower)
            possible = {number: completions[number] for number in sorted(said.possible)}
        case = Case(
            as_of=self.day, facts=tuple((f, as_set(p)) for f, p in partial.facts.items()), alone=partial.alone
        )
        known = possible_facts(case, (item,), partial.wearing, self.lookup)
        fits = {n: full for n, full in possible.items() if stated_in(partial, item, full, self.base)}
        if self.engine.check_case(known) != bool(fits):
            self.wrong(item, aspect, f"check_case is wrong under {partial}")
        self.encoding = encoding
        self.check_table(said, fits, item, aspect, known)

    def wrong(self, item: str, aspect: str, text: str) -> None:
        self.found.wrong.append(f"{aspect} of {item}: {text}")


def above(item: str, parents: dict[str, tuple[str, ...]]) -> set[str]:
    """An item and all its kinds."""
    return {item}.union(*(above(parent, parents) for parent in parents[item]))


def as_set(points: frozenset[Point]) -> ValueSet:
    if any(not isinstance(point, str) for point in points):
        return ranges(Interval(p, p) for p in points if not isinstance(p, str))
    return Choices(frozenset(p for p in points if isinstance(p, str)))


def random_partial(chooser: Chooser, encoding: Encoding, item: str) -> Partial:
    """Up to three facts, each narrowed to one or two values; sometimes a term that a clause defines."""
    facts: dict[str, frozenset[Point]] = {}
    names = [*encoding.space, *(term for term in encoding.meanings if term in encoding.sets)]
    for _ in range(chooser.pick((0, 1, 2, 3)) if names else 0):
        fact = chooser.pick(names)
        points: Sequence[Point] = encoding.space.get(fact, ("yes", "no"))
        facts[fact] = frozenset({chooser.pick(points), chooser.pick(points)})
    wearing = chooser.pick((False, True))
    if wearing:  # the question has the last word on what it asks about
        parents = {i.id: i.broader for i in encoding.base.items}
        facts = {fact: points for fact, points in facts.items() if fact[5:] not in above(item, parents)}
    return Partial(facts, wearing, alone=chooser.pick((False, False, False, True)))


def stated_in(partial: Partial, item: str, full: Full, base: RuleBase) -> bool:
    """Whether a completion is one of what the question says."""
    parents = {i.id: i.broader for i in base.items}
    if any(full[fact] not in points for fact, points in partial.facts.items() if fact in full):
        return False
    if partial.wearing and any(full.get(f"worn:{other}", "yes") == "no" for other in above(item, parents)):
        return False
    if not partial.alone:
        return True
    worn = {f[5:] for f, points in partial.facts.items() if f.startswith("worn:") and points == {"yes"}}
    unsure = {f[5:] for f, points in partial.facts.items() if f.startswith("worn:") and len(points) > 1}
    kept = above(item, parents).union(*(above(other, parents) for other in worn)) | unsure
    return all(full.get(f"worn:{other}", "no") == "no" for other in parents if above(other, parents) - kept)
