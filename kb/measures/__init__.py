"""Exact measures and dates, read from text and written back.

Intervals are exact fractions in the base unit of their dimension: mm for lengths (the inch is
exactly 25.4 mm), °C, days, months for ages, 1 for counts. `Measure.unit` is the
UCUM code of the unit as written.
"""

from kb.measures.dates import (
    DateFound,
    day_number,
    day_values,
    find_date,
    format_days,
    parse_date,
    parse_dates,
)
from kb.measures.formatting import format_interval, format_measure, format_quantity
from kb.measures.numbers import format_decimal, format_number
from kb.measures.parsing import (
    MeasureError,
    MeasureFound,
    find_measure,
    is_kind_of,
    parse_difference,
    parse_measure,
    parse_measure_at,
)
from kb.measures.units import (
    UNIT_BY_NAME,
    UNITS,
    Unit,
    base_unit,
    difference_to_base,
    from_base,
    same_dimension,
    to_base,
)

__all__ = [
    "UNITS",
    "UNIT_BY_NAME",
    "DateFound",
    "MeasureError",
    "MeasureFound",
    "Unit",
    "base_unit",
    "day_number",
    "day_values",
    "difference_to_base",
    "find_date",
    "find_measure",
    "format_days",
    "format_decimal",
    "format_interval",
    "format_measure",
    "format_number",
    "format_quantity",
    "from_base",
    "is_kind_of",
    "parse_date",
    "parse_dates",
    "parse_difference",
    "parse_measure",
    "parse_measure_at",
    "same_dimension",
    "to_base",
]
