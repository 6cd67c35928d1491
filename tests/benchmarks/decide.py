"""Time decided cases against baselines measured in the same run, and print the ratios.

Run with `python -m tests.benchmarks.decide`. Ten thousand fully known cases, drawn with a fixed seed, are
decided with their clauses and rules. The baselines are one embedded SPARQL query for each case (the candidate
query of the question path, sampled) and a bare interval and set test in Python. The shortest of several
interleaved runs counts, since other work on the machine only makes a run slower; no assertion is timed.
"""

from __future__ import annotations

import argparse
import random
import time
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

from kb import KnowledgeBase, UsageError, demo_folder
from kb.compiled import Decider, Value
from kb.model.values import Choices
from kb.opening import books_folder
from kb.sparql import candidate_rules, open_store
from tests.little import DAY

CASES = 10_000
SAMPLE = 300
Place = tuple[str, str, dict[str, Value]]


def draw_cases(base: KnowledgeBase, decider: Decider, number: int) -> list[Place]:
    """Cases in which every fact that bears on the item is known, and five more."""
    chooser, lookup, engine = random.Random(1), base.lookup, decider.engine
    items = [item for item in lookup.items if engine.group(item, "wear").rules]
    common = [name for name in ("grade", "rig", "weather", "place", "activity") if name in lookup.facts]

    def any_value(fact: str) -> Value:
        domain = lookup.domain(fact)
        if isinstance(domain, Choices):
            return chooser.choice(sorted(domain.members))
        return chooser.choice((chooser.randint(-10, 40), Fraction(chooser.randint(-100, 400), 10)))

    found: list[Place] = []
    while len(found) < number:
        item = chooser.choice(items)
        facts = dict.fromkeys((*engine.problem(engine.group(item, "wear"), {}).facts, *common))
        case = {fact: any_value(fact) for fact in facts}
        try:
            if decider.decide(item, "wear", case).verdict != "conditional":
                found.append((item, "wear", case))
        except UsageError:
            continue  # facts that exclude each other
    return found


def best(call: Callable[[], object], runs: int) -> float:
    """Shortest of several runs, in seconds."""
    times = []
    for _ in range(runs):
        started = time.perf_counter()
        call()
        times.append(time.perf_counter() - started)
    return min(times)


def interval_test(grade: str, temperature: int | Fraction, grades: frozenset[str]) -> bool:
    """What one rule comes to when written by hand: a grade of a set, and a temperature in an interval."""
    return grade in grades and -10 <= temperature < 4


def show(name: str, seconds: float, note: str = "") -> None:
    print(f"{name:58} {seconds * 1e6:10.2f} us  {note}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--books", type=Path, default=None, help="rule books (default: the demo)")
    books = books_folder(parser.parse_args().books or demo_folder())
    base = KnowledgeBase.open(books)
    engine = base.engine(DAY)
    decider = Decider(engine)
    cases = draw_cases(base, decider, CASES)
    grades = frozenset(base.lookup.order("grade")[4:])
    few = cases[:SAMPLE]
    store = open_store(base.generation)
    decide = decider.decide

    def compile_all() -> None:
        fresh = Decider(engine)
        for item in {item for item, _, _ in cases}:
            fresh.decide(item, "wear", {})

    def fastest(runs: int) -> tuple[float, float, float]:
        """Seconds a case: decided, asked of the store, tested by hand; the three take turns."""
        ours, query, bare = [], [], []
        for _ in range(runs):
            ours.append(best(lambda: [decide(item, aspect, case) for item, aspect, case in cases], 1) / CASES)
            query.append(
                best(lambda: [candidate_rules(store, (i,), (a,), DAY) for i, a, _ in few], 1) / SAMPLE
            )
            bare.append(best(lambda: [interval_test(c["grade"], 3, grades) for _, _, c in cases], 1) / CASES)  # type: ignore[arg-type]
        return min(ours), min(query), min(bare)

    ours, query, bare = fastest(7)
    print(f"{CASES:,} cases, {len({item for item, _, _ in cases})} items, {len(base.lookup.rules)} rules")
    show("compiling every item of the cases, all together", best(compile_all, 2))
    show("one decided case with its clause and rules", ours, f"{1 / ours:,.0f} a second")
    show("one embedded SPARQL query (candidates only)", query, f"{query / ours:,.0f} x a decided case")
    show("one bare interval and set test in Python", bare, f"a decided case is {ours / bare:.1f} x")
    several = sum(len(decide(*case).rules) for case in cases) / CASES
    print(f"{several:.2f} deciding rules a case on average")


if __name__ == "__main__":
    main()
