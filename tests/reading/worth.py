"""What each function of the reader is worth: `python -m tests.reading.worth [SHEET ...]`.

Every function that may return None is wrapped. Where it returned something, the line is asked once more with
it returning None, and the two marks are compared. Of kept halves nothing but counts is shown; open lines are
asked again some forty times for each function, for which a first pass counts where it returns something.
What changes no mark of a line that nobody worked on, and few of the open ones, may not be worth its place.
"""

from __future__ import annotations

import functools
import importlib
import pkgutil
import sys
import tempfile
import types
import zlib
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

import kb.reader
from kb import KnowledgeBase
from tests.reading.report import mark_line
from tests.reading.sheets import BOOKS, SHEETS, questions
from tests.reading.without import UNSEEN

AGAIN = 40
"""About so many open lines are asked again without a function."""

_returned: set[str] = set()
_off: set[str] = set()


def _watched(name: str, function: types.FunctionType) -> Callable[..., Any]:
    @functools.wraps(function)
    def watched(*args: Any, **named: Any) -> Any:
        if name in _off:
            return None
        result = function(*args, **named)
        if result is not None:
            _returned.add(name)
        return result

    return watched


@functools.cache
def _watch() -> None:
    """Put a wrapped function in the place of each, in every module that holds it."""
    instead: dict[types.FunctionType, Callable[..., Any]] = {}
    for found in pkgutil.walk_packages(kb.reader.__path__, "kb.reader."):
        module = importlib.import_module(found.name)
        for name, function in vars(module).items():
            if isinstance(function, types.FunctionType) and function.__module__ == module.__name__:
                returns = function.__annotations__.get("return", "")
                if returns.endswith("| None"):
                    key = f"{module.__name__.removeprefix('kb.reader.')}.{name}"
                    instead[function] = _watched(key, function)
    for module in list(sys.modules.values()):
        if getattr(module, "__name__", "").split(".")[0] == "kb":
            for name, function in list(vars(module).items()):
                if isinstance(function, types.FunctionType) and function in instead:
                    setattr(module, name, instead[function])


def _lines(sheet: str) -> Iterator[tuple[bool, Any]]:
    """The lines of a sheet, and whether nobody worked on them."""
    for half in ("open", "kept"):
        for asked in questions(sheet, half):
            yield half == "kept" and sheet in UNSEEN, asked


def counted(sheet: str, folder: str, seen: Counter[str] | None) -> Counter[tuple[str, str]]:
    """Of each function: where it returned something and, with `seen`, what marks change without it."""
    _watch()
    base = KnowledgeBase.open(BOOKS[SHEETS[sheet]], Path(folder))
    counts = Counter[tuple[str, str]]()
    for unseen, asked in _lines(sheet):
        kind = "unseen" if unseen else "open"
        _off.clear()
        _returned.clear()
        mark = mark_line(sheet, asked, base).held.mark
        for name in sorted(_returned):
            counts[name, kind] += 1
            if seen is None or not (unseen or _is_chosen(name + asked.text, seen[name])):
                continue
            counts[name, f"{kind} again"] += 1
            _off.clear()
            _off.add(name)
            without = mark_line(sheet, asked, base).held.mark
            for one in ("right", "wrong"):
                counts[name, f"{kind} {one}"] += (mark == one) - (without == one)
    _off.clear()
    return counts


def _is_chosen(line: str, times: int) -> bool:
    return times <= AGAIN or zlib.crc32(line.encode()) % times < AGAIN


def main(sheets: list[str]) -> None:
    told = Counter[tuple[str, str]]()
    with tempfile.TemporaryDirectory() as folder, ProcessPoolExecutor(max_workers=2) as workers:
        first = [workers.submit(counted, sheet, folder, None) for sheet in sheets]
        seen = Counter[str]()
        for one in first:
            for (name, kind), times in one.result().items():
                seen[name] += times if kind == "open" else 0
        for one in [workers.submit(counted, sheet, folder, seen) for sheet in sheets]:
            told.update(one.result())
    names = sorted(
        {name for name, _ in told},
        key=lambda name: (told[name, "unseen right"], told[name, "open right"], name),
    )
    for name in names:
        shown = (f"{kind}: {told[name, kind]} ({told[name, f'{kind} again']} asked again), "
                 f"right {told[name, f'{kind} right']:+}, wrong {told[name, f'{kind} wrong']:+}"
                 for kind in ("unseen", "open"))  # fmt: skip
        print(f"{name:48} {'   '.join(shown)}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:] or list(SHEETS))
