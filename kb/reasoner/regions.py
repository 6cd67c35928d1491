"""Regions: sets of cases over facts cut into classes, as numbers that are equal where the sets are.

A reduced ordered decision diagram with many-valued facts (Bryant 1986). A fact is known by its place, a set
of its classes is a bit mask, and the facts are tested in one order. Nothing here recurses, so that a thousand
facts are no deeper than ten.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

FALSE, TRUE = 0, 1
_END = 1 << 30

Parts = tuple[tuple[int, int], ...]  # what the classes in a mask lead to


class Regions:
    """All regions over some facts: `sizes` are the numbers of their classes, `order` has their places."""

    def __init__(self, sizes: Sequence[int], order: Sequence[int]) -> None:
        self.order = tuple(order)
        self.full = tuple((1 << sizes[place]) - 1 for place in self.order)
        self.level_of = {place: level for level, place in enumerate(self.order)}
        self.levels = [_END, _END]
        self.parts: list[Parts] = [(), ()]
        self._numbers: dict[tuple[int, Parts], int] = {}
        self._joined: tuple[dict[tuple[int, int], int], dict[tuple[int, int], int]] = ({}, {})
        self._opposites: dict[int, int] = {FALSE: TRUE, TRUE: FALSE}

    def _node(self, level: int, masks: Mapping[int, int]) -> int:
        """The region that splits on a fact; `masks` gives for each child the classes that lead to it."""
        if len(masks) == 1:
            return next(iter(masks))
        key = (level, tuple(sorted((mask, child) for child, mask in masks.items())))
        number = self._numbers.get(key)
        if number is None:
            number = self._numbers[key] = len(self.levels)
            self.levels.append(level)
            self.parts.append(key[1])
        return number

    def test(self, place: int, mask: int) -> int:
        """The cases in which a fact lies in one of the classes of a mask."""
        level = self.level_of[place]
        rest = self.full[level] & ~mask
        if not rest or not mask:
            return FALSE if rest else TRUE
        return self._node(level, {TRUE: mask, FALSE: rest})

    def opposite(self, region: int) -> int:
        """All other cases. Children have lower numbers than their parents, so they are turned first."""
        known = self._opposites
        if region not in known:
            waiting, found = [region], {region}
            while waiting:
                for _, child in self.parts[waiting.pop()]:
                    if child not in known and child not in found:
                        found.add(child)
                        waiting.append(child)
            for number in sorted(found):
                turned = {known[child]: mask for mask, child in self.parts[number]}
                known[number] = self._node(self.levels[number], turned)
                known[known[number]] = number
        return known[region]

    def both(self, one: int, other: int) -> int:
        return self._join(TRUE, one, other)

    def either(self, one: int, other: int) -> int:
        return self._join(FALSE, one, other)

    def without(self, one: int, other: int) -> int:
        """The cases of the one that are not cases of the other."""
        return FALSE if one == FALSE or other == TRUE else self._join(TRUE, one, self.opposite(other))

    def join(self, conjunction: bool, regions: Iterable[int]) -> int:
        """What all regions share, or what any of them holds. From the last fact up: each step stays short."""
        kept = sorted(dict.fromkeys(regions), key=lambda region: -self.levels[region])
        found = int(conjunction)
        for region in kept:
            found = self._join(int(conjunction), found, region)
        return found

    def all(self, regions: Iterable[int]) -> int:
        return self.join(True, regions)

    def any(self, regions: Iterable[int]) -> int:
        return self.join(False, regions)

    def _join(self, neutral: int, one: int, other: int) -> int:
        """Conjunction (`neutral` is `TRUE`) or disjunction of two regions."""
        found = self._settled(neutral, one, other)
        if found is not None:
            return found
        known, waiting = self._joined[neutral], [(one, other)]
        while waiting:
            one, other = waiting[-1]
            level = min(self.levels[one], self.levels[other])
            masks: dict[int, int] = {}
            missing = []
            for mask, left, right in self._pairs(level, one, other):
                child = self._settled(neutral, left, right)
                if child is None:
                    missing.append((left, right))
                else:
                    masks[child] = masks.get(child, 0) | mask
            if missing:
                waiting += missing
                continue
            waiting.pop()
            known[(one, other) if one < other else (other, one)] = self._node(level, masks)
        return known[(one, other) if one < other else (other, one)]

    def _settled(self, neutral: int, one: int, other: int) -> int | None:
        if one == other or other == neutral:
            return one
        if one == neutral:
            return other
        if one + other == 1 or one == 1 - neutral or other == 1 - neutral:
            return 1 - neutral
        return self._joined[neutral].get((one, other) if one < other else (other, one))

    def _pairs(self, level: int, one: int, other: int) -> list[tuple[int, int, int]]:
        """What both become in the classes of the fact of a level: masks and the two children."""
        if self.levels[one] != level:
            return [(mask, one, child) for mask, child in self.parts[other]]
        if self.levels[other] != level:
            return [(mask, child, other) for mask, child in self.parts[one]]
        return [
            (left & right, child, partner)
            for left, child in self.parts[one]
            for right, partner in self.parts[other]
            if left & right
        ]

    def split(self, level: int, regions: Sequence[int]) -> dict[tuple[int, ...], int]:
        """What several regions become once the first fact among them is known, with the classes for it."""
        found: dict[tuple[int, ...], int] = {(): self.full[level]}
        for region in regions:
            parts = self.parts[region] if self.levels[region] == level else ((self.full[level], region),)
            refined: dict[tuple[int, ...], int] = {}
            for before, mask in found.items():
                for part, child in parts:
                    if mask & part:
                        key = (*before, child)
                        refined[key] = refined.get(key, 0) | mask & part
            found = refined
        return found


class Within:
    """The cases in which facts lie in given masks (by place): whether regions have one among them."""

    def __init__(self, regions: Regions, masks: Mapping[int, int]) -> None:
        self._regions = regions
        self._masks = {regions.level_of[place]: mask for place, mask in masks.items()}
        self._empty: set[tuple[int, ...]] = set()

    def narrow(self, place: int, mask: int) -> None:
        """Let a fact lie in a mask instead."""
        self._masks[self._regions.level_of[place]] = mask
        self._empty = set()

    def meets(self, *regions: int) -> bool:
        """Whether some case within is in all of the regions; found depth first, without joining them."""
        levels = self._regions.levels
        start = tuple(sorted({region for region in regions if region != TRUE}))
        if not start:
            return True
        waiting = [start] if start[0] != FALSE else []
        seen: set[tuple[int, ...]] = set()
        while waiting:
            vector = waiting.pop()
            if vector in seen or vector in self._empty:
                continue
            seen.add(vector)
            level = min([levels[region] for region in vector])
            later = [region for region in vector if levels[region] != level]
            for opened in self._opened(level, [region for region in vector if levels[region] == level]):
                following = tuple(sorted({*opened, *later}))
                if not following:
                    return True
                waiting.append(following)
        self._empty |= seen
        return False

    def _opened(self, level: int, regions: Sequence[int]) -> Iterable[tuple[int, ...]]:
        """What regions that all split on one fact become for its values within, where none is without a case.

        A region that has every case from there on is left out.
        """
        found: dict[tuple[int, ...], int] = {(): self._masks.get(level, -1)}
        for region in regions:
            refined: dict[tuple[int, ...], int] = {}
            for before, mask in found.items():
                for part, child in self._regions.parts[region]:
                    if child != FALSE and mask & part:
                        key = before if child == TRUE else (*before, child)
                        refined[key] = refined.get(key, 0) | mask & part
            found = refined
        return found
