"""What parts of the reader are worth: `python -m tests.reading.without [PART ...]` counts with each off.

Of the halves that nobody worked on nothing but counts is shown. A part whose absence changes nothing there
answers only the questions that it was written for.
"""

from __future__ import annotations

import importlib
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

from kb import KnowledgeBase
from tests.reading.report import mark_questions
from tests.reading.sheets import BOOKS, SHEETS

UNSEEN = (
    *(f"demo-{name}" for name in ("weekly", "monthly", "quarterly", "yearly", "autumn")),
    "seventh",
    *(f"{name}-further" for name in ("cadets", "hotel", "zoo", "racecourse", "shipyard", "ambulance")),
)


def _nothing(*_: Any, **__: Any) -> None:
    return None


def _no_lines(*_: Any, **__: Any) -> tuple[()]:
    return ()


def _as_read(reading: Any, *_: Any, **__: Any) -> Any:
    return reading


PARTS: dict[str, tuple[tuple[str, str, Callable[..., Any]], ...]] = {
    "nothing": (),
    "sayings": (("kb.reader.meaning.rephrase", "sayings", _no_lines),),
    "rephrased": (("kb.reader.otherwise", "rephrased", _nothing),),
    "outright": (("kb.reader.question", "asked_outright", _nothing),),
    "matters": (("kb.reader.otherwise", "_of_another_matter", _nothing),),
    "names": (("kb.reader.recast.stand_ins", "put_names", _nothing),),
    "stories": (
        ("kb.reader.stories.leadin", "led_in", _nothing),
        ("kb.reader.stories.story", "from_story", _nothing),
    ),
    "clauses": (
        ("kb.reader.otherwise", "_by_words", _nothing),
        ("kb.reader.otherwise", "_who_does_it", _nothing),
    ),
    "deeds": (("kb.reader.otherwise", "_of_a_deed", _nothing),),
    "otherwise": (("kb.reader.question", "otherwise", _as_read),),
}
"""The parts that can be left off, each as the functions that do nothing then."""


def counted(part: str, sheet: str, folder: str) -> Counter[str]:
    """The marks of a kept half with a part off, in a process of its own."""
    for module, name, instead in PARTS[part]:
        found = importlib.import_module(module)
        getattr(found, name)  # a part that has moved is an error here
        setattr(found, name, instead)
    base = KnowledgeBase.open(BOOKS[SHEETS[sheet]], Path(folder))
    return Counter(marked.held.mark for marked in mark_questions(sheet, "kept", base))


def main(parts: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        for part in parts or list(PARTS):
            with ProcessPoolExecutor(max_workers=2) as workers:
                waiting = [(sheet, workers.submit(counted, part, sheet, folder)) for sheet in UNSEEN]
                told = {sheet: one.result() for sheet, one in waiting}
            for books, those in (("demo", True), ("others", False)):
                marks = sum((c for s, c in told.items() if s.startswith("demo") is those), Counter[str]())
                shown = ", ".join(f"{marks[mark]} {mark}" for mark in ("right", "withheld", "wrong"))
                print(f"without {part}: {books}: {shown}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
