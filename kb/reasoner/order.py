"""The order in which facts are tested: what is tested together stands together, so diagrams stay small."""

from __future__ import annotations

from collections.abc import Collection, Sequence

_ROUNDS = 20


def good_order(count: int, together: Sequence[Collection[int]]) -> list[int]:
    """The places 0 to `count` - 1 in an order in which each set of places spans little.

    Places move to the middle of the sets that they are in, again and again (the FORCE heuristic of Aloul,
    Markov and Sakallah 2003), from the order of writing on; the best order seen is kept.
    """
    sets = [tuple(places) for places in together if len(places) > 1]
    order = list(range(count))
    best, least = order, _span(order, sets)
    for _ in range(_ROUNDS):
        order = _moved(order, sets)
        span = _span(order, sets)
        if span >= least:
            break
        best, least = order, span
    return best


def _positions(order: Sequence[int]) -> list[int]:
    found = [0] * len(order)
    for position, place in enumerate(order):
        found[place] = position
    return found


def _span(order: Sequence[int], sets: Sequence[tuple[int, ...]]) -> int:
    position = _positions(order)
    return sum(
        max(position[place] for place in places) - min(position[place] for place in places) for places in sets
    )


def _moved(order: Sequence[int], sets: Sequence[tuple[int, ...]]) -> list[int]:
    position = _positions(order)
    pulls: list[list[float]] = [[] for _ in order]
    for places in sets:
        middle = sum(position[place] for place in places) / len(places)
        for place in places:
            pulls[place].append(middle)
    aims = [sum(p) / len(p) if p else float(position[place]) for place, p in enumerate(pulls)]
    return sorted(order, key=lambda place: (aims[place], position[place]))
