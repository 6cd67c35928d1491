"""What becomes of each value in all cases at once: section 2 of the design over regions of cases.

`decide.py` has the same lines for one case; a test compares the two. Rules that have nothing to do with each
other stay apart here, where the joint truths of their conditions would multiply.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.model.questions import Verdict
from kb.reasoner.norms import Norm
from kb.reasoner.regions import FALSE, TRUE, Regions


class Prospect(msgspec.Struct, frozen=True):
    """One class of values: where it is closed and where it is supported, and by which rules alive there.

    Each rule comes with the region in which it is alive at the class, residual rules last.
    """

    closed: int
    supported: int
    closed_by: tuple[tuple[str, int], ...]
    supported_by: tuple[tuple[str, int], ...]


class _Effect(msgspec.Struct, frozen=True):
    key: str
    rule: str
    mask: int
    region: int  # where it applies
    frees: bool


def prospects(
    norms: Sequence[tuple[Norm, int]],
    size: int,
    applies: Callable[[Norm], int],
    winner: Callable[[str, str], str | None],
    regions: Regions,
) -> tuple[Prospect, ...]:
    """What becomes of `size` classes of values; `applies` gives the region in which a norm applies.

    `winner` is the one of two norms that beats the other, by their keys.
    """
    sides: dict[tuple[bool, bool], list[_Effect]] = {}
    for norm, mask in norms:
        region = applies(norm)
        if region != FALSE:
            effect = _Effect(norm.key, norm.rule, mask, region, norm.frees)
            sides.setdefault((norm.closes, norm.closes and norm.residual), []).append(effect)
    closing, residual = sides.get((True, False), []), sides.get((True, True), [])
    supporting = sides.get((False, False), [])
    everything = (1 << size) - 1
    standing = {
        one.key: regions.without(
            one.region,
            regions.any(
                other.region
                for other in closing
                if other is not one
                and not everything & ~one.mask & ~other.mask
                and winner(other.key, one.key) == other.key
            ),
        )
        for one in closing
    }
    silencing: dict[str, list[_Effect]] = {one.key: [] for one in (*closing, *supporting)}
    for one in closing:
        for other in supporting:
            won = winner(one.key, other.key) if one.mask & other.mask else None
            if won is not None:
                loser, by = (other, one) if won == one.key else (one, other)
                silencing[loser.key].append(by)
    found = []
    freed: list[tuple[int, int]] = []  # what need not be so, with where
    for i in range(size):
        closed_by, supported_by = [], []
        for one in closing:
            if one.mask >> i & 1:
                over = regions.any(o.region for o in silencing[one.key] if o.mask >> i & 1)
                closed_by.append((one.rule, regions.without(standing[one.key], over)))
        for one in supporting:
            if one.mask >> i & 1:
                over = regions.any(o.region for o in silencing[one.key] if o.mask >> i & 1)
                supported_by.append((one.rule, regions.without(one.region, over)))
                if one.frees:
                    freed.append((everything & ~one.mask, supported_by[-1][1]))
        found.append(_prospect(closed_by, supported_by, regions))
    return _swept(found, residual, freed, regions) if residual else tuple(found)


def _prospect(
    closed_by: Sequence[tuple[str, int]], supported_by: Sequence[tuple[str, int]], regions: Regions
) -> Prospect:
    return Prospect(
        closed=regions.any(region for _, region in closed_by),
        supported=regions.any(region for _, region in supported_by),
        closed_by=_alive(closed_by, regions),
        supported_by=_alive(supported_by, regions),
    )


def _alive(effects: Sequence[tuple[str, int]], regions: Regions) -> tuple[tuple[str, int], ...]:
    """Where each rule is alive through any of its effects."""
    found: dict[str, int] = {}
    for rule, region in effects:
        if region != FALSE:
            found[rule] = regions.either(found.get(rule, FALSE), region)
    return tuple(found.items())


def _swept(
    found: Sequence[Prospect],
    residual: Sequence[_Effect],
    freed: Sequence[tuple[int, int]],
    regions: Regions,
) -> tuple[Prospect, ...]:
    """Residual rules close what nothing addresses, as long as some value outside them stays open."""
    left = [regions.opposite(regions.without(one.closed, one.supported)) for one in found]
    swept: list[list[tuple[str, int]]] = [[] for _ in found]
    for rule in residual:
        outside = regions.any(region for j, region in enumerate(left) if not rule.mask >> j & 1)
        where = regions.both(rule.region, outside)
        for i, one in enumerate(found):
            if rule.mask >> i & 1:
                free = (region for mask, region in freed if mask >> i & 1)
                addressed = regions.any([one.closed, one.supported, *free])
                swept[i].append((rule.rule, regions.without(where, addressed)))
    return tuple(
        Prospect(
            closed=regions.any([one.closed, *(region for _, region in more)]),
            supported=one.supported,
            closed_by=_alive([*one.closed_by, *more], regions),
            supported_by=one.supported_by,
        )
        for one, more in zip(found, swept, strict=True)
    )


def act_regions(done: Prospect, not_done: Prospect, regions: Regions) -> dict[Verdict, int]:
    """Where an act has which verdict: the table of the design, the first line that fits."""
    contested = [regions.both(one.closed, one.supported) for one in (done, not_done)]
    lines: tuple[tuple[Verdict, int], ...] = (
        ("conflict", regions.any([*contested, regions.both(done.closed, not_done.closed)])),
        ("required", not_done.closed),
        ("prohibited", done.closed),
        ("permitted", done.supported),
        ("not_required", not_done.supported),
        ("silent", TRUE),
    )
    return first_that_fits(lines, regions)


def value_regions(found: Sequence[Prospect], regions: Regions) -> dict[Verdict, int]:
    """Where an aspect with values has which verdict."""
    contested = [regions.both(one.closed, one.supported) for one in found]
    all_closed = regions.all(regions.without(one.closed, one.supported) for one in found)
    lines: tuple[tuple[Verdict, int], ...] = (
        ("conflict", regions.any([*contested, all_closed])),
        ("required", regions.any(one.closed for one in found)),
        ("permitted", regions.any(one.supported for one in found)),
        ("silent", TRUE),
    )
    return first_that_fits(lines, regions)


def first_that_fits(lines: Sequence[tuple[Verdict, int]], regions: Regions) -> dict[Verdict, int]:
    """Where each line is the first that fits."""
    left = TRUE
    found: dict[Verdict, int] = {}
    for verdict, region in lines:
        found[verdict] = regions.both(left, region)
        left = regions.without(left, region)
    return found
