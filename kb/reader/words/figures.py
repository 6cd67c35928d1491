"""Amounts in words, in figures: "forty-five km an hour", "eight below zero", "an inch and an eighth".

Only for a text that is not understood as it stands. An amount that is not exact ("two and a bit") stays.
"""

from __future__ import annotations

import re
from functools import cache

from kb.reader.words.forms import word_row
from kb.text import Pattern

_ONES = word_row("""
    zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
    seventeen eighteen nineteen
""")
_TENS = word_row("twenty thirty forty fifty sixty seventy eighty ninety")
_PARTS = {"half": 2, "third": 3, "quarter": 4, "eighth": 8, "sixteenth": 16}
_TRIGGERS = Pattern(
    r"(?i)\b(?:eighths?|sixteenths?|quarters?|half|below|under|frost|hour|breeze|gusts?|gusting|blows|blowing"
    rf"|kilos|say|mils?|only|just|it['’]?s \d\d|it is \d\d|{'|'.join((*_ONES[13:], *_TENS))})\b"
)
_UNITS = r"inch(?:es)?|f(?:oo|ee)t|cm|centimet(?:re|er)s?|mm|millimet(?:re|er)s?|m|met(?:re|er)s?"


def in_figures(text: str) -> str:
    """The text with such amounts in figures; itself where it has none."""
    if _TRIGGERS.search(text) is None:
        return text
    text = _large().sub(lambda found: str(_number(found.group())), text)
    text = _mixed().sub(_with_part, text)
    text = _hyphened().sub(_with_part_before, text)
    text = _mils().sub(lambda found: f"{_count(found[1])} mm", text)
    for pattern, put in _lines():
        text = pattern.sub(put, text)
    return text


@cache
def _large() -> re.Pattern[str]:
    """Number words from thirteen on; "twenty-first" is none."""
    ones = "|".join(_ONES[1:10])
    return re.compile(
        rf"(?i)\b(?:(?:{'|'.join(_TENS)})(?:[- ](?:{ones})\b)?|{'|'.join(_ONES[13:])})\b"
        r"(?![- ]\w*(?:st|nd|rd|th)\b)"
    )


def _number(words: str) -> int:
    total = 0
    for word in words.casefold().replace("-", " ").split():
        total += (_TENS.index(word) + 2) * 10 if word in _TENS else _ONES.index(word)
    return total


@cache
def _mixed() -> re.Pattern[str]:
    """ "An inch and an eighth", "two inches and three eighths"."""
    counts = "|".join((*_ONES[1:13], "an?", r"\d+"))
    parts = "|".join(_PARTS)
    return re.compile(
        rf"(?i)\b({counts}) ({_UNITS}) and ({counts}) ({parts})s?\b(?! (?:of|below|above an)\b)"
    )


@cache
def _hyphened() -> re.Pattern[str]:
    """ "An inch-and-a-half", "two-and-a-half inches", "a one-and-a-quarter-inch"."""
    counts = "|".join((*_ONES[1:13], r"\d+"))
    return re.compile(
        rf"(?i)\b(?:(?P<count>{counts})[- ]and[- ]an?[- ](?P<part>half|quarter)[- ](?P<unit>{_UNITS})"
        r"|(?:an? |one[- ])?(?P<alone>inch|foot)[- ]and[- ]an?[- ](?P<rest>half|quarter))\b"
    )


def _with_part_before(found: re.Match[str]) -> str:
    whole, part = found["count"] or "1", found["part"] or found["rest"]
    return f"{_count(whole)} 1/{_PARTS[part.casefold()]} {found['unit'] or found['alone']}"


@cache
def _mils() -> re.Pattern[str]:
    """ "Fifteen mil": what millimetres are called where nobody writes them."""
    return re.compile(rf"(?i)\b({'|'.join((*_ONES[1:13], r'[0-9]+(?:[.][0-9]+)?'))})[- ]mils?\b")


def _with_part(found: re.Match[str]) -> str:
    whole, unit, count, part = found.groups()
    return f"{_count(whole)} {_count(count)}/{_PARTS[part.casefold()]} {unit}"


def _count(word: str) -> int | str:
    word = word.casefold()
    if word[:1].isdecimal():
        return word
    return 1 if word in ("a", "an") else _ONES.index(word)


@cache
def _lines() -> tuple[tuple[re.Pattern[str], str], ...]:
    end = r"(?=[.,;:?!]|$| (?:in|on|and|out|outside|today|with)\b)"
    number = rf"(\d+(?:\.\d+)?|{'|'.join(_ONES[1:13])})"
    pairs = (
        (rf"\b{number} (?:degrees? )?(?:below|under) (?:zero|freezing|nought)\b", r"minus \1 degrees"),
        (rf"\b{number} degrees? of frost\b", r"minus \1 degrees"),
        (
            rf"\b(at|it's|it is|is) {number} below{end}",
            r"\1 minus \2 degrees",
        ),
        (
            rf"\b(it(?:'s| is) (?:below|under)) (\d{{1,2}}){end}",
            r"\1 \2 degrees",
        ),
        (r"\b(?:km|kms|kilomet(?:re|er)s?|k) (?:an|per|a|in an) hour\b", "km/h"),
        (r"\bmiles? (?:an|per|a) hour\b", "mph"),
        (r"(\d ?(?:km/h|kph|kmh|mph|knots?|m/s)) (?:breeze|gusts?|blow)\b", r"\1 wind"),
        (r"\b(?:breezes?|gusts|gusting|gust) (?:of |at |up to |to )?(?=\d)", "wind "),
        (
            r"\b(?:when|if|while) it(?:'s| is)? (?:blows|blowing|gusts|gusting)(?: at| up to| to)? (?=\d)",
            "with a wind of ",
        ),
        (r"\bblowing (over|above|more than|at least|under|below) (?=\d)", r"wind \1 "),
        (r"\bcarrying (\d+(?:\.\d+)?) ?(?:kilos?|kg|kilograms?)\b", r"with \1 kg"),
        (r",? say,? (?=(?:about |minus )?\d)", ", "),
        (r"\b(it(?:['’]?s| is)|at) (?:only|just|already|still) (?=(?:minus )?\d)", r"\1 "),
        (r"(?:^|(?<=[.,;] ))(?:only|just) (?=(?:minus )?\d+ ?(?:degrees|°))", r""),
        (rf"^{number} below(?=[,.;])", r"minus \1 degrees"),
        (
            r"\b(it(?:['’]?s| is)) (1[3-9]|[23]\d|4[0-5])"
            r"(?=[.,;!?]| (?:and|but|out|outside|outdoors|today|now|here)\b)(?! (?:of|years|to|past)\b)",
            r"\1 \2 degrees",
        ),
    )
    return tuple((re.compile(rf"(?i){pattern}"), put) for pattern, put in pairs)
