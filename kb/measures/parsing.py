"""Measures read from text: one that is the whole text, one that begins somewhere, or the first one in it."""

from __future__ import annotations

import re
from fractions import Fraction

import msgspec

from kb.errors import ClothboundError
from kb.measures.numbers import NumberFound, match_number
from kb.measures.units import (
    UNIT_BY_NAME,
    Unit,
    base_unit,
    difference_to_base,
    from_base,
    same_dimension,
    to_base,
)
from kb.model.records import Measure
from kb.model.values import Interval
from kb.text import Pattern


class MeasureError(ClothboundError):
    """A text is no measure. `problem` says what is wrong, `remedy` what to write instead."""

    exit_code = 3

    def __init__(self, problem: str, remedy: str) -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem} {remedy}")


class MeasureFound(msgspec.Struct, frozen=True):
    """A measure in a longer text: characters `start` to `end`."""

    start: int
    end: int
    measure: Measure


class _Amount(msgspec.Struct, frozen=True):
    number: Fraction
    unit: Unit | None
    end: int
    spelled: bool


_EXAMPLE = "Write a number and a unit, for example 1 1/4 in, 30 mm, at most 2 cm."
_ABOUT = Pattern(
    r"(?:about|approximately|approx\.?|around|roughly|circa|ca\.|maybe|perhaps|probably)\s+|[~≈]\s*"
)
_COMPARE = {
    "at_most": r"at (?:the )?most|up to|no more than|not more than|not exceeding|no longer than|no wider than"
    r"|no higher than|maximum(?: of)?|max\.?|≤|<=",
    "at_least": r"at (?:the )?least|no less than|not less than|no fewer than|minimum(?: of)?|min\.?|≥|>=",
    "under": r"less than|fewer than|under|below|shorter than|narrower than|<",
    "over": r"more than|greater than|over|above|longer than|wider than|>",
}
_COMPARATOR = Pattern("|".join(rf"(?P<{name}>(?:{words})(?![a-z]))" for name, words in _COMPARE.items()))
_AFTERWARDS = Pattern(
    r",?\s+(?:or (?P<at_most>less|fewer|below|under)|or (?P<at_least>more|above|over))(?!\w)"
)
_RANGE_OPEN = Pattern(r"(?:from|between)\s+")
_RANGE_LINK = Pattern(r"\s*(?:to|and|or|[-–—])(?=[\s\d½⅓⅔¼¾⅛⅜⅝⅞.\-−])\s*|\s*[-–—]\s*")
_HYPHEN_UNIT = Pattern(r"\s*-?\s*(?:of\s+)?(?:(?:an?|one)\s+)?")
_ORDINAL = Pattern(r"(?:an?[\s-]+)?(?:third|fourth|fifth|eighth|tenth|sixteenth)s?")
_ARTICLE = Pattern(r"an?\s+")
_AND_PART = Pattern(r"\s+and\s+an?\s+(?P<part>half|quarter)(?!\w)")
_SIGN = Pattern(r"[-−]\s?|minus\s+")
_UNIT = Pattern(
    "|".join(
        re.escape(name).replace(r"\ ", r"\s+") + (r"(?!\w)" if name[-1].isalpha() else "")
        for name in sorted(UNIT_BY_NAME, key=len, reverse=True)
    )
)
_BEGIN = Pattern(
    r"(?<![\w/.,:])(?:(?:[-−](?=[\d.])|minus\s)?[\d.½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|[~≈≤≥<>]|(?<![-])\b(?:an?|half|one|two|three|four"
    r"|five|six|seven|eight|nine|ten|eleven|twelve|quarter|about|approx|around|roughly|circa|ca|maybe|perhaps|probably|at|up|no|not"
    r"|max|min|less|fewer|greater|under|below|shorter|narrower|more|over|above|longer|wider|from|between)\w*)"
)
_DATE_LIKE = Pattern(r"\d{4}-\d{2}-\d{2}|\d{1,2}:\d{2}")


def _fold(text: str) -> str:
    """Lower case with every character in its place."""
    return text.lower() if text.isascii() else "".join(c.lower() if len(c.lower()) == 1 else c for c in text)


def _match_unit(text: str, end: int, spelled_number: bool, loose: bool) -> tuple[Unit, int] | None:
    """The unit after a number; after a number in words a loose text needs the unit in words too."""
    gap = _HYPHEN_UNIT.match(text, end)
    after = gap.end() if gap else end
    match = _UNIT.match(text, after)
    if match is None:
        return None
    name = re.sub(r"\s+", " ", match[0])
    if loose and spelled_number and (len(name.rstrip(".")) < 4 and name not in ("inch", "day")):
        return None
    return UNIT_BY_NAME[name], match.end()


