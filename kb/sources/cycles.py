"""Circles in relations that must not have any."""

from __future__ import annotations

from collections.abc import Mapping, Sequence


def find_cycles(step: Mapping[str, Sequence[str]]) -> list[tuple[str, ...]]:
    """Circles of a relation, each once, beginning with the node that comes first in `step`.

    Iterative depth-first search, so that a long chain cannot exhaust the stack.
    """
    done: set[str] = set()
    circles: list[tuple[str, ...]] = []
    for start in step:
        if start in done:
            continue
        path: list[str] = [start]
        place = {start: 0}
        waiting = [iter(step[start])]
        while waiting:
            following = next(waiting[-1], None)
            if following is None:
                waiting.pop()
                node = path.pop()
                del place[node]
                done.add(node)
            elif following in place:
                circles.append(tuple(path[place[following] :]))
            elif following not in done and following in step:
                place[following] = len(path)
                path.append(following)
                waiting.append(iter(step[following]))
    return circles


def closure(start: str, step: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """`start` and everything reached from it, nearest first; a circle does no harm."""
    seen = dict.fromkeys([start])
    queue = [start]
    for node in queue:
        for following in step.get(node, ()):
            if following not in seen:
                seen[following] = None
                queue.append(following)
    return tuple(seen)
