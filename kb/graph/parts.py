"""Triples of the parts of records: plain fields, value sets, quantities, measures, positions, conditions."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType
from typing import Any, TypeAlias

import kb.vocabulary as v
from kb.errors import Location
from kb.graph import fields as f
from kb.graph.names import Names
from kb.graph.terms import Literal
from kb.measures.units import UNITS, base_unit
from kb.model.conditions import AllOf, AnyOf, Condition, NotOf, Test
from kb.model.records import Measure, Position, RuleValue
from kb.model.values import Choices, Interval, ValueSet

Triple: TypeAlias = tuple[str, str, str | Literal]

# UCUM codes of the units that dress rules use, and their QUDT names.
_QUDT_UNITS = MappingProxyType(
    {
        "mm": "MilliM",
        "cm": "CentiM",
        "m": "M",
        "[in_i]": "IN",
        "[ft_i]": "FT",
        "[yd_i]": "YD",
        "d": "DAY",
        "h": "HR",
        "min": "MIN",
        "wk": "WK",
        "mo": "MO",
        "a": "YR",
        "g": "GM",
        "kg": "KiloGM",
        "m/s": "M-PER-SEC",
        "km/h": "KiloM-PER-HR",
        "[kn_i]": "KN",
        "[mi_i]/h": "MI-PER-HR",
        "[lb_av]": "LB",
        "Cel": "DEG_C",
        "[degF]": "DEG_F",
        "deg": "DEG",
        "%": "PERCENT",
        "1": "UNITLESS",
    }
)

_CONNECTIVES: Mapping[type, str] = MappingProxyType(
    {AllOf: v.CB_ALL_OF, AnyOf: v.CB_ANY_OF, NotOf: v.CB_NOT_OF}
)


def typed(subject: str, *classes: str) -> Iterator[Triple]:
    return ((subject, v.RDF_TYPE, name) for name in classes)


def located(subject: str, at: Location) -> Iterator[Triple]:
    yield subject, v.CB_FILE, Literal(at.file)
    yield subject, v.CB_LINE, f.integer(at.line)
    yield subject, v.CB_COLUMN, f.integer(at.column)


def ordered(subject: str, order: int) -> Triple:
    return subject, v.CB_ORDER, f.integer(order)


def several(subject: str, predicate: str, objects: Sequence[str | Literal]) -> Iterator[Triple]:
    """A property with several values; two or more also get entries that keep their order."""
    for value in objects:
        yield subject, predicate, value
    if len(objects) < 2:
        return
    folder = predicate.rpartition("#")[2].rpartition("/")[2]
    for number, value in enumerate(objects, start=1):
        entry = f"{subject}/{folder}/{number}"
        yield subject, v.CB_HAS_ENTRY, entry
        yield from typed(entry, v.CB_ENTRY)
        yield entry, v.CB_ON_PROPERTY, predicate
        yield ordered(entry, number)
        yield entry, v.RDF_VALUE, value


def plain(names: Names, subject: str, table: Iterable[f.Field], record: Any) -> Iterator[Triple]:
    """The plain fields of a record; a missing value (None) has no triple."""
    for field in table:
        value = getattr(record, field.attribute)
        if field.many:
            objects = [f.encode(names, field.kind, member) for member in value]
            yield from several(subject, field.predicate, objects)
        elif value is not None:
            encoded = f.encode(names, field.kind, value)
            for predicate in (field.predicate, *field.also):
                yield subject, predicate, encoded


def decimal_text(number: Fraction) -> str | None:
    """The number as a canonical `xsd:decimal`, None if it has no finite one."""
    rest, places = number.denominator, 0
    for prime in (2, 5):
        count = 0
        while rest % prime == 0:
            rest //= prime
            count += 1
        places = max(places, count)
    if rest != 1:
        return None
    digits = str(abs(number.numerator) * 10**places // number.denominator).rjust(places + 1, "0")
    sign = "-" if number < 0 else ""
    return f"{sign}{digits[:-places]}.{digits[-places:]}" if places else f"{sign}{digits}"


def unit_triples(subject: str, unit: str | None) -> Iterator[Triple]:
    if unit is not None and unit in _QUDT_UNITS:
        yield subject, v.QUDT_HAS_UNIT, v.UNIT + _QUDT_UNITS[unit]


def _kept_in(unit: str | None) -> str | None:
    """The unit that numbers are kept in, for a unit as the text writes it: mm for inches."""
    return base_unit(unit) if unit in UNITS else unit


def quantity(
    owner: str, predicate: str, node: str, number: Fraction, written: str | None
) -> Iterator[Triple]:
    """A number in the base unit of the unit it is written in, exact and as a decimal."""
    unit = _kept_in(written)
    yield owner, predicate, node
    yield from typed(node, v.QUDT_QUANTITY_VALUE)
    yield node, v.CB_EXACT, Literal(str(number))
    decimal = decimal_text(number)
    if decimal is not None:
        yield node, v.QUDT_NUMERIC_VALUE, Literal(decimal, v.XSD_DECIMAL)
    if unit is not None:
        yield node, v.CB_UCUM_CODE, Literal(unit)
        yield from unit_triples(node, unit)


def interval(names: Names, node: str, record: Interval, unit: str | None) -> Iterator[Triple]:
    yield from typed(node, v.CB_INTERVAL)
    yield from plain(names, node, f.INTERVAL, record)
    if record.low is not None:
        yield from quantity(node, v.CB_LOW, f"{node}/low", record.low, unit)
    if record.high is not None:
        yield from quantity(node, v.CB_HIGH, f"{node}/high", record.high, unit)


def value_set(
    names: Names, node: str, values: ValueSet, owner: tuple[str, str], unit: str | None
) -> Iterator[Triple]:
    """A value set on its node; `owner` is ("fact" or "aspect", id), whose values they are."""
    if isinstance(values, Choices):
        yield from typed(node, v.CB_CHOICES)
        yield node, v.CB_COMPLEMENT, f.flag(values.complement)
        for member in sorted(values.members):
            yield node, v.CB_HAS_VALUE, names.value(*owner, member)
        return
    yield from typed(node, v.CB_RANGES)
    for number, part in enumerate(values.intervals, start=1):
        below = f"{node}/interval/{number}"
        yield node, v.CB_HAS_INTERVAL, below
        yield ordered(below, number)
        yield from interval(names, below, part, unit)


def measure(names: Names, owner: str, predicate: str, node: str, record: Measure) -> Iterator[Triple]:
    yield owner, predicate, node
    yield from typed(node, v.CB_MEASURE)
    yield from plain(names, node, f.MEASURE, record)
    yield from unit_triples(node, record.unit)
    yield node, v.CB_HAS_INTERVAL, f"{node}/interval"
    yield from interval(names, f"{node}/interval", record.interval, record.unit)
    if record.tolerance is not None:
        yield from quantity(node, v.CB_HAS_TOLERANCE, f"{node}/tolerance", record.tolerance, record.unit)
    if record.datum is not None:
        yield node, v.CB_HAS_DATUM, f"{node}/datum"
        yield from typed(f"{node}/datum", v.CB_DATUM)
        yield from plain(names, f"{node}/datum", f.DATUM, record.datum)
    if record.also is not None:
        yield from measure(names, node, v.CB_ALSO, f"{node}/also", record.also)


def position(names: Names, node: str, record: Position, aspect: str) -> Iterator[Triple]:
    yield from typed(node, v.CB_POSITION)
    yield node, v.CB_PLACE, names.value("aspect", aspect, record.id)
    yield from plain(names, node, f.POSITION, record)
    if record.offset is not None:
        yield from measure(names, node, v.CB_OFFSET, f"{node}/offset", record.offset)


def rule_value(names: Names, node: str, record: RuleValue, aspect: str) -> Iterator[Triple]:
    yield from typed(node, v.CB_RULE_VALUE)
    unit = record.measure.unit if record.measure else None
    yield from value_set(names, node, record.values, ("aspect", aspect), unit)
    yield from plain(names, node, f.RULE_VALUE, record)
    if record.measure is not None:
        yield from measure(names, node, v.CB_HAS_MEASURE, f"{node}/measure", record.measure)
    for number, place in enumerate(record.positions, start=1):
        below = f"{node}/position/{number}"
        yield node, v.CB_HAS_POSITION, below
        yield ordered(below, number)
        yield from position(names, below, place, aspect)


def condition(names: Names, node: str, part: Condition, units: dict[str, str | None]) -> Iterator[Triple]:
    """A condition on its node, its operands at `node/1`, `node/2`...; `units` by fact."""
    if isinstance(part, Test):
        yield from typed(node, v.CB_TEST)
        yield node, v.CB_TESTS_FACT, names.of("fact", part.fact)
        yield from value_set(names, node, part.values, ("fact", part.fact), units.get(part.fact))
        return
    operands = (part.part,) if isinstance(part, NotOf) else part.parts
    yield from typed(node, _CONNECTIVES[type(part)])
    for number, operand in enumerate(operands, start=1):
        below = f"{node}/{number}"
        yield node, v.CB_OPERAND, below
        yield ordered(below, number)
        yield from condition(names, below, operand, units)