def _check_number(found: NumberFound, written: str) -> Fraction:
    if found.value is None:
        raise MeasureError(
            f'"{written}" is no number.', "Write a whole number and a proper fraction, such as 1 1/4."
        )
    return found.value


def _article_amount(text: str, start: int) -> _Amount | None:
    """An amount of one: "an inch", "a foot"."""
    article = _ARTICLE.match(text, start)
    unit = _match_unit(text, article.end(), True, loose=True) if article else None
    return _Amount(Fraction(1), unit[0], unit[1], True) if unit else None


def _amount(text: str, start: int, loose: bool) -> _Amount | None:
    sign = _SIGN.match(text, start)
    begin = sign.end() if sign else start
    found = match_number(text, begin)
    if found is None:
        amount = None if sign else _article_amount(text, start)
        return _and_part(text, amount) if amount else None
    number = _check_number(found, text[begin : found.end])
    number = -number if sign else number
    unit = _match_unit(text, found.end, found.spelled, loose)
    if unit is None:
        return _Amount(number, None, found.end, found.spelled)
    if (
        unit[0].dimension in ("time", "age")
        and _ORDINAL.fullmatch(text[begin : found.end])
        and " of" not in text[found.end : unit[1]]
    ):
        return None  # "a third year" is the one after the second, "a third of a year" is four months
    amount = _and_part(text, _Amount(number, unit[0], unit[1], found.spelled))
    return _feet_and_inches(text, amount, loose)


def _and_part(text: str, amount: _Amount) -> _Amount:
    """An inch "and a half" added."""
    part = _AND_PART.match(text, amount.end)
    if part is None:
        return amount
    more = Fraction(1, 2) if part["part"] == "half" else Fraction(1, 4)
    return msgspec.structs.replace(amount, number=amount.number + more, end=part.end())


def _feet_and_inches(text: str, feet: _Amount, loose: bool) -> _Amount:
    """6 ft 2 in as inches; anything else unchanged."""
    if feet.unit is None or feet.unit.code != "[ft_i]":
        return feet
    gap = re.compile(r"\s*(?:and\s+)?").match(text, feet.end)
    found = match_number(text, gap.end() if gap else feet.end)
    unit = _match_unit(text, found.end, found.spelled, loose) if found and found.value is not None else None
    if found is None or found.value is None or unit is None or unit[0].code != "[in_i]":
        return feet
    return _Amount(feet.number * 12 + found.value, unit[0], unit[1], feet.spelled)


def _bounds(low: _Amount, high: _Amount) -> tuple[Interval, Unit | None]:
    low_unit, high_unit = low.unit or high.unit, high.unit or low.unit
    if low_unit is None or high_unit is None:
        return Interval(low.number, high.number), None
    if low_unit.dimension != high_unit.dimension:
        raise MeasureError("The two ends of the range are measured in different kinds of unit.", _EXAMPLE)
    return Interval(to_base(low.number, low_unit.code), to_base(high.number, high_unit.code)), high_unit


def _compared(relation: str | None, amount: _Amount) -> Interval:
    value = to_base(amount.number, amount.unit.code) if amount.unit else amount.number
    if relation == "at_most":
        return Interval(None, value)
    if relation == "at_least":
        return Interval(value, None)
    if relation == "under":
        return Interval(None, value, high_open=True)
    if relation == "over":
        return Interval(value, None, low_open=True)
    return Interval(value, value)


def _range(text: str, start: int, low: _Amount, loose: bool) -> tuple[Interval, Unit | None, int] | None:
    link = _RANGE_LINK.match(text, low.end)
    if link is None or (link[0].strip() in ("and", "or") and not _RANGE_OPEN.match(text, start)):
        return None
    high = _amount(text, link.end(), loose)
    if high is None:
        return None
    interval, unit = _bounds(low, high)
    return interval, unit, high.end


def _single(text: str, start: int, loose: bool) -> tuple[Measure, int] | None:
    """One measure without its twin in brackets."""
    about = _ABOUT.match(text, start)
    begin = about.end() if about else start
    compare = _COMPARATOR.match(text, begin)
    relation = compare.lastgroup if compare else None
    opener = _RANGE_OPEN.match(text, begin) if not compare else None
    at = re.compile(r"\s*").match(text, compare.end() if compare else opener.end() if opener else begin)
    position = at.end() if at else begin
    if compare and (late := _ABOUT.match(text, position)):
        about, position = late, late.end()
    amount = _amount(text, position, loose)
    if amount is None:
        return None
    interval, unit, end = _compared(relation, amount), amount.unit, amount.end
    if relation is None and (found := _range(text, begin, amount, loose)):
        interval, unit, end = found
    elif opener:
        return None
    elif relation is None and (after := _AFTERWARDS.match(text, end)):
        interval, end = _compared(after.lastgroup, amount), after.end()
    _check_bounds(interval, unit)
    code = unit.code if unit else "1"
    return Measure(text=text[start:end], unit=code, interval=interval, about=bool(about)), end


