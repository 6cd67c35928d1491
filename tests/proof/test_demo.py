"""The demo's rule books against the answer-set program: every rule, in cases that meet it and that do not.

Cases come from the solver: one that meets each rule, one that does not, and one in which each two rules that
can meet do. Specificity is asked of the solver for each pair over the whole case space.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import clingo
import pytest

from kb import demo_folder
from kb.model.lookup import Lookup
from kb.model.records import RuleBase
from kb.model.values import Choices, ValueSet, point
from kb.reasoner import Engine, rows
from kb.sources import load_rule_base
from tests.proof.compare import class_at, in_row
from tests.proof.encode import Full
from tests.proof.points import Point
from tests.proof.solver import Verdicts, decide, encode
from tests.proof.wide import Space

SECOND = Path(__file__).parents[1] / "second" / "books"
CHUNK = 12
Pair = tuple[str, str]


def known_as(value: Point) -> ValueSet:
    return Choices(frozenset({value})) if isinstance(value, str) else point(value)


class Demo:
    """The books on one day, their case space, and the reasoner."""

    def __init__(self, base: RuleBase, day: datetime.date) -> None:
        self.encoding = encode(base, day)
        self.space = Space(self.encoding, seed=1)
        self.engine = Engine(Lookup(base), day)
        self.bearing: dict[Pair, list[clingo.Symbol]] = defaultdict(list)
        aspects = {rule.id: rule.aspect for rule in self.encoding.rules}
        for effect, item in self.space.bears:
            self.bearing[item, aspects[effect.arguments[0].string]].append(effect)
        self.rivals = set(self.space.rivals)
        self.never: set[str] = set()

    def pairs(self) -> list[Pair]:
        """Items and aspects: of the items on which the same rules bear, only the first."""
        found: dict[tuple[str, tuple[str, ...]], Pair] = {}
        for (item, aspect), effects in sorted(self.bearing.items()):
            found.setdefault((aspect, tuple(sorted(map(str, effects)))), (item, aspect))
        return list(found.values())

    def cases(self, pair: Pair) -> Iterator[Full]:
        """Cases that meet each rule of a pair, that do not, and that meet each two of them."""
        effects = self.bearing[pair]
        for effect in effects:
            met = self.space.case((effect, True))
            if met is None:
                self.never.add(effect.arguments[0].string)
            missed = self.space.case((effect, False))
            yield from (case for case in (met, missed) if case is not None)
        for one in effects:
            for other in effects:
                if str(one) < str(other) and (one, other) in self.rivals:
                    both = self.space.case((one, True), (other, True))
                    if both is not None:
                        yield both


def disagreements(demo: Demo, said: Verdicts, pair: Pair, number: int, full: Full) -> list[str]:
    """What the reasoner says otherwise of one pair in one case: alone, and as a row of the whole table."""
    item, aspect = pair
    group = demo.engine.group(item, aspect)
    key = (number, item, aspect)
    known = {fact: known_as(value) for fact, value in full.items()}
    decisions = demo.engine.problem(group, known).decisions()
    wrong = [] if len(decisions) == 1 else [f"{pair} is not decided in {full}"]
    if decisions[0].verdict != said.verdict[key]:
        wrong.append(f"{pair}: {decisions[0].verdict}, not {said.verdict[key]}, in {full}")
    for value in demo.encoding.values[aspect]:
        fate = decisions[0].fates[class_at(value, group.classes)]
        name = demo.encoding.value(aspect, value)
        closed = said.closed_by.get(key, {}).get(name, set())
        supported = said.supported_by.get(key, {}).get(name, set())
        expected = (said.fates[key][name], closed, supported)
        if (fate.status, set(fate.closed_by), set(fate.supported_by)) != expected:
            wrong.append(f"{pair}: {value} is {fate}, not {expected}, in {full}")
    table = rows(demo.engine.problem(group, {}).verdicts())
    rows_met = [verdict for when, verdict in table if in_row(when, full)]
    if rows_met != [said.verdict[key]]:
        wrong.append(f"{pair}: the rows {rows_met} of the table, not {said.verdict[key]}, in {full}")
    return wrong


def compare(base: RuleBase, day: datetime.date) -> tuple[Demo, int, list[str]]:
    demo = Demo(base, day)
    narrower = demo.space.narrower()
    pairs, count, wrong = demo.pairs(), 0, []
    for start in range(0, len(pairs), CHUNK):
        chunk = pairs[start : start + CHUNK]
        cases = [(pair, full) for pair in chunk for full in demo.cases(pair)]
        said = decide(demo.encoding, chunk, [full for _, full in cases], narrower)
        assert said.possible == set(range(len(cases))), "the solver gives only possible cases"
        for number, (_, full) in enumerate(cases):
            for pair in chunk:
                count += 1
                wrong += disagreements(demo, said, pair, number, full)
    return demo, count, wrong


@pytest.mark.slow
@pytest.mark.parametrize(
    ("folder", "day", "never"),
    [
        # the scarf on parade afloat is a planted fault: nobody parades afloat
        (demo_folder(), datetime.date(2026, 11, 25), {"station-order/2025/scarf-on-parade-afloat"}),
        (demo_folder(), datetime.date(2022, 1, 1), set()),
        (SECOND, datetime.date(2026, 11, 25), set()),
    ],
    ids=["demo", "demo in 2022", "second service"],
)
def test_the_books_agree_in_cases_that_meet_every_rule(
    folder: Path, day: datetime.date, never: set[str]
) -> None:
    base = load_rule_base(folder).base
    assert base is not None
    demo, count, wrong = compare(base, day)
    assert wrong == []
    assert demo.never == never
    tried = {effect.arguments[0].string for pair in demo.pairs() for effect in demo.bearing[pair]}
    assert tried == {rule.id for rule in demo.encoding.rules}
    assert count > 1000
