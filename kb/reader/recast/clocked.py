"""Times of day as what the books have of them: "at 2130" is after 2000 hours, noon between 11:00 and 15:00.

A time takes the words of a fact only where it lies wholly within them, or wholly outside of a yes or no.
An hour that may be in the morning or in the evening tells nothing, unless both come to the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

Edit = tuple[int, int, str]
_Stretch = tuple[float, float]
"""Two hours of a day, from the one to the other."""
_HOURS = "one two three four five six seven eight nine ten eleven twelve"
_DAY, _HALF_DAY, _HOUR = 24, 12, 60
_PARTS: dict[str, _Stretch] = {
    "morning": (5, 12), "afternoon": (12, 18), "evening": (17, 24), "night": (20, 30), "tonight": (18, 30),
}  # fmt: skip
"""What people call so, the wider way: common practice, no source."""
_BRIGHT = (10, 15)
"""Hours between which it is day the whole year round."""
_DEEP = (22, 28)
"""Hours between which it is night the whole year round."""
_WORKING = (9, 18)
"""A clause on hours between these is on no hour of the night."""
_WAKING = (6, 20)
_TO_THE = r"(?P<off>half past|half|(?:a )?quarter (?:past|to)|(?:five|ten|twenty|twenty-five) (?:past|to)) "
_LED = (
    r"(?:(?:it['’]s|it is|at|from|since|around|about|nearly|by|just|exactly|gone|past|after|before|until"
    r"|till) )*"
)
_PART = r"(?:a\.?m\.?|p\.?m\.?|(?:in the|this) (?:morning|afternoon|evening)|at night|tonight)"
_WORDED = rf"(?:\d{{1,2}}|{_HOURS.replace(' ', '|')})"
_TAGGED = r" (?:is|are|does|do|can|may|will|must)(?:n['’]t| not)? (?:it|they|i|we|he|she|you|that)\b"
"""What asks for a yes behind what is told: "after nine aren't they?"."""
CLOCK = (
    rf"{_LED}(?:{_TO_THE})?{_WORDED}(?:[.:]\d\d)?(?: ?o['’]?clock)? ?{_PART}"
    rf"|{_LED}(?:(?:[01]?\d|2[0-3]):[0-5]\d(?: ?(?:h|hrs|hours))?|{_TO_THE.replace('?P<off>', '')}{_WORDED}"
    rf"|{_WORDED} ?o['’]?clock|(?:[01]\d|2[0-3])[0-5]\d ?(?:h|hrs|hours))"
    r"|at (?:exactly |about |around )?(?:[01]\d|2[0-3])[0-5]\d"
    rf"|(?:after|by|at|from|gone|before) (?:{_HOURS.replace(' ', '|')})(?=\s*(?:[,.?!;:]|$)|{_TAGGED})"
)
"""A time of day as it is said; a bare number is none."""
_CLOCKED = Pattern(rf"(?<![\w'’.:-])(?:{CLOCK})(?![\w'’-]|[.:]\d| ?(?:mm|cm|m|°|degrees)\b)", re.IGNORECASE)
_TURN = Pattern(
    r"(?<![\w'’-])(?:(?:it['’]s|it is) )?(?:nearly|almost|around|about|close to|past|gone|just|shortly|well)"
    r"(?: (?:before|after|past))? (?P<part>midnight|noon|midday)(?![\w'’-])",
    re.IGNORECASE,
)
_BOUND = (
    rf"(?:\d\d?:\d\d|\d{{4}} ?(?:hours|hrs|h)|{_WORDED}(?: ?(?:o['’]?clock|a\.?m\.?|p\.?m\.?))?"
    r"|noon|midnight)"
)
_WINDOW = Pattern(
    rf"(?:between (?P<from>{_BOUND}) and|from (?P<since>{_BOUND}) (?:to|until)"
    r"|(?P<led>before|after|from|until)) "
    rf"(?P<end>{_BOUND})(?: (?:in the )?(?P<part>morning|afternoon|evening)| at night)?",
    re.IGNORECASE,
)
_IS_TIME = Pattern(r"(?i)\d:\d\d|clock|\d ?[ap]\.?m\b|\d{4} ?h|noon|midnight|morning|evening|afternoon")
_LATE = Pattern(r"(?i)\b(?:p\.?m|afternoon|evening|night)\b")


def clocked(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each time of day in a text."""
    for match in _TURN.finditer(found.text):
        yield match.start(), match.end(), match["part"]
    for match in _CLOCKED.finditer(found.text):
        hours = tuple(_said(match.group(), found.text))
        names = [*_of_windows(hours, lookup), *_of_light(hours, lookup)] if hours else []
        if not names and match.group().casefold().endswith("at night"):
            names = _night(lookup)  # "after nine at night" may be light yet, but is said to be at night
        if names:
            yield match.start(), match.end(), ", ".join(dict.fromkeys(names))


