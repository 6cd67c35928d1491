"""A million cases against the answer-set program: `python -m tests.proof.million [cases] [seed] [minutes]`.

Writes `record.txt` beside this file: the date, the seed, the counts and what disagreed.
"""

from __future__ import annotations

import datetime
import sys
import time
from pathlib import Path

from tests.little import DAY
from tests.proof.compare import Compared, Comparison
from tests.proof.random_bases import Seeded, random_base

RECORD = Path(__file__).with_name("record.txt")
SHOWN_WRONG = 20


def run(cases: int, seed: int, minutes: float) -> tuple[Compared, int, float]:
    """Compare random bases until enough cases are tried or the time is up: the counts, bases and seconds."""
    found, start, bases = Compared(), time.monotonic(), 0
    while found.cases < cases and time.monotonic() - start < minutes * 60 and not found.wrong:
        chooser = Seeded(seed + bases)
        comparison = Comparison(random_base(chooser), DAY, found)
        if comparison.fits():
            comparison.run(chooser)
        bases += 1
        if bases % 500 == 0:
            print(f"{bases} bases, {found.cases} cases, {time.monotonic() - start:.0f} s", file=sys.stderr)
    return found, bases, time.monotonic() - start


def record(found: Compared, bases: int, seed: int, seconds: float) -> str:
    """The record in words."""
    lines = [
        f"date: {datetime.date.today().isoformat()}",
        f"seeds: {seed} to {seed + bases - 1}, one for each base",
        f"rule bases: {bases}",
        f"cases (one item and aspect in one fully known case): {found.cases}",
        f"decision tables (each case in exactly one row, no row idle): {found.tables}",
        f"pairs of rules with their line of precedence: {found.wins}",
        f"disagreements: {len(found.wrong)}",
        *(f"  seed {seed + bases - 1}: {text}" for text in found.wrong[:SHOWN_WRONG]),
        f"seconds: {seconds:.0f}",
        "seen (cases by verdict, pairs by line, bases by what took effect in them):",
        *(f"  {name}: {count}" for name, count in sorted(found.seen.items())),
    ]
    return "\n".join(lines) + "\n"


def main(arguments: list[str]) -> int:
    cases = int(arguments[0]) if arguments else 1_000_000
    seed = int(arguments[1]) if len(arguments) > 1 else 1
    minutes = float(arguments[2]) if len(arguments) > 2 else 60.0
    found, bases, seconds = run(cases, seed, minutes)
    text = record(found, bases, seed, seconds)
    RECORD.write_text(text, encoding="utf-8")
    print(text)
    return 1 if found.wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
