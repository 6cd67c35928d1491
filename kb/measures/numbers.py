"""Exact numbers as people write them: 1 1/4, 1-1/4, 1¼, 2.5, .5, three quarters, one and a half."""

from __future__ import annotations

import re
from fractions import Fraction

import msgspec

from kb.text import Pattern

_GLYPHS = {
    "½": Fraction(1, 2), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3), "¼": Fraction(1, 4), "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5), "⅖": Fraction(2, 5), "⅗": Fraction(3, 5), "⅘": Fraction(4, 5), "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6), "⅐": Fraction(1, 7), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8), "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8), "⅑": Fraction(1, 9), "⅒": Fraction(1, 10),
}  # fmt: skip
CARDINALS = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip
"""Whole numbers in words, from nought."""
_CARDINALS = {word: number for number, word in enumerate(CARDINALS)}
_PARTS = {
    "half": 2,
    "third": 3,
    "quarter": 4,
    "fourth": 4,
    "fifth": 5,
    "eighth": 8,
    "tenth": 10,
    "sixteenth": 16,
}
_PARTS |= {"halves": 2} | {f"{word}s": part for word, part in _PARTS.items() if word != "half"}

_WORD = "|".join(sorted(_CARDINALS, key=len, reverse=True))
_PART = "|".join(sorted(_PARTS, key=len, reverse=True))
_FRACTION_WORDS = rf"(?:(?P<n>{_WORD}|an?)[\s-]+)?(?P<p>{_PART})(?![a-z])"

_DIGITS = Pattern(
    r"(?P<whole>\d{1,9})(?:\s+and\s+|-|\s+)(?P<mn>\d{1,6})\s*[/⁄]\s*(?P<md>\d{1,6})(?!\d|\s*[/⁄])"
    r"|(?P<fn>\d{1,6})\s*[/⁄]\s*(?P<fd>\d{1,6})(?!\d|\s*[/⁄])"
    rf"|(?P<gw>\d{{1,9}})?\s?(?P<glyph>[{''.join(_GLYPHS)}])"
    r"|(?P<decimal>\d{1,9}(?:\.\d{1,9})?|\.\d{1,9})(?!\d|\s*[/⁄]\s*\d)"
)
_MIXED_WORDS = Pattern(rf"(?P<whole>{_WORD}|\d{{1,9}})\s+and\s+{_FRACTION_WORDS}")
_FRACTION_WORD = Pattern(_FRACTION_WORDS)
_CARDINAL = Pattern(rf"(?P<word>{_WORD})(?![a-z])")


class NumberFound(msgspec.Struct, frozen=True):
    """A number and where it ends; `spelled` if in words; `value` None for 1/0 or a mixed 1 5/4."""

    value: Fraction | None
    end: int
    spelled: bool = False


def _ratio(numerator: str, denominator: str) -> Fraction | None:
    return None if int(denominator) == 0 else Fraction(int(numerator), int(denominator))


def _digits(match: re.Match[str]) -> Fraction | None:
    if match["whole"]:
        part = _ratio(match["mn"], match["md"])
        return None if part is None or part >= 1 else int(match["whole"]) + part
    if match["fn"]:
        return _ratio(match["fn"], match["fd"])
    if match["glyph"]:
        return int(match["gw"] or 0) + _GLYPHS[match["glyph"]]
    return Fraction(match["decimal"] if match["decimal"][0] != "." else f"0{match['decimal']}")


def _part_value(match: re.Match[str]) -> Fraction:
    return Fraction(_CARDINALS.get(match["n"] or "one", 1), _PARTS[match["p"]])


def match_number(text: str, start: int) -> NumberFound | None:
    """The number that begins at `start` of a case-folded text, if one does."""
    if match := _MIXED_WORDS.match(text, start):
        whole = _CARDINALS[match["whole"]] if match["whole"] in _CARDINALS else int(match["whole"])
        return NumberFound(whole + _part_value(match), match.end(), spelled=True)
    if match := _FRACTION_WORD.match(text, start):
        return NumberFound(_part_value(match), match.end(), spelled=True)
    if match := _CARDINAL.match(text, start):
        return NumberFound(Fraction(_CARDINALS[match["word"]]), match.end(), spelled=True)
    if match := _DIGITS.match(text, start):
        return NumberFound(_digits(match), match.end())
    return None


def format_number(number: Fraction | int) -> str:
    """A number with its fraction: 5/4 -> "1 1/4", 1/2 -> "1/2", 3 -> "3", -5/2 -> "-2 1/2"."""
    exact = Fraction(number)
    sign = "-" if exact < 0 else ""
    whole, rest = divmod(abs(exact), 1)
    if not rest:
        return f"{sign}{whole}"
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def format_decimal(number: Fraction | int) -> str:
    """A number as a decimal where that is exact (31.75), otherwise with its fraction."""
    exact = Fraction(number)
    denominator, twos, fives = exact.denominator, 0, 0
    while denominator % 2 == 0:
        denominator, twos = denominator // 2, twos + 1
    while denominator % 5 == 0:
        denominator, fives = denominator // 5, fives + 1
    places = max(twos, fives)
    if denominator != 1 or places > 9:
        return format_number(exact)
    if places == 0:
        return str(exact.numerator)
    digits = str(abs(exact.numerator) * 10**places // exact.denominator).rjust(places + 1, "0")
    return f"{'-' if exact < 0 else ''}{digits[:-places]}.{digits[-places:]}"
