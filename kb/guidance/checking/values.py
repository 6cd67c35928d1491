"""What a sentence says of an aspect, "2 to 4 in from the knee", "black or navy blue", as a set of values."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cached_property

import msgspec

from kb.guidance.checking.names import Names
from kb.guidance.checking.words import fold
from kb.measures import parse_measure_at
from kb.model.records import Measure, Position, RuleValue
from kb.model.values import OTHER, Choices, Interval, ranges
from kb.reader.words.colours import FINISHES, HEADS, MODIFIERS
from kb.text import Pattern
from kb.wording import say_position, say_value

_COUNT = Pattern(
    r"(?P<at_most>at most|no more than|not more than|up to|a maximum of)? ?"
    r"(?P<at_least>at least|no fewer than|not fewer than|a minimum of)? ?(?:exactly )?"
    r"(?P<low>none|\d{1,6}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
    r"(?: to (?P<high>\d{1,6}))?(?![\w/.])(?P<after> or (?:more|fewer|less))?"
)
_NUMBERS = {
    "none": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}  # fmt: skip
_PLACES = Pattern(r"in (?:one|any) of (?:these|the following) places: ")
_NEXT_PLACE = Pattern(r"; (?:or )?")
_DATUM = Pattern(r",? (?:from|measured from) .+")


class Found(msgspec.Struct, frozen=True):
    """A value at the beginning of a text, and what follows it; `measure` is as the sentence writes it."""

    value: RuleValue
    rest: str
    measure: Measure | None = None


class Values:
    """Reads values of aspects for one rule base."""

    def __init__(self, names: Names) -> None:
        self.names = names
        self.lookup = names.lookup

    @cached_property
    def _said(self) -> dict[str, dict[str, RuleValue]]:
        """For each aspect the values of its rules as the program says them, folded."""
        found: dict[str, dict[str, RuleValue]] = {}
        for rule in self.lookup.base.rules:
            kind = self.lookup.aspects[rule.aspect].kind
            if kind != "act":
                said = fold(say_value(self.lookup, rule.aspect, rule.value))
                found.setdefault(rule.aspect, {}).setdefault(said, rule.value)
        return found

    def at_start(self, aspect: str, text: str) -> Iterator[Found]:
        """The values that a text may begin with, the longest first."""
        said = self._said.get(aspect, {})
        for known in sorted(said, key=len, reverse=True):
            if text.startswith(known) and not text[len(known) : len(known) + 1].isalnum():
                yield Found(said[known], text[len(known) :], said[known].measure)
        kind = self.lookup.aspects[aspect].kind
        if kind == "position":
            yield from self._listed(aspect, text)
            yield from self._place(said, text)
        if kind == "measure":
            yield from self._measure(text)
        elif kind == "count":
            yield from _count(text)
        elif kind == "choice":
            yield from self._choice(aspect, text)

    @cached_property
    def _places(self) -> dict[str, dict[str, Position]]:
        """For each aspect every single place that its rules name, as the program says it, folded."""
        found: dict[str, dict[str, Position]] = {}
        for rule in self.lookup.base.rules:
            for position in rule.value.positions:
                found.setdefault(rule.aspect, {})[fold(say_position(self.lookup, position))] = position
        return found

    def _listed(self, aspect: str, text: str) -> Iterator[Found]:
        """Several places, "in one of these places: on the coat; or on the smock"."""
        lead = _PLACES.match(text)
        if lead is None:
            return
        places = self._places.get(aspect, {})
        named = [places.get(part.strip(" ,")) for part in _NEXT_PLACE.split(text[lead.end() :])]
        known = tuple(place for place in named if place is not None)
        if len(known) == len(named):
            members = frozenset(place.id for place in known)
            yield Found(RuleValue(values=Choices(members), positions=known), "")

    def _place(self, said: dict[str, RuleValue], text: str) -> Iterator[Found]:
        """A place said in less detail than the books have: every place that begins so."""
        parts = text.split(", ")
        for count in range(len(parts), 0, -1):
            whole = ", ".join(parts[:count])
            words = whole.split(" ")
            for cut in range(len(words), 2, -1):
                start = " ".join(words[:cut])
                fitting = [
                    v for known, v in said.items() if known.startswith(f"{start},") and len(v.positions) == 1
                ]
                if fitting:
                    members = frozenset(p.id for value in fitting for p in value.positions)
                    yield Found(RuleValue(values=Choices(members)), text[len(start) :])
                    return

    def _measure(self, text: str) -> Iterator[Found]:
        found = parse_measure_at(text, 0)
        if found is None:
            return
        value = RuleValue(values=ranges([found.measure.interval]), measure=found.measure)
        rest = text[found.end :]
        yield Found(value, rest, found.measure)
        datum = _DATUM.match(rest)
        if datum:
            for known in self._datums:
                if rest.strip(" ,").startswith(known):
                    yield Found(value, rest.strip(" ,")[len(known) :], found.measure)

    @cached_property
    def _datums(self) -> tuple[str, ...]:
        """What measures are taken from and to, as said after them, the longest first."""
        from kb.wording import say_datum  # noqa: PLC0415

        measures = [rule.value.measure for rule in self.lookup.base.rules]
        measures += [p.offset for rule in self.lookup.base.rules for p in rule.value.positions]
        said = {
            fold(say_datum(m.datum)).strip(" ,") for m in measures if m is not None and m.datum is not None
        }
        return tuple(sorted(said - {""}, key=len, reverse=True))

    def _choice(self, aspect: str, text: str) -> Iterator[Found]:
        labels = self._labels(aspect)
        chosen: list[str] = []
        rest = text
        while True:
            known = [
                label for label in labels if rest.startswith(label) and not rest[len(label) :][:1].isalnum()
            ]
            if not known:
                break
            label = max(known, key=len)
            chosen.append(labels[label])
            rest = rest[len(label) :]
            yield Found(RuleValue(values=Choices(frozenset(chosen))), rest)
            joined = next((mark for mark in (", or ", " or ", ", ") if rest.startswith(mark)), None)
            if joined is None:
                break
            rest = rest[len(joined) :]
        if not chosen:
            yield from self._shade(aspect, text)

    def _labels(self, aspect: str) -> dict[str, str]:
        """What the values of an aspect are called, folded; "navy" is the one colour that begins so."""
        named = [
            (fold(label), value.id)
            for value in self.lookup.aspects[aspect].values
            for label in (value.label, *value.other_labels)
        ]
        begins = [(label.split()[0], value) for label, value in named if label.split()[0] in HEADS]
        one = {word: value for word, value in begins if len({v for w, v in begins if w == word}) == 1}
        return {**one, **dict(named)}

    def _shade(self, aspect: str, text: str) -> Iterator[Found]:
        """A colour or finish that the books do not name, as "pink" or "dark green"."""
        words = text.split(" ")
        cut = next((n for n, word in enumerate(words[:3], start=1) if word not in MODIFIERS), 1)
        sort = FINISHES if words[cut - 1] in FINISHES else HEADS - FINISHES
        named = (fold(value.label).split() for value in self.lookup.aspects[aspect].values)
        if words[cut - 1] in HEADS and any(not sort.isdisjoint(label) for label in named):
            member = OTHER + "-".join(words[:cut])
            yield Found(RuleValue(values=Choices(frozenset({member}))), text[len(" ".join(words[:cut])) :])


def _count(text: str) -> Iterator[Found]:
    match = _COUNT.match(text)
    if match is None:
        return
    low = Fraction(_NUMBERS.get(match["low"]) if match["low"] in _NUMBERS else int(match["low"]))  # type: ignore[arg-type]
    interval = Interval(low, Fraction(int(match["high"])) if match["high"] else low)
    after = (match["after"] or "").removeprefix(" or ")
    if match["at_most"] or after in ("fewer", "less"):
        interval = Interval(None, low)
    elif match["at_least"] or after == "more":
        interval = Interval(low, None)
    value = RuleValue(values=ranges([interval]))
    yield Found(value, text[match.end() :])