def _check_bounds(interval: Interval, unit: Unit | None) -> None:
    if interval.low is not None and interval.high is not None and interval.low > interval.high:
        raise MeasureError(
            "The range runs backwards.", "Write the smaller measure first, for example 1/4 to 1/2 in."
        )
    signed = unit is not None and unit.dimension in ("temperature", "angle")
    if not signed and any(bound is not None and bound < 0 for bound in (interval.low, interval.high)):
        raise MeasureError("The measure is below zero.", "Write it without the minus sign.")


def _with_twin(text: str, found: tuple[Measure, int], loose: bool) -> tuple[Measure, int]:
    """Add the same measure in a second unit, where one follows in brackets."""
    measure, end = found
    bracket = re.compile(r"\s*\(\s*").match(text, end)
    twin = _single(text, bracket.end(), loose) if bracket else None
    close = re.compile(r"\s*\)").match(text, twin[1]) if twin else None
    if twin is None or close is None or twin[0].unit in ("1", measure.unit):
        return found
    if not same_dimension(twin[0].unit, measure.unit):
        return found
    return msgspec.structs.replace(measure, also=twin[0]), close.end()


def _original(measure: Measure, text: str, start: int, end: int) -> Measure:
    also = measure.also
    if also is not None:
        at = text.casefold().find(also.text, start)
        kept = text[at : at + len(also.text)] if at >= 0 else also.text
        also = msgspec.structs.replace(also, text=kept)
    return msgspec.structs.replace(measure, text=text[start:end], also=also)


def parse_measure_at(text: str, start: int, *, bare: bool = False) -> MeasureFound | None:
    """The measure that begins at `start` of a longer text; None if none does.

    A bare number is a measure only with `bare`; its unit is then "1" (a count).
    """
    folded = _fold(text)
    try:
        found = _single(folded, start, loose=True)
        if found is None or (found[0].unit == "1" and not bare):
            return None
        measure, end = _with_twin(folded, found, loose=True)
    except MeasureError:
        return None
    return MeasureFound(start, end, _original(measure, text, start, end))


def find_measure(text: str, start: int = 0, *, bare: bool = False) -> MeasureFound | None:
    """The first measure at or after `start` of a longer text; see `parse_measure_at`."""
    folded = _fold(text)
    dates = [match.span() for match in _DATE_LIKE.finditer(text)]
    for begin in _BEGIN.finditer(folded, start):
        if any(low <= begin.start() < high for low, high in dates):
            continue
        if found := parse_measure_at(text, begin.start(), bare=bare):
            return found
    return None


def parse_measure(text: str) -> Measure:
    """The measure that is the whole of `text`; a number without a unit is a count (unit "1").

    Raises `MeasureError` with a remedy. Bounds are exact numbers of the base unit (mm, °C, days, 1).
    """
    written = " ".join(text.split())
    folded = _fold(written)
    if not folded:
        raise MeasureError("The measure is empty.", _EXAMPLE)
    found = _single(folded, 0, loose=False)
    if found is None:
        raise MeasureError(f'"{written}" is no measure.', _EXAMPLE)
    measure, end = _with_twin(folded, found, loose=False)
    if end < len(folded):
        raise MeasureError(f'"{written[end:].strip()}" in "{written}" is not understood.', _EXAMPLE)
    return _original(measure, written, 0, end)


def parse_difference(text: str) -> tuple[Fraction, str]:
    """A tolerance ("1/8 in") as an exact difference in the base unit and its UCUM code."""
    measure = parse_measure(text)
    exact, unit = measure.interval.low, measure.unit
    number = None if exact is None or measure.about else from_base(exact, unit)
    if number is None or exact != measure.interval.high or number < 0:
        raise MeasureError(f'"{text}" is no plain amount.', "Write one amount, for example 1/8 in.")
    return difference_to_base(number, unit), unit


def is_kind_of(measure: Measure, unit: str) -> bool:
    """Whether the measure is of the same dimension as the UCUM unit."""
    return base_unit(measure.unit) == base_unit(unit)
