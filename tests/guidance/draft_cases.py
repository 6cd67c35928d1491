"""Plans for tests, and cases at random within what a plan is for."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from pathlib import Path

from kb import demo_folder
from kb.guidance.compose import selections
from kb.guidance.reading import Opened, open_plan
from kb.guidance.selecting import Selection
from kb.model.conditions import evaluate
from kb.model.values import NO, Choices, Interval, Ranges, ValueSet, intersect
from kb.reasoner import WORN
from kb.reasoner.space import pieces_of

SECOND = Path(__file__).parents[1] / "second" / "books"
HEAD = """plan: little
subject: Little guidance
purpose: To try what is written.
authority: {authority}
effective: {day}
expires: {end}
review: {end}
"""


def plan_text(
    *lines: str, authority: str = "station", day: str = "2026-12-01", end: str = "2026-12-31"
) -> str:
    return HEAD.format(authority=authority, day=day, end=end) + "\n".join(lines) + "\n"


def opened(text: str, books: Path | None = None) -> Opened:
    return open_plan(text.encode(), "little.plan", books or demo_folder())


def first_selection(plan: Opened) -> Selection:
    return selections(plan)[1][0]


def cases(
    selection: Selection, facts: tuple[str, ...], seed: int, number: int
) -> Iterator[dict[str, ValueSet]]:
    """Fully known cases of the setting at random: one value for each of the facts, nothing idle worn."""
    setting, lookup = selection.setting, selection.lookup
    dice = random.Random(seed)
    for _ in range(number):
        known: dict[str, ValueSet] = dict(setting.known)
        for fact in facts:
            if fact.startswith(WORN) and not selection.in_play(fact[len(WORN) :]):
                known[fact] = NO
                continue
            possible = intersect(known.get(fact, lookup.domain(fact)), lookup.domain(fact))
            known[fact] = _one(possible, fact, selection, dice)
        if setting.case(known=known) is not None and setting.law.engine.check_case(known):
            yield known


def _one(possible: ValueSet, fact: str, selection: Selection, dice: random.Random) -> ValueSet:
    if isinstance(possible, Choices):
        return Choices(frozenset({dice.choice(sorted(possible.members))}))
    sets = tuple({t.values for r in selection.law.rules for t in _tests(r.condition) if t.fact == fact})
    piece = dice.choice(pieces_of(fact, possible, sets, selection.lookup))
    assert isinstance(piece, Ranges)
    bounds = piece.intervals[0]
    if bounds.low is not None and bounds.high is not None:
        middle = (bounds.low + bounds.high) / 2
    elif bounds.low is not None:
        middle = bounds.low + 1
    else:
        assert bounds.high is not None
        middle = bounds.high - 1
    return Ranges((Interval(middle, middle),))


def _tests(condition):  # type: ignore[no-untyped-def]
    from kb.model.conditions import tests

    return tests(condition)


def holds(selection: Selection, condition, known: Mapping[str, ValueSet]) -> bool:  # type: ignore[no-untyped-def]
    """Whether a condition of a provision is true in a fully known case."""
    truth = evaluate(selection.setting.written(condition), known.get)
    assert truth is not None
    return truth
