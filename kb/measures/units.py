"""Units by UCUM code, with exact factors to the base unit of their dimension.

Sources: UCUM 2.1 ([in_i] = 2.54 cm, [ft_i] = 12 [in_i], [yd_i] = 3 [ft_i], [kn_i] = 1852 m/h,
[mi_i] = 5280 [ft_i], [lb_av] = 453.59237 g);
the degree Fahrenheit is 5/9 K with 32 °F = 0 °C.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

import msgspec

Dimension = Literal["length", "temperature", "angle", "time", "age", "mass", "speed", "share", "count"]


class Unit(msgspec.Struct, frozen=True):
    """A unit: UCUM `code`, `factor` and `offset` to the base unit (base = value * factor + offset)."""

    code: str
    dimension: Dimension
    factor: Fraction
    symbol: str
    names: tuple[str, ...]
    offset: Fraction = Fraction(0)


def _unit(code: str, dimension: Dimension, factor: Fraction | int, symbol: str, *names: str) -> Unit:
    return Unit(code, dimension, Fraction(factor), symbol, (symbol, *names))


_INCH = Fraction(254, 10)

_ALL = (
    _unit("mm", "length", 1, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    _unit("cm", "length", 10, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    _unit("m", "length", 1000, "m", "metre", "metres", "meter", "meters"),
    _unit("[in_i]", "length", _INCH, "in", "in.", "inch", "inches", "ins", '"', "″", "”", "''"),
    _unit("[ft_i]", "length", 12 * _INCH, "ft", "ft.", "foot", "feet", "'", "′", "’"),
    _unit("[yd_i]", "length", 36 * _INCH, "yd", "yd.", "yard", "yards"),
    _unit(
        "Cel",
        "temperature",
        1,
        "°C",
        "° C",
        "℃",
        "degrees celsius",
        "degree celsius",
        "celsius",
        "degrees c",
        "degree c",
        "deg c",
        "centigrade",
        "degrees centigrade",
    ),
    Unit(
        "[degF]",
        "temperature",
        Fraction(5, 9),
        "°F",
        (
            "°F",
            "° F",
            "℉",
            "degrees fahrenheit",
            "degree fahrenheit",
            "fahrenheit",
            "degrees f",
            "degree f",
            "deg f",
        ),
        Fraction(-160, 9),
    ),
    _unit("deg", "angle", 1, "°", "degree", "degrees", "deg"),
    _unit("d", "time", 1, "d", "day", "days"),
    _unit("h", "time", Fraction(1, 24), "h", "hour", "hours"),
    _unit("min", "time", Fraction(1, 1440), "min", "minute", "minutes"),
    _unit("wk", "time", 7, "wk", "week", "weeks"),
    _unit("mo", "age", 1, "mo", "month", "months"),
    _unit("a", "age", 12, "yr", "year", "years"),
    _unit("g", "mass", 1, "g", "gram", "grams", "gramme", "grammes"),
    _unit("kg", "mass", 1000, "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"),
    _unit("[lb_av]", "mass", Fraction(45359237, 100000), "lb", "lbs", "pound", "pounds"),
    _unit("m/s", "speed", 1, "m/s"),
    _unit(
        "km/h",
        "speed",
        Fraction(5, 18),
        "km/h",
        "kph",
        "kmh",
        "km per hour",
        "kilometres per hour",
        "kilometers per hour",
    ),
    _unit("[kn_i]", "speed", Fraction(1852, 3600), "kn", "knot", "knots", "kt", "kts"),
    _unit("[mi_i]/h", "speed", Fraction(1609344, 3600000), "mph", "miles per hour", "mile per hour"),
    _unit("%", "share", 1, "%", "per cent", "percent"),
    _unit("1", "count", 1, ""),
)

UNITS: dict[str, Unit] = {unit.code: unit for unit in _ALL}
BASE: dict[Dimension, str] = {unit.dimension: unit.code for unit in reversed(_ALL) if unit.factor == 1}
UNIT_BY_NAME: dict[str, Unit] = {name.casefold(): unit for unit in _ALL for name in unit.names if name}


def base_unit(code: str) -> str:
    """UCUM code of the unit in which intervals of this unit's dimension are kept ("[in_i]" -> "mm")."""
    return BASE[UNITS[code].dimension]


def same_dimension(left: str, right: str) -> bool:
    return UNITS[left].dimension == UNITS[right].dimension


def to_base(number: Fraction | int, code: str) -> Fraction:
    """`number` of the unit, exactly, in the base unit (1 [in_i] -> 127/5 mm)."""
    unit = UNITS[code]
    return Fraction(number) * unit.factor + unit.offset


def from_base(number: Fraction | int, code: str) -> Fraction:
    """A number in the base unit, exactly, in the unit (31.75 mm -> 5/4 [in_i])."""
    unit = UNITS[code]
    return (Fraction(number) - unit.offset) / unit.factor


def difference_to_base(number: Fraction | int, code: str) -> Fraction:
    """A difference (a tolerance) of the unit in the base unit: without the zero offset of a scale."""
    return Fraction(number) * UNITS[code].factor
