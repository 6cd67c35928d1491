"""Finding how far "about" may be off."""

from __future__ import annotations

import datetime

import msgspec

from kb.measures import same_dimension
from kb.model.records import Clause, Edition, Measure, Position, Rule, RuleValue, Tolerance
from kb.model.values import Interval
from kb.sources.values import measured
from kb.sources.vocabulary import Vocabulary


class StatedTolerance(msgspec.Struct, frozen=True):
    """A tolerance, its clause and the authority behind it."""

    tolerance: Tolerance
    clause: Clause
    edition: Edition
    authority: str


def _overlap(rule: Rule, clause: Clause) -> bool:
    last = datetime.date.max
    return rule.valid_from < (clause.valid_until or last) and clause.valid_from < (rule.valid_until or last)


def _holds(applies: Interval, nominal: Interval) -> bool:
    bounds = [bound for bound in (nominal.low, nominal.high) if bound is not None]
    return bool(bounds) and all(applies.contains(bound) for bound in bounds)


def _width(applies: Interval) -> tuple[bool, float]:
    if applies.low is None and applies.high is not None:
        return (False, float(applies.high))
    if applies.low is None or applies.high is None:
        return (True, 0.0)
    return (False, float(applies.high - applies.low))


def _distance(stated: StatedTolerance, rule: Rule, edition: Edition, vocabulary: Vocabulary) -> int | None:
    """0 same edition, 1 same book, 2 same authority, more for a higher one; None if it has no say."""
    if stated.edition.id == edition.id:
        return 0
    if stated.edition.book == edition.book:
        return 1
    mine, theirs = vocabulary.authorities.get(rule.authority), vocabulary.authorities.get(stated.authority)
    if mine is None or theirs is None or (theirs.rank >= mine.rank and theirs.id != mine.id):
        return None
    return 2 + mine.rank - theirs.rank


def find_tolerance(
    measure: Measure,
    rule: Rule,
    edition: Edition,
    stated: tuple[StatedTolerance, ...],
    vocabulary: Vocabulary,
) -> Measure:
    """The measure with the tolerance the books give: own edition, own book, own authority, then higher ones.

    Among tolerances of one book the one for the narrowest span of measures is taken.
    """
    if not measure.about or measure.tolerance is not None:
        return measure
    fitting = [
        (distance, _width(s.tolerance.applies), number, s.tolerance.allow)
        for number, s in enumerate(stated)
        if same_dimension(s.tolerance.unit, measure.unit)
        and _holds(s.tolerance.applies, measure.interval)
        and _overlap(rule, s.clause)
        and (distance := _distance(s, rule, edition, vocabulary)) is not None
    ]
    return msgspec.structs.replace(measure, tolerance=min(fitting)[3]) if fitting else measure


def with_tolerances(
    rule: Rule, edition: Edition, stated: tuple[StatedTolerance, ...], vocabulary: Vocabulary
) -> Rule:
    """The rule with tolerances found for its measure and for the offsets of its positions."""
    value = rule.value

    def found(measure: Measure) -> Measure:
        return find_tolerance(measure, rule, edition, stated, vocabulary)

    def placed(position: Position) -> Position:
        if position.offset is None:
            return position
        return msgspec.structs.replace(position, offset=found(position.offset))

    if value.measure is not None:
        measure = found(value.measure)
        value = RuleValue(values=measured(measure), measure=measure)
    elif value.positions:
        value = msgspec.structs.replace(value, positions=tuple(placed(p) for p in value.positions))
    return rule if value == rule.value else msgspec.structs.replace(rule, value=value)
