"""How the audit grows with the rules: generated books of several sizes, beside the demo.

Run with `python -m tests.benchmarks.audit [SIZE ...]`. Every generated base has one item for ten rules, in
kinds of eight, fifteen grades, six rigs and eight facts; most later rules about an item are exceptions to
the earlier ones, some are for a whole kind, some stand in a station's book. Times are seconds of the
processor and multiples of reading the same books in the same run; no assertion is timed.
"""

from __future__ import annotations

import datetime
import random
import sys
import time

from kb import demo_folder
from kb.audit import audit_base
from kb.model.records import RuleBase
from kb.sources import load_rule_base
from kb.sources.loading import load_texts

DAY = datetime.date(2026, 11, 25)
SIZES = (375, 750, 1500, 3000)
GRADES, RIGS, FACTS = 15, 6, 8

_HEAD = """\
service: {id: made, label: Made, namespace: "https://made.example/"}
authorities: [{id: board, label: Board}, {id: station, label: Station}]
"""


def vocabulary(items: int) -> str:
    grades = ", ".join(f"{{id: G{i}, label: Grade {i}}}" for i in range(1, GRADES + 1))
    rigs = ", ".join(f"{{id: rig-{i}, label: rig {i}}}" for i in range(1, RIGS + 1))
    facts = [
        f"  - {{id: fact-{i}, label: fact {i}, values: [{{id: a, label: a{i}}}, {{id: b, label: b{i}}}, "
        f"{{id: c, label: c{i}}}]}}"
        for i in range(1, FACTS + 1)
    ]
    kinds = [f"  - {{id: kind-{i}, label: kind {i}, kind of: garment}}" for i in range(-(-items // 8))]
    things = [f"  - {{id: item-{i}, label: item {i}, kind of: kind-{i // 8}}}" for i in range(items)]
    return "\n".join(
        [
            _HEAD + f"ladders: [{{id: all-grades, label: all grades, grades: [{grades}]}}]",
            f"rigs: [{rigs}]",
            "facts:",
            *facts,
            "never together: [{fact-1: a, fact-2: b}, {fact-3: a, rig: rig-1}]",
            "items:",
            *kinds,
            *things,
        ]
    )


def rule(chance: random.Random, name: str, items: int, earlier: list[tuple[str, int]]) -> tuple[str, int]:
    """A rule on one line, and the item that it is about; one in fifty does not say what it departs from."""
    item = chance.randrange(items)
    before = [other for other, about in earlier if about == item]
    modality = chance.choice(["must", "may", "may", "must not", "need not"])
    about = f"kind-{item // 8}" if chance.random() < 0.02 and not before else f"item-{item}"
    parts = [f"{modality}: {about}", f"id: {name}"]
    if before and chance.random() < 0.98:
        parts.append(f"exception to: [{', '.join(before)}]")
    low = chance.randint(1, GRADES - 1)
    if chance.random() < 0.7:
        parts.append(f"grades: G{low} to G{min(GRADES, low + chance.randint(1, 8))}")
    if chance.random() < 0.6:
        parts.append(f"rig: rig-{chance.randint(1, RIGS)}")
    facts = chance.sample(range(1, FACTS + 1), chance.randint(0, 3))
    if facts:
        tests = ", ".join(f"fact-{i}: {chance.choice('abc')}" for i in facts)
        parts.append(f"when: {{{tests}}}")
    return "{" + ", ".join(parts) + "}", item


def generated(size: int) -> dict[str, str]:
    """Books with so many rules, the same for the same size."""
    chance, items = random.Random(size), max(8, size // 10)
    earlier: list[tuple[str, int]] = []
    books = {"vocabulary.yaml": vocabulary(items)}
    for name, authority, share in (("order", "board", 0.9), ("local", "station", 0.1)):
        lines = [
            f"book: {{id: {name}, title: {name}, authority: {authority}}}",
            'edition: {id: "1", title: first, in force from: 2024-01-01}',
            "clauses:",
        ]
        count = round(size * share)
        known = earlier if name == "order" else []
        for number in range(count):
            written, item = rule(chance, f"{name}-r{number}", items, known)
            lines.append(f'  - {{clause: "{number + 1}", text: A rule., rules: [{written}]}}')
            if name == "order":
                earlier.append((f"{name}-r{number}", item))
        books[f"{name}.yaml"] = "\n".join(lines)
    return books


def base_of(books: dict[str, str]) -> RuleBase:
    loaded = load_texts(books)
    assert loaded.base is not None, loaded.problems[:3]
    return loaded.base


def show(
    name: str, rules: int, load: float, audit: float, findings: int, before: tuple[int, float] | None
) -> None:
    growth = f"{audit / before[1]:5.1f} x for {rules / before[0]:4.1f} x the rules" if before else ""
    ratio = f"{audit / load:6.1f} x loading"
    print(f"{name:12} {rules:6} rules {audit:7.2f} s {ratio} {findings:6} findings {growth}")


def main() -> None:
    sizes = [int(size) for size in sys.argv[1:]] or list(SIZES)
    started = time.process_time()
    loaded = load_rule_base(demo_folder())
    assert loaded.base is not None
    between = time.process_time()
    report = audit_base(loaded.base, DAY, loaded.problems)
    ended = time.process_time()
    show("demo", report.rules, between - started, ended - between, len(report.findings), None)
    before = None
    for size in sizes:
        started = time.process_time()
        base = base_of(generated(size))
        between = time.process_time()
        report = audit_base(base, DAY)
        took = time.process_time() - between
        show("generated", report.rules, between - started, took, len(report.findings), before)
        before = (report.rules, took)


if __name__ == "__main__":
    main()
