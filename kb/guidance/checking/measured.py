"""Claims made comparable with rules: one thing at a time, measures as the books write them."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.truth import Judge
from kb.guidance.checking.words import fold
from kb.measures import same_dimension
from kb.model.records import Measure, Rule
from kb.model.values import OTHER, Choices, others_in
from kb.reader.words.colours import may_be


def apart(claim: Claim) -> tuple[Claim, ...]:
    """A claim about several things as claims about each of them; one duty over a set stays one."""
    if len(claim.scope.items) < 2 or claim.scope.alternatives:
        return (claim,)
    scopes = [msgspec.structs.replace(claim.scope, items=(item,)) for item in claim.scope.items]
    return tuple(msgspec.structs.replace(claim, scope=scope) for scope in scopes)


def as_written(claim: Claim, judge: Judge, rules: Sequence[Rule]) -> Claim:
    """A claim with the value of a rule whose measure it gives: in another unit, or as "about" so much."""
    written = claim.measure
    if written is None:
        return claim
    for rule in rules:
        measure = rule.value.measure
        if measure is None or rule.modality != claim.modality or not judge.about_the_same(rule, claim):
            continue
        if _same(measure, written):
            return msgspec.structs.replace(claim, value=rule.value)
    return claim


def _same(measure: Measure, written: Measure) -> bool:
    """Whether two measures are one: the same "about", or the same in two units but for rounding."""
    from kb.measures.twins import agree  # noqa: PLC0415

    twin, also = written.also, measure.also
    if (
        twin is not None and also is not None and twin.unit == measure.unit
    ):  # "25 mm (1 in)" for "1 in (25 mm)"
        return twin.interval == measure.interval and (written.unit, written.interval) == (
            also.unit,
            also.interval,
        )
    if measure.unit == written.unit:
        return measure.about and written.about and measure.interval == written.interval
    if written.also is not None or not same_dimension(measure.unit, written.unit):
        return False
    return agree(msgspec.structs.replace(measure, also=written))


def other_vagueness(claim: Claim, rules: Sequence[Rule]) -> Rule | None:
    """A rule that is exact where the claim says "about", or the other way round; None if one agrees."""
    written = claim.measure
    given = [(rule, rule.value.measure) for rule in rules if rule.value.measure is not None]
    if written is None or not given or any(m is not None and m.about == written.about for _, m in given):
        return None
    return given[0][0]


def may_be_named(claim: Claim, judge: Judge, rules: Sequence[Rule]) -> bool:
    """Whether a colour that no book names may be, or be a shade of, one that the books give the thing."""
    shades = [other.removeprefix(OTHER).split("-") for other in others_in(claim.value.values)]
    about = [rule.value.values for rule in rules if shades and judge.about_the_same(rule, claim)]
    given = {member for values in about if isinstance(values, Choices) for member in values.members}
    named = [value for value in judge.lookup.aspects[claim.aspect].values if value.id in given]
    labels = [fold(label).split() for value in named for label in (value.label, *value.other_labels)]
    return any(may_be(tuple(words), tuple(label)) for words in shades for label in labels)
