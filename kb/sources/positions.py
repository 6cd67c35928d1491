"""Measures with their datum, and positions."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence as Many

import msgspec

from kb.measures import MeasureError, base_unit, parse_difference, parse_measure
from kb.model.records import Datum, Measure, Position
from kb.sources import builtin
from kb.sources.fields import Fields, kind_of
from kb.sources.report import Report, quoted
from kb.sources.things import check_item
from kb.sources.tree import Mapping, Node, Scalar, Sequence
from kb.sources.vocabulary import Vocabulary

_MEASURE_KEYS = ("measure", "tolerance", "from", "to", "posture")
_POSITION_KEYS = ("relation", "feature", "on", "side", "offset", "orientation", "slot", "text")


def read_measure(node: Node, report: Report, counted: bool = False) -> Measure | None:
    """A measure as a text, or as a mapping with its datum; `counted` wants a number without a unit."""
    if isinstance(node, Scalar):
        return _measure(node, report, counted)
    if not isinstance(node, Mapping):
        message = f"The measure is {kind_of(node)}, but one measure is needed."
        report.error(node.at, "wrong-kind", message, "Write for example 1/4 to 1/2 in.")
        return None
    fields = Fields(node, _MEASURE_KEYS, "a measure", report)
    text = fields.required("measure", "measure: 1/4 to 1/2 in")
    measure = _measure(text, report, counted) if text else None
    if measure is None:
        return None
    datum = Datum(
        measured_from=fields.text("from"), measured_to=fields.text("to"), posture=fields.text("posture")
    )
    tolerance = fields.scalar("tolerance")
    return with_tolerance(
        msgspec.structs.replace(measure, datum=None if datum == Datum() else datum), tolerance, report
    )


def with_tolerance(measure: Measure, tolerance: Scalar | None, report: Report) -> Measure:
    """The measure with the tolerance that is written beside it, if one is."""
    if tolerance is None:
        return measure
    try:
        allowed, unit = parse_difference(tolerance.text)
    except MeasureError as error:
        report.error(tolerance.at, "bad-tolerance", error.problem, error.remedy)
        return measure
    if base_unit(unit) != base_unit(measure.unit):
        message = f"The tolerance {quoted(tolerance.text)} is in a unit of another kind than its measure."
        report.error(tolerance.at, "wrong-unit", message, "Give it in the unit of the measure.")
        return measure
    if not measure.about:
        message = "A tolerance is given, but the measure does not say about."
        report.error(
            tolerance.at, "tolerance-not-wanted", message, "Write about before the measure, or a range."
        )
        return measure
    return msgspec.structs.replace(measure, tolerance=allowed)


def _measure(text: Scalar, report: Report, counted: bool) -> Measure | None:
    try:
        measure = parse_measure(text.text)
    except MeasureError as error:
        report.error(text.at, "bad-measure", error.problem, error.remedy)
        return None
    if counted and measure.unit != "1":
        message = f"{quoted(text.text)} is a measure, but a number of things is needed."
        report.error(text.at, "count-with-unit", message, "Write the number alone, such as at most 2.")
        return None
    if not counted and measure.unit == "1":
        message = f"{quoted(text.text)} has no unit."
        report.error(
            text.at, "missing-unit", message, f"Write the unit, for example {text.text} in or {text.text} mm."
        )
        return None
    return measure


def read_positions(
    node: Node, items: Many[str], vocabulary: Vocabulary, report: Report
) -> tuple[Position, ...]:
    """One position, or a list of alternatives, for a rule about `items`."""
    nodes = node.nodes if isinstance(node, Sequence) else (node,)
    found = []
    for each in nodes:
        if not isinstance(each, Mapping):
            message = f"A position is {kind_of(each)}, but keys and values are needed."
            report.error(
                each.at, "wrong-kind", message, "Write it as {relation: above, feature: visor, on: cap}."
            )
        elif (position := _position(each, items, vocabulary, report)) is not None:
            found.append(position)
    return tuple({position.id: position for position in found}.values())


def _position(node: Mapping, items: Many[str], vocabulary: Vocabulary, report: Report) -> Position | None:
    fields = Fields(node, _POSITION_KEYS, "a position", report)
    if not fields.has("relation"):
        fields.missing("relation", "relation: above")
    relation = fields.one_of("relation", builtin.RELATIONS)
    feature = fields.scalar("feature")
    garment = fields.scalar("on")
    known = [check_item(name, vocabulary.items, report) for name in (feature, garment) if name is not None]
    offset_node = fields.node_of("offset")
    offset = read_measure(offset_node, report) if offset_node is not None else None
    side = fields.one_of("side", builtin.SIDES)
    on = garment.text if garment else _garment_of([*([feature.text] if feature else []), *items], vocabulary)
    if on is None:
        fields.missing("on", "on: cap, the garment it is placed on")
    if relation is None or on is None or not all(known):
        return None
    position = Position(
        id="",
        relation=relation,
        on=on,
        feature=feature.text if feature else None,
        side=side,
        offset=offset,
        orientation=fields.text("orientation"),
        slot=fields.text("slot"),
        text=fields.text("text"),
    )
    return msgspec.structs.replace(position, id=position_id(position))


def _garment_of(names: list[str], vocabulary: Vocabulary) -> str | None:
    """The garment that one of the items is part of."""
    parts = (vocabulary.items[name].part_of for name in names if name in vocabulary.items)
    return next((part for part in parts if part is not None), None)


def position_id(position: Position) -> str:
    """A short name made from what a position says, not from how it is written: "above-visor-1f2e3d4c"."""
    offset = position.offset
    parts = (
        position.relation,
        position.on,
        position.feature,
        position.side,
        None if offset is None else (offset.interval, offset.about, offset.tolerance, offset.datum),
        position.orientation,
        position.slot,
    )
    digest = hashlib.sha256(msgspec.json.encode(parts, enc_hook=str)).hexdigest()[:10]
    return f"{position.relation.replace(' ', '-')}-{position.feature or position.on}-{digest}"