def _hour(said: str) -> float | None:
    """The hour that a number or a word says; None where the day has none such."""
    low = said.casefold()
    if low in ("noon", "midnight"):
        return _HALF_DAY if low == "noon" else _DAY
    word = re.search(rf"\b(?:{_HOURS.replace(' ', '|')})\b", low)
    digits = re.search(r"(\d\d?)(?:[:.]?(\d\d))?(?!\d)", low)
    if digits is None:
        return None if word is None else float(_HOURS.split().index(word.group()) + 1)
    whole, rest = int(digits[1]), int(digits[2] or 0)
    return whole + rest / _HOUR if whole <= _DAY and rest < _HOUR else None


def _said(said: str, text: str) -> Iterator[_Stretch]:
    """From when to when a time may be, one of these: "nine" is in the morning or in the evening."""
    low = " ".join(said.casefold().replace("’", "'").split())
    off = re.search(r"half past|half (?=\w)|(?:quarter|five|ten|twenty|twenty-five) (?:past|to)", low)
    hour = _hour(low[off.end() :] if off else low)
    if hour is None:
        return
    if off:
        spoken = {"half": 30, "quarter": 15, "five": 5, "ten": 10, "twenty": 20, "twenty-five": 25}
        minutes = spoken[off.group().split()[0]]
        hour += (-minutes if off.group().endswith("to") else minutes) / _HOUR
    part = re.search(r"(?:morning|afternoon|evening|night|tonight|[ap]\.?m\b)", low)
    full = hour > _HALF_DAY + 1 or re.search(r"\b0\d|\b\d{4}\b|\b00:", low) is not None
    for one in (hour,) if full else (hour % _HALF_DAY, hour % _HALF_DAY + _HALF_DAY):
        if full or _fits(one, part.group() if part else "", text):
            yield _stretch(one, low)


def _fits(hour: float, part: str, text: str) -> bool:
    """Whether an hour lies in the part of the day that is told beside it, or elsewhere in the text."""
    if part.startswith(("a", "p")) and part != "afternoon":
        return (hour >= _HALF_DAY) == part.startswith("p")
    told = (part,) if part else tuple(re.findall(rf"(?i)\b(?:{'|'.join(_PARTS)})\b", text))
    if part == "morning":
        return hour < _HALF_DAY  # "three in the morning"
    return not told or any(
        low <= one <= high
        for low, high in (_PARTS[w.casefold()] for w in told)
        for one in (hour, hour + _DAY)
    )


def _stretch(hour: float, low: str) -> _Stretch:
    """ "After six" is from six on, "about six" from a little before."""
    if re.search(r"\b(?:after|since|from|gone|past) ", low) and " past " not in low:
        return (hour, _DAY)
    if re.search(r"\b(?:before|until|till|by)\b", low):
        return (0 if hour <= _HALF_DAY else _HALF_DAY, hour)
    near = 0.25 if re.search(r"\b(?:around|about|nearly|just)\b", low) else 0
    return (hour - near, hour + near)


