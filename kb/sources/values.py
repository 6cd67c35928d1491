"""What a rule says about an aspect: measures, counts, choices, manners, positions, orders."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence as Many

import msgspec

from kb.model.records import Aspect, Measure, Position, RuleValue
from kb.model.values import YES, Interval, Ranges, choices, ranges
from kb.sources.drafts import Context
from kb.sources.fields import as_texts
from kb.sources.positions import read_measure, read_positions, with_tolerance
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.things import check_item
from kb.sources.tree import Node, Scalar
from kb.text import slug


class AspectValue(msgspec.Struct, frozen=True):
    """An aspect and the values of it that a rule speaks about."""

    aspect: str
    value: RuleValue


ACT = RuleValue(values=YES)


def measured(measure: Measure) -> Ranges:
    """The values that a measure covers, wider by its tolerance on both sides where it has one."""
    interval = measure.interval
    if not measure.about or measure.tolerance is None:
        return ranges([interval])
    low = None if interval.low is None else interval.low - measure.tolerance
    high = None if interval.high is None else interval.high + measure.tolerance
    return ranges([Interval(low, high, interval.low_open, interval.high_open)])


def read_aspect_values(
    aspect: Aspect, node: Node, items: Many[str], tolerance: Scalar | None, context: Context
) -> list[AspectValue]:
    """The values of one aspect in a rule about `items`; a manner becomes one act for each text."""
    report = context.report
    if aspect.kind in ("measure", "count"):
        measure = read_measure(node, report, counted=aspect.kind == "count")
        if measure is None:
            return []
        if measure.about and measure.tolerance is None:
            measure = with_tolerance(measure, tolerance, report)
        return [AspectValue(aspect.id, RuleValue(values=measured(measure), measure=measure))]
    if aspect.kind == "position":
        read = read_positions(node, items, context.vocabulary, report)
        positions = tuple(_within_tolerance(position, tolerance, report) for position in read)
        value = RuleValue(values=choices(*(p.id for p in positions)), positions=positions)
        return [AspectValue(aspect.id, value)] if positions else []
    texts = as_texts(node, quoted(aspect.id), report)
    if aspect.kind == "manner":
        return [AspectValue(_manner(aspect, text, context), ACT) for text in texts]
    if aspect.kind == "order":
        return _order(aspect, texts, context)
    return _choice(aspect, texts, context)


def _within_tolerance(position: Position, tolerance: Scalar | None, report: Report) -> Position:
    """The position with the tolerance of its rule at an offset that says about and has none of its own."""
    offset = position.offset
    if offset is None or not offset.about or offset.tolerance is not None:
        return position
    return msgspec.structs.replace(position, offset=with_tolerance(offset, tolerance, report))


def _choice(aspect: Aspect, texts: tuple[Scalar, ...], context: Context) -> list[AspectValue]:
    names: dict[str, str] = {}
    for value in aspect.values:
        names |= {label.casefold(): value.id for label in (value.label, *value.other_labels)}
    names |= {value.id.casefold(): value.id for value in aspect.values}
    found = []
    for text in texts:
        if text.text.casefold() in names:
            found.append(names[text.text.casefold()])
            continue
        known = [value.id for value in aspect.values]
        declare = f"Declare it under aspects: {{id: {aspect.id}, values: [...]}}."
        remedy = suggestion(text.text, known, f"Write {listed(known)}, or declare it." if known else declare)
        message = f"{quoted(text.text)} is no value of the aspect {quoted(aspect.id)}."
        context.report.error(text.at, "unknown-value", message, remedy)
    return [AspectValue(aspect.id, RuleValue(values=choices(*found)))] if found else []


def _manner(aspect: Aspect, text: Scalar, context: Context) -> str:
    """The id of the act that a text under a manner stands for."""
    label = " ".join(text.text.split())
    name = slug(label)[:60].strip("-") or hashlib.sha256(label.encode()).hexdigest()[:10]
    identifier = f"{aspect.id}:{name}"
    known = context.acts.get(identifier)
    if known is not None and known.label.casefold() != label.casefold():
        identifier = f"{identifier}-{hashlib.sha256(label.casefold().encode()).hexdigest()[:6]}"
    context.acts.setdefault(
        identifier, Aspect(id=identifier, label=label, at=text.at, kind="act", within=aspect.id)
    )
    return identifier


def _order(aspect: Aspect, texts: tuple[Scalar, ...], context: Context) -> list[AspectValue]:
    known = [check_item(text, context.vocabulary.items, context.report) for text in texts]
    if len(texts) < 2 and texts:
        message = "An order of precedence needs at least two items."
        context.report.error(texts[0].at, "order-too-short", message, "List them, the senior first.")
        return []
    if not texts or not all(known):
        return []
    order = tuple(text.text for text in texts)
    return [AspectValue(aspect.id, RuleValue(values=choices("--".join(order)), order=order))]
