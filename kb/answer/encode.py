"""The answer as JSON, format 1: the keys of the documented schema, in a fixed order."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

import msgspec

from kb.errors import Location
from kb.model.questions import (
    Answer,
    AnswerCase,
    Citation,
    Derivation,
    Difference,
    ListEntry,
    OpenValue,
    Reading,
    Side,
)
from kb.model.records import Measure
from kb.model.values import Choices, Interval, ValueSet

Json = Any

FORMAT = 1


def encode_values(values: ValueSet) -> Json:
    """A list of names (`{"not": [...]}` for all but those), or of intervals with exact bounds as text."""
    if isinstance(values, Choices):
        names = sorted(values.members)
        return {"not": names} if values.complement else names
    return [_interval(interval) for interval in values.intervals]


def _interval(interval: Interval) -> Json:
    found: dict[str, Json] = {}
    if interval.low is not None:
        found["above" if interval.low_open else "from"] = str(interval.low)
    if interval.high is not None:
        found["below" if interval.high_open else "to"] = str(interval.high)
    return found


def _facts(facts: Iterable[tuple[str, ValueSet]]) -> Json:
    return {fact: encode_values(values) for fact, values in facts}


def _at(at: Location) -> Json:
    return {"file": at.file, "line": at.line}


_LENGTHS = {
    "[in_i]": ("in", Fraction(254, 10)),
    "[ft_i]": ("ft", Fraction(3048, 10)),
    "mm": ("mm", Fraction(1)),
    "cm": ("cm", Fraction(10)),
    "m": ("m", Fraction(1000)),
}


def encode_measure(measure: Measure) -> Json:
    """The measure in its own unit: `value` or `from`/`to` as exact fractions, with tolerance and datum."""
    unit, factor = _LENGTHS.get(measure.unit, (measure.unit, Fraction(1)))
    low, high = measure.interval.low, measure.interval.high
    found: dict[str, Json] = {"text": measure.text, "unit": unit}
    if low is not None and low == high:
        found["value"] = str(low / factor)
    else:
        scaled = Interval(
            None if low is None else low / factor,
            None if high is None else high / factor,
            measure.interval.low_open,
            measure.interval.high_open,
        )
        found |= _interval(scaled)
    found["about"] = measure.about
    found["tolerance"] = None if measure.tolerance is None else str(measure.tolerance / factor)
    datum = measure.datum
    found["datum"] = datum and {
        "from": datum.measured_from,
        "to": datum.measured_to,
        "posture": datum.posture,
    }
    return found


def _open_value(value: OpenValue) -> Json:
    found: dict[str, Json] = {
        "item": value.item,
        "aspect": value.aspect,
        "label": value.label,
        "required": value.required,
        "values": encode_values(value.values),
        "rules": list(value.rules),
    }
    if value.measure is not None:
        found["measure"] = encode_measure(value.measure)
    if value.position is not None:
        p = value.position
        found["position"] = {
            "relation": p.relation,
            "feature": p.feature,
            "on": p.on,
            "side": p.side,
            "offset": p.offset and encode_measure(p.offset),
            "orientation": p.orientation,
            "slot": p.slot,
        }
    return found


def _case(case: AnswerCase) -> Json:
    return {
        "when": _facts(case.when),
        "text": case.label,
        "verdict": case.verdict,
        "values": [_open_value(value) for value in case.values],
        "rules": list(case.rules),
    }


def _entry(entry: ListEntry) -> Json:
    return {
        "item": entry.item,
        "label": entry.label,
        "verdict": entry.verdict,
        "usual": entry.usual,
        "condition": entry.condition,
        "rules": list(entry.rules),
    }


def _side(side: Side) -> Json:
    return {
        "item": side.item,
        "verdict": side.verdict,
        "text": side.text,
        "cases": [_case(case) for case in side.cases],
        "derivation": [_derivation(derivation) for derivation in side.derivation],
        "rules": list(side.rules),
    }


def _difference(difference: Difference) -> Json:
    return {
        "item": difference.item,
        "aspect": difference.aspect,
        "label": difference.label,
        "sides": [_side(side) for side in difference.sides],
    }


def _derivation(derivation: Derivation) -> Json:
    return {
        "item": derivation.item,
        "aspect": derivation.aspect,
        "when": _facts(derivation.when),
        "verdict": derivation.verdict,
        "rules": [
            {
                "rule": step.rule,
                "modality": step.modality,
                "statement": step.statement,
                "status": step.status,
                "alive": step.alive,
                "facts": _facts(step.facts),
                "reason": step.reason,
                "disabled_by": list(step.disabled_by),
                "clause": step.clause,
                "text": step.text,
                "authority": step.authority,
                "source": _at(step.at),
            }
            for step in derivation.steps
        ],
        "defeats": [msgspec.to_builtins(defeat) for defeat in derivation.defeats],
        "values": [
            {
                "values": encode_values(fate.values),
                "status": fate.status,
                "closed_by": list(fate.closed_by),
                "supported_by": list(fate.supported_by),
            }
            for fate in derivation.fates
        ],
    }


def _citation(citation: Citation) -> Json:
    return {
        "book": citation.book,
        "edition": citation.edition,
        "title": citation.title,
        "clause": citation.number,
        "text": citation.text,
        "rules": list(citation.rules),
        "source": _at(citation.at),
    }


def _reading(reading: Reading) -> Json:
    query = reading.query
    return {
        "kind": query and query.kind,
        "items": list(query.items) if query else [],
        "aspect": query and query.aspect,
        "facts": _facts(query.case.facts) if query else {},
        "alone": bool(query and query.case.alone),
        "polarity": query and query.polarity,
        "value": encode_values(query.value) if query and query.value is not None else None,
        "verdicts": list(query.modalities) if query else [],
        "clause": query and query.clause,
        "book": query and query.book,
        "as_such": bool(query and query.as_such),
        "carried": list(reading.carried),
        "unused": list(reading.unused),
        "beside": list(reading.beside),
        "text": reading.text,
        "other": query
        and query.other
        and {
            "as_of": query.other.as_of.isoformat(),
            "facts": _facts(query.other.facts),
            "alone": query.other.alone,
        },
        "spans": [{"text": s.text, "role": s.role, "target": s.target, "how": s.how} for s in reading.spans],
    }


def answer_object(answer: Answer) -> dict[str, Json]:
    """The answer as plain JSON values."""
    return {
        "format": FORMAT,
        "question": answer.question,
        "as_of": answer.as_of,
        "kb": answer.kb,
        "outcome": answer.outcome,
        "reading": _reading(answer.reading),
        "verdict": answer.verdict,
        "headline": answer.headline,
        "cases": [_case(case) for case in answer.cases],
        "values": [_open_value(value) for value in answer.values],
        "entries": [_entry(entry) for entry in answer.entries],
        "sides": list(answer.sides),
        "differences": [_difference(difference) for difference in answer.differences],
        "derivation": [_derivation(derivation) for derivation in answer.derivation],
        "changes": [
            {
                "facts": _facts(change.facts),
                "text": change.label,
                "verdict": change.verdict,
                "rules": list(change.rules),
            }
            for change in answer.changes
        ],
        "citations": [_citation(citation) for citation in answer.citations],
        "speaking": [_citation(citation) for citation in answer.speaking],
        "cautions": list(answer.cautions),
        "notes": list(answer.notes),
        "ask": answer.ask
        and {
            "fact": answer.ask.fact,
            "prompt": answer.ask.prompt,
            "choices": [{"value": value, "label": label} for value, label in answer.ask.choices],
            "others": answer.ask.others,
        },
        "abstain": answer.abstain
        and {
            "reason": answer.abstain.reason,
            "words": list(answer.abstain.words),
            "suggestions": list(answer.abstain.suggestions),
        },
    }


def answer_to_json(answer: Answer) -> bytes:
    """One JSON object, UTF-8, without a line break at the end."""
    return msgspec.json.encode(answer_object(answer))
