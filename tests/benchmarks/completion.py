"""Time suggestions at 5,000 labels, for each keystroke of questions, beside a fuzzy search over all labels.

Run with `python -m tests.benchmarks.completion`. Baseline and program are measured in the same run; no
assertion is timed.
"""

from __future__ import annotations

import random
import statistics
import time

from rapidfuzz import fuzz, process

from shell.completion import suggest
from shell.vocabulary import Entry, Kind, Vocabulary, make_vocabulary

LABELS = 5_000
LINES = (
    "May a Senior Fitter wear the blue canvas jacket in harbour rig?",
    "Where does the quitled brass bagde go on the left pocket?",
    "query SELECT ?item WHERE { ?item ?p ?o } LIMIT 5",
    "xyzzy plugh qwertz",
)
FIRST = "blue brass canvas quilted grey woollen storm harbour black white heavy light senior junior"
SECOND = "jacket badge cap boots gloves liner pocket strap collar lanyard fitter keeper rig weather"
KINDS: tuple[Kind, ...] = ("item", "item", "item", "one", "rig", "situation")


def vocabulary() -> Vocabulary:
    """Made-up labels of two to four words, many of which begin alike; always the same."""
    chance, first, second = random.Random(5), FIRST.split(), SECOND.split()
    labels: dict[str, Entry] = {}
    while len(labels) < LABELS:
        words = [chance.choice(first), *chance.sample(first, chance.randint(0, 1)), chance.choice(second)]
        text = " ".join([*words, str(chance.randint(1, 400))])
        labels[text] = Entry(text, "made up", chance.choice(KINDS))
    return make_vocabulary(labels.values())


def main() -> None:
    known = vocabulary()
    texts = [entry.text for entry in known.entries]
    ours: list[float] = []
    every: list[float] = []
    for line in LINES:
        for cursor in range(1, len(line) + 1):
            started = time.perf_counter()
            suggest(line, cursor, known)
            middle = time.perf_counter()
            process.extract(line[:cursor], texts, scorer=fuzz.WRatio, limit=12)
            every.append(time.perf_counter() - middle)
            ours.append(middle - started)
    for name, times in (("suggest", ours), ("fuzzy search over all labels", every)):
        median, worst = statistics.median(times), max(times)
        ratio = median / statistics.median(every)
        print(f"{name:32} median {median * 1000:7.2f} ms  worst {worst * 1000:7.2f} ms  {ratio:6.3f} x")
    print(f"{len(known.entries)} labels, {len(ours)} keystrokes")


if __name__ == "__main__":
    main()
