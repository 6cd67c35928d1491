"""One question, everywhere: which values are left open in one fully decided case.

This is section 2 of the design, line by line, over bit masks: bit i stands for the i-th class of
values that no norm tells apart.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise

import msgspec

from kb.model.questions import ValueStatus, Verdict
from kb.model.values import Choices, Interval, Ranges, ValueSet, complement, is_empty, is_subset, ranges
from kb.reasoner.norms import Norm, rule_of

Beats = Callable[[str, str], bool]

WORN_CLASSES: tuple[ValueSet, ...] = (Choices(frozenset({"yes"})), Choices(frozenset({"no"})))


class Fate(msgspec.Struct, frozen=True):
    """What became of one class of values, and the rules alive at it."""

    status: ValueStatus
    closed_by: tuple[str, ...]
    supported_by: tuple[str, ...]


class Decision(msgspec.Struct, frozen=True):
    """Fates in the order of the value classes, and the verdict."""

    verdict: Verdict
    fates: tuple[Fate, ...]

    @property
    def rules(self) -> tuple[str, ...]:
        """The rules that decide, in order, without repetition."""
        named = (rule for fate in self.fates for rule in (*fate.closed_by, *fate.supported_by))
        return tuple(dict.fromkeys(named))


def _segments(sets: Sequence[ValueSet], domain: Ranges, whole: bool) -> tuple[ValueSet, ...]:
    """Elementary points and open intervals between all bounds; only those with an integer if `whole`."""
    bounds = sorted(
        {
            bound
            for values in (*sets, domain)
            if isinstance(values, Ranges)
            for interval in values.intervals
            for bound in (interval.low, interval.high)
            if bound is not None
        }
    )
    edges: list[Fraction | None] = [None, *bounds, None]
    pieces: list[Interval] = []
    for low, high in pairwise(edges):
        if low is not None:
            pieces.append(Interval(low, low))
        pieces.append(Interval(low, high, low is not None, high is not None))
    kept = (ranges([piece]) for piece in pieces if not whole or _has_integer(piece))
    return tuple(piece for piece in kept if not is_empty(piece) and is_subset(piece, domain))


def _has_integer(piece: Interval) -> bool:
    if piece.low is None or piece.high is None:
        return True
    first = piece.low.__ceil__() + (1 if piece.low_open and piece.low.denominator == 1 else 0)
    return piece.contains(Fraction(first))


def sample_of(piece: ValueSet) -> Fraction:
    """A number of a class of numbers, or next to it within its bounds where only whole ones count."""
    assert isinstance(piece, Ranges), "a class of numbers"
    (only,) = piece.intervals
    if only.low is None:
        return Fraction(0) if only.high is None else only.high - 1
    return only.low + 1 if only.high is None else (only.low + only.high) / 2


def value_classes(sets: Sequence[ValueSet], domain: ValueSet, whole: bool = False) -> tuple[ValueSet, ...]:
    """The domain cut into the coarsest classes that none of the sets divides."""
    if isinstance(domain, Ranges):
        return _segments(sets, domain, whole)
    named = sorted({member for values in sets if isinstance(values, Choices) for member in values.members})
    if not domain.complement:
        named = [member for member in named if member in domain.members]
        rest = Choices(domain.members - set(named))
    else:
        rest = complement(Choices(frozenset(named)))  # type: ignore[assignment]
    classes = tuple(Choices(frozenset({member})) for member in named)
    return classes if is_empty(rest) else (*classes, rest)


def mask_of(values: ValueSet, classes: Sequence[ValueSet]) -> int:
    """Bit i is set when the i-th class lies in `values`."""
    return sum(1 << i for i, piece in enumerate(classes) if is_subset(piece, values))


def _close_residual(
    statuses: list[ValueStatus], residual: Sequence[tuple[str, int]], freed: int
) -> dict[int, list[str]]:
    """What is not addressed is closed by a residual rule, as long as some value outside it stays open.

    `freed` is the mask of what a rule says need not be so.
    """
    size = len(statuses)
    open_mask = sum(1 << i for i in range(size) if statuses[i] != "closed")
    closed: dict[int, list[str]] = {}
    for rule, mask in residual:
        if open_mask & ~mask:
            for i in range(size):
                if mask >> i & 1 and statuses[i] == "unaddressed" and not freed >> i & 1:
                    closed.setdefault(i, []).append(rule)
    return closed


def fates(norms: Sequence[tuple[Norm, int]], size: int, beats: Beats) -> tuple[Fate, ...]:
    """Fates of `size` value classes under the applying norms, each with the mask of its values."""
    everything = (1 << size) - 1
    closing = [(n.key, mask) for n, mask in norms if n.closes and not n.residual]
    supporting = [(n.key, mask) for n, mask in norms if not n.closes]
    residual = [(n.rule, mask) for n, mask in norms if n.closes and n.residual]
    freeing = {n.key: everything & ~mask for n, mask in norms if n.frees}
    freed = 0
    standing = [
        (rule, mask)
        for rule, mask in closing
        if not any(
            (everything & ~mask & ~other) == 0 and beats(winner, rule)
            for winner, other in closing
            if winner != rule
        )
    ]
    closed_by: list[list[str]] = []
    supported_by: list[list[str]] = []
    statuses: list[ValueStatus] = []
    for i in range(size):
        supporters = [rule for rule, mask in supporting if mask >> i & 1]
        closers = [rule for rule, mask in closing if mask >> i & 1]
        alive = [r for r, mask in standing if mask >> i & 1 and not any(beats(s, r) for s in supporters)]
        held = [s for s in supporters if not any(beats(r, s) for r in closers)]
        closed_by.append(alive)
        supported_by.append(held)
        for one in held:
            freed |= freeing.get(one, 0)
        statuses.append(status_of(bool(alive), bool(held)))
    for i, rules in _close_residual(statuses, residual, freed).items():
        statuses[i] = "closed"
        closed_by[i] = rules
    return tuple(
        Fate(status, _rules(closers), _rules(supporters))
        for status, closers, supporters in zip(statuses, closed_by, supported_by, strict=True)
    )


def _rules(keys: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(rule_of(key) for key in keys))


def status_of(closed: bool, supported: bool) -> ValueStatus:
    if closed:
        return "contested" if supported else "closed"
    return "supported" if supported else "unaddressed"


def act_verdict(done: ValueStatus, not_done: ValueStatus) -> Verdict:
    """The verdict table of the design for an act; the first line that fits."""
    if "contested" in (done, not_done) or (done == "closed" and not_done == "closed"):
        return "conflict"
    if not_done == "closed":
        return "required"
    if done == "closed":
        return "prohibited"
    if done == "supported":
        return "permitted"
    return "not_required" if not_done == "supported" else "silent"


def value_verdict(statuses: Sequence[ValueStatus]) -> Verdict:
    """The verdict for an aspect with more than two values: is anything left, and is anything said."""
    if "contested" in statuses or all(status == "closed" for status in statuses):
        return "conflict"
    if "closed" in statuses:
        return "required"
    return "permitted" if "supported" in statuses else "silent"


def claim_verdict(statuses: Sequence[ValueStatus]) -> Verdict:
    """The verdict on a claimed value, given the fates of the classes that it touches."""
    if "contested" in statuses:
        return "conflict"
    if "closed" in statuses:
        return "prohibited"
    return "permitted" if all(status == "supported" for status in statuses) else "silent"