def _windows(names: Iterable[str], beside: Iterable[_Stretch] = ()) -> tuple[tuple[_Stretch, str], ...]:
    """The hours that names tell, each with what leads it: "between 11:00 and 15:00", "after 8 pm"."""
    names = tuple(names)
    late = any(_LATE.search(name) for name in names)
    ends = [end for window in beside for end in window]
    found: list[tuple[_Stretch, str]] = []
    for name in names:
        match = _WINDOW.fullmatch(name.strip())
        end = _hour(match["end"]) if match else None
        if match is None or end is None or not (_IS_TIME.search(name) or (late and match["led"])):
            continue
        sure = re.search(r"\d:\d\d|\d{4}|noon|midnight", match["end"]) is not None
        start = _hour(match["from"] or match["since"]) if match["from"] or match["since"] else None
        if start is not None:
            short = not sure and start <= _HALF_DAY and end < start
            found.append(((start, end + _HALF_DAY * short), "between"))
            continue
        if not sure and end < _HALF_DAY and not re.search(r"(?i)\d ?a\.?m\b", name):
            end += _HALF_DAY * (late or (end not in ends and end + _HALF_DAY in ends))
        led = match["led"].casefold()
        found.append(((end, _DAY) if led in ("after", "from") else (0, end), led))
    return tuple(found)


def _of_windows(hours: tuple[_Stretch, ...], lookup: Lookup) -> Iterator[str]:
    """The names of what is so at these hours, or is not."""
    for fact in lookup.base.facts:
        if fact.family not in ("situation", "term") or fact.kind not in ("choice", "yes_no", "scale"):
            continue
        if fact.kind == "yes_no":
            for window, led in _windows((fact.label, *fact.other_labels))[:1]:
                so = {_within(one, window, led) for one in _daily(hours, window)}
                if len(so) == 1 and None not in so:
                    yield fact.label if so == {True} else f"not {fact.label}"
            continue
        spans = [(v, w) for v in fact.values for w in _windows((v.label, *v.other_labels))]
        known = tuple(window for _, (window, led) in spans if led == "between")
        meant: set[str] = set()
        for one in _daily(hours, *known):
            inside = {
                value.label
                for value in fact.values
                for window, led in _windows((value.label, *value.other_labels), known)[:1]
                if _within(one, window, led)
            }
            meant |= inside or {""}
        if len(meant) == 1 and "" not in meant:
            yield meant.pop()


def _daily(hours: tuple[_Stretch, ...], *windows: _Stretch) -> tuple[_Stretch, ...]:
    """Without the night, where a clause is on hours of work alone: "at two o'clock" is in the afternoon."""
    if windows and all(_WORKING[0] <= start < end <= _WORKING[1] for start, end in windows):
        return tuple(one for one in hours if _WAKING[0] <= one[0] < _WAKING[1]) or hours
    return hours


def _within(said: _Stretch, window: _Stretch, led: str) -> bool | None:
    """Whether a time lies in a window; None where it does in part, or on the edge of it."""
    (low, high), (start, end) = said, window
    if start > end:  # over midnight
        parts = _within(said, (start, _DAY), "from"), _within(said, (0, end), "until")
        return True if True in parts else None if None in parts else False
    if low == high == start and led in ("after", "from", "between"):
        return {"after": False, "from": True}.get(led)
    if low == high == end and led in ("before", "until", "between"):
        return {"before": False}.get(led)
    if start <= low and high <= end:
        return True
    return False if high <= start or end <= low else None


def _night(lookup: Lookup) -> list[str]:
    """What the books call the night, or the dark."""
    from kb.reader.recast.circumstances import named  # noqa: PLC0415  which reads this

    return named(lookup, ("at night", "night")) or named(lookup, ("dark", "after dark"))


def _of_light(hours: tuple[_Stretch, ...], lookup: Lookup) -> Iterator[str]:
    """ "At three in the morning" is at night; at half past six it may be light or dark."""
    from kb.reader.recast.circumstances import named  # noqa: PLC0415  which reads this

    later = [(low + _DAY, high + _DAY) if high < _DEEP[1] - _DAY else (low, high) for low, high in hours]
    if all(_DEEP[0] <= low and high <= _DEEP[1] for low, high in later):
        meant = _night(lookup)
    elif all(_BRIGHT[0] <= low and high < _BRIGHT[1] for low, high in hours):
        meant = named(lookup, ("by day", "day", "daylight"))
    else:
        meant = []
    if len(meant) == 1:
        yield meant[0]
