"""Time the program against baselines measured in the same run, and print the ratios.

Run with `python -m tests.benchmarks`. Whole processes are compared with a bare Python start and with the same
question put by rdflib alone (parse the exported base, run the candidate query); answers inside the program
with one rdflib query on a graph already in memory. Medians of interleaved runs; no assertion is timed.
"""

from __future__ import annotations

import datetime
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import rdflib

from kb import KnowledgeBase, build, demo_folder, export_base
from kb.graph.names import Names
from kb.sparql.named import fill

QUESTIONS = (
    "May I wear the liner alone?",
    "Can a K5 wear gloves ashore?",
    "Where does the cap device go for an officer?",
    "Who may wear the keeper's pin?",
    "What must an H2 wear in boat rig?",
)

RDFLIB_ALONE = """
import sys, rdflib
graph = rdflib.Graph()
graph.parse(sys.argv[1], format="turtle")
rows = list(graph.query(open(sys.argv[2]).read()))
print(len(rows))
"""


def candidate_query(base: KnowledgeBase) -> str:
    """The query that the program itself puts for the first question."""
    (answer,) = base.ask(QUESTIONS[0])
    assert answer.reading.query is not None
    names = Names(base.lookup.base.service.namespace)
    values: dict[str, str | datetime.date | tuple[str | datetime.date, ...]] = {
        "item": names.of("item", answer.reading.query.items[0]),
        "aspect": names.of("aspect", "wear"),
        "day": datetime.date.today(),
    }
    return fill("candidate-rules", values)


def process_times(commands: dict[str, list[str]], runs: int, environment: dict[str, str]) -> dict[str, float]:
    """Median seconds of each command, the commands taking turns."""
    times: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(runs):
        for name, command in commands.items():
            started = time.perf_counter()
            subprocess.run(command, check=True, capture_output=True, env=environment)
            times[name].append(time.perf_counter() - started)
    return {name: statistics.median(found) for name, found in times.items()}


def call_time(call: Callable[[], object], runs: int) -> float:
    """Median seconds of a call, after one call to warm up."""
    call()
    times = []
    for _ in range(runs):
        started = time.perf_counter()
        call()
        times.append(time.perf_counter() - started)
    return statistics.median(times)


def show(name: str, seconds: float, baseline: float, of: str) -> None:
    print(f"{name:58} {seconds * 1000:9.1f} ms {seconds / baseline:8.2f} x {of}")


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        environment = {**os.environ, "CLOTHBOUND_CACHE": str(work / "cache")}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program has its bytecode
        os.environ["CLOTHBOUND_CACHE"] = str(work / "cache")
        started = time.perf_counter()
        build()
        first = time.perf_counter() - started
        base = KnowledgeBase.open()
        triples = work / "base.ttl"
        triples.write_bytes(export_base(None, "turtle"))
        query = work / "query.rq"
        candidates = candidate_query(base)
        query.write_text(candidates, encoding="utf-8")
        python = sys.executable
        whole = process_times(
            {
                "bare": [python, "-c", "pass"],
                "ask": [python, "-m", "shell", "ask", QUESTIONS[0]],
                "rdflib": [python, "-c", RDFLIB_ALONE, str(triples), str(query)],
            },
            runs=9,
            environment=environment,
        )
        print("whole processes (median of 9)")
        show("bare Python start", whole["bare"], whole["bare"], "bare start")
        show("one question, cold, cache built", whole["ask"], whole["bare"], "bare start")
        show("one question, cold, cache built", whole["ask"], whole["rdflib"], "rdflib alone")

        graph = rdflib.Graph()
        graph.parse(triples, format="turtle")
        baseline = call_time(lambda: list(graph.query(candidates)), 5)
        print("inside the program (median of 20)")
        show("rdflib, candidate query on a loaded graph", baseline, baseline, "rdflib query")
        for question in QUESTIONS:
            show(question, call_time(lambda q=question: base.ask(q), 20), baseline, "rdflib query")  # type: ignore[misc]

        print("the first answer for a day that nothing is known of yet (median of 20)")
        days = (datetime.date(2026, 12, 1) + datetime.timedelta(n) for n in range(1000))
        for question in QUESTIONS:
            first_time = call_time(lambda q=question: base.ask(q, as_of=next(days)), 20)  # type: ignore[misc]
            show(question, first_time, baseline, "rdflib query")

        print("builds")
        show(f"first build of {demo_folder().name}, with SHACL", first, whole["rdflib"], "rdflib alone")
        show("opening with a fresh cache", call_time(KnowledgeBase.open, 5), whole["bare"], "bare start")


if __name__ == "__main__":
    main()
